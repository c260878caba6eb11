import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkAnchorage, explainAnchorage, prepare } from '../../../src/engine/checks/anchorage.ts';
import { AnchorageError } from '../../../src/engine/checks/anchorage-error.ts';
import type { AnchorageGroup, GroupActions } from '../../../src/engine/checks/anchorage-group.ts';
import {
  findLargest,
  type LargestLoad,
  scaleActions,
  shareEqually,
} from '../../../src/engine/checks/carries-at-most.ts';
import { isWithin } from '../../../src/engine/checks/verdict.ts';
import { standardNames } from '../../../src/engine/standards/standard-name.ts';
import { HAIRPIN, HANGER, load, makeGroup, rectangle } from './groups.ts';
import { anyCase, type Case, moveCase, prepareCase } from './random-groups.ts';

const find = (group: AnchorageGroup, actions: GroupActions) => findLargest(prepare(group), actions);

const isLoaded = ({ inserts }: GroupActions) => inserts.some(({ N, Vx, Vy }) => N !== 0 || Vx !== 0 || Vy !== 0);

/** Largest relative distance between a limit found twice: each lies within 1e-9 below the true one. */
const SAME = 2.1e-9;

function expectSame(a: LargestLoad, b: LargestLoad, factor = 1): void {
  expect([b.verdict, b.uncovered]).toEqual([a.verdict, a.uncovered]);
  if (a.multiplier === null || b.multiplier === null || a.multiplier === 0) expect(b.multiplier).toBe(a.multiplier);
  else expect(Math.abs((b.multiplier * factor) / a.multiplier - 1)).toBeLessThan(SAME);
}

/** By any edition: the random case's own loads, or one direction shared equally, 1 N in all. */
const anyDirection = fc
  .tuple(
    anyCase,
    fc.constantFrom(...standardNames),
    fc.constantFrom('stated', 'pull', 'push', 'both'),
    fc.integer({ min: 0, max: 719 }),
  )
  .map(([one, standard, kind, half]): Case => {
    const group = { ...one.group, standard };
    if (kind === 'stated' && isLoaded(one.actions)) return { group, actions: one.actions };
    const angle = (half * Math.PI) / 360;
    const V = kind === 'pull' ? 0 : 1;
    const total = { N: kind === 'push' ? 0 : 1, Vx: V * Math.cos(angle), Vy: V * Math.sin(angle) };
    return { group, actions: shareEqually(group, total) };
  });

