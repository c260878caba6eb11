import fc from 'fast-check';
import { panel as panelSchema } from '../../src/job/documents/panel.ts';
import { frameOf, placeInPlate } from '../../src/job/face-frame.ts';
import { type Json, sampleCastIn, sampleItem, sampleJob, samplePanel } from '../job/sample-job.ts';

/** Random jobs that are right, as plain JSON: words with odd signs, panels of both hands, plates turned, everything optional now and then. */

const millimetre = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((v) => v + 0);
const force = fc.double({ min: -500, max: 500, noNaN: true }).map((v) => v + 0);
const words = fc
  .string({
    unit: fc.constantFrom('a', 'B', 'ü', '7', ' ', ',', ';', '"', "'", '|', '=', '-', '½', '\t'),
    minLength: 1,
    maxLength: 12,
  })
  .map((t) => `x${t.replaceAll('\t', '')}y`);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

const bar = fc.record({
  diameter_mm: millimetre(6, 20),
  legs: fc.integer({ min: 1, max: 8 }),
  distance_mm: millimetre(0, 60),
  anchorageInside_mm: millimetre(0, 300),
  anchorageOutside_mm: millimetre(0, 300),
  yield_MPa: millimetre(400, 600),
  hooked: fc.boolean(),
  goodBond: fc.boolean(),
});

const actions: fc.Arbitrary<Json> = fc.oneof(
  fc
    .uniqueArray(words, { minLength: 1, maxLength: 3 })
    .chain((names) =>
      fc.tuple(
        ...names.map((name) =>
          fc.record({
            name: fc.constant(name),
            N_kN: force,
            Vx_kN: force,
            Vy_kN: force,
            Mx_kNm: force,
            My_kNm: force,
            T_kNm: force,
            at_mm: fc.tuple(force, force),
          }),
        ),
      ),
    )
    .map((combinations) => ({ kind: 'loads', combinations })),
  fc.record({ kind: fc.constant('required'), N_kN: millimetre(0, 50), V_kN: millimetre(0, 50) }),
  fc.constant({ kind: 'none' }),
);

const item = fc
  .record({
    name: words,
    foot: fc.oneof(
      fc.record({
        kind: fc.constant('diameter'),
        diameter_mm: millimetre(30, 60),
        thickness_mm: maybe(millimetre(3, 7)),
        isFullHead: fc.boolean(),
      }),
      fc.record({
        kind: fc.constant('area'),
        area_mm2: millimetre(500, 2000),
        thickness_mm: maybe(millimetre(3, 7)),
        isFullHead: fc.boolean(),
      }),
    ),
    crossHole: maybe(
      fc.record({
        diameter_mm: millimetre(4, 12),
        fromFoot_mm: millimetre(0, 40),
        boreThere_mm: fc.constantFrom(0, 12.5),
      }),
    ),
    threadStartsBelowTop_mm: fc.constantFrom(0, 5),
    steel: fc.record({
      ultimate_MPa: millimetre(500, 700),
      yield_MPa: millimetre(200, 500),
      elongation_percent: maybe(millimetre(5, 30)),
      areaReduction_percent: maybe(millimetre(5, 60)),
    }),
    finish: fc.constantFrom('plain', 'zinc', 'galvanised', 'stainless'),
    coating_um: millimetre(0, 80),
    threadClass: fc.constantFrom('6H', '6AZ', '6AX'),
    maxTorque_Nm: maybe(millimetre(10, 300)),
    tested: fc.constantFrom(
      [],
      [
        {
          mode: 'thread',
          characteristic_kN: 80,
          partialFactor: 1.4,
          fromStrength_MPa: null,
          report: 'R',
          standard: 'S',
          conditions: 'c',
        },
      ],
    ),
    qualification: maybe(fc.record({ document: words, standard: words })),
    ratedLoads: fc.constantFrom([], [{ role: 'brace', load_kN: 12, document: 'D', conditions: 'c' }]),
    crossBar: maybe(fc.record({ diameter_mm: millimetre(4, 12), length_mm: millimetre(100, 400) })),
    splitting: maybe(fc.record({ criticalEdge_mm: millimetre(100, 400), minimumThickness_mm: millimetre(100, 200) })),
    leastEdge_mm: maybe(millimetre(20, 100)),
    leastSpacing_mm: maybe(millimetre(40, 200)),
    leastThickness_mm: maybe(millimetre(80, 150)),
    pryOutFactor: maybe(millimetre(1, 2)),
    price: maybe(fc.record({ amount: millimetre(0, 30), currency: words })),
    leadTime_days: maybe(millimetre(0, 60)),
  })
  .map((changes) => sampleItem({ ...changes, boltFinishes: ['zinc', 'galvanised'] }));

