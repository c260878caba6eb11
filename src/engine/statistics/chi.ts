import { normalTail } from './normal.ts';

/**
 * Share of the chi distribution with a whole number of degrees of freedom above r: how likely a standard normal point of so many dimensions lies
 * farther than r from the origin. Exact to rounding in the far tail too.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.4.4 and 26.4.5 (finite sums).
 * @param degrees 1 or more
 * @example 2, 2.4477 → 0.05
 */
export function chiTail(degrees: number, r: number): number {
  if (r <= 0) return 1;
  const square = r * r;
  if (degrees % 2 === 0) {
    let term = Math.exp(-square / 2);
    let sum = term;
    for (let k = 2; k < degrees; k += 2) {
      term *= square / k;
      sum += term;
    }
    return Math.min(1, sum);
  }
  let term = Math.sqrt(2 / Math.PI) * Math.exp(-square / 2) * r;
  let sum = 2 * normalTail(r);
  for (let k = 1; k < degrees; k += 2) {
    sum += term;
    term *= square / (k + 2);
  }
  return Math.min(1, sum);
}
