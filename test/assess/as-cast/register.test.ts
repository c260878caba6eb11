import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceOfItem, topOfItem } from '../../../src/assess/as-cast/item-face.ts';
import { placeByTapes } from '../../../src/assess/as-cast/place-by-tapes.ts';
import { registerSurvey } from '../../../src/assess/as-cast/register.ts';
import { movePointBack, type Pose } from '../../../src/engine/survey/pose.ts';
import { plus, times, type Vector } from '../../../src/engine/survey/vector.ts';
import { castIn as castInSchema } from '../../../src/job/documents/cast-in.ts';
import { panel as panelSchema } from '../../../src/job/documents/panel.ts';
import { frameOf } from '../../../src/job/face-frame.ts';
import type { BodyOf } from '../../../src/records/record.ts';
import { flatPose, spacePose } from '../../engine/survey/poses.ts';
import { sampleCastIn, samplePanel } from '../../job/sample-job.ts';

type Survey = BodyOf<'surveyed'>;
type Coordinates = Survey['points'][number]['measured_mm'];

const panelOf = (changes = {}) => panelSchema.parse(samplePanel(changes));
const PANELS = (['outside', 'inside'] as const).map((drawnFace) => panelOf({ drawnFace }));
const ITEMS = [
  sampleCastIn('1', 500, 400),
  sampleCastIn('2', 650, 400, { recess_mm: 10 }),
  sampleCastIn('3', 3200, 2500, { face: 'inside' }),
  // Edge 1 runs up at x = 4000; 90 mm from the outside face.
  sampleCastIn('4', 1200, 90, { face: 'edge', edge: 1 }),
].map((one) => castInSchema.parse(one));

const as = (vector: Vector) => vector as unknown as Coordinates; // two or three numbers, as the schema wants
const control = (name: string, design: Vector, pose: Pose, changes: Partial<Survey['controls'][number]> = {}) => ({
  name,
  kind: 'corner' as const,
  design_mm: as(design),
  edgeEnd_mm: null,
  measured_mm: as(movePointBack(pose, design)),
  sigma_mm: 2,
  isUsed: true,
  note: null,
  ...changes,
});
const corners = (pose: Pose) =>
  panelOf().outline_mm.flatMap(([x, y], i) => [
    control(`corner ${i + 1}`, [x, y, 0], pose),
    control(`corner ${i + 1} behind`, [x, y, -180], pose),
  ]);
const flatCorners = (pose: Pose, face: 'outside' | 'inside') =>
  panelOf().outline_mm.map(([x, y], i) => {
    const seen = frameOf(panelOf(), { face, edge: null }).toFace([x, y]);
    return { ...control(`corner ${i + 1}`, [x, y], pose), measured_mm: as(movePointBack(pose, seen)) };
  });

