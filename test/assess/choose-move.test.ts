import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessConnection } from '../../src/assess/assess-connection.ts';
import { changeParts } from '../../src/assess/choose/apply-choice.ts';
import { keepsClear, liesOnConcrete } from '../../src/assess/choose/clearance.ts';
import { findDirections, findMove, type Move } from '../../src/assess/choose/find-move.ts';
import type { Point } from '../../src/engine/geometry/point.ts';
import { prepareRegion } from '../../src/engine/geometry/region.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { gatherParts } from '../../src/job/resolve/connection-seat.ts';
import { resolveConnection } from '../../src/job/resolve/resolve-connection.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  samplePanel,
} from '../job/sample-job.ts';
import { choose, loads, makeItem, readJob } from './choosing.ts';

const AXES = findDirections(null, [0, 0]);

const square = (width: number, height: number): readonly Point[] => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

describe('the directions of a move', () => {
  it('lead away from the nearest sides first, then along the axes and between them; each once', () => {
    const region = prepareRegion(square(1000, 800), []);
    const directions = findDirections(region, [60, 300]);
    expect(directions.slice(0, 2)).toEqual([
      [1, 0],
      [0, 1],
    ]);
    expect(directions).toHaveLength(8);
  });

  it('follow a skew edge square to it', () => {
    // A right angle at (0, 0); the long side falls from (0, 600) to (800, 0): away from it is (−0.6, −0.8).
    const region = prepareRegion(
      [
        [0, 0],
        [800, 0],
        [0, 600],
      ],
      [],
    );
    const [x, y] = findDirections(region, [380, 300])[0]!;
    expect([x, y]).toEqual([expect.closeTo(-0.6, 12), expect.closeTo(-0.8, 12)]);
  });

  it('lead away from an opening', () => {
    const opening: readonly Point[] = [
      [400, 400],
      [600, 400],
      [600, 600],
      [400, 600],
    ];
    const region = prepareRegion(square(1000, 1000), [opening]);
    expect(findDirections(region, [500, 370])[0]).toEqual([0, -1]);
  });
});

describe('the smallest move', () => {
  it('is found to the millimetre along an axis', () => {
    expect(findMove(150, AXES, ({ dx }) => dx >= 37)).toEqual({ dx: 37, dy: 0 });
    expect(findMove(150, AXES, ({ dy }) => dy <= -1)).toEqual({ dx: 0, dy: -1 });
    expect(findMove(150, AXES, ({ dx }) => dx === 150)).toEqual({ dx: 150, dy: 0 });
  });

  // Beyond a line 30 mm away, square to (0.8, 0.6): 30 mm that way is (24, 18); without that direction the diagonal is next, 22 mm
  // each (31.1 mm), since 0.8 · 21 + 0.6 · 21 = 29.4 mm; along x it would be 38 mm.
  it('takes the shortest of its directions', () => {
    const isBeyond = ({ dx, dy }: Move) => 0.8 * dx + 0.6 * dy >= 30 - 1e-9;
    expect(findMove(150, [[0.8, 0.6], ...AXES], isBeyond)).toEqual({ dx: 24, dy: 18 });
    expect(findMove(150, AXES, isBeyond)).toEqual({ dx: 22, dy: 22 });
  });

  it('is none beyond the limit of either axis', () => {
    expect(findMove(36, AXES, ({ dx }) => dx >= 37)).toBeNull();
    const seen: Move[] = [];
    findMove(40, AXES, (move) => {
      seen.push(move);
      return false;
    });
    for (const { dx, dy } of seen) expect(Math.max(Math.abs(dx), Math.abs(dy))).toBeLessThanOrEqual(40);
    expect(seen.some(({ dx, dy }) => dx === 40 && dy === 40)).toBe(true);
  });

  it('asks a bounded number of times, and one millimetre less does not pass', () => {
    const wall = fc.record({
      x: fc.double({ min: -1, max: 1, noNaN: true }),
      y: fc.double({ min: -1, max: 1, noNaN: true }),
      at: fc.integer({ min: 1, max: 150 }),
    });
    fc.assert(
      fc.property(wall, fc.integer({ min: 1, max: 150 }), ({ x, y, at }, limit) => {
        const passes = ({ dx, dy }: Move) => x * dx + y * dy >= at;
        let asked = 0;
        const found = findMove(limit, AXES, (move) => {
          asked += 1;
          return passes(move);
        });
        // Eight directions, each 3 + log2(212/2) at most, where 212 steps lead to the corner of 150 mm.
        expect(asked).toBeLessThanOrEqual(8 * 10);
        if (found === null) return;
        expect(passes(found)).toBe(true);
        const shorter = (d: number) => d - Math.sign(d);
        expect(passes({ dx: shorter(found.dx), dy: shorter(found.dy) })).toBe(false);
      }),
      { numRuns: 300 },
    );
  });
});

