import type { Point } from '../geometry/point.ts';

/** An ellipse about a mean, that a share of a two-dimensional normal scatter lies in. */
export interface ScatterEllipse {
  readonly centre: Point;
  /** Half axes, the larger first; unit of the points. */
  readonly half: readonly [number, number];
  /** Direction of the larger from the x axis, counter-clockwise [rad], from −π/2 to π/2. */
  readonly angle: number;
}

/** Variances and covariance. */
export interface Covariance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Mean of points and their covariance with n − 1; two at least. */
export function findCovariance(points: readonly Point[]): { readonly mean: Point; readonly covariance: Covariance } {
  const count = points.length;
  const meanOf = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / count;
  const mean: Point = [meanOf(0), meanOf(1)];
  const sum = (a: 0 | 1, b: 0 | 1) =>
    points.reduce((total, point) => total + (point[a] - mean[a]) * (point[b] - mean[b]), 0) / (count - 1);
  return { mean, covariance: { xx: sum(0, 0), xy: sum(0, 1), yy: sum(1, 1) } };
}

/** The radius that a share of a round scatter lies within, in its standard deviation along one axis: Rayleigh's distribution. @example 0.95 → 2.4477 */
export function rayleighRadius(share: number): number {
  return Math.sqrt(-2 * Math.log(1 - share));
}

/** Mean distance from the middle of a round scatter, in its standard deviation along one axis: √(π/2). */
export const MEAN_RADIUS = Math.sqrt(Math.PI / 2);

/**
 * The ellipse about a mean that holds a share of a normal scatter: eigenvectors of the covariance, half axes √(λ χ²(2; share)); a chi-square of two degrees
 * is Rayleigh's radius squared.
 */
export function findEllipse(centre: Point, { xx, xy, yy }: Covariance, share: number): ScatterEllipse {
  const middle = (xx + yy) / 2;
  const apart = Math.hypot((xx - yy) / 2, xy);
  const radius = rayleighRadius(share);
  return {
    centre,
    half: [radius * Math.sqrt(middle + apart), radius * Math.sqrt(Math.max(0, middle - apart))],
    angle: Math.atan2(2 * xy, xx - yy) / 2,
  };
}
