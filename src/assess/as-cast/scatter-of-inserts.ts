import type { Point } from '../../engine/geometry/point.ts';
import { findCovariance, findEllipse } from '../../engine/statistics/scatter.ts';
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

/** Share of a normal scatter that the ellipse holds. */
const SHARE = 0.95;

/** Deviations of all inserts that were surveyed, and the ellipse of their covariance that holds 95 % of a normal scatter. */
export function findScatter(inserts: readonly AsCastInsert[]): InsertScatter {
  const found = inserts.flatMap(({ item, place, state }) =>
    place === null ? [] : [{ number: item.number, by: [place.dx, place.dy] as Point, isOff: state !== 'within', item }],
  );
  const tolerances = [...new Set(found.map(({ item }) => item.tolerance))].sort((a, b) => a - b);
  const points = found.map(({ number, by, isOff }) => ({ number, by, isOff }));
  const { mean, covariance } = findCovariance(points.map(({ by }) => by));
  const base = { points, tolerances, mean, least: LEAST };
  if (points.length < LEAST) return { ...base, ellipse: null };
  const { centre, half, angle } = findEllipse(mean, covariance, SHARE);
  return { ...base, ellipse: { middle: centre, half, turn: angle } };
}
