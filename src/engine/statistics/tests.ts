import { betaShare } from './gamma.ts';
import { studentShare } from './quantiles.ts';

interface Moments {
  readonly count: number;
  readonly mean: number;
  readonly variance: number;
}

function momentsOf(values: readonly number[]): Moments {
  const count = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  return { count, mean, variance: values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (count - 1) };
}

/**
 * Two-sided F test: how probable it is that two normal samples of one variance differ so much in theirs; two values each at least. No scatter in either: 1.
 * @returns the probability, and the first variance over the second
 */
export function compareVariances(
  one: readonly number[],
  other: readonly number[],
): { readonly probability: number; readonly ratio: number } {
  const [a, b] = [momentsOf(one), momentsOf(other)];
  if (a.variance === 0 && b.variance === 0) return { probability: 1, ratio: 1 };
  const ratio = a.variance / b.variance;
  const [m, n] = [a.count - 1, b.count - 1];
  const below = Number.isFinite(ratio) ? betaShare(m / 2, n / 2, (m * ratio) / (m * ratio + n)) : 1;
  return { probability: Math.min(1, 2 * Math.min(below, 1 - below)), ratio };
}

/**
 * Two-sided t test of two means whose variances may differ. Source: B. L. Welch (1947), with Satterthwaite's degrees of freedom.
 * @returns the probability, and the first mean less the second
 */
export function compareMeans(
  one: readonly number[],
  other: readonly number[],
): { readonly probability: number; readonly difference: number } {
  const [a, b] = [momentsOf(one), momentsOf(other)];
  const [u, v] = [a.variance / a.count, b.variance / b.count];
  const difference = a.mean - b.mean;
  if (u + v === 0) return { probability: difference === 0 ? 1 : 0, difference };
  const degrees = (u + v) ** 2 / (u ** 2 / (a.count - 1) + v ** 2 / (b.count - 1));
  const t = Math.abs(difference) / Math.sqrt(u + v);
  return { probability: 2 * (1 - studentShare(degrees, t)), difference };
}
