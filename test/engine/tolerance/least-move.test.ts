import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { findHoleFit } from '../../../src/engine/tolerance/hole-fit.ts';
import { findLeastMove } from '../../../src/engine/tolerance/least-move.ts';
import type { PlateHole } from '../../../src/engine/tolerance/plate-hole.ts';
import { ShiftSearch } from '../../../src/engine/tolerance/shift-search.ts';
import { boundAt, findLeastOfGreater } from '../../../src/engine/tolerance/turn-bound.ts';
import { clearancesOf, makeCase, makeRandom, middleOf, turnPoint } from './hole-cases.ts';

const hole = (x: number, y: number, slack = 1, slot = 0, angle = 0): PlateHole => ({ at: [x, y], slack, slot, angle });

describe('the least movement with which a plate goes on', () => {
  it('is none where it goes on as drawn, a shift less the play of its holes, a turn less what they allow', () => {
    const plate = [hole(-100, 0), hole(100, 0)];
    expect(
      findLeastMove(plate, [
        [-100, 0.9],
        [100.5, 0],
      ]),
    ).toEqual({ turn: 0, shift: [0, 0] });
    const shifted = findLeastMove(plate, [
      [-97, 4],
      [103, 4],
    ]);
    expect(shifted?.turn).toBe(0);
    expect(Math.hypot(...shifted!.shift)).toBeCloseTo(4, 4);
    // Bolts turned by 0.05 at 100 mm; each hole's slack of 1 at that radius takes 2 asin(0.5/100) of it.
    for (const by of [0.05, -0.05]) {
      const turned = findLeastMove(
        plate,
        plate.map(({ at }) => turnPoint(at, by)),
      );
      expect(turned!.turn * Math.sign(by)).toBeCloseTo(0.05 - 2 * Math.asin(0.5 / 100), 5);
      expect(Math.hypot(...turned!.shift)).toBeLessThan(0.01);
    }
    expect(
      findLeastMove(plate, [
        [-100, 0],
        [102.01, 0],
      ]),
    ).toBeNull();
    expect(
      findLeastMove(
        plate,
        plate.map(({ at }) => turnPoint(at, 0.05)),
        0.03,
      ),
    ).toBeNull();
  });

  it('lets every bolt in, and no shorter shift in its direction or turn that is less does', () => {
    const random = makeRandom(31);
    const met = { shifted: 0, turned: 0, none: 0 };
    for (let i = 0; i < 900; i++) {
      const one = makeCase(random, i);
      const move = findLeastMove(one.holes, one.bolts, 0.2);
      expect(move !== null).toBe(findHoleFit(one.holes, one.bolts, 0.2).fits);
      if (move === null) {
        met.none += 1;
        continue;
      }
      expect(Math.min(...clearancesOf(one, move.turn, move.shift))).toBeGreaterThan(-2e-6);
      const length = Math.hypot(...move.shift);
      if (move.turn !== 0) {
        met.turned += 1;
        expect(findHoleFit(one.holes, one.bolts, Math.abs(move.turn) - 3e-6).fits).toBe(false);
      } else if (length > 0.01) {
        met.shifted += 1;
        // Of shifts all round that are a hundredth of a mm shorter none does.
        for (let k = 0; k < 24; k++) {
          const shift = turnPoint([length - 0.01, 0], (k * Math.PI) / 12);
          expect(Math.min(...clearancesOf(one, 0, shift))).toBeLessThan(0);
        }
      }
    }
    expect(met.shifted).toBeGreaterThan(20);
    expect(met.turned).toBeGreaterThan(5);
    expect(met.none).toBeGreaterThan(100);
  });
});

describe('the bound that is found at one turn', () => {
  it('meets the least lack there and lies below it at every other turn and shift', () => {
    const random = makeRandom(41);
    let near = 0;
    for (let i = 0; i < 450; i++) {
      const one = makeCase(random, i);
      const [mx, my] = middleOf(one.holes);
      const holes = one.holes.map((h) => ({ ...h, at: [h.at[0] - mx, h.at[1] - my] as const }));
      const search = new ShiftSearch(holes);
      const boltX = Float64Array.from(one.bolts, ([x]) => x - mx);
      const boltY = Float64Array.from(one.bolts, ([, y]) => y - my);
      const turn = (random() - 0.5) * (i % 2 === 0 ? 0.1 : 6);
      search.solve(boltX, boltY, turn, 1e-7);
      expect(search.lack - search.bound).toBeLessThan(1e-6);
      const bounds = Float64Array.of(search.a, search.b, search.c);
      expect(boundAt(bounds, 0, turn)).toBeCloseTo(search.bound, 8);
      const { x, y, lack } = search;
      for (let k = 0; k < 20; k++) {
        const other = turn + (random() - 0.5) * (k % 2 === 0 ? 0.02 : 6);
        const [sx, sy]: Point = [x + (random() - 0.5) * 2, y + (random() - 0.5) * 2];
        const shift = turnPoint([sx, sy], other);
        const there = -Math.min(...clearancesOf(one, other, shift));
        expect(there).toBeGreaterThan(boundAt(bounds, 0, other) - 1e-8);
        if (k % 2 === 0 && boundAt(bounds, 0, other) > lack - 1) near += 1;
      }
    }
    // Most bounds are of use beside their turn: they do not fall away at once.
    expect(near).toBeGreaterThan(1500);
  });
});

describe('the least of the greater of two bounds', () => {
  it('is that of a dense walk', () => {
    const random = makeRandom(51);
    const out = new Float64Array(2);
    for (let i = 0; i < 500; i++) {
      const bounds = Float64Array.from({ length: 6 }, () => 10 * (random() - 0.5));
      const from = 6 * (random() - 0.5);
      const to = from + 6 * random();
      findLeastOfGreater(bounds, 0, 1, from, to, out);
      const greater = (turn: number) => Math.max(boundAt(bounds, 0, turn), boundAt(bounds, 1, turn));
      let least = Number.POSITIVE_INFINITY;
      for (let k = 0; k <= 2000; k++) least = Math.min(least, greater(from + ((to - from) * k) / 2000));
      expect(out[1]).toBeLessThan(least + 1e-9);
      expect(out[1]).toBeGreaterThan(least - 0.05);
      expect(greater(out[0]!)).toBeCloseTo(out[1]!, 6);
      expect(out[0]).toBeGreaterThanOrEqual(from);
      expect(out[0]).toBeLessThanOrEqual(to);
    }
  });
});