describe('the largest load by hand', () => {
  it('cone alone: 8.9 √32 · 100^1.5 / 1.5 = 33.563 kN', () => {
    const found = find(makeGroup(), load([1, 0, 0]));
    expect(found.multiplier).toBeCloseTo((8.9 * Math.sqrt(32) * 1000) / 1500, 6);
    expect(found).toMatchObject({ mode: 'concrete-cone', verdict: 'pass', uncovered: [] });
  });
  it('two inserts far apart, each with a cone of its own: twice as much on the group', () => {
    const group = makeGroup({
      at: [
        [0, 0],
        [1000, 0],
      ],
    });
    const found = find(group, shareEqually(group, { N: 1000, Vx: 0, Vy: 0 }));
    expect(found.multiplier).toBeCloseTo((2 * 8.9 * Math.sqrt(32) * 1000) / 1500, 6);
  });
  it('steel under tension and shear: n² + v² = 1', () => {
    // N_Rd,s = 50 · 800 / 1.5 = 26 667 N; V_Rd,s = 0.5 · 50 · 800 / 1.25 = 16 000 N; both by the same load:
    // 1 / √(1/26.667² + 1/16²) = 13.720 kN.
    const steelParts = [{ name: 'bolt', area: 50, ultimate: 800, yield: 640, resists: 'both' }] as const;
    const found = find(makeGroup({ insert: { steelParts } }), load([1, 1, 0]));
    expect(found.multiplier).toBeCloseTo(1 / Math.hypot(1.5 / 40, 1 / 16), 6);
    expect(found.mode).toBe('interaction-steel');
  });
  it('a lever arm whose bending the tension uses up', () => {
    // Without tension 1.2 · 277 · 800 / 30 / 1.25 = 7091 N; with N = V: V = 7091 (1 − V / 83 733) → 6537 N.
    const group = makeGroup({ other: { leverArm: { length: 30, restraint: 1, sectionModulus: 277 } } });
    const alone = (1.2 * 277 * 800) / 30 / 1.25;
    for (const size of [1e-6, 1, 1000]) {
      const found = find(group, load([size, size, 0]));
      expect(found.multiplier! * size).toBeCloseTo(alone / (1 + (alone * 1.5) / (157 * 800)) / 1000, 6);
      expect(found.mode).toBe('steel-shear');
    }
  });
  it('what is not covered stays so, with its number', () => {
    const covered = find(makeGroup(), load([1, 0, 0]));
    const found = find(makeGroup({ insert: { qualification: null } }), load([1, 0, 0]));
    expect(found.multiplier).toBe(covered.multiplier);
    expect(found.verdict).toBe('not covered');
    expect(found.uncovered.join()).toContain('no qualification document');
  });
  it('pressed inserts: nothing computed limits a pressure, never a pass', () => {
    const pressed = find(makeGroup(), load([-1, 0, 0]));
    expect(pressed).toMatchObject({ multiplier: null, mode: null, verdict: 'not covered' });
    expect(pressed.uncovered.join()).toContain('insert A is pressed by 1 kN');
    // Shear beside it is limited by the steel as ever, 0.5 · 157 · 800 / 1.25 = 50.24 kN, and not covered.
    const both = find(makeGroup(), load([-1, 1, 0]));
    expect(both.multiplier).toBeCloseTo(50.24, 6);
    expect(both).toMatchObject({ mode: 'steel-shear', verdict: 'not covered' });
  });
  it('where nothing resists, the largest load is 0 and fails', () => {
    const steelParts = [{ name: 'bolt', area: 0, ultimate: 800, yield: 640, resists: 'both' }] as const;
    const found = find(makeGroup({ insert: { steelParts } }), load([1, 0, 0]));
    expect(found).toMatchObject({ multiplier: 0, mode: 'steel-tension', verdict: 'fail' });
  });
  it('a load of zero has no multiple', () => {
    expect(() => find(makeGroup(), load([0, 0, 0]))).toThrow(AnchorageError);
    expect(() => find(makeGroup(), load([0, 0, 0]))).toThrow('actions: all forces are zero');
    expect(() => find(makeGroup(), load([1, 0, 0], [1, 0, 0]))).toThrow('2 actions for 1 insert');
  });
  it('the compression under the fixture grows with the load', () => {
    // ψ_M counts while the compression is at least 0.8 of the tension: at any multiple or at none.
    const pull = load([1, 0, 0]);
    const plain = find(makeGroup(), pull).multiplier!;
    const pressed = find(makeGroup(), { ...pull, compression: { force: 1000, at: [75, 0] } }).multiplier!;
    // ψ_M = 2 − 75 / (1.5 · 100) = 1.5
    expect(pressed / plain).toBeCloseTo(1.5, 8);
  });
  it('shares a load equally', () => {
    const group = makeGroup({
      at: [
        [0, 0],
        [200, 0],
        [0, 200],
      ],
    });
    const { inserts, compression } = shareEqually(group, { N: 3, Vx: -6, Vy: 9 });
    expect(inserts).toEqual([
      { N: 1, Vx: -2, Vy: 3 },
      { N: 1, Vx: -2, Vy: 3 },
      { N: 1, Vx: -2, Vy: 3 },
    ]);
    expect(compression).toBeNull();
  });
});

