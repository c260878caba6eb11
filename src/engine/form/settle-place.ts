import { type Adjustment, adjust } from '../geometry/least-squares.ts';
import type { Point } from '../geometry/point.ts';
import { distanceGradient, signedDistance, type TapedDistance } from './taped-distance.ts';

/** The side of an edge as `signedDistance` has it; +1 for a point. */
export type Side = 1 | -1;

/** A place at rest for given sides of the edges. */
export interface Settled {
  readonly at: Point;
  readonly sides: readonly Side[];
  /** The distances adjusted as they grow about the place, with what they miss it by. */
  readonly local: Adjustment;
  /** Σ((measured − reckoned)/σ)². */
  readonly sum: number;
}

/** Why no place was found: no direction can be told at the start, or on the way, or the steps came to no end. */
export type Unsettled = 'at the start' | 'on the way' | 'never at rest';

const STEPS = 100;
const HALVINGS = 40;
/** So many Gauss–Newton steps are enough, unless distances that disagree much make them swing to and fro. */
const PATIENCE = 20;
/** From a Gauss–Newton move below this [mm] on, rounding in the sum of squares hides which place is lower. */
const NEAR = 1e-4;
/** A step below this [mm] changes nothing that anyone could tape. */
const AT_REST = 1e-10;
/** Newton steps at the end: each doubles the right figures, four are enough. */
const LAST_STEPS = 10;
/** A place this near to a point [mm] lies on it: no direction can be told. */
export const ON_IT = 1e-6;
/** Smallest share of the least to the greatest spread of directions: about 0.01° between two. */
const ONE_DIRECTION = 1e-8;

/** Steps downhill from a place until it is at rest: Gauss–Newton, halved where it would lead astray, at the end Newton. */
export function settle(measured: readonly TapedDistance[], sides: readonly Side[], start: Point): Settled | Unsettled {
  let at = start;
  for (let step = 0; step < STEPS; step += 1) {
    const local = adjustAt(measured, sides, at);
    if (local === null) return step === 0 ? 'at the start' : 'on the way';
    const bowl = step < PATIENCE ? null : newtonMove(measured, sides, at);
    const move: Point = bowl ?? [local.unknowns[0]!, local.unknowns[1]!];
    const next = Math.hypot(...move) < NEAR ? null : descend(measured, sides, at, move);
    // No shorter step leads down either: rounding is all that is left of the move.
    if (next === null) return finish(measured, sides, at);
    at = next;
  }
  return 'never at rest';
}

/** The minimum beside a place, by where the slope of the sum of squares is nothing: its own rounding would end the search too early. */
function finish(measured: readonly TapedDistance[], sides: readonly Side[], near: Point): Settled | Unsettled {
  let at = near;
  for (let step = 0, last = Number.POSITIVE_INFINITY; step < LAST_STEPS; step += 1) {
    const move = newtonMove(measured, sides, at);
    const length = move === null ? 0 : Math.hypot(...move);
    // A step that is not shorter than the one before is rounding.
    if (move === null || length >= last) break;
    at = [at[0] + move[0], at[1] + move[1]];
    if (length < AT_REST) break;
    last = length;
  }
  const local = adjustAt(measured, sides, at);
  if (local === null) return 'on the way';
  const residuals = measured.map((one, i) => missBy(one, sides[i]!, at));
  return { at, sides, local: { ...local, residuals }, sum: sumSquares(measured, sides, at) };
}

/**
 * The Newton step for Σ(v/σ)²/2: H = Σ(u uᵀ − v/r (1 − u uᵀ))/σ² with the bend 1/r of distances to points, slope Σ u v/σ². Null where
 * the sum has no minimum, its bend being no bowl.
 */
function newtonMove(measured: readonly TapedDistance[], sides: readonly Side[], at: Point): Point | null {
  let [xx, xy, yy, gx, gy] = [0, 0, 0, 0, 0];
  measured.forEach((one, i) => {
    const { to, deviation } = one;
    const [ux, uy] = distanceGradient(to, at);
    const weight = deviation ** -2;
    const miss = missBy(one, sides[i]!, at);
    const bend = to.kind === 'point' ? miss / signedDistance(to, at) : 0;
    xx += weight * (ux * ux - bend * uy * uy);
    xy += weight * (ux * uy + bend * ux * uy);
    yy += weight * (uy * uy - bend * ux * ux);
    gx += weight * sides[i]! * ux * miss;
    gy += weight * sides[i]! * uy * miss;
  });
  const determinant = xx * yy - xy * xy;
  if (xx + yy <= 0 || determinant <= ONE_DIRECTION * (xx + yy) ** 2) return null;
  return [(yy * gx - xy * gy) / determinant, (xx * gy - xy * gx) / determinant];
}

/** Measured less reckoned [mm]. */
function missBy({ to, distance }: TapedDistance, side: Side, at: Point): number {
  return distance - side * signedDistance(to, at);
}

/** The adjustment of the distances as they grow about a place; its unknowns are the move from there. Null where they fix none. */
function adjustAt(measured: readonly TapedDistance[], sides: readonly Side[], at: Point): Adjustment | null {
  const rows = measured.map(
    ({ to }, i) => distanceGradient(to, at).map((part) => part * sides[i]!) as [number, number],
  ); // of a pair
  if (doAllRunAlike(rows)) return null;
  return adjust(
    rows,
    measured.map((one, i) => missBy(one, sides[i]!, at)),
    measured.map(({ deviation }) => deviation),
  );
}

/** Whether unit vectors all lie along one line: the lesser eigenvalue of Σ u uᵀ is nothing beside the greater. */
function doAllRunAlike(units: readonly Point[]): boolean {
  const xx = units.reduce((sum, [x]) => sum + x * x, 0);
  const yy = units.reduce((sum, [, y]) => sum + y * y, 0);
  const xy = units.reduce((sum, [x, y]) => sum + x * y, 0);
  const greater = (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy);
  // The product of both is the determinant; as Σ (u × v)² over pairs it loses no figures.
  const determinant = units.reduce(
    (sum, [x, y], i) => units.slice(i + 1).reduce((part, [vx, vy]) => part + (x * vy - y * vx) ** 2, sum),
    0,
  );
  return determinant <= ONE_DIRECTION * greater ** 2;
}

/** The first of the moves 1, 1/2, 1/4 … that lowers the weighted sum of squares; null when none does. */
function descend(measured: readonly TapedDistance[], sides: readonly Side[], at: Point, move: Point): Point | null {
  const now = sumSquares(measured, sides, at);
  for (let k = 0, share = 1; k < HALVINGS; k += 1, share /= 2) {
    const next: Point = [at[0] + share * move[0], at[1] + share * move[1]];
    if (sumSquares(measured, sides, next) < now) return next;
  }
  return null;
}

/** Σ((measured − reckoned)/σ)²; endless on a point that was measured to, where no direction can be told. */
function sumSquares(measured: readonly TapedDistance[], sides: readonly Side[], at: Point): number {
  return measured.reduce((sum, { to, distance, deviation }, i) => {
    const reckoned = signedDistance(to, at);
    if (to.kind === 'point' && reckoned < ON_IT) return Number.POSITIVE_INFINITY;
    return sum + ((distance - sides[i]! * reckoned) / deviation) ** 2;
  }, 0);
}
