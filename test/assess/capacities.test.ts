import { describe, expect, it } from 'vitest';
import { assessConnection } from '../../src/assess/assess-connection.ts';
import { assessJob } from '../../src/assess/assess-job.ts';
import {
  type Asked,
  type Capacities,
  type Capacity,
  findCapacities,
  findCapacityLine,
} from '../../src/assess/capacities.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { resolveConnection } from '../../src/job/resolve/resolve-connection.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  samplePanel,
} from '../job/sample-job.ts';
import { readSample, SPLITTING } from './read-sample.ts';

/** The sample's connection, two inserts 500 mm from the lower edge, with some of it changed. */
function resolve(changes: Json, parts: SampleParts = {}) {
  const file = readSample({ ...parts, connections: [sampleConnection(changes)] });
  return resolveConnection(indexJob(file), file.job.connections[0]!);
}

function readValue<T>(asked: Asked<T>): T {
  if (asked.kind === 'refused') throw new Error(asked.reasons.join('; '));
  return asked.value;
}

const find = (changes: Json = {}, parts: SampleParts = {}) => readValue(findCapacities(resolve(changes, parts)));
const line = (changes: Json = {}, parts: SampleParts = {}) => readValue(findCapacityLine(resolve(changes, parts)));

const of = (all: readonly Capacity[], name: string | null) =>
  all.find(({ direction }) => (direction?.name ?? null) === name)!;

/** State of the same connection under one stated load [kN]. */
function stateUnder(load: Json, changes: Json = {}, parts: SampleParts = {}): string {
  const combinations = [{ name: 'asked', N_kN: 0, Vx_kN: 0, Vy_kN: 0, ...load }];
  return assessConnection(resolve({ ...changes, actions: { kind: 'loads', combinations } }, parts)).state;
}

const ONE = [{ insert: '1', hole: null }];
const PAIR = [
  { insert: '1', hole: null },
  { insert: '2', hole: null },
];

describe('the group as built', () => {
  const { group } = find();

  it('is asked for tension, then shear toward each edge in sight, with its distance', () => {
    // The panel is 4000 mm by 3000 mm, the inserts stand at (900, 500) and (1100, 500).
    expect(group.map(({ direction }) => direction && [direction.name, direction.edge])).toEqual([
      null,
      ['0°', 2900],
      ['90°', 2500],
      ['180°', 900],
      ['270°', 500],
    ]);
    for (const { total, perInsert, reasons } of group) {
      expect(total).toBe(2 * perInsert!);
      expect(reasons).toEqual([]);
    }
  });
  it('carries through its plate what it says, and not 1.001 times that', () => {
    const tension = of(group, null).total! / 1000;
    const down = of(group, '270°').total! / 1000;
    const right = of(group, '0°').total! / 1000;
    for (const [by, state] of [
      [1, 'passes'],
      [1.001, 'fails'],
    ] as const) {
      expect(stateUnder({ N_kN: tension * by })).toBe(state);
      expect(stateUnder({ Vy_kN: -down * by })).toBe(state);
      expect(stateUnder({ Vx_kN: right * by })).toBe(state);
    }
  });
  it('along the axes of the face where no edge is in sight that way', () => {
    // A corner cut by a slanting side that hides nothing: its own direction comes besides those of the axes.
    const outline_mm = [
      [0, 0],
      [4000, 0],
      [4000, 1000],
      [2000, 3000],
      [0, 3000],
    ];
    const names = find({}, { panels: [samplePanel({ outline_mm })] }).group.map(({ direction }) => direction?.name);
    expect(names).toEqual([undefined, '0°', '45°', '90°', '180°', '270°']);
  });
  it('shares a shear only between bolts that take it', () => {
    const plate = (first: Json) =>
      sampleFixture({
        holes: [
          { id: '1', at_mm: [-100, 0], diameter_mm: 18, ...first },
          { id: '2', at_mm: [100, 0], diameter_mm: 18 },
        ],
      });
    const free = find({ fixture: plate({ takesShear: false }) }).group;
    expect(of(free, '270°').total).toBe(of(free, '270°').perInsert);
    expect(of(free, null).total).toBe(of(group, null).total);
    // A slot along x takes shear along y only.
    const slotted = find({ fixture: plate({ slot_mm: 20 }) }).group;
    expect(of(slotted, '0°').total).toBe(of(slotted, '0°').perInsert);
    expect(of(slotted, '270°').total).toBe(of(group, '270°').total);
  });
  it('says where no bolt takes a shear', () => {
    const holes = ['1', '2'].map((id, i) => ({ id, at_mm: [200 * i - 100, 0], diameter_mm: 18, takesShear: false }));
    const none = of(find({ fixture: sampleFixture({ holes }) }).group, '0°');
    expect(none).toMatchObject({ total: null, perInsert: null, mode: null });
  });
  it('steel of one insert far from edges, by hand', () => {
    // Shear of the M16 8.8 bolt: 0.5 · 157 · 800 / 1.25 = 50.24 kN would be more than the body at its cross hole carries.
    const { group: single } = find({ fixture: null, inserts: ONE, actions: { kind: 'none' } });
    const body = of(single, '90°');
    expect(body.mode).toBe('steel-shear');
    expect(body.total).toBeLessThan(50240);
    expect(body.total).toBe(body.perInsert);
  });
});

