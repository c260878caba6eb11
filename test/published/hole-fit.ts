// Source of the values: data/hardware.json, H9-02 (fixed and floating fasteners after ANSI Y14.5, Appendix; the formulas are H9-01's).
// The inputs, H 6.44 and F 6.00, and the floating result are recalled, as the entry says.

import type { Point } from '../../src/engine/geometry/point.ts';
import { findHoleFit } from '../../src/engine/tolerance/hole-fit.ts';
import type { PublishedCase } from './published.ts';

const [H, F] = [6.44, 6];
/** Two holes this far apart, pulled apart by their tolerances: neither shift nor turn helps. */
const APART = 100;
/** Halvings from 1 mm: to a millionth. */
const HALVINGS = 20;

/**
 * The largest position tolerance (a diameter) with which a plate goes on wherever within it the holes lie.
 * @param parts 1: the fastener floats, so that each part is judged alone against the true places; 2: it is fixed in the other part, off by as much
 */
function findTolerance(parts: 1 | 2): number {
  const goesOn = (tolerance: number) => {
    const off = tolerance / 2;
    const holes = [-1, 1].map((side) => ({
      at: [side * (APART / 2 + off), 0] as Point,
      slack: (H - F) / 2,
      slot: 0,
      angle: 0,
    }));
    const bolts = [-1, 1].map((side): Point => [side * (APART / 2 - (parts - 1) * off), 0]);
    return findHoleFit(holes, bolts).fits;
  };
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (goesOn(middle)) low = middle;
    else high = middle;
  }
  return low;
}

export const CASES: readonly PublishedCase[] = [
  {
    entry: 'H9-02',
    how: 'the largest tolerance with which a plate always goes on, H and F recalled',
    values: {
      T_each: (by) => by.part('fit of holes', findTolerance(2)),
      floating_T: (by) => by.part('fit of holes', findTolerance(1)),
    },
  },
];
