import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { canCountBirths, findBirthChance } from '../../../src/engine/tolerance/birth-chance.ts';
import { findFitChance } from '../../../src/engine/tolerance/fit-chance.ts';
import { findChance } from '../../../src/engine/tolerance/hole-for-chance.ts';
import type { ScatteredHole } from '../../../src/engine/tolerance/scatter-space.ts';
import { findTwoHoleChance } from '../../../src/engine/tolerance/two-hole-chance.ts';

const EFFORT = { seed: 3, enough: 0, most: 512 } as const;

const RECTANGLE: readonly Point[] = [
  [0, 0],
  [200, 0],
  [200, 100],
  [0, 100],
];

function makeHoles(
  places: readonly Point[],
  slack: number,
  sigma: number,
  slot: (i: number) => number = () => 0,
  angle: (i: number) => number = () => 0,
): readonly ScatteredHole[] {
  return places.map((at, i) => ({ at, slack, sigma, slot: slot(i), angle: angle(i) }));
}

describe('chance that a plate goes on, by counting births', () => {
  it.each([
    [200, 1, 1.05],
    [300, 1, 2.5],
  ])('of two holes %f mm apart is the closed form', (distance, slack, sigma) => {
    const holes = makeHoles(
      [
        [10, 20],
        [10, 20 + distance],
      ],
      slack,
      sigma,
    );
    const closed = findTwoHoleChance(distance, 2 * slack, sigma * Math.SQRT2);
    const { fits, standardError } = findBirthChance(holes, EFFORT);
    expect(standardError).toBeLessThan(1e-3);
    expect(Math.abs(fits - closed)).toBeLessThan(4 * standardError);
  });

  it.each([
    ['three holes', makeHoles(RECTANGLE.slice(0, 3), 1, 0.9)],
    ['four holes', makeHoles(RECTANGLE, 1, 0.8)],
    ['a biased bolt', makeHoles(RECTANGLE, 1, 0.8).map((hole, i) => (i === 0 ? { ...hole, bias: [0.9, 0.3] } : hole))],
    ['bolts that scatter unlike', makeHoles(RECTANGLE, 1, 0.6).map((hole, i) => ({ ...hole, sigma: 0.6 + 0.2 * i }))],
    ['holes of two sizes', makeHoles(RECTANGLE, 1, 0.8).map((hole, i) => ({ ...hole, slack: i < 2 ? 1 : 1.5 }))],
    ['two parallel slots', makeHoles(RECTANGLE, 1, 0.9, (i) => (i % 3 === 0 ? 0 : 10))],
    ['slots all along one direction', makeHoles(RECTANGLE, 1, 0.9, () => 20)],
    [
      'slots across each other',
      makeHoles(
        RECTANGLE,
        1,
        0.9,
        () => 6,
        (i) => (i * Math.PI) / 2,
      ),
    ],
    [
      'slots drawn the other way round',
      makeHoles(
        RECTANGLE,
        1,
        0.9,
        () => 6,
        (i) => (i % 2) * Math.PI,
      ),
    ],
  ] as readonly (readonly [string, readonly ScatteredHole[]])[])('is that of rays: %s', (_, holes) => {
    const births = findBirthChance(holes, EFFORT);
    const rays = findFitChance(holes, { seed: 5, enough: 0, most: 256 });
    expect(births.standardError).toBeLessThan(1.5e-3);
    expect(births.fits).toBeGreaterThan(0.1);
    // Fixed seeds: three standard errors of both.
    expect(Math.abs(births.fits - rays.fits)).toBeLessThan(3 * Math.hypot(births.standardError, rays.standardError));
  });

  it('counts only where two turns with nothing between are ruled out', () => {
    expect(canCountBirths(makeHoles(RECTANGLE, 1, 1))).toBe(true);
    expect(canCountBirths(makeHoles(RECTANGLE, 20, 1))).toBe(false);
    expect(canCountBirths(makeHoles(RECTANGLE, 1, 1, () => 40))).toBe(false);
    expect(canCountBirths(makeHoles(RECTANGLE, 0, 1))).toBe(false);
    expect(
      canCountBirths(
        makeHoles(
          Array.from({ length: 9 }, (_, i) => [100 * i, 0]),
          1,
          1,
        ),
      ),
    ).toBe(false);
  });

  it('leaves to rays what nearly always goes on, and what cannot be counted', () => {
    const effort = { seed: 1, enough: 0, most: 64 } as const;
    const easy = makeHoles(RECTANGLE, 2, 0.5);
    expect(findChance(easy, effort)).toEqual(findFitChance(easy, effort));
    const near = makeHoles(
      RECTANGLE.map(([x, y]) => [x / 40, y / 40]),
      1,
      1,
    );
    expect(findChance(near, effort)).toEqual(findFitChance(near, effort));
    const even = makeHoles(RECTANGLE, 1, 0.8);
    expect(findChance(even, effort)).toEqual(findBirthChance(even, { ...effort, most: 256 }));
  });
});