describe('each insert by itself', () => {
  it('carries what it would with no other insert there', () => {
    const { inserts } = find({ fixture: null, inserts: PAIR, actions: { kind: 'none' } });
    expect(inserts.map(({ id }) => id)).toEqual(['1', '2']);
    const single = find({ fixture: null, inserts: ONE, actions: { kind: 'none' } });
    expect(single.inserts).toEqual([]);
    for (const [i, { total, direction }] of inserts[0]!.capacities.entries()) {
      expect(direction?.name).toBe(single.group[i]!.direction?.name);
      expect(total).toBe(single.group[i]!.total);
    }
  });
  it('does not take the bars of the group for its own where that would help it', () => {
    const bar = {
      diameter_mm: 12,
      legs: 4,
      distance_mm: 30,
      anchorageInside_mm: 80,
      anchorageOutside_mm: 300,
      yield_MPa: 500,
      hooked: true,
      goodBond: true,
    };
    const bare = find({ fixture: null, inserts: PAIR, actions: { kind: 'none' } });
    const barred = find({ fixture: null, inserts: PAIR, actions: { kind: 'none' }, hangers: [bar] });
    const tension = ({ inserts }: Capacities) => of(inserts[0]!.capacities, null).total!;
    expect(of(barred.group, null).total!).toBeGreaterThan(of(bare.group, null).total!);
    expect(tension(barred)).toBe(tension(bare));
    for (const [i, { total }] of barred.inserts[0]!.capacities.entries())
      expect(total!).toBeLessThanOrEqual(bare.inserts[0]!.capacities[i]!.total!);
  });
});

describe('the ratio of stated loads', () => {
  it('is kept: so many times the load passes, and 1.001 times that fails', () => {
    const [wind] = find().stated;
    const { times } = wind!;
    expect(wind).toMatchObject({ combination: 'wind', reasons: [], why: null });
    const load = (by: number) => ({ N_kN: 10 * times! * by, Vx_kN: 2 * times! * by, Vy_kN: -5 * times! * by });
    expect(stateUnder(load(1))).toBe('passes');
    expect(stateUnder(load(1.001))).toBe('fails');
    // 5 kN of tension and √(1² + 2.5²) kN of shear on each of the two inserts.
    expect(wind!.tension).toBeCloseTo(5000 * times!, 3);
    expect(wind!.shear).toBeCloseTo(Math.hypot(1000, 2500) * times!, 3);
  });
  it('a plate that bends too much limits it', () => {
    const attachment_mm = [
      [-20, -40],
      [20, -40],
      [20, 40],
      [-20, 40],
    ];
    const fixture = sampleFixture({ attachment_mm, thickness_mm: 8 });
    const actions = { kind: 'loads', combinations: [{ name: 'pull', N_kN: 10, Vx_kN: 0, Vy_kN: 0 }] };
    // m = 4 000 N, σ = 6 · 4 000 / 8² = 375 MPa of 235: 235/375.
    const [pull] = find({ fixture, actions }).stated;
    expect(pull).toMatchObject({ mode: 'plate-bending', times: expect.closeTo(235 / 375, 9) });
    expect(stateUnder({ N_kN: 10 * pull!.times! }, { fixture })).toBe('passes');
    expect(stateUnder({ N_kN: 10.01 * pull!.times! }, { fixture })).toBe('fails');
  });
  it('has no multiple where there is no load or no equilibrium, and says why', () => {
    const zero = { kind: 'loads', combinations: [{ name: 'zero', N_kN: 0, Vx_kN: 0, Vy_kN: 0 }] };
    expect(find({ actions: zero }).stated).toMatchObject([{ times: null, why: 'no load on the inserts' }]);
    const holes = ['1', '2'].map((id, i) => ({ id, at_mm: [200 * i - 100, 0], diameter_mm: 18, takesShear: false }));
    expect(find({ fixture: sampleFixture({ holes }) }).stated).toMatchObject([
      { times: null, why: expect.stringContaining('shear') },
    ]);
    expect(find({ actions: { kind: 'none' } }).stated).toEqual([]);
  });
});

