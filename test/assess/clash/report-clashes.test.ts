import { describe, expect, it } from 'vitest';
import { assessJob } from '../../../src/assess/assess-job.ts';
import { buildScene } from '../../../src/assess/clash/build-scene.ts';
import { describeClash } from '../../../src/assess/clash/describe-clash.ts';
import { reportClashes } from '../../../src/assess/clash/report-clashes.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import {
  type Json,
  type SampleParts,
  sampleBed,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  samplePanel,
} from '../../job/sample-job.ts';
import { readSample } from '../read-sample.ts';

/** Bars 10 mm thick along x, every 200 mm through y = 400: under 35 mm of cover their axes lie 40 mm below the outside face. */
const layer = (changes: Json = {}): Json => ({
  face: 'outside',
  direction_deg: 0,
  diameter_mm: 10,
  spacing_mm: 200,
  cover_mm: 35,
  through_mm: [0, 400],
  ...changes,
});

const reinforced = (layers: readonly Json[], changes: Json = {}) =>
  samplePanel({ reinforcement: { bars: layers, edge: 'none', limitsCrackWidth: true }, ...changes });

function open(parts: SampleParts) {
  const file = readSample(parts);
  const index = indexJob(file);
  const panel = file.job.panels[0]!;
  return { file, index, panel, report: reportClashes(index, panel, file.library.yard.beds[0] ?? null) };
}

/** Holes wide enough for an insert that has moved by 3 mm. */
const wide = [-100, 100].map((x, i) => ({ id: String(i + 1), at_mm: [x, 0], diameter_mm: 26 }));

const alone = { connections: [] };

describe('solids of cast-in items', () => {
  const solidsOf = (castIn: Json, panel: Json = {}, item: Json = {}) => {
    const { index, panel: read } = open({
      ...alone,
      castIns: [castIn],
      panels: [samplePanel(panel)],
      items: [sampleItem(item)],
    });
    return buildScene(index, read, null, 1).scene.items[0]!;
  };
  it('an insert of the outside face, 4 mm below it, with its cross bar', () => {
    const bar = { direction_deg: 90, diameter_mm: 8, length_mm: 240 };
    const { parts, tolerance, cover } = solidsOf(sampleCastIn('1', 900, 500, { recess_mm: 4, crossBar: bar }));
    expect(parts).toMatchObject([
      { name: 'body', solid: { from: [900, 500, 4], to: [900, 500, 100], radius: 12 } },
      { name: 'foot', solid: { from: [900, 500, 100], to: [900, 500, 107], radius: 23 } },
      // The hole lies 14 mm above the end: 107 - 14.
      {
        name: 'cross bar',
        solid: { from: [expect.closeTo(900, 9), 380, 93], to: [expect.closeTo(900, 9), 620, 93], radius: 4 },
      },
    ]);
    expect(tolerance).toBe(5);
    // XC4, S4: 30 mm, with 10 mm for deviation: EN 1992-1-1 tables 4.4N and 4.4.1.3 (recalled).
    expect(cover).toBe(40);
  });
  it('an insert of the inside face stands the other way', () => {
    expect(solidsOf(sampleCastIn('1', 900, 500, { face: 'inside', tolerance_mm: 8 }))).toMatchObject({
      tolerance: 8,
      parts: [
        { solid: { from: [900, 500, 180], to: [900, 500, 84] } },
        { solid: { from: [900, 500, 84], to: [900, 500, 77] } },
      ],
    });
  });
  it('a foot given by its area is as large as that with the body in it', () => {
    const { parts } = solidsOf(
      sampleCastIn('1', 900, 500),
      {},
      { foot: { kind: 'area', area_mm2: 1000, thickness_mm: 7, isFullHead: true } },
    );
    const { solid } = parts[1]!;
    expect(solid.kind === 'cylinder' && Math.PI * (solid.radius ** 2 - 12 ** 2)).toBeCloseTo(1000, 6);
  });
  it('an insert of an edge stands square to its battered side', () => {
    // Edge 1 runs up x = 4000; at 100 mm from the outside face a batter of 5° has receded by 100 tan 5°.
    const { parts, throughSide, directions } = solidsOf(sampleCastIn('1', 700, 100, { face: 'edge', edge: 1 }), {
      edges: [{ edge: 1, batter_deg: 5 }],
    });
    const [sin, cos, tan] = [Math.sin, Math.cos, Math.tan].map((f) => f((5 * Math.PI) / 180)) as [
      number,
      number,
      number,
    ];
    const { solid } = parts[0]!;
    if (solid.kind !== 'cylinder') throw new Error('a body is a cylinder');
    expect(solid.from).toEqual([expect.closeTo(4000 - 100 * tan, 9), 700, 100]);
    expect(solid.to).toEqual([expect.closeTo(4000 - 100 * tan - 96 * cos, 9), 700, expect.closeTo(100 - 96 * sin, 9)]);
    expect(throughSide).toBe(1);
    expect(directions[0]).toEqual([0, 1, 0]);
  });
  it('other items by their size', () => {
    const other = { item: null, role: 'duct', description: 'Duct' };
    expect(
      solidsOf(sampleCastIn('1', 900, 500, { ...other, size: { kind: 'round', diameter_mm: 50, depth_mm: 90 } })),
    ).toMatchObject({
      cover: 0,
      tolerance: 0,
      parts: [{ name: 'item', solid: { from: [900, 500, 0], to: [900, 500, 90], radius: 25 } }],
    });
    const box = sampleCastIn('1', 900, 500, {
      ...other,
      size: { kind: 'box', width_mm: 100, height_mm: 60, depth_mm: 80 },
    });
    expect(solidsOf(box).parts[0]!.solid).toMatchObject({
      minX: 850,
      maxX: 950,
      minY: 470,
      maxY: 530,
      minZ: 0,
      maxZ: 80,
    });
  });
});