describe('what a move keeps clear of', () => {
  const panel = readJob({}).job.panels[0]!;
  const at = (x: number, y: number, changes: Json = {}) =>
    readJob({ castIns: [sampleCastIn('1', 900, 500), sampleCastIn('2', 1100, 500), sampleCastIn('9', x, y, changes)] })
      .job.castIns[2]!;
  const isClear = (from: number, to: number, other: ReturnType<typeof at>) =>
    keepsClear(panel, [at(from, 1500)], [at(to, 1500)], [other], 96);

  // 3 h_ef = 288 mm.
  it('comes no nearer than 3 h_ef, or than it stands already', () => {
    expect(isClear(1000, 1212, at(1500, 1500))).toBe(true);
    expect(isClear(1000, 1213, at(1500, 1500))).toBe(false);
    expect(isClear(1300, 1300, at(1500, 1500))).toBe(true);
    expect(isClear(1300, 1301, at(1500, 1500))).toBe(false);
    expect(isClear(1300, 1299, at(1500, 1500))).toBe(true);
  });

  it('counts things of other roles, in the other face, and in an edge near it', () => {
    const duct = at(1500, 1500, { role: 'duct', item: null, description: 'grout tube', face: 'inside' });
    expect(isClear(1000, 1213, duct)).toBe(false);
    // 100 mm above the bottom edge; an edge insert 300 mm along it.
    const inEdge = at(300, 90, { face: 'edge', edge: 0 });
    const low = (x: number) => at(x, 100);
    expect(keepsClear(panel, [low(800)], [low(600)], [inEdge], 96)).toBe(true);
    expect(keepsClear(panel, [low(800)], [low(560)], [inEdge], 96)).toBe(false);
  });
});

describe('a plate on the concrete', () => {
  const hole: readonly Point[] = [
    [400, 400],
    [600, 400],
    [600, 600],
    [400, 600],
  ];
  const region = prepareRegion(square(1000, 1000), [hole]);
  const plate = (x: number, y: number, size = 100): readonly Point[] =>
    square(size, size).map(([dx, dy]) => [x + dx, y + dy] as const);

  it('lies wholly inside, and may touch an edge', () => {
    expect(liesOnConcrete(region, plate(100, 100))).toBe(true);
    expect(liesOnConcrete(region, plate(0, 0))).toBe(true);
    expect(liesOnConcrete(region, plate(300, 300))).toBe(true);
    expect(liesOnConcrete(region, plate(300, 450))).toBe(true);
  });

  it('does not hang over an edge or an opening, not even with all corners on the concrete', () => {
    expect(liesOnConcrete(region, plate(-1, 100))).toBe(false);
    expect(liesOnConcrete(region, plate(301, 301))).toBe(false);
    expect(liesOnConcrete(region, plate(350, 350, 300))).toBe(false);
    // A bar across the opening: no corner in it, no corner of it under the bar.
    const bar: readonly Point[] = [
      [300, 480],
      [700, 480],
      [700, 520],
      [300, 520],
    ];
    expect(liesOnConcrete(region, bar)).toBe(false);
  });
});

