import fc from 'fast-check';
import { panel as panelSchema } from '../../src/job/documents/panel.ts';
import { frameOf, placeInPlate } from '../../src/job/face-frame.ts';
import { type Json, sampleBed, sampleCastIn, sampleItem, sampleJob, samplePanel } from '../job/sample-job.ts';

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
    inForm: fc.record({
      turn_deg: fc.constantFrom(0, 90, 180, 270),
      datum: fc.constantFrom('bottom-left', 'bottom-right', 'top-left', 'top-right'),
    }),
    reinforcement: maybe(
      fc.record({
        bars: fc.tuple(
          fc.record({
            face: fc.constant('inside'),
            direction_deg: fc.constant(0),
            diameter_mm: fc.constant(8),
            spacing_mm: fc.constant(200),
            cover_mm: fc.constant(30),
            kind: fc.constantFrom('bars', 'mesh', 'strand'),
            through_mm: maybe(fc.tuple(millimetre(0, 4000), millimetre(0, 3000))),
            endCover_mm: maybe(millimetre(0, 60)),
          }),
        ),
        edge: fc.constant('bar'),
        stirrupSpacing_mm: fc.constant(null),
        limitsCrackWidth: fc.constant(true),
        yield_MPa: fc.constant(500),
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

const part = (id: string, kind: string, more: Json = {}): Json => ({ id, name: id, kind, reusable: true, ...more });

/** The holding parts of a yard, and one way of holding with the recess that the inserts have. */
const holding = fc.record({
  lossPerUse: millimetre(0, 1),
  turnRound_days: fc.nat(9),
  packSize: fc.integer({ min: 1, max: 100 }),
  leadTime_days: maybe(millimetre(0, 40)),
  method: fc.constantFrom('nail-on plate', 'stick-on plate', 'recess former', 'bridging bar', 'chair'),
  thread: maybe(fc.constant('M16')),
  chairSink_mm: millimetre(0, 3),
  scatter: maybe(fc.record({ position_mm: millimetre(1, 5), level_mm: millimetre(1, 5) })),
});

/** Pours of one panel on one long bed, apart from each other where they are planned at all. */
const pours = fc
  .tuple(
    fc.array(fc.record({ remarks: fc.array(words, { maxLength: 2 }), strengthAtStrip_MPa: maybe(millimetre(5, 30)) }), {
      maxLength: 2,
    }),
    fc.array(fc.record({ isPlanned: fc.boolean(), revision: maybe(words) }), { minLength: 1, maxLength: 3 }),
  )
  .map(
    ([heads, pieces]) =>
      (panelMark: string): Json[] =>
        heads.map((head, i) => ({
          ...head,
          id: `T${i}`,
          bed: 'B1',
          date: `2026-12-1${i}`,
          pieces: pieces.map(({ isPlanned, revision }, k) => ({
            panel: panelMark,
            serial: `${i}.${k}`,
            revision,
            along_mm: isPlanned ? 500.5 + 5000 * k : null,
          })),
        })),
  );

const size = fc.oneof(
  fc.record({ kind: fc.constant('round'), diameter_mm: millimetre(20, 90), depth_mm: millimetre(20, 90) }),
  fc.record({
    kind: fc.constant('box'),
    width_mm: millimetre(20, 90),
    height_mm: millimetre(20, 90),
    depth_mm: millimetre(20, 90),
  }),
);

const crossBar = fc.record({
  direction_deg: fc.oneof(fc.constant(0), millimetre(-360, 360)),
  diameter_mm: maybe(millimetre(4, 12)),
  length_mm: maybe(millimetre(100, 400)),
});

const revision = fc.record({
  letter: words,
  status: fc.constantFrom('preliminary', 'for approval', 'for construction', 'void'),
  date: fc.constantFrom('2026-11-30', '2024-02-29'),
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
    crossBar: maybe(crossBar),
    tolerance_mm: maybe(millimetre(1, 20)),
    size: maybe(size),
    holding,
    isHeld: fc.boolean(),
    pours,
    revision: maybe(revision),
    tapeClass: fc.constantFrom('I', 'II'),
    north_deg: maybe(millimetre(-180, 180)),
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
    const { method, thread, chairSink_mm, scatter, ...stock } = draw.holding;
    const way = {
      ...{ id: 'W', name: 'Way', method, thread, recess_mm: draw.recess_mm, scatter },
      parts: [{ part: 'P', count: 2, per: 'group' }],
      ...(method === 'chair' ? { chairs: ['CH'], chairSink_mm } : {}),
    };
    return sampleJob({
      parts: [part('P', 'pad', stock), part('CH', 'chair', { height_mm: 60 })],
      ways: [way],
      beds: [sampleBed({ width_mm: 4100, north_deg: draw.north_deg })],
      pours: draw.pours(mark),
      ...(draw.revision === null ? {} : { revision: draw.revision }),
      yard: { tapeClass: draw.tapeClass },
      items: [draw.item],
      panels: [draw.panel],
      castIns: [
        ...places.map(([x, y], i) =>
          sampleCastIn(String(i + 1), x, y, {
            panel: mark,
            face: draw.face,
            recess_mm: draw.recess_mm,
            description: draw.description,
            crossBar: draw.crossBar,
            tolerance_mm: draw.tolerance_mm,
            holding: draw.isHeld ? 'W' : null,
          }),
        ),
        sampleCastIn('L', 2500, 300, {
          panel: mark,
          role: 'lifting',
          item: null,
          description: 'Lifter',
          size: draw.size,
        }),
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