describe('a survey on its panel', () => {
  const off = fc.integer({ min: -25, max: 25 });

  it('says where inserts are in the job’s own axes, on any face, from any stand', () => {
    fc.assert(
      fc.property(spacePose, fc.constantFrom(...PANELS), off, off, off, (pose, panel, dx, dy, proud) => {
        const points = ITEMS.map((item) => {
          const { right, up, out } = faceOfItem(panel, item);
          const at = plus(plus(plus(topOfItem(panel, item), times(right, dx)), times(up, dy)), times(out, proud));
          return { item: item.key, name: null, measured_mm: as(movePointBack(pose, at)), second: null, sigma_mm: 1 };
        });
        const { places, rms, notes, isMirrored } = registerSurvey(panel, ITEMS, { controls: corners(pose), points });
        expect([rms < 1e-5, notes, isMirrored]).toEqual([true, [], false]);
        for (const item of ITEMS) {
          const place = places.get(item.key)!;
          expect(place.x).toBeCloseTo(item.x_mm + dx, 4);
          expect(place.y).toBeCloseTo(item.y_mm + dy, 4);
          expect(place.depth).toBeCloseTo(item.recess_mm - proud, 4);
          expect(place.tilt).toBeNull();
        }
      }),
      { seed: 20, numRuns: 25 },
    );
  });

  // By hand: drawn from outside, the inside face lies 180 behind; edge 1 runs up at x = 4000, 90 mm from the outside face.
  it('knows where the faces are', () => {
    const [outside, inside] = PANELS as [(typeof PANELS)[0], (typeof PANELS)[0]];
    expect(topOfItem(outside, ITEMS[1]!)).toEqual([650, 400, -10]);
    expect(topOfItem(outside, ITEMS[2]!)).toEqual([3200, 2500, -180]);
    expect(topOfItem(outside, ITEMS[3]!)).toEqual([4000, 1200, -90]);
    expect(topOfItem(inside, ITEMS[1]!)).toEqual([650, 400, -170]);
    expect(topOfItem(inside, ITEMS[3]!)).toEqual([4000, 1200, -90]);
    const rebated = panelOf({
      zones: [
        {
          name: 'rebate',
          outline_mm: [
            [400, 300],
            [600, 300],
            [600, 500],
            [400, 500],
          ],
          layers: [{ kind: 'structural', thickness_mm: 150 }],
          behindOutside_mm: 30,
        },
      ],
    });
    expect(topOfItem(rebated, ITEMS[0]!)).toEqual([500, 400, -30]);
  });

  // 3 mm aside over 95 mm: 1.81°.
  it('gives the tilt along the axes of the job, and the place where the axis meets the face', () => {
    const pose = fc.sample(spacePose, { seed: 21, numRuns: 1 })[0]!;
    const [panel] = PANELS as [(typeof PANELS)[0]];
    const point = (item: (typeof ITEMS)[0], top: Vector, end: Vector) => ({
      item: item.key,
      name: null,
      measured_mm: as(movePointBack(pose, top)),
      second: { measured_mm: as(movePointBack(pose, end)), along_mm: 95 },
      sigma_mm: 1,
    });
    const rise = Math.sqrt(95 ** 2 - 9);
    const points = [
      point(ITEMS[0]!, [500, 400, 0], [503, 400, rise]),
      // On the inside face going out is going down in the panel's frame; 10 mm deep it leans back to the face.
      point(ITEMS[2]!, [3200, 2500, -170], [3200, 2503, -170 - rise]),
      // Too near: no axis.
      point(ITEMS[1]!, [650, 400, -10], [650, 400, -9]),
    ];
    const { places, notes } = registerSurvey(panel, ITEMS, { controls: corners(pose), points });
    const [first, third] = [places.get('i1')!, places.get('i3')!];
    expect(first.tilt).toEqual({ x: expect.closeTo(1.81, 2), y: expect.closeTo(0, 4), total: expect.closeTo(1.81, 2) });
    expect(third.tilt).toEqual({ x: expect.closeTo(0, 4), y: expect.closeTo(1.81, 2), total: expect.closeTo(1.81, 2) });
    expect(third.y).toBeCloseTo(2500 + (10 * 3) / rise, 4);
    expect(third.depth).toBeCloseTo(10, 4);
    expect(places.get('i2')).toMatchObject({ tilt: null });
    expect(notes).toEqual([expect.stringMatching(/^Insert 2: .*1\.0 mm apart.*tilt is not known/)]);
  });

  it.each(['outside', 'inside'] as const)('takes points without heights from in front of the face: %s', (face) => {
    fc.assert(
      fc.property(flatPose, off, off, (pose, dx, dy) => {
        const [panel] = PANELS as [(typeof PANELS)[0]];
        const items = ITEMS.slice(0, 2).map((item) => ({ ...item, face }));
        const { toFace } = frameOf(panel, { face, edge: null });
        const points = items.map((item) => ({
          item: item.key,
          name: null,
          measured_mm: as(movePointBack(pose, toFace([item.x_mm + dx, item.y_mm + dy]))),
          second: null,
          sigma_mm: 1,
        }));
        const found = registerSurvey(panel, items, { controls: flatCorners(pose, face), points });
        expect(found.isMirrored).toBe(false);
        for (const item of items) {
          expect(found.places.get(item.key)!.x).toBeCloseTo(item.x_mm + dx, 4);
          expect(found.places.get(item.key)!.y).toBeCloseTo(item.y_mm + dy, 4);
          expect(found.places.get(item.key)!.depth).toBeNull();
        }
      }),
      { seed: 22, numRuns: 20 },
    );
  });

  it('names points measured from the other face, or with east and north exchanged', () => {
    const [panel] = PANELS as [(typeof PANELS)[0]];
    const pose = fc.sample(flatPose, { seed: 23, numRuns: 1 })[0]!;
    const points = ITEMS.slice(0, 2).map((item) => ({
      item: item.key,
      name: null,
      measured_mm: as(movePointBack(pose, [item.x_mm, item.y_mm])),
      second: null,
      sigma_mm: 1,
    }));
    const exchange = <T extends { measured_mm: Coordinates }>(one: T): T => ({
      ...one,
      measured_mm: as([one.measured_mm[1], one.measured_mm[0]]),
    });
    const controls = flatCorners(pose, 'outside');
    const found = registerSurvey(panel, ITEMS, { controls: controls.map(exchange), points: points.map(exchange) });
    expect(found.isMirrored).toBe(true);
    expect(found.notes[0]).toMatch(/measured from the other face, or east and north are exchanged/);
    expect(registerSurvey(panel, ITEMS, { controls, points }).isMirrored).toBe(false);
  });

  it('names a slip in a control, counts what is left out for nothing, and says when nothing checks', () => {
    const [panel] = PANELS as [(typeof PANELS)[0]];
    const pose = fc.sample(flatPose, { seed: 24, numRuns: 1 })[0]!;
    const [first, second, third, fourth] = flatCorners(pose, 'outside');
    const slipped = { ...third!, measured_mm: as([third!.measured_mm[0] + 40, third!.measured_mm[1]]) };
    const ask = (...controls: Survey['controls'][number][]) => registerSurvey(panel, ITEMS, { controls, points: [] });
    const named = ask(first!, second!, slipped, fourth!);
    expect(named.controls.map(({ isSuspect }) => isSuspect)).toEqual([false, false, true, false]);
    expect(named.notes[0]).toMatch(/^Control corner 3 does not agree with the others: it lies 40 mm/);
    const without = ask(first!, second!, { ...slipped, isUsed: false, note: 'kicked' }, fourth!);
    expect(without.rms).toBeLessThan(1e-5);
    expect(without.controls[2]).toMatchObject({ isUsed: false, isSuspect: false, residual: expect.closeTo(40, 4) });
    expect(
      ask(first!, { ...second!, measured_mm: first!.measured_mm.map((v) => v + 3000) as unknown as Coordinates })
        .notes[0],
    ).toMatch(/contradict each other; which of corner 1, corner 2/);
    expect(() => ask(first!)).toThrow(/expected at least two/);
  });

  it('takes points along an edge for the distance across it', () => {
    const [panel] = PANELS as [(typeof PANELS)[0]];
    const pose = fc.sample(flatPose, { seed: 25, numRuns: 1 })[0]!;
    const edge = (name: string, from: Vector, end: Vector, at: Vector) =>
      control(name, from, pose, {
        kind: 'edge',
        edgeEnd_mm: as(end),
        measured_mm: as(movePointBack(pose, at)),
        sigma_mm: 3,
      });
    const points = ITEMS.slice(0, 2).map((item) => ({
      item: item.key,
      name: null,
      measured_mm: as(movePointBack(pose, [item.x_mm + 7, item.y_mm - 4])),
      second: null,
      sigma_mm: 1,
    }));
    const controls = [
      edge('bottom 1', [0, 0], [4000, 0], [700, 0]),
      edge('bottom 2', [0, 0], [4000, 0], [3100, 0]),
      edge('left', [0, 0], [0, 3000], [0, 1300]),
    ];
    const found = registerSurvey(panel, ITEMS, { controls, points });
    expect(found.places.get('i1')).toMatchObject({ x: expect.closeTo(507, 3), y: expect.closeTo(396, 3) });
    expect(found.notes).toEqual([expect.stringMatching(/No control more than needed/)]);
  });

  it('refuses a mixture of points with and without heights, and several faces without', () => {
    const [panel] = PANELS as [(typeof PANELS)[0]];
    const pose = fc.sample(flatPose, { seed: 26, numRuns: 1 })[0]!;
    const flat = (key: string) => ({ item: key, name: null, measured_mm: as([1, 2]), second: null, sigma_mm: 1 });
    const controls = flatCorners(pose, 'outside');
    expect(() => registerSurvey(panel, ITEMS, { controls, points: [flat('i1'), flat('i3')] })).toThrow(/several faces/);
    expect(() => registerSurvey(panel, ITEMS, { controls, points: [flat('i4')] })).toThrow(/on an edge/);
    const solid = { ...flat('i1'), measured_mm: as([1, 2, 3]) };
    expect(() => registerSurvey(panel, ITEMS, { controls, points: [solid] })).toThrow(/some points have heights/);
  });
});