describe('clashes of a panel', () => {
  it('a loose bar is shifted, and the sentence says where to', () => {
    // The body (radius 12) at y = 410 over the bar at 400 (radius 5): 22 from axis to axis are needed.
    const { report } = open({ ...alone, castIns: [sampleCastIn('1', 900, 410)], panels: [reinforced([layer()])] });
    expect(report).toMatchObject({
      panel: 'P1',
      unknown: [],
      clashes: [
        {
          a: { id: '1', part: 'body' },
          b: { kind: 'bar', layer: 1, bar: '2', face: 'outside', bars: 'bars' },
          clearance_mm: 0,
          needed_mm: 5,
          remedy: { kind: 'shift bar', layer: 1, bar: '2', shift_mm: 12, toward: [0, -1], otherWay_mm: 32 },
          strengthAfter: [],
        },
      ],
    });
    expect(describeClash(report.clashes[0]!)).toBe(
      'the body of insert 1 meets bar 2 of layer 1 (10 mm, outside). Shift bar 2 of layer 1 by 12 mm toward smaller y of the drawing, or by 32 mm the other way. That is more than its diameter: tell the design engineer.',
    );
  });
  it('beside a mesh the insert moves, and its connection is computed anew', () => {
    const { file, report } = open({
      castIns: [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500, { tolerance_mm: 1 })],
      connections: [sampleConnection({ fixture: sampleFixture({ holes: wide }) })],
      panels: [reinforced([layer({ kind: 'mesh', through_mm: [0, 481] })])],
    });
    const clash = report.clashes.find(({ a }) => a.id === '1')!;
    expect(clash).toMatchObject({
      clearance_mm: 2,
      remedy: { kind: 'move', id: '1', dx_mm: 0, dy_mm: 3, tolerance_mm: 5 },
    });
    // The same job with the insert drawn there.
    const { job } = file;
    const moved = {
      ...file,
      job: { ...job, castIns: job.castIns.map((one) => (one.id === '1' ? { ...one, y_mm: 503 } : one)) },
    };
    const [now, then] = [file, moved].map((one) => assessJob(one).connections[0]!);
    expect(clash.strengthAfter).toEqual([
      {
        connection: 'C1',
        before: { state: now!.state, ratio: now!.ratio },
        after: { state: then!.state, ratio: then!.ratio },
      },
    ]);
    expect(then!.ratio).not.toBe(now!.ratio);
    expect(describeClash(clash)).toContain(
      'the body of insert 1 is 2 mm from mesh bar 3 of layer 1 (10 mm, outside), needed are 5 mm. A mesh is one piece and is not shifted. Move insert 1 by +3 mm in y of the drawing, within its tolerance of ±5 mm. Connection C1 with it there: ',
    );
    // The other would need 3 mm as well, and has 1.
    const other = report.clashes.find(({ a }) => a.id === '2')!;
    expect(describeClash(other)).toBe(
      'the body of insert 2 is 2 mm from mesh bar 3 of layer 1 (10 mm, outside), needed are 5 mm. A mesh is one piece and is not shifted. The design engineer decides.',
    );
  });
  it('bars of the inside face lie as deep as their cover says', () => {
    // 180 - 35 - 5 = 140 deep; an insert of the inside face at 410 meets it, one of the outside face (103 long) does not.
    const at = (face: string) =>
      open({
        ...alone,
        castIns: [sampleCastIn('1', 900, 410, { face })],
        panels: [reinforced([layer({ face: 'inside' })])],
      }).report.clashes;
    expect(at('outside')).toEqual([]);
    expect(at('inside')).toHaveLength(1);
  });
  it('a cross bar is turned, to a direction of the job', () => {
    // Bars along y, as deep as the cross bar (103 - 14 = 89): cover 84. One passes 110 beside the insert; it reaches to 120.
    const { report } = open({
      ...alone,
      castIns: [sampleCastIn('1', 900, 510, { crossBar: { direction_deg: 170, diameter_mm: 8, length_mm: 240 } })],
      panels: [
        reinforced([
          layer({ direction_deg: 90, through_mm: [1010, 0], spacing_mm: 400, cover_mm: 84, kind: 'strand' }),
        ]),
      ],
    });
    expect(report.clashes.map(({ b, remedy }) => [b.kind, remedy?.kind])).toEqual([['bar', 'turn cross bar']]);
    const { remedy } = report.clashes[0]!;
    // 120 cos a + 4 sin a has to stay under 105, of a = -10, -15 …: 30° off gives 105.9, 35° 100.6.
    expect(remedy).toEqual({
      kind: 'turn cross bar',
      id: '1',
      turn_deg: -25,
      face: 'outside',
      edge: null,
      direction_deg: 145,
    });
    expect(describeClash(report.clashes[0]!)).toBe(
      'the cross bar of insert 1 meets strand 8 of layer 1 (10 mm, outside). A strand is stressed and is never shifted. Turn the cross bar of insert 1 by -25°, to 145° from x toward y.',
    );
  });
  it('edges by their number and openings by theirs', () => {
    const opening = [
      [1000, 1000],
      [1400, 1000],
      [1400, 1400],
      [1000, 1400],
    ];
    const { report } = open({
      ...alone,
      castIns: [sampleCastIn('1', 3940, 500), sampleCastIn('2', 1200, 940)],
      panels: [samplePanel({ openings_mm: [opening] })],
    });
    expect(report.clashes).toMatchObject([
      {
        a: { id: '1', part: 'foot' },
        b: { kind: 'edge', edge: 1 },
        clearance_mm: expect.closeTo(37, 6),
        needed_mm: 40,
      },
      {
        a: { id: '2', part: 'foot' },
        b: { kind: 'opening', opening: 0 },
        clearance_mm: expect.closeTo(37, 6),
        needed_mm: 40,
      },
    ]);
    expect(report.clashes.map((clash) => describeClash(clash))).toEqual([
      'the foot of insert 1 is 37 mm from edge 1, needed are 40 mm. Move insert 1 by −3 mm in x of the drawing, within its tolerance of ±5 mm.',
      'the foot of insert 2 is 37 mm from opening 1, needed are 40 mm. Move insert 2 by −3 mm in y of the drawing, within its tolerance of ±5 mm.',
    ]);
  });
  it('as many millimetres as the rules ask for', () => {
    const at = (clearance_mm: number) =>
      open({
        ...alone,
        castIns: [sampleCastIn('1', 900, 424)],
        panels: [reinforced([layer()])],
        rules: { clearance_mm },
      }).report.clashes;
    expect(at(7)).toEqual([]);
    expect(at(8)).toMatchObject([{ clearance_mm: 7, needed_mm: 8 }]);
  });
});

