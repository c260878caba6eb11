import type { Point } from '../../engine/geometry/point.ts';
import { findSymmetricEigenPairs } from '../../engine/geometry/symmetric-eigen.ts';
import type { AsCastInsert } from './as-cast-report.ts';

/** How the inserts of a piece lie about their designed places [mm, rad]. */
export interface InsertScatter {
  readonly points: readonly { readonly number: number; readonly by: Point; readonly isOff: boolean }[];
  /** Different tolerances of these inserts, the narrowest first. */
  readonly tolerances: readonly number[];
  readonly mean: Point;
  /** Null: too few for one. */
  readonly ellipse: { readonly middle: Point; readonly half: readonly [number, number]; readonly turn: number } | null;
  /** As many are needed for an ellipse. */
  readonly least: number;
}

/** Two means and three terms of covariance are found from them: fewer show their own chance and no scatter (common practice). */
const LEAST = 6;

/** Square of the radius that holds 95 % of a normal scatter in two directions of unit deviation: −2 ln 0.05 (chi-square with two degrees of freedom). */
const NINETY_FIVE = -2 * Math.log(0.05);

/** Deviations of all inserts that were surveyed, and the ellipse of their covariance that holds 95 % of a normal scatter. */
export function findScatter(inserts: readonly AsCastInsert[]): InsertScatter {
  const found = inserts.flatMap(({ item, place, state }) =>
    place === null ? [] : [{ number: item.number, by: [place.dx, place.dy] as Point, isOff: state !== 'within', item }],
  );
  const count = found.length;
  const meanOf = (axis: 0 | 1) => found.reduce((sum, { by }) => sum + by[axis], 0) / Math.max(1, count);
  const mean: Point = [meanOf(0), meanOf(1)];
  const covariance = (a: 0 | 1, b: 0 | 1) =>
    found.reduce((sum, { by }) => sum + (by[a] - mean[a]) * (by[b] - mean[b]), 0) / (count - 1);
  const tolerances = [...new Set(found.map(({ item }) => item.tolerance))].sort((a, b) => a - b);
  const points = found.map(({ number, by, isOff }) => ({ number, by, isOff }));
  const base = { points, tolerances, mean, least: LEAST };
  if (count < LEAST) return { ...base, ellipse: null };
  const [first, second] = findSymmetricEigenPairs([
    [covariance(0, 0), covariance(0, 1)],
    [covariance(0, 1), covariance(1, 1)],
  ]);
  const half = (value: number) => Math.sqrt(Math.max(0, value) * NINETY_FIVE);
  const turn = Math.atan2(first!.vector[1]!, first!.vector[0]!);
  return { ...base, ellipse: { middle: mean, half: [half(first!.value), half(second!.value)], turn } };
}
