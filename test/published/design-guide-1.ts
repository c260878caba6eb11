// Source: AISC Design Guide 1, 3rd ed. (2024), Example 4.7-13, pp. 128-129: four rods in eccentric tension. Statics only.

import { solveFixture } from '../../src/engine/fixture/fixture-forces.ts';
import type { Point } from '../../src/engine/geometry/point.ts';
import { INCH, KIP } from './inch-pound.ts';
import type { Evaluator, PublishedCase } from './published.ts';

const PART = 'equilibrium of the rigid plate';

/** Rods at y = ±8 in; their distance across and the plate's size do not enter: the plate lifts everywhere. */
const RODS: readonly Point[] = [
  [-4, 8],
  [4, 8],
  [-4, -8],
  [4, -8],
];
const PLATE: readonly Point[] = [
  [-6, -10],
  [6, -10],
  [6, 10],
  [-6, 10],
];

const inMillimetres = ([x, y]: Point): Point => [x * INCH, y * INCH];

/** Largest, smallest and mean rod force [kip] under a pull P [kip] with an eccentricity e [in] along y. */
function solveRods(by: Evaluator, P: number, e: number): { most: number; least: number; mean: number } {
  const bolts = RODS.map(inMillimetres).map(([x, y], i) => ({ id: `${i}`, x, y, stressArea: 400, takesShear: true }));
  const action = { at: inMillimetres([0, e]), N: P * KIP, Vx: 0, Vy: 0, Mx: 0, My: 0, T: 0 };
  const pulls = solveFixture(PLATE.map(inMillimetres), 7, bolts, action).bolts.map(({ N }) => N / KIP);
  return {
    most: by.part(PART, Math.max(...pulls)),
    least: by.part(PART, Math.min(...pulls)),
    mean: by.part(PART, pulls.reduce((sum, pull) => sum + pull, 0) / pulls.length),
  };
}

function makeCase(entry: string, P: number): PublishedCase {
  return {
    entry,
    how: `P = ${P} kip at 1 in, rods at ±8 in; ΔR and I_x follow from the rod forces (I_x = P e y/ΔR)`,
    values: {
      Ix: (by) => {
        const { most, mean } = solveRods(by, P, 1);
        return (P * 1 * 8) / (most - mean);
      },
      r_mean: (by) => solveRods(by, P, 1).mean,
      delta: (by) => {
        const { most, mean } = solveRods(by, P, 1);
        return most - mean;
      },
      r_max: (by) => solveRods(by, P, 1).most,
      r_min: (by) => solveRods(by, P, 1).least,
    },
  };
}

export const CASES: readonly PublishedCase[] = [makeCase('dg1-4.7-13-lrfd', 100), makeCase('dg1-4.7-13-asd', 60)];
