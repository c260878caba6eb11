import { type Adjustment, adjust } from '../geometry/least-squares.ts';
import type { Point } from '../geometry/point.ts';
import { type Blunder, findBlunder, normaliseResiduals } from './data-snooping.ts';
import { FormError } from './form-error.ts';
import { findMirrorPlace } from './mirror-axis.ts';
import type { TapedDistance } from './taped-distance.ts';

/** Where an insert sits by its taped distances. Lengths mm. */
export interface TapedPosition {
  readonly at: Point;
  readonly sigmaX: number;
  readonly sigmaY: number;
  /** Covariance of x and y [mm²]. */
  readonly covariance: number;
  /** Measured less adjusted, in the order of the distances. */
  readonly residuals: readonly number[];
  /** Residuals over their own standard deviations; null: no other distance checks this one. */
  readonly normalised: readonly (number | null)[];
  /** How many distances are more than needed. */
  readonly redundancy: number;
  readonly blunder: Blunder;
}

const STEPS = 100;
const HALVINGS = 40;
/** A step below this [mm] changes nothing that anyone could tape. */
const AT_REST = 1e-9;
/** A place this near to a point or an edge [mm] lies on it: no direction can be told. */
const ON_IT = 1e-6;
/** Smallest share of the least to the greatest spread of directions: about 0.01° between two. */
const ONE_DIRECTION = 1e-8;

/**
 * Finds a position from distances to edges and to points by weighted least squares, from a guess (Gauss–Newton, steps halved where they
 * would lead astray). The guess decides on which side of each edge it lies and, of two places that fit (two circles meet twice), which.
 *
 * Standard deviations follow from those of the distances as given; they are not scaled by how well the distances agree.
 *
 * @throws FormError when the distances do not fix a position, or the guess cannot decide between two
 * @example 300 ± 1 to the edge x = 0, 400 ± 2 to the edge y = 0 → (300, 400), σ 1 and 2
 */
export function findTapedPosition(measured: readonly TapedDistance[], guess: Point): TapedPosition {
  const sides = measured.map(({ to }, i) => sideOf(to, guess, i));
  const deviations = measured.map(({ deviation }) => deviation);
  const settled = settle(measured, sides, deviations, guess, true);
  // On its way from the guess it may have jumped across the line in which two places are each other's image.
  const mirrored = findMirrorPlace(measured, settled.at, guess);
  return mirrored === null ? settled : settle(measured, sides, deviations, mirrored, false);
}

/** Steps downhill from a place until it is at rest. */
function settle(
  measured: readonly TapedDistance[],
  sides: readonly (1 | -1)[],
  deviations: readonly number[],
  start: Point,
  isGuess: boolean,
): TapedPosition {
  let at = start;
  for (let step = 0; step < STEPS; step += 1) {
    const local = adjustAt(measured, sides, at);
    if (local === null) throw degenerate(measured, isGuess && step === 0);
    const move: Point = [local.unknowns[0]!, local.unknowns[1]!];
    if (Math.hypot(...move) < AT_REST) return describe(local, deviations, at);
    const next = descend(measured, sides, at, move);
    // No shorter step leads down either: rounding is all that is left of the move.
    if (next === null) return describe(local, deviations, at);
    at = next;
  }
  throw new FormError(
    'measured',
    'the distances lead to no position, expected distances that meet near the guess; measure one more in another direction',
  );
}

function describe(local: Adjustment, deviations: readonly number[], at: Point): TapedPosition {
  const [[varianceX, covariance], [, varianceY]] = local.covariance as [[number, number], [number, number]]; // two unknowns
  return {
    at,
    sigmaX: Math.sqrt(varianceX),
    sigmaY: Math.sqrt(varianceY),
    covariance,
    residuals: local.residuals,
    normalised: normaliseResiduals(local, deviations),
    redundancy: deviations.length - 2,
    blunder: findBlunder(local, deviations),
  };
}

