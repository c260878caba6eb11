import { chiSquareShare } from './gamma.ts';
import { normalQuantile, normalShare } from './normal.ts';
import { findRoot, listNormalNodes, noncentralQuantile, studentQuantile } from './quantiles.ts';

/** How a factor is asked for. */
export interface FactorCase {
  /** Size of the sample: 2 or more where the deviation is not known, 1 or more where it is. */
  readonly count: number;
  /** Share of the population beyond the limit (one side), or between the limits (both). */
  readonly share: number;
  /** Confidence that at least so much is. */
  readonly confidence: number;
}

/**
 * Factor k of a one-sided statistical tolerance interval of a normal population whose standard deviation is estimated from the sample: with that
 * confidence at least a share of the population lies above mean − k s. k = t(n − 1, z_p √n; confidence)/√n with the noncentral t distribution.
 *
 * Source: ISO 16269-6 (definition); the same numbers as tables of NIST and, for a confidence of 75 %, in use for characteristic values of strength.
 * @example 10, 95 %, 95 % → 2.911
 */
export function oneSidedFactor({ count, share, confidence }: FactorCase): number {
  const root = Math.sqrt(count);
  return noncentralQuantile(count - 1, normalQuantile(share) * root, confidence) / root;
}

/**
 * The same where the standard deviation is known: k = z_p + z_confidence/√n.
 * @example 10, 95 %, 75 % → 1.858
 */
export function oneSidedFactorKnown({ count, share, confidence }: FactorCase): number {
  return normalQuantile(share) + normalQuantile(confidence) / Math.sqrt(count);
}

/**
 * Factor k of a two-sided tolerance interval, mean ± k s, deviation from the sample: exact, by its definition. For a mean that lies z/√n off,
 * the half-width r of a share p about it is solved; with the confidence s is large enough that k s reaches r.
 *
 * Source: ISO 16269-6 (definition); D. J. Owen and R. E. Odeh (1980) for the integral, from memory.
 * @example 10, 95 %, 95 % → 3.393
 */
export function twoSidedFactor({ count, share, confidence }: FactorCase): number {
  const degrees = count - 1;
  const least = normalQuantile((1 + share) / 2);
  const nodes = listNormalNodes()
    .filter(({ weight }) => weight > 1e-14)
    .map(({ z, weight }) => {
      const off = Math.abs(z) / Math.sqrt(count);
      const width = (r: number) => normalShare(off + r) - normalShare(off - r) - share;
      return { weight, square: degrees * findRoot(width, least, least + off + 1) ** 2 };
    });
  const sure = (k: number) =>
    nodes.reduce((sum, { weight, square }) => sum + weight * (1 - chiSquareShare(degrees, square / (k * k))), 0);
  return findRoot((k) => sure(k) - confidence, least / 10, 3 * least);
}

/**
 * Fractile factor of EN 1990, Annex D, Table D1: k_n = z √(1 + 1/n) with the deviation known before, t(n − 1) √(1 + 1/n) with it from the test; the 5 %
 * fractile by the Bayesian way with vague priors. From memory.
 * @example 10, deviation unknown → 1.92
 */
export function annexDFactor(count: number, isDeviationKnown: boolean): number {
  const root = Math.sqrt(1 + 1 / count);
  return (isDeviationKnown ? normalQuantile(0.95) : studentQuantile(count - 1, 0.95)) * root;
}
