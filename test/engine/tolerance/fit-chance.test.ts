import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { findFitChance } from '../../../src/engine/tolerance/fit-chance.ts';
import { prepareHoles } from '../../../src/engine/tolerance/hole-fit.ts';
import { findChance, findSlackForChance } from '../../../src/engine/tolerance/hole-for-chance.ts';
import { preparePowerSums } from '../../../src/engine/tolerance/power-sums.ts';
import { type ScatteredHole, splitScatter } from '../../../src/engine/tolerance/scatter-space.ts';
import { prepareLattice, prepareRandom } from '../../../src/engine/tolerance/shifted-lattice.ts';
import { findTwoHoleChance } from '../../../src/engine/tolerance/two-hole-chance.ts';

const EFFORT = { seed: 5, enough: 0, most: 128 } as const;

interface Given {
  readonly places: readonly Point[];
  readonly slack: number;
  readonly sigma: number;
  readonly slot?: number;
  readonly bias?: Point;
}

/** Every second hole is slotted where `slot` is given; the first bolt is biased where `bias` is. */
function makeHoles({ places, slack, sigma, slot = 0, bias }: Given): readonly ScatteredHole[] {
  return places.map((at, i) => ({
    at,
    slack,
    slot: i % 2 === 1 ? slot : 0,
    angle: 0.4 * i,
    sigma,
    ...(bias !== undefined && i === 0 ? { bias } : {}),
  }));
}

/** Plain Monte Carlo, each plate decided by itself. */
function drawPlates(holes: readonly ScatteredHole[], count: number, seed: number): number {
  const random = prepareRandom(seed);
  const fit = prepareHoles(holes);
  const bolts = new Float64Array(2 * holes.length);
  let fits = 0;
  for (let plate = 0; plate < count; plate += 1) {
    holes.forEach(({ at, sigma, bias }, i) => {
      const [size, turn] = [Math.sqrt(-2 * Math.log(random())), 2 * Math.PI * random()];
      bolts[2 * i] = at[0] + (bias?.[0] ?? 0) + sigma * size * Math.cos(turn);
      bolts[2 * i + 1] = at[1] + (bias?.[1] ?? 0) + sigma * size * Math.sin(turn);
    });
    if (fit.decide(bolts)) fits += 1;
  }
  return fits / count;
}

const RECTANGLE: readonly Point[] = [
  [0, 0],
  [200, 0],
  [200, 100],
  [0, 100],
];
const EIGHT: readonly Point[] = Array.from({ length: 8 }, (_, i) => [100 * (i % 4), 120 * Math.floor(i / 4)] as const);

