import { betaShare, chiSquareShare } from './gamma.ts';
import { normalDensity, normalShare } from './normal.ts';

/** A root is known to that share of itself. */
const CLOSE = 1e-13;
/** Steps of an integral over a bell-shaped density; it falls off at both ends, so that even steps are exact to rounding. */
const STEPS = 400;
/** So many standard deviations to either side hold all of a normal distribution that a number can show. */
const REACH = 9;

/**
 * Where a rising function passes 0, by halving.
 * @param low where it is below 0; moved on by doubling the distance where it is not yet above at `high`
 */
export function findRoot(rising: (x: number) => number, low: number, high: number): number {
  let [from, to] = [low, high];
  while (rising(to) < 0 && to - from < 1e9) [from, to] = [to, to + 2 * (to - from)];
  for (let k = 0; k < 200 && to - from > CLOSE * Math.max(1e-3, Math.abs(from) + Math.abs(to)); k += 1) {
    const middle = (from + to) / 2;
    if (rising(middle) < 0) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** The value that a share p of the chi-square distribution lies below. @example 2, 0.95 → 5.991465 */
export function chiSquareQuantile(degrees: number, p: number): number {
  return findRoot((x) => chiSquareShare(degrees, x) - p, 0, Math.max(1, degrees));
}

/** Share of Student's t distribution below t. @example 9, 1.833113 → 0.95 */
export function studentShare(degrees: number, t: number): number {
  const tail = betaShare(degrees / 2, 0.5, degrees / (degrees + t * t)) / 2;
  return t > 0 ? 1 - tail : tail;
}

/** The value that a share p of Student's t distribution lies below. @example 9, 0.975 → 2.262157 */
export function studentQuantile(degrees: number, p: number): number {
  if (p < 0.5) return -studentQuantile(degrees, 1 - p);
  return findRoot((t) => studentShare(degrees, t) - p, 0, 3);
}

/**
 * Share of the noncentral t distribution below t: (Z + δ)/√(χ²/ν).
 * By its definition: the mean over s = √(χ²/ν) of Φ(t s − δ), summed in even steps over s.
 */
export function noncentralShare(degrees: number, noncentrality: number, t: number): number {
  const width = REACH / Math.sqrt(2 * degrees);
  const [low, high] = [Math.max(0, 1 - 1.5 * width), 1 + 1.5 * width + 3 / degrees];
  // Logarithm of the density of s but for a constant; the constant comes from the same sum.
  const logDensity = (s: number) => (degrees - 1) * Math.log(s) - (degrees * s * s) / 2 + degrees / 2;
  let all = 0;
  let below = 0;
  const steps = degrees < 4 ? 8 * STEPS : STEPS;
  for (let k = 0; k < steps; k += 1) {
    const s = low + ((k + 0.5) / steps) * (high - low);
    const density = Math.exp(logDensity(s));
    all += density;
    below += density * normalShare(t * s - noncentrality);
  }
  return below / all;
}

/**
 * The value that a share p of the noncentral t distribution lies below.
 * @param degrees of freedom, 1 or more
 */
export function noncentralQuantile(degrees: number, noncentrality: number, p: number): number {
  const low = Math.min(0, 2 * noncentrality - 10);
  return findRoot((t) => noncentralShare(degrees, noncentrality, t) - p, low, Math.max(1, noncentrality));
}

/** Nodes and weights for a mean over the standard normal distribution, in even steps. */
export function listNormalNodes(): readonly { readonly z: number; readonly weight: number }[] {
  const nodes = Array.from({ length: STEPS + 1 }, (_, k) => -REACH + (2 * REACH * k) / STEPS);
  const all = nodes.reduce((sum, z) => sum + normalDensity(z), 0);
  return nodes.map((z) => ({ z, weight: normalDensity(z) / all }));
}