describe('depth of an insert that is held', () => {
  const chair = (height_mm: number) => ({
    id: `CH${height_mm}`,
    name: 'Chair',
    kind: 'chair',
    height_mm,
    reusable: false,
  });
  const CAP = { id: 'CAP', name: 'Cap', kind: 'cap', height_mm: 6, reusable: false };
  const onChair = (chairs: readonly string[], parts: readonly Json[] = []) => ({
    id: 'ON',
    name: 'On a chair',
    method: 'chair',
    chairs,
    chairSink_mm: 1,
    parts,
  });
  const held = sampleCastIn('1', 900, 500, { face: 'inside', holding: 'ON' });
  const under = (castIn: Json, changes: SampleParts, panel: Json = {}, cover_mm = 84) =>
    open({
      ...alone,
      castIns: [castIn],
      panels: [
        reinforced([layer({ cover_mm, diameter_mm: 8, through_mm: [0, 500] })], { thickness_mm: 200, ...panel }),
      ],
      ...changes,
    }).report;

  it('on a chair follows the chair, not the recess', () => {
    // The chair of 94 presses in by 1: the foot lies 93 to 100 above the outside face, the bar 84 to 92.
    const ways = [onChair(['CH94'])];
    expect(under(held, { parts: [chair(94)], ways }).clashes).toMatchObject([
      { a: { part: 'foot' }, b: { kind: 'bar' }, clearance_mm: expect.closeTo(1, 6), needed_mm: 5 },
    ]);
    // Held by nothing it goes by its recess of 0: the foot at 97, 5 above the bar.
    expect(under(sampleCastIn('1', 900, 500, { face: 'inside' }), {}).clashes).toEqual([]);
  });
  it('on the chair that is taken on the bed of the set-out', () => {
    // On 95 the top lies 3 below the face and the foot 94 above the outside face, 2 over the bar. A screed board that bends by 4 takes 93: it touches.
    const at = (screedDeflection_mm: number) =>
      under(held, {
        parts: [chair(93), chair(95)],
        ways: [onChair(['CH93', 'CH95'])],
        beds: [sampleBed({ screedDeflection_mm })],
      }).clashes.map(({ clearance_mm }) => Math.round(clearance_mm * 1e6) / 1e6);
    expect(at(0)).toEqual([2]);
    expect(at(4)).toEqual([0]);
  });
  it('under a bridging bar goes by the cap and by the face of a rebate', () => {
    const hung = { id: 'ON', name: 'Hung', method: 'bridging bar', parts: [{ part: 'CAP', count: 1 }] };
    // Cap of 6: 200 − 6 − 103 = 91 to 98 for the foot; the bar's top at 92.
    expect(under(held, { parts: [CAP], ways: [hung] }).clashes).toMatchObject([
      { a: { part: 'foot' }, clearance_mm: 0 },
    ]);
    // The rebate takes 30 off the inside face: 61 to 68; the bar 47 to 55, 6 below, or 49 to 57, 4 below.
    const zone = {
      name: 'the rebate at the head',
      outline_mm: [
        [500, 200],
        [1500, 200],
        [1500, 900],
        [500, 900],
      ],
      layers: [{ kind: 'structural', thickness_mm: 170 }],
    };
    const inRebate = (cover_mm: number) =>
      under(held, { parts: [CAP], ways: [hung] }, { zones: [zone] }, cover_mm).clashes;
    expect(inRebate(47)).toEqual([]);
    expect(inRebate(49)).toMatchObject([{ clearance_mm: expect.closeTo(4, 6) }]);
  });
});