describe('inserts taped on the hard panel', () => {
  const edge = (item: string, from: [number, number], end: [number, number], distance_mm: number) => ({
    item,
    to: { kind: 'edge' as const, from_mm: from, end_mm: end },
    distance_mm,
    sigma_mm: 1,
  });
  const between = (item: string, other: string, distance_mm: number) => ({
    item,
    to: { kind: 'insert' as const, item: other },
    distance_mm,
    sigma_mm: 1,
  });
  const left = (item: string, distance: number) => edge(item, [0, 0], [0, 3000], distance);
  const bottom = (item: string, distance: number) => edge(item, [0, 0], [4000, 0], distance);

  it('are placed from edges, each set by itself', () => {
    const { places, notes } = placeByTapes(ITEMS, [
      left('i1', 506),
      bottom('i1', 398),
      left('i3', 3195),
      bottom('i3', 2500),
    ]);
    expect(places.get('i1')).toMatchObject({ x: expect.closeTo(506, 6), y: expect.closeTo(398, 6) });
    expect(places.get('i3')).toMatchObject({ x: expect.closeTo(3195, 6) });
    expect(notes).toEqual([]);
  });

  it('say that only their shape is known, name what contradicts, and go on with the other sets', () => {
    const third = castInSchema.parse(sampleCastIn('5', 500, 600));
    const shape = placeByTapes(
      [...ITEMS, third],
      [between('i1', 'i2', 150), between('i2', 'i5', 250), between('i5', 'i1', 200), left('i3', 3195)],
    );
    expect(shape.shapeOnly).toEqual(new Set(['i1', 'i2', 'i5']));
    expect(shape.notes).toEqual([
      expect.stringMatching(/only how they lie to each other is known/),
      expect.stringMatching(/mirror image fits/),
      expect.stringMatching(/^Insert 3: .*free along an edge/),
    ]);
    const wrong = placeByTapes(ITEMS, [
      left('i1', 500),
      bottom('i1', 400),
      left('i2', 650),
      bottom('i2', 400),
      between('i1', 'i2', 180),
    ]);
    expect(wrong.notes).toEqual([
      'The distances contradict each other; which of 1 to its edge (500 mm), 2 to its edge (650 mm), 1 to 2 (180 mm) is wrong cannot be told: tape one more.',
    ]);
  });
});