/** +1 or −1: on which side of an edge the guess lies; +1 for a point. */
function sideOf(to: TapedDistance['to'], guess: Point, index: number): 1 | -1 {
  const distance = signedDistance(to, guess);
  if (Math.abs(distance) < ON_IT)
    throw new FormError(
      'guess',
      `(${guess.join(', ')}) mm lies on what distance ${index} (counted from 0) was taken to, expected a guess beside it, on the side where the insert is`,
    );
  return distance > 0 ? 1 : -1;
}

/** Distance from an edge, positive on the side that lies on the left hand going from its first end, or from a point. */
function signedDistance(to: TapedDistance['to'], [x, y]: Point): number {
  if (to.kind === 'point') return Math.hypot(x - to.at[0], y - to.at[1]);
  const [ux, uy] = directionOf(to.from, to.end);
  return ux * (y - to.from[1]) - uy * (x - to.from[0]);
}

function directionOf(from: Point, end: Point): Point {
  const length = Math.hypot(end[0] - from[0], end[1] - from[1]);
  return [(end[0] - from[0]) / length, (end[1] - from[1]) / length];
}

/** How the signed distance grows with x and y: a unit vector. */
function gradient(to: TapedDistance['to'], at: Point): Point {
  if (to.kind === 'point') return directionOf(to.at, at);
  const [ux, uy] = directionOf(to.from, to.end);
  return [0 - uy, ux];
}

/** The adjustment of the distances as they grow about a place; its unknowns are the move from there. Null where they fix none. */
function adjustAt(measured: readonly TapedDistance[], sides: readonly (1 | -1)[], at: Point): Adjustment | null {
  const rows = measured.map(({ to }, i) => gradient(to, at).map((part) => part * sides[i]!) as [number, number]); // of a pair
  if (doAllRunAlike(rows)) return null;
  return adjust(
    rows,
    measured.map(({ to, distance }, i) => distance - sides[i]! * signedDistance(to, at)),
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
function descend(measured: readonly TapedDistance[], sides: readonly (1 | -1)[], at: Point, move: Point): Point | null {
  const now = sumSquares(measured, sides, at);
  for (let k = 0, share = 1; k < HALVINGS; k += 1, share /= 2) {
    const next: Point = [at[0] + share * move[0], at[1] + share * move[1]];
    if (sumSquares(measured, sides, next) < now) return next;
  }
  return null;
}

/** Σ((measured − reckoned)/σ)²; endless on a point that was measured to, where no direction can be told. */
function sumSquares(measured: readonly TapedDistance[], sides: readonly (1 | -1)[], at: Point): number {
  return measured.reduce((sum, { to, distance, deviation }, i) => {
    const reckoned = signedDistance(to, at);
    if (to.kind === 'point' && reckoned < ON_IT) return Number.POSITIVE_INFINITY;
    return sum + ((distance - sides[i]! * reckoned) / deviation) ** 2;
  }, 0);
}

/** Why the distances fix no position. At the guess itself, distances to points apart may do so from another guess. */
function degenerate(measured: readonly TapedDistance[], isAtGuess: boolean): FormError {
  const points = measured.flatMap(({ to }) => (to.kind === 'point' ? [to.at] : []));
  if (measured.length < 2)
    return new FormError('measured', 'one distance fixes no position, expected at least two in different directions');
  if (points.length === 0)
    return new FormError('measured', 'all edges run the same way, expected a distance in another direction too');
  const areApart = points.some(([x, y]) => x !== points[0]![0] || y !== points[0]![1]);
  if (isAtGuess && (areApart || points.length < measured.length))
    return new FormError(
      'guess',
      'lies where all distances run the same way, in line with the points; expected a guess beside that line, on the side where the insert is',
    );
  return new FormError(
    'measured',
    'all distances run the same way where they lead, expected one in another direction too, or a guess nearer to the insert',
  );
}
