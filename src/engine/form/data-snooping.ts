import type { Adjustment } from '../geometry/least-squares.ts';

/** What the residuals say about blunders. */
export type Blunder =
  /** No residual is beyond its limit. */
  | { readonly kind: 'none' }
  /** One observation stands out; without it the others would agree better than without any other. */
  | { readonly kind: 'at'; readonly index: number }
  /** The observations contradict each other, but there are too few to say which of these is wrong. */
  | { readonly kind: 'one of'; readonly indices: readonly number[] };

/** Two-sided limit of a standard normal variable for a level of 0.001. */
export const BLUNDER_LIMIT = 3.29;
/** An observation whose residual keeps less than this share of its variance is not checked by the others. */
const UNCHECKED = 1e-6;
/** Residuals that go together like this cannot be told apart. */
const INSEPARABLE = 0.99;

/**
 * Normalised residuals w = v/σ_v; null where the other observations do not check this one.
 *
 * Source: W. Baarda, A testing procedure for use in geodetic networks (1968): the w-test (recalled).
 */
export function normaliseResiduals(
  { residuals, residualCovariance }: Adjustment,
  deviations: readonly number[],
): readonly (number | null)[] {
  return residuals.map((residual, i) => {
    const variance = residualCovariance[i]![i]!;
    return variance > UNCHECKED * deviations[i]! ** 2 ? residual / Math.sqrt(variance) : null;
  });
}

/**
 * Looks for one blunder among the observations: the largest |w| beyond 3.29 (level 0.001), unless another residual is bound to it, as all
 * are where there is one observation too many only.
 */
export function findBlunder(adjustment: Adjustment, deviations: readonly number[]): Blunder {
  const normalised = normaliseResiduals(adjustment, deviations);
  const sizes = normalised.map((w) => (w === null ? 0 : Math.abs(w)));
  const largest = Math.max(...sizes);
  if (largest <= BLUNDER_LIMIT) return { kind: 'none' };
  const index = sizes.indexOf(largest);
  const { residualCovariance: covariance } = adjustment;
  const bound = sizes.flatMap((_, i) => {
    if (normalised[i] === null) return [];
    const correlation = covariance[index]![i]! / Math.sqrt(covariance[index]![index]! * covariance[i]![i]!);
    return Math.abs(correlation) > INSEPARABLE ? [i] : [];
  });
  return bound.length === 1 ? { kind: 'at', index } : { kind: 'one of', indices: bound };
}
