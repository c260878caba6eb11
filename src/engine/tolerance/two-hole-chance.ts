import { normalDensity, normalTail } from '../statistics/normal.ts';

/** Points of the sum; the integrand is smooth and falls off at both ends, so that it is exact to rounding long before. */
const POINTS = 4000;

/**
 * Chance that a plate with two round holes goes on, in closed form: it is free to shift and turn, so that only the distance of the bolts matters. It goes on
 * where that differs from the distance of the holes by no more than the sum of the slacks. The distance of two bolts with isotropic normal scatter is
 * Rice-distributed (S. O. Rice, 1944): two values of its distribution give the chance.
 *
 * @param distance between the holes [mm]
 * @param slacks sum of both [mm], 0 or more
 * @param sigma of the bolts to each other along each axis: √(σ₁² + σ₂²) [mm], above 0
 * @example 100, 0.5, 2·√2 → about Φ(0.5/2.83) − Φ(−0.5/2.83) = 0.140
 */
export function findTwoHoleChance(distance: number, slacks: number, sigma: number): number {
  const within = riceShare(distance + slacks, distance, sigma);
  const nearer = slacks < distance ? riceShare(distance - slacks, distance, sigma) : 0;
  return Math.max(0, within - nearer);
}

/** Share of the Rice distribution below `radius`: a normal point about (centre, 0) in a circle about the origin, strip by strip. */
function riceShare(radius: number, centre: number, sigma: number): number {
  if (radius <= 0) return 0;
  let sum = 0;
  for (let k = 0; k < POINTS; k += 1) {
    // x = radius · sin α makes the ends of the strips' heights smooth.
    const alpha = ((k + 0.5) / POINTS - 0.5) * Math.PI;
    const height = radius * Math.cos(alpha);
    const density = normalDensity((radius * Math.sin(alpha) - centre) / sigma) / sigma;
    sum += density * (1 - 2 * normalTail(height / sigma)) * height;
  }
  return (sum * Math.PI) / POINTS;
}