describe('ways out that the yard may take', () => {
  const mesh = reinforced([layer({ kind: 'mesh', through_mm: [0, 481] })]);
  const first = (parts: SampleParts) => open(parts).report.clashes.find(({ a }) => a.id === '1')!;

  it('no move of one insert of a template board', () => {
    const board = { id: 'BOARD', name: 'Board', method: 'template board' };
    const plate = { id: 'PLATE', name: 'Plate', method: 'nail-on plate' };
    const at = (holding: string) =>
      first({
        ...alone,
        castIns: [sampleCastIn('1', 900, 500, { holding })],
        panels: [mesh],
        ways: [board, plate],
      }).remedy;
    expect(at('PLATE')).toMatchObject({ kind: 'move', dy_mm: 3 });
    expect(at('BOARD')).toBe(null);
  });
  it('no move by which the bolt would miss its hole', () => {
    // A bolt of 16 in a hole of 22 may be off by 3, in one of 21 by 2.5; in a slot of 6 along y by 3 and more.
    const at = (diameter_mm: number, slot: Json = {}) =>
      first({
        castIns: [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500)],
        connections: [
          sampleConnection({
            fixture: sampleFixture({ holes: wide.map((hole) => ({ ...hole, diameter_mm, ...slot })) }),
          }),
        ],
        panels: [mesh],
      }).remedy;
    expect(at(22)).toMatchObject({ kind: 'move', dy_mm: 3 });
    expect(at(21)).toBe(null);
    expect(at(21, { slot_mm: 6, slotAngle_deg: 90 })).toMatchObject({ kind: 'move', dy_mm: 3 });
    expect(at(21, { slot_mm: 6 })).toBe(null);
  });
  it('no move past the hole of a plate of the library', () => {
    const detail = {
      id: 'D1',
      name: 'Plate',
      fixture: sampleFixture({ holes: wide.map((hole) => ({ ...hole, diameter_mm: 18 })) }),
    };
    const { remedy } = first({
      details: [detail],
      connections: [sampleConnection({ fixture: null, detail: 'D1' })],
      panels: [mesh],
    });
    expect(remedy).toBe(null);
  });
  it.each([
    [90, [910, 1500], [-1, 0]],
    [180, [900, 1510], [0, -1]],
    [270, [890, 1500], [1, 0]],
  ])('a shift of bars at %s° is told along the axis exactly', (direction_deg, [x, y], toward) => {
    const { remedy } = first({
      ...alone,
      castIns: [sampleCastIn('1', x!, y!)],
      panels: [reinforced([layer({ direction_deg, spacing_mm: 200, through_mm: [900, 1500] })])],
    });
    expect(remedy).toMatchObject({ kind: 'shift bar' });
    expect(remedy).toHaveProperty('toward', toward);
  });
});

