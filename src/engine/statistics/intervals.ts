import { normalQuantile } from './normal.ts';
import { chiSquareQuantile, studentQuantile } from './quantiles.ts';

/** Lower and upper end. */
export type Interval = readonly [low: number, high: number];

/** What a sample says of the population that it is from; units as the sample's. */
export interface SampleSummary {
  readonly count: number;
  readonly mean: number;
  /** Standard deviation with n − 1. */
  readonly deviation: number;
  readonly meanInterval: Interval;
  readonly deviationInterval: Interval;
}

/**
 * Mean and standard deviation with their intervals, the population taken as normal.
 * Source: textbooks: mean ± t s/√n; (n − 1) s²/σ² is chi-square distributed.
 * @param values two at least
 */
export function summariseSample(values: readonly number[], confidence: number): SampleSummary {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1));
  const reach = (studentQuantile(count - 1, (1 + confidence) / 2) * deviation) / Math.sqrt(count);
  const limit = (p: number) => deviation * Math.sqrt((count - 1) / chiSquareQuantile(count - 1, p));
  return {
    count,
    mean,
    deviation,
    meanInterval: [mean - reach, mean + reach],
    deviationInterval: [limit((1 + confidence) / 2), limit((1 - confidence) / 2)],
  };
}

/**
 * Interval of a share from counts. Source: E. B. Wilson (1927).
 * @example 0 of 10, 95 % → 0 to 0.278
 */
export function wilsonInterval(hits: number, count: number, confidence: number): Interval {
  const z = normalQuantile((1 + confidence) / 2);
  const share = hits / count;
  const base = 1 + (z * z) / count;
  const middle = (share + (z * z) / (2 * count)) / base;
  const reach = (z / base) * Math.sqrt((share * (1 - share)) / count + (z * z) / (4 * count * count));
  return [Math.max(0, middle - reach), Math.min(1, middle + reach)];
}

/** A straight line through points, with its slope's interval. */
export interface Trend {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeInterval: Interval;
  /** Mean of the points' x, where the line is known best; and how far it is known there, to both sides. */
  readonly middle: number;
  readonly reachAtMiddle: number;
}

/**
 * Least-squares line y = intercept + slope x. Null: fewer than three points, or all at one x.
 * Source: textbooks: slope ± t(n − 2) s/√Σ(x − x̄)²; the line at x̄ ± t(n − 2) s/√n.
 */
export function findTrend(points: readonly (readonly [x: number, y: number])[], confidence: number): Trend | null {
  const count = points.length;
  const meanOf = (axis: 0 | 1) => points.reduce((sum, point) => sum + point[axis], 0) / count;
  const [meanX, meanY] = [meanOf(0), meanOf(1)];
  const spread = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  if (count < 3 || !(spread > 0)) return null;
  const slope = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) / spread;
  const intercept = meanY - slope * meanX;
  const rest = points.reduce((sum, [x, y]) => sum + (y - intercept - slope * x) ** 2, 0);
  const known = studentQuantile(count - 2, (1 + confidence) / 2) * Math.sqrt(rest / (count - 2));
  const reach = known / Math.sqrt(spread);
  return {
    ...{ slope, intercept, slopeInterval: [slope - reach, slope + reach] },
    ...{ middle: meanX, reachAtMiddle: known / Math.sqrt(count) },
  };
}

/**
 * Where a line lies at x, with the interval of the line there, not of single points.
 * Source: textbooks: ± t(n − 2) s √(1/n + (x − x̄)²/Σ(x − x̄)²).
 */
export function trendAt(trend: Trend, x: number): { readonly y: number; readonly interval: Interval } {
  const { slope, intercept, slopeInterval, middle, reachAtMiddle } = trend;
  const y = intercept + slope * x;
  const reach = Math.hypot(reachAtMiddle, (slopeInterval[1] - slope) * (x - middle));
  return { y, interval: [y - reach, y + reach] };
}

/**
 * The value that stands out of a normal sample, by Grubbs' test, two-sided; null: none does, or fewer than three.
 * Source: F. E. Grubbs (1969): G = max|x − x̄|/s against (n − 1)/√n · √(t²/(n − 2 + t²)), t at level/(2n) with n − 2 degrees.
 * @returns its index
 */
export function findOutlier(values: readonly number[], level: number): number | null {
  const count = values.length;
  if (count < 3) return null;
  const { mean, deviation } = summariseSample(values, 0.95);
  if (!(deviation > 0)) return null;
  const sizes = values.map((value) => Math.abs(value - mean) / deviation);
  const largest = Math.max(...sizes);
  return largest > grubbsLimit(count, level) ? sizes.indexOf(largest) : null;
}

/** Critical value of Grubbs' test. @example 10, 5 % → 2.290 */
export function grubbsLimit(count: number, level: number): number {
  const t = studentQuantile(count - 2, 1 - level / (2 * count));
  return ((count - 1) / Math.sqrt(count)) * Math.sqrt((t * t) / (count - 2 + t * t));
}