describe('for any group, any direction, any edition', () => {
  it('× 1.000 passes and × 1.001 fails, in few checks', () => {
    const taken: number[] = [];
    fc.assert(
      fc.property(anyDirection, ({ group, actions }) => {
        const p = prepare(group);
        const { multiplier, mode, verdict, checks } = findLargest(p, actions);
        taken.push(checks);
        const at = (factor: number) => checkAnchorage(p, scaleActions(actions, multiplier! * factor));
        expect(at(1)).toMatchObject({ mode, verdict });
        expect(isWithin(at(1).ratio)).toBe(true);
        expect(verdict).not.toBe('fail');
        expect(isWithin(at(1.001).ratio)).toBe(false);
        expect(at(1.001).verdict).toBe('fail');
      }),
      { numRuns: 1000, seed: 31 },
    );
    expect(taken.length).toBe(1000);
    expect(Math.max(...taken)).toBeLessThanOrEqual(12);
    expect(taken.reduce((sum, checks) => sum + checks, 0) / taken.length).toBeLessThan(5);
  });
  it('every smaller load passes: it is the smallest root', () => {
    fc.assert(
      fc.property(anyDirection, fc.double({ min: 1e-6, max: 1, noNaN: true }), ({ group, actions }, share) => {
        const p = prepare(group);
        const { multiplier } = findLargest(p, actions);
        expect(isWithin(checkAnchorage(p, scaleActions(actions, multiplier! * share)).ratio)).toBe(true);
      }),
      { numRuns: 400, seed: 32 },
    );
  });
  it('the same load however large the direction is written', () => {
    fc.assert(
      fc.property(anyDirection, fc.constantFrom(2, 1e-3, 1 / 3, 777), ({ group, actions }, factor) => {
        const p = prepare(group);
        expectSame(findLargest(p, actions), findLargest(p, scaleActions(actions, factor)), factor);
      }),
      { numRuns: 300, seed: 33 },
    );
  });
  it('the same load turned, mirrored and moved', () => {
    fc.assert(
      fc.property(anyDirection, fc.integer({ min: 0, max: 35 }), fc.boolean(), (one, tens, isMirrored) => {
        const moved = moveCase(one, (tens * Math.PI) / 18, isMirrored, [300, -700]);
        const [a, b] = [one, moved].map((each) => findLargest(prepareCase(each), each.actions)) as [
          LargestLoad,
          LargestLoad,
        ];
        // A moved group's own ratio is the same to 1e-9.
        expect(Math.abs(b.multiplier! / a.multiplier! - 1)).toBeLessThan(4e-9);
        expect(b.verdict).toBe(a.verdict);
      }),
      { numRuns: 300, seed: 34 },
    );
  });
  it('where every mode is in step with the load, the least of resistance over action', () => {
    let asked = 0;
    fc.assert(
      fc.property(anyDirection, ({ group, actions }) => {
        const isPull = actions.inserts.every(({ Vx, Vy }) => Vx === 0 && Vy === 0);
        const isPush = actions.inserts.every(({ N }) => N === 0);
        if (!isPull && !isPush) return;
        const p = prepare(group);
        const used = new Map<string, number>();
        for (const [i, row] of explainAnchorage(p, actions, false).rows.entries()) {
          if (!row.applies) continue;
          // ACI has two rows an edge, for shear toward it and along it; both together break it by √(r⊥² + r∥²).
          const key = row.mode === 'concrete-edge' ? JSON.stringify([row.edge, row.inserts]) : `${i}`;
          used.set(key, Math.hypot(used.get(key) ?? 0, row.action! / row.design!));
        }
        const direct = 1 / Math.max(...used.values());
        expect(Math.abs(findLargest(p, actions).multiplier! / direct - 1)).toBeLessThan(SAME);
        asked += 1;
      }),
      { numRuns: 400, seed: 35 },
    );
    expect(asked).toBeGreaterThan(100);
  });
});

describe('at the known jumps of the rules, each side has its own limit', () => {
  const passes = (group: AnchorageGroup, actions: GroupActions) => {
    const p = prepare(group);
    const { multiplier } = findLargest(p, actions);
    expect(isWithin(checkAnchorage(p, scaleActions(actions, multiplier!)).ratio)).toBe(true);
    expect(isWithin(checkAnchorage(p, scaleActions(actions, multiplier! * 1.001)).ratio)).toBe(false);
    return multiplier!;
  };
  it('k8 at 60 mm, blow-out at half the embedment, the third edge', () => {
    const pushed = load([0, 1, 0]);
    const shallow = [59.999, 60].map((embedment) => passes(makeGroup({ insert: { embedment } }), pushed));
    expect(shallow[1]! / shallow[0]!).toBeCloseTo(2, 3);
    for (const at of [49.9, 50, 50.1])
      passes(makeGroup({ outline: rectangle(0, 0, 2000, 2000), at: [[at, 1000]] }), load([1, 0.2, 0]));
    for (const embedment of [100.6, 100.7])
      passes(makeGroup({ insert: { embedment }, outline: rectangle(0, 0, 100, 201), at: [[50, 50]] }), load([1, 0, 0]));
  });
  it('bars that take over from the concrete, for tension, shear or both', () => {
    const outline = rectangle(0, 0, 2000, 2000);
    for (const hangers of [[], [{ ...HANGER, distance: 35 }]])
      for (const hairpins of [[], [{ ...HAIRPIN, depth: 25 }]])
        for (const actions of [load([1, -1, 0]), load([1, 0, 0]), load([0.1, -1, 0.1])])
          passes(makeGroup({ outline, at: [[80, 1000]], other: { hangers, hairpins } }), actions);
  });
});
