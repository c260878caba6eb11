import type { Point } from '../geometry/point.ts';
import { type Blunder, findBlunder, normaliseResiduals } from './data-snooping.ts';
import { chooseSides } from './edge-sides.ts';
import { FormError } from './form-error.ts';
import { findMirrorPlace } from './mirror-axis.ts';
import { ON_IT, type Settled, type Side, settle, type Unsettled } from './settle-place.ts';
import { signedDistance, type TapedDistance } from './taped-distance.ts';

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
  /** Indices of the distances to edges on whose other side the guess lies. */
  readonly notOnSideOfGuess: readonly number[];
}

/**
 * Finds a position from distances to edges and to points by weighted least squares, from a guess. The guess decides between places that fit
 * equally: on which side of each edge it lies, and which of two places where circles meet. Where distances contradict its side of an
 * edge, the other side is taken (`chooseSides`), and told.
 *
 * Standard deviations follow from those of the distances as given; they are not scaled by how well the distances agree.
 *
 * @throws FormError when the distances do not fix a position, or the guess cannot decide between two
 * @example 300 ± 1 to the edge x = 0, 400 ± 2 to the edge y = 0 → (300, 400), σ 1 and 2
 */
export function findTapedPosition(measured: readonly TapedDistance[], guess: Point): TapedPosition {
  const sides = measured.map(({ to }, i) => sideOf(to, guess, i));
  const settleFor = (given: readonly Side[], start: Point) => settleBesideGuess(measured, given, start, guess);
  const settled = settleFor(sides, guess);
  if (typeof settled === 'string') throw explain(measured, settled);
  return describe(chooseSides(measured, settled, settleFor), sides, measured);
}

/** Settles from a start; of two places that fit alike it is the one on the side of the guess. */
function settleBesideGuess(
  measured: readonly TapedDistance[],
  sides: readonly Side[],
  start: Point,
  guess: Point,
): Settled | Unsettled {
  const settled = settle(measured, sides, start);
  if (typeof settled === 'string') return settled;
  // On its way from the start it may have jumped across the line in which two places are each other's image.
  const mirrored = findMirrorPlace(measured, settled.at, guess);
  return mirrored === null ? settled : settle(measured, sides, mirrored);
}

function describe(
  { at, local, sides }: Settled,
  ofGuess: readonly Side[],
  measured: readonly TapedDistance[],
): TapedPosition {
  const deviations = measured.map(({ deviation }) => deviation);
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
    notOnSideOfGuess: sides.flatMap((side, i) => (side === ofGuess[i] ? [] : [i])),
  };
}

/** +1 or −1: on which side of an edge the guess lies; +1 for a point. */
function sideOf(to: TapedDistance['to'], guess: Point, index: number): Side {
  const distance = signedDistance(to, guess);
  if (Math.abs(distance) < ON_IT)
    throw new FormError(
      'guess',
      `(${guess.join(', ')}) mm lies on what distance ${index} (counted from 0) was taken to, expected a guess beside it, on the side where the insert is`,
    );
  return distance > 0 ? 1 : -1;
}

/** Why the distances fix no position. At the guess itself, distances to points apart may do so from another guess. */
function explain(measured: readonly TapedDistance[], why: Unsettled): FormError {
  if (why === 'never at rest')
    return new FormError(
      'measured',
      'the distances lead to no position, expected distances that meet near the guess; measure one more in another direction',
    );
  const points = measured.flatMap(({ to }) => (to.kind === 'point' ? [to.at] : []));
  if (measured.length < 2)
    return new FormError('measured', 'one distance fixes no position, expected at least two in different directions');
  if (points.length === 0)
    return new FormError('measured', 'all edges run the same way, expected a distance in another direction too');
  const areApart = points.some(([x, y]) => x !== points[0]![0] || y !== points[0]![1]);
  if (why === 'at the start' && (areApart || points.length < measured.length))
    return new FormError(
      'guess',
      'lies where all distances run the same way, in line with the points; expected a guess beside that line, on the side where the insert is',
    );
  return new FormError(
    'measured',
    'all distances run the same way where they lead, expected one in another direction too, or a guess nearer to the insert',
  );
}