const panel = fc
  .record({
    mark: words,
    drawnFace: fc.constantFrom('outside', 'inside'),
    faceDown: fc.constantFrom('outside', 'inside'),
    isClockwise: fc.boolean(),
    openings_mm: fc.constantFrom(
      [],
      [
        [
          [3000, 2000],
          [3500, 2000.25],
          [3500, 2500],
        ],
      ],
    ),
    layers: fc.constantFrom([], [{ kind: 'structural', thickness_mm: 180 }]),
    zones: fc.constantFrom(
      [],
      [
        {
          name: 'rib',
          outline_mm: [
            [2900, 0],
            [4000, 0],
            [4000, 900],
          ],
          layers: [{ kind: 'structural', thickness_mm: 220 }],
          behindOutside_mm: -40,
        },
      ],
    ),
    edges: fc.constantFrom([], [{ edge: 1, batter_deg: 5 }]),
    reinforcement: maybe(
      fc.constant({
        bars: [{ face: 'inside', direction_deg: 0, diameter_mm: 8, spacing_mm: 200, cover_mm: 30 }],
        edge: 'bar',
        stirrupSpacing_mm: null,
        limitsCrackWidth: true,
        yield_MPa: 500,
      }),
    ),
  })
  .map(({ isClockwise, ...changes }) => {
    const corners = [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 2600.5],
    ];
    return samplePanel({ ...changes, outline_mm: isClockwise ? corners.reverse() : corners });
  });

const plate = fc.record({
  thickness_mm: millimetre(8, 40),
  yield_MPa: maybe(millimetre(200, 400)),
  attachment_mm: maybe(
    fc.constant([
      [-40, -40],
      [40, -40],
      [0, 50.5],
    ]),
  ),
});
const hole = fc.record({
  diameter_mm: millimetre(17, 30),
  slot_mm: fc.constantFrom(0, 12.5),
  slotAngle_deg: fc.constantFrom(0, 30),
  takesShear: fc.boolean(),
  isMoved: fc.boolean(),
  isNamed: fc.boolean(),
});

/** A job of one panel with one plate on two inserts and some other cast-in items. */
export const jobArbitrary: fc.Arbitrary<Json> = fc
  .record({
    panel,
    item,
    mark: words,
    face: fc.constantFrom('outside', 'inside'),
    at: fc.tuple(millimetre(800, 2000), millimetre(600, 1500)),
    turn_deg: fc.oneof(fc.constantFrom(0, 90, 180, -90), millimetre(-360, 360)),
    plate,
    holes: fc.tuple(hole, hole),
    isReversed: fc.boolean(),
    hasSpareHole: fc.boolean(),
    noPlate: fc.boolean(),
    actions,
    recess_mm: fc.constantFrom(0, 7.5),
    description: maybe(words),
    rest: fc.record({
      packers_mm: fc.constantFrom(0, 12.5),
      isFilled: fc.boolean(),
      isHeldAgainstTurning: fc.boolean(),
      boltThread: maybe(fc.constant('M16')),
      boltClass: maybe(fc.constantFrom('8.8', 'A4-70')),
      boltFinish: maybe(fc.constant('zinc')),
      engagement_mm: maybe(millimetre(10, 40)),
      cracked: maybe(fc.boolean()),
      age_days: fc.constantFrom(null, 7),
      hangers: fc.array(bar, { maxLength: 2 }),
      uses: fc.constantFrom([], ['fire'], ['seismic', 'fatigue']),
    }),
    hairpins: fc.array(
      fc
        .tuple(bar, millimetre(-180, 180), millimetre(0, 80))
        .map(([b, toward_deg, depth_mm]) => ({ ...b, toward_deg, depth_mm })),
      { maxLength: 1 },
    ),
  })
  .map((draw) => {
    const mark = String(draw.panel.mark);
    const frame = frameOf(panelSchema.parse(draw.panel), { face: draw.face, edge: null });
    const places = [draw.at, [draw.at[0] + 170.25, draw.at[1] + 31] as const];
    const hasNoPlate = draw.noPlate && draw.actions.kind !== 'loads';
    const holes = draw.holes.map(({ isMoved, isNamed, ...rest }, i) => {
      const [x, y] = placeInPlate(frame, draw.at, draw.turn_deg, frame.toFace([places[i]![0], places[i]![1]]));
      return { ...rest, id: isNamed ? `h${i}` : String(i + 1), at_mm: [isMoved ? x + 0.25 : x, y].map((v) => v + 0) };
    });
    const inserts = holes.map(({ id }, i) => ({ insert: String(i + 1), hole: hasNoPlate ? null : id }));
    const fixture = {
      ...draw.plate,
      outline_mm: [
        [-300, -300],
        [300, -300],
        [300, 300],
        [-300, 300.5],
      ],
      holes: draw.hasSpareHole ? [...holes, { ...holes[0]!, id: 'spare' }] : holes,
    };
    return sampleJob({
      items: [draw.item],
      panels: [draw.panel],
      castIns: [
        ...places.map(([x, y], i) =>
          sampleCastIn(String(i + 1), x, y, {
            panel: mark,
            face: draw.face,
            recess_mm: draw.recess_mm,
            description: draw.description,
          }),
        ),
        sampleCastIn('L', 2500, 300, { panel: mark, role: 'lifting', item: null, description: 'Lifter' }),
      ],
      connections: [
        {
          key: 'c1',
          mark: draw.mark,
          panel: mark,
          face: draw.face,
          origin_mm: draw.at,
          turn_deg: draw.turn_deg,
          fixture: hasNoPlate ? null : fixture,
          inserts: draw.isReversed ? [...inserts].reverse() : inserts,
          ...draw.rest,
          hairpins: draw.hairpins,
          actions: draw.actions,
        },
      ],
    });
  });