describe('a connection that is moved', () => {
  const item = makeItem('F16', 103);
  const fixture = sampleFixture({
    outline_mm: [
      [-55, -55],
      [55, -55],
      [55, 55],
      [-55, 55],
    ],
    holes: [{ id: '1', at_mm: [0, 0], diameter_mm: 18 }],
  });
  /** One insert x mm from the left edge, pushed toward it. */
  const near = (x: number, V_kN: number, more: SampleParts = {}, changes: Json = {}): SampleParts => ({
    items: [item],
    connections: [
      sampleConnection({
        origin_mm: [x, 1500],
        fixture,
        inserts: [{ insert: '1', hole: '1' }],
        actions: loads({ Vx_kN: -V_kN }),
        ...changes,
      }),
    ],
    ...more,
    castIns: [sampleCastIn('1', x, 1500), ...(more.castIns ?? [])],
  });

  /** What a check of the job says of a move of the connection. */
  function checkMoved(parts: SampleParts, dx: number, dy: number) {
    const { file, connection } = firstOf(parts);
    const index = indexJob(file);
    const changes = { move: { dx, dy, beyond: 0 }, holes: null, boltThread: null, boltClass: null };
    const choice = { item: file.library.catalogue.items[0]!, changes };
    const changed = changeParts(gatherParts(index, connection), choice, []);
    const castIns = file.job.castIns.map((castIn) => changed.castIns.find(({ id }) => id === castIn.id) ?? castIn);
    const moved = { ...file, job: { ...file.job, castIns, connections: [changed.connection] } };
    return assessConnection(resolveConnection(indexJob(moved), changed.connection));
  }

  function firstOf(parts: SampleParts) {
    const file = readJob(parts);
    return { file, connection: file.job.connections[0]! };
  }

  it('goes away from the edge, as far as it must and no farther', () => {
    const parts = near(60, 9);
    expect(choose(parts).outcome).toBe('none passes');
    const { ranked } = choose(parts, { move: 150 });
    const { move } = ranked[0]!.changes;
    expect(move!.dy).toBe(0);
    expect(move!.dx).toBeGreaterThan(0);
    expect(checkMoved(parts, move!.dx, 0)).toMatchObject({
      state: 'passes',
      ratio: expect.closeTo(ranked[0]!.ratio, 9),
    });
    // The sample's rules allow an insert to stand 5 mm off: so far it goes on.
    expect(move!.beyond).toBe(5);
    expect(checkMoved(parts, move!.dx - 5, 0).state).toBe('passes');
    expect(checkMoved(parts, move!.dx - 6, 0).state).toBe('fails');
  });

  it('is not moved farther than is allowed, and says so', () => {
    const far = choose(near(60, 9), { move: 150 }).ranked[0]!.changes.move!;
    const dx = far.dx - far.beyond;
    expect(choose(near(60, 9), { move: dx }).ranked[0]!.changes.move).toEqual({ dx, dy: 0, beyond: 0 });
    expect(choose(near(60, 9), { move: dx + 2 }).ranked[0]!.changes.move).toEqual({ dx: dx + 2, dy: 0, beyond: 2 });
    const choice = choose(near(60, 9), { move: dx - 1 });
    expect(choice.outcome).toBe('none passes');
    expect(choice.rejected[0]!.tried).toEqual([`moved up to ${dx - 1} mm`]);
  });

  it('stays at the least move where going on would bring it too near to something', () => {
    const far = choose(near(60, 9), { move: 150 }).ranked[0]!.changes.move!;
    const dx = far.dx - far.beyond;
    // 3 h_ef = 288 mm; moved by dx it is 2 mm more than that from the tube.
    const tube = sampleCastIn('9', 60 + dx + 290, 1500, { role: 'duct', item: null, description: 'grout tube' });
    // Half of the way is tried, which is between the two.
    const { ranked } = choose(near(60, 9, { castIns: [tube] }), { move: 2 * dx + 2 });
    expect(ranked[0]!.changes.move).toEqual({ dx, dy: 0, beyond: 0 });
  });

  it('stays where something else is in the way', () => {
    // 200 mm beside it, nearer than 3 h_ef: it may come no nearer, so only up or down is left, which does not help.
    const blocked = near(60, 9, { castIns: [sampleCastIn('2', 260, 1500)] });
    expect(choose(blocked, { move: 150 }).outcome).toBe('none passes');
  });

  it('does not put its plate over an opening', () => {
    // The plate ends 115 mm from the edge, the opening begins at 120 mm: 5 mm to go, too few; the insert alone could go on.
    const opening = [
      [
        [120, 1200],
        [720, 1200],
        [720, 1800],
        [120, 1800],
      ],
    ];
    const panels = [samplePanel({ openings_mm: opening })];
    expect(choose(near(60, 9), { move: 150 }).ranked[0]!.changes.move!.dx).toBeGreaterThan(5);
    const bare = { fixture: null, inserts: [{ insert: '1', hole: null }] };
    expect(choose(near(60, 9, { panels }, bare), { move: 150 }).ranked[0]!.changes.move!.dx).toBeGreaterThan(5);
    expect(choose(near(60, 9, { panels }), { move: 150 }).outcome).toBe('none passes');
  });

  it('is not tried where no place helps: steel fails, or no document covers the insert', () => {
    const steel = choose(near(600, 200), { move: 150 });
    expect(steel).toMatchObject({ outcome: 'none passes', checks: 1 });
    expect(steel.rejected[0]).toMatchObject({ governing: { mode: 'steel-shear' }, tried: [] });
    const parts = near(60, 9);
    const without = choose({ ...parts, items: [makeItem('F16', 103, { qualification: null })] }, { move: 150 });
    expect(without).toMatchObject({ outcome: 'none passes', checks: 1 });
  });

  it('stays on its edge, by coordinates of the edge', () => {
    const parts: SampleParts = {
      items: [item],
      castIns: [sampleCastIn('1', 500, 70, { face: 'edge', edge: 0 })],
      connections: [
        sampleConnection({
          face: 'edge',
          edge: 0,
          origin_mm: [500, 70],
          fixture: sampleFixture({
            outline_mm: [
              [-55, -40],
              [55, -40],
              [55, 40],
              [-55, 40],
            ],
            holes: [{ id: '1', at_mm: [0, 0], diameter_mm: 18 }],
          }),
          inserts: [{ insert: '1', hole: '1' }],
          // Toward the outside face, 70 mm away; the drawn face is up, so y rises toward it.
          actions: loads({ Vy_kN: 10 }),
        }),
      ],
    };
    expect(choose(parts).outcome).toBe('none passes');
    const { move } = choose(parts, { move: 40 }).ranked[0]!.changes;
    expect(move!.dx).toBe(0);
    expect(move!.dy).toBeGreaterThan(0);
    expect(checkMoved(parts, 0, move!.dy).state).toBe('passes');
    expect(checkMoved(parts, 0, move!.dy - move!.beyond - 1).state).toBe('fails');
  });

  it('takes stronger bolts along where steel is left over', () => {
    // Packers bend the bolt; the edge fails as well.
    const parts = near(50, 4, {}, { packers_mm: 10, boltClass: '4.6' });
    expect(choose(parts, { move: 150 }).outcome).toBe('none passes');
    const both = choose(parts, { move: 150, strongerBolts: true }).ranked[0]!;
    expect(both.changes.boltClass).not.toBeNull();
    expect(both.changes.move === null || both.changes.move.dx > 0).toBe(true);
  });
});
