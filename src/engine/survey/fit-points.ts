import { findSymmetricEigenPairs } from '../geometry/symmetric-eigen.ts';
import type { Pose } from './pose.ts';
import { SurveyError } from './survey-error.ts';
import { dot, type Matrix, meanOf, minus, multiply, type Vector } from './vector.ts';

/** A point as designed and as the instrument has it, both of two or of three numbers [mm]. */
export interface PointPair {
  readonly design: Vector;
  readonly measured: Vector;
  /** Its weight beside the others: 1/σ². */
  readonly weight: number;
}

/** Spreads below this share of the largest are none: a tenth of a millimetre in a metre, which no instrument tells from a line. */
const NO_SPREAD = 1e-4;
/** Two turns that fit alike to this share cannot be told apart. */
const EQUAL = 1e-9;

/**
 * The rigid movement from the instrument's frame onto the panel that makes Σ w |design − (R measured + t)|² least: no scale, no mirror,
 * determinant +1 whatever the points are.
 *
 * Source: 2D: the angle of Σ w (a × b) and Σ w (a · b) about the weighted means. 3D: B. K. P. Horn, Closed-form solution of absolute orientation
 * using unit quaternions, J. Opt. Soc. Am. A 4 (1987), 629: the quaternion is the eigenvector of the largest eigenvalue of his matrix N (recalled).
 *
 * @throws SurveyError fewer than two points apart (2D), three off one line (3D), or points that several turns fit alike
 */
export function fitPoints(pairs: readonly PointPair[]): Pose {
  const isFlat = (pairs[0]?.design.length ?? 3) === 2;
  const least = isFlat ? 2 : 3;
  if (pairs.length < least) throw tooFew(pairs.length, isFlat);
  const weights = pairs.map(({ weight }) => weight);
  const [from, to] = [
    meanOf(
      pairs.map(({ measured }) => measured),
      weights,
    ),
    meanOf(
      pairs.map(({ design }) => design),
      weights,
    ),
  ];
  const arms = pairs.map(({ measured, design, weight }) => ({
    a: minus(measured, from),
    b: minus(design, to),
    weight,
  }));
  for (const side of ['a', 'b'] as const)
    checkSpread(
      arms.map((arm) => ({ at: arm[side], weight: arm.weight })),
      side,
    );
  const rotation = isFlat ? turnFlat(arms) : turnInSpace(arms);
  return { rotation, shift: minus(to, multiply(rotation, from)) };
}

/** Arms of a pair of points from their means: `a` as measured, `b` as designed. */
interface Arms {
  readonly a: Vector;
  readonly b: Vector;
  readonly weight: number;
}

function tooFew(count: number, isFlat: boolean): SurveyError {
  return new SurveyError(
    'control',
    isFlat
      ? `${count} control point${count === 1 ? '' : 's'}, expected at least two: fewer leave the turn open`
      : `${count} control point${count === 1 ? '' : 's'}, expected at least three that are not in one line: fewer leave a turn open`,
  );
}

/** Refuses points that lie in one place, and in 3D in one line. */
function checkSpread(arms: readonly { readonly at: Vector; readonly weight: number }[], side: 'a' | 'b'): void {
  const size = arms[0]!.at.length;
  const scatter = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (__, j) => arms.reduce((sum, { at, weight }) => sum + weight * at[i]! * at[j]!, 0)),
  );
  const [first, second] = findSymmetricEigenPairs(scatter);
  const as = side === 'a' ? 'as measured' : 'as designed';
  const whole = arms.reduce((sum, { weight }) => sum + weight, 0);
  // Points a thousandth of a millimetre apart are one point.
  if (first!.value <= whole * 1e-6)
    throw new SurveyError('control', `all control points lie in one place ${as}, expected points apart`);
  if (size === 3 && second!.value <= first!.value * NO_SPREAD ** 2)
    throw new SurveyError(
      'control',
      `all control points lie in one line ${as}, expected three that do not: the panel could turn about that line`,
    );
}

function turnFlat(arms: readonly Arms[]): Matrix {
  let [cos, sin, whole] = [0, 0, 0];
  for (const { a, b, weight } of arms) {
    cos += weight * dot(a, b);
    sin += weight * (a[0]! * b[1]! - a[1]! * b[0]!);
    whole += weight * Math.sqrt(dot(a, a) * dot(b, b));
  }
  const length = Math.hypot(cos, sin);
  if (length <= EQUAL * whole) throw fitsAlike();
  return [
    [cos / length, 0 - sin / length],
    [sin / length, cos / length],
  ];
}

function turnInSpace(arms: readonly Arms[]): Matrix {
  const s = (i: number, j: number) => arms.reduce((sum, { a, b, weight }) => sum + weight * a[i]! * b[j]!, 0);
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = [0, 1, 2].flatMap((i) => [0, 1, 2].map((j) => s(i, j))) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]; // three times three
  const [best, next] = findSymmetricEigenPairs([
    [xx + yy + zz, yz - zy, zx - xz, xy - yx],
    [yz - zy, xx - yy - zz, xy + yx, zx + xz],
    [zx - xz, xy + yx, yy - xx - zz, yz + zy],
    [xy - yx, zx + xz, yz + zy, zz - xx - yy],
  ]);
  const whole = arms.reduce((sum, { a, b, weight }) => sum + weight * Math.sqrt(dot(a, a) * dot(b, b)), 0);
  if (best!.value - next!.value <= EQUAL * whole) throw fitsAlike();
  const [w, x, y, z] = best!.vector as [number, number, number, number]; // four
  return [
    [w * w + x * x - y * y - z * z, 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), w * w - x * x + y * y - z * z, 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), w * w - x * x - y * y + z * z],
  ];
}

function fitsAlike(): SurveyError {
  return new SurveyError(
    'control',
    'several turns of the panel fit the control points alike, expected points as they were designed; a mirror image of them is never taken: see that east and north are not exchanged',
  );
}
