import { normalDensity, normalShare } from '../statistics/normal.ts';

const END = 8.5;
const STEPS = 64;

/** The share of the standard normal distribution below z, from a table with cubics between: within 1e-9, for sums of very many. */
export function prepareNormalShare(): (z: number) => number {
  const count = 2 * END * STEPS + 1;
  const shares = Float64Array.from({ length: count }, (_, k) => normalShare(k / STEPS - END));
  const slopes = Float64Array.from({ length: count }, (_, k) => normalDensity(k / STEPS - END) / STEPS);
  return (z) => {
    const at = (z + END) * STEPS;
    if (!(at > 0)) return 0;
    if (at >= count - 1) return 1;
    const k = Math.floor(at);
    const t = at - k;
    const rise = shares[k + 1] - shares[k];
    const [first, last] = [slopes[k] - rise, rise - slopes[k + 1]];
    return shares[k] + t * rise + t * (1 - t) * ((1 - t) * first + t * last);
  };
}
