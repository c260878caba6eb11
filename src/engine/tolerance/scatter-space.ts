import type { Point } from '../geometry/point.ts';
import type { PlateHole } from './plate-hole.ts';

/** A hole whose bolt scatters about its middle (or about a place beside it): standard deviation along each axis [mm], bias [mm]. */
export interface ScatteredHole extends PlateHole {
  readonly sigma: number;
  readonly bias?: Point;
}

/** The space that bolts scatter in, taken apart: what a plate follows by shifting, by turning, and what is left. */
export interface ScatterSpace {
  /** The holes about the point that the plate is turned about. */
  readonly holes: readonly ScatteredHole[];
  /** Dimensions of what no small movement follows. */
  readonly rest: number;
  /** How the bolts go with one standard deviation of turning [mm], x and y in turn; null: no turn moves a hole. */
  readonly turning: Float64Array | null;
  /** Turn that goes with it [rad]. */
  readonly turnOfOne: number;
  /** The dimensions that are left, one after another: bolts for one standard deviation [mm]. */
  readonly axes: readonly Float64Array[];
}

/** A direction that is that short beside others is one of them. */
const ALIKE = 1e-9;

/**
 * Takes the scatter of bolts apart, exactly: all bolts shifted alike change nothing, so that these two dimensions fall away; the turn has one; the rest are
 * at right angles to all three, each a standard normal number.
 */
export function splitScatter(given: readonly ScatteredHole[]): ScatterSpace {
  const total = given.reduce((sum, { sigma }) => sum + sigma ** -2, 0);
  const middle = (axis: 0 | 1) => given.reduce((sum, { at, sigma }) => sum + at[axis] / sigma ** 2, 0) / total;
  const [x, y] = [middle(0), middle(1)];
  const holes = given.map((hole) => ({ ...hole, at: [hole.at[0] - x, hole.at[1] - y] as const }));
  const count = 2 * holes.length;
  const sigmas = Float64Array.from({ length: count }, (_, k) => holes[k >> 1]!.sigma);
  const basis: Float64Array[] = [];
  const add = (vector: Float64Array): number => {
    const length = Math.hypot(...vector);
    for (const other of [...basis, ...basis]) {
      const share = vector.reduce((sum, value, k) => sum + value * other[k], 0);
      for (let k = 0; k < count; k += 1) vector[k] -= share * other[k];
    }
    const left = Math.hypot(...vector);
    if (!(left > ALIKE * length)) return 0;
    basis.push(vector.map((value) => value / left));
    return left;
  };
  const make = (of: (k: number) => number) => Float64Array.from({ length: count }, (_, k) => of(k));
  const toBolts = (vector: Float64Array) => vector.map((value, k) => value * sigmas[k]);
  for (const axis of [0, 1]) add(make((k) => (k % 2 === axis ? 1 / sigmas[k] : 0)));
  const lever = add(make((k) => (k % 2 === 0 ? -holes[k >> 1]!.at[1] : holes[k >> 1]!.at[0]) / sigmas[k]));
  const turning = lever > 0 ? toBolts(basis[2]!) : null;
  const first = basis.length;
  for (let unit = 0; unit < count && basis.length < count; unit += 1) {
    const before = basis.length;
    const vector = make((k) => (k === unit ? 1 : 0));
    // A unit vector that is nearly used up would carry rounding only.
    const kept = 1 - basis.reduce((sum, other) => sum + other[unit] ** 2, 0);
    if (kept > 1e-6) add(vector);
    if (basis.length === before) continue;
  }
  const axes = basis.slice(first).map(toBolts);
  return { holes, rest: axes.length, turning, turnOfOne: lever > 0 ? 1 / lever : 0, axes };
}