describe('chance that a plate goes on', () => {
  it.each([
    ['a triangle', { places: RECTANGLE.slice(0, 3), slack: 1, sigma: 0.8 }],
    ['a rectangle', { places: RECTANGLE, slack: 1, sigma: 0.5 }],
    ['a rectangle with slots', { places: RECTANGLE, slack: 1, sigma: 0.9, slot: 12 }],
    [
      'a short plate, turned by degrees',
      { places: RECTANGLE.map(([x, y]) => [x / 5, y / 5] as const), slack: 2, sigma: 2 },
    ],
    ['eight holes', { places: EIGHT, slack: 1.5, sigma: 0.8 }],
    ['holes in a line', { places: EIGHT.slice(0, 3), slack: 1, sigma: 0.8 }],
    ['a biased bolt', { places: RECTANGLE, slack: 1, sigma: 0.5, bias: [0.9, 0.3] as const }],
  ])('is that of plates drawn one by one: %s', (_, given) => {
    const holes = makeHoles(given);
    const { fits, misses, standardError } = findFitChance(holes, { ...EFFORT, most: 64 });
    const count = 30_000;
    const drawn = drawPlates(holes, count, 11);
    expect(fits + misses).toBeCloseTo(1, 12);
    expect(fits).toBeGreaterThan(0.05);
    expect(fits).toBeLessThan(0.99);
    expect(standardError).toBeLessThan(0.004);
    // Fixed seeds: three standard errors of both.
    expect(Math.abs(fits - drawn)).toBeLessThan(
      3 * Math.hypot(standardError, Math.sqrt((drawn * (1 - drawn)) / count)),
    );
  });

  it.each([
    [200, 1, 0.7],
    [200, 0.05, 0.7],
    [60, 3, 3],
    [200, 2.5, 0.6],
  ])('of two holes %f mm apart, slack %f mm, sigma %f mm is the closed form', (distance, slack, sigma) => {
    const holes = makeHoles({
      places: [
        [10, 20],
        [10, 20 + distance],
      ],
      slack,
      sigma,
    });
    const closed = findTwoHoleChance(distance, 2 * slack, sigma * Math.SQRT2);
    const { fits, standardError } = findFitChance(holes, { ...EFFORT, most: 32 });
    expect(Math.abs(fits - closed)).toBeLessThan(4 * standardError + 2e-6);
    expect(findChance(holes, EFFORT)).toEqual({ fits: closed, misses: 1 - closed, standardError: 0, rays: 0 });
  });

  it('of two holes far apart is that of a normal length', () => {
    // By hand: 2 Φ(1) − 1 = 0.682689 where the distance is so large that what is across it does not count.
    expect(findTwoHoleChance(1e5, 2, 2)).toBeCloseTo(0.682_689, 5);
  });

  it('asks for no answer where there is nothing to ask', () => {
    const [one] = makeHoles({ places: RECTANGLE, slack: 1, sigma: 1 });
    expect(findFitChance([one!], EFFORT).fits).toBe(1);
    expect(findFitChance([one!, { ...one!, at: [90, 0], slack: 0 }], EFFORT).fits).toBe(0);
    expect(findFitChance([{ ...one!, slack: -0.1 }], EFFORT).fits).toBe(0);
  });

  it('gives the same for a plate that lies turned elsewhere, within its error', () => {
    const given = { slack: 1, sigma: 0.6, slot: 8 };
    const here = findFitChance(makeHoles({ places: RECTANGLE, ...given }), EFFORT);
    const turned = makeHoles({ places: RECTANGLE, ...given }).map((hole) => ({
      ...hole,
      at: [500 - hole.at[1], 300 + hole.at[0]] as const,
      angle: hole.angle + Math.PI / 2,
    }));
    const there = findFitChance(turned, { ...EFFORT, seed: 6 });
    expect(Math.abs(here.fits - there.fits)).toBeLessThan(4 * Math.hypot(here.standardError, there.standardError));
  });

  it('is the target with the slack that was found for it', () => {
    for (const slot of [0, 10]) {
      const holes = makeHoles({ places: RECTANGLE, slack: 1, sigma: 1, slot });
      const slack = findSlackForChance(holes, 0.95, EFFORT)!;
      const { fits, standardError } = findFitChance(
        holes.map((hole) => ({ ...hole, slack })),
        { ...EFFORT, seed: 77 },
      );
      expect(Math.abs(fits - 0.95)).toBeLessThan(4 * standardError + 0.001);
    }
    expect(findSlackForChance(makeHoles({ places: RECTANGLE.slice(0, 1), slack: 1, sigma: 1 }), 0.99, EFFORT)).toBe(0);
  });
});

describe('what the chance is made of', () => {
  it('splits the scatter into dimensions at right angles, each of one standard deviation', () => {
    const holes = makeHoles({ places: RECTANGLE, slack: 1, sigma: 2 }).map((hole, i) => ({ ...hole, sigma: 1 + i }));
    const { axes, rest, turning } = splitScatter(holes);
    expect(rest).toBe(5);
    const all = [...axes, turning!].map((axis) => axis.map((value, k) => value / (1 + (k >> 1))));
    all.forEach((one, i) => {
      all.forEach((other, j) => {
        expect(one.reduce((sum, value, k) => sum + value * other[k], 0)).toBeCloseTo(i === j ? 1 : 0, 12);
      });
    });
    // Nothing that a shift follows is in them.
    for (const one of all)
      for (const axis of [0, 1])
        expect(one.reduce((sum, value, k) => sum + (k % 2 === axis ? value / (1 + (k >> 1)) : 0), 0)).toBeCloseTo(
          0,
          12,
        );
  });

  it('knows the means of the sums of powers', () => {
    const { holes, axes, rest } = splitScatter(makeHoles({ places: RECTANGLE, slack: 0.7, sigma: 1.3, slot: 5 }));
    const sums = preparePowerSums(holes, axes);
    const lattice = prepareLattice(rest, 8192, prepareRandom(3));
    const point = new Float64Array(rest);
    const out = new Float64Array(3);
    const mean = [0, 0, 0];
    const size = [0, 0, 0];
    for (let k = 0; k < 8192; k += 1) {
      lattice(k, point);
      const length = Math.hypot(...point);
      const direction = new Float64Array(8);
      axes.forEach((axis, j) => {
        for (let at = 0; at < 8; at += 1) direction[at] += (point[j] / length) * axis[at];
      });
      sums(direction, out);
      for (const j of [0, 1, 2]) {
        mean[j]! += out[j] / 8192;
        size[j]! += Math.abs(out[j]) / 8192;
      }
    }
    for (const j of [0, 1, 2]) expect(Math.abs(mean[j]!)).toBeLessThan(0.02 * size[j]!);
  });
});