describe('what keeps it from being a pass', () => {
  it('stands beside each number: the insert without a document, and what the job cannot cover', () => {
    const { group, reasons } = find({}, { items: [sampleItem({ qualification: null, splitting: SPLITTING })] });
    expect(reasons).toEqual([expect.stringContaining('no qualification document')]);
    for (const one of group) expect(one.reasons).toEqual(reasons);
    expect(of(group, null).total).toBe(of(find().group, null).total);
    const edges = [{ edge: 0, batter_deg: 5 }];
    const castIns = ['1', '2'].map((id, i) => sampleCastIn(id, 900 + 200 * i, 90, { face: 'edge', edge: 0 }));
    const batter = find(
      { face: 'edge', edge: 0, origin_mm: [1000, 90], actions: { kind: 'none' } },
      { panels: [samplePanel({ edges })], castIns },
    );
    expect(batter.reasons).toEqual([expect.stringContaining('batter')]);
    for (const one of batter.group) expect(one.reasons).toEqual(batter.reasons);
  });
  it('is refused where the connection cannot be computed', () => {
    const layers = [
      { kind: 'outer skin', thickness_mm: 20 },
      { kind: 'structural', thickness_mm: 160 },
    ];
    const refused = resolve({}, { panels: [samplePanel({ layers })] });
    for (const asked of [findCapacities(refused), findCapacityLine(refused)])
      expect(asked).toEqual({ kind: 'refused', reasons: [expect.stringContaining('outer skin')] });
  });
  it('is asked all the same without an action, and counted nowhere', () => {
    const file = readSample({ connections: [sampleConnection({ actions: { kind: 'none' } })] });
    expect(assessJob(file).counts).toMatchObject({ passes: 0, 'strength not checked': 1 });
    expect(of(find({ actions: { kind: 'none' } }).group, null)).toEqual(of(find().group, null));
  });
});

describe('a connection in one line', () => {
  it('tension, shear toward the weakest edge and along it', () => {
    const near = { castIns: [sampleCastIn('1', 900, 150), sampleCastIn('2', 1100, 150)] };
    const place = { origin_mm: [1000, 150] };
    const { group } = find(place, near);
    const { tension, toward, along } = line(place, near);
    expect(tension).toEqual(of(group, null));
    expect(toward).toEqual(of(group, '270°'));
    for (const { direction, total } of group.slice(1)) {
      if (direction!.name !== '270°') expect(total!).toBeGreaterThan(toward.total!);
    }
    expect(along.total).toBe(Math.min(of(group, '0°').total!, of(group, '180°').total!));
  });
  it('along a slanting edge as well', () => {
    const outline_mm = [
      [0, 0],
      [3000, 0],
      [0, 3000],
    ];
    // x + y = 3000 is 200/√2 = 141.4 mm from (1400, 1400).
    const { toward, along } = line(
      { fixture: null, inserts: ONE, actions: { kind: 'none' } },
      { panels: [samplePanel({ outline_mm })], castIns: [sampleCastIn('1', 1400, 1400), sampleCastIn('2', 300, 300)] },
    );
    expect(toward.direction).toMatchObject({ name: '45°', edge: expect.closeTo(100 * Math.SQRT2, 6) });
    expect(['135°', '315°']).toContain(along.direction!.name);
    expect(along.total!).toBeGreaterThan(toward.total!);
  });
  it('gathers its reasons once', () => {
    const items = [sampleItem({ qualification: null, splitting: SPLITTING })];
    expect(line({}, { items }).reasons).toHaveLength(1);
  });
});