describe('what could not be looked at', () => {
  it("names the inserts that stand where a face is not the panel's own", () => {
    const zone = {
      name: 'the rebate at the head',
      outline_mm: [
        [3000, 0],
        [4000, 0],
        [4000, 900],
        [3000, 900],
      ],
      layers: [{ kind: 'structural', thickness_mm: 140 }],
    };
    const at = (face: string, changes: Json = {}) =>
      open({
        ...alone,
        castIns: [
          sampleCastIn('1', 3500, 500),
          sampleCastIn('2', 900, 1500),
          sampleCastIn('3', 600, 70, { face: 'edge', edge: 1 }),
        ],
        panels: [reinforced([layer({ face })], { zones: [{ ...zone, ...changes }] })],
      }).report.unknown;
    const told = (face: string) =>
      ['1', '3'].map(
        (id) =>
          `insert ${id} stands in the rebate at the head: bars there were taken as below the panel's own ${face} face`,
      );
    // It lies 40 behind the inside face, or behind the outside one.
    expect(at('inside')).toEqual(told('inside'));
    expect(at('outside')).toEqual([]);
    expect(at('outside', { behindOutside_mm: 40 })).toEqual(told('outside'));
    expect(at('inside', { behindOutside_mm: 40 })).toEqual([]);
  });
  it('is said', () => {
    const { report } = open({
      ...alone,
      castIns: [sampleCastIn('9', 900, 500, { item: null, role: 'lifting', description: 'Lifting unit by others' })],
      panels: [reinforced([layer({ through_mm: null })], { edges: [{ edge: 0, batter_deg: 3 }] })],
    });
    expect(report).toEqual({
      panel: 'P1',
      clashes: [],
      unknown: [
        'layer 1 (outside, 10 mm at 200 mm, 0°): where its bars lie is not given',
        'item 9 (Lifting unit by others) has no size: nothing was compared with it',
        'which way its battered edges lean is not given: both ways were looked at',
      ],
    });
    expect(open({ ...alone, castIns: [], panels: [samplePanel()] }).report.unknown).toEqual([
      'the reinforcement is not given: no bars were looked at',
    ]);
  });
  it('a battered edge is looked at both ways', () => {
    // 10° over 180: the foot (96 to 103 deep) comes nearer where the panel is smaller inside, and keeps its 42 where it is larger.
    const { report } = open({
      ...alone,
      castIns: [sampleCastIn('1', 900, 65, { tolerance_mm: 20 })],
      panels: [samplePanel({ edges: [{ edge: 0, batter_deg: 10 }] })],
    });
    const angle = (10 * Math.PI) / 180;
    const foot = report.clashes.find(({ a }) => a.part === 'foot')!;
    expect(foot.b).toEqual({ kind: 'edge', edge: 0 });
    expect(foot.clearance_mm).toBeCloseTo((65 - 23 - 103 * Math.tan(angle)) * Math.cos(angle), 6);
    // 17 mm farther from the edge would do where it leans in; the way that it leans is not known, so nobody is told to.
    expect(foot.remedy).toBe(null);
  });
});
