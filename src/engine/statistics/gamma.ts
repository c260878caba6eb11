/** Coefficients of Lanczos' approximation, g = 7, nine terms; relative error about 1e-15. From memory; tested against factorials and a library. */
const LANCZOS = [
  0.999_999_999_999_809_93, 676.520_368_121_885_1, -1259.139_216_722_402_8, 771.323_428_777_653_13,
  -176.615_029_162_140_59, 12.507_343_278_686_905, -0.138_571_095_265_720_12, 9.984_369_578_019_571_6e-6,
  1.505_632_735_149_311_6e-7,
] as const;
const SMALL = 1e-16;
const MOST_TERMS = 10_000;

/** Logarithm of the gamma function, x above 0. @example 5 → ln 24 */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const [first, ...others] = LANCZOS;
  const sum = others.reduce((total, coefficient, i) => total + coefficient / (x + i), first as number);
  const t = x + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * Share of the chi-square distribution below x.
 * Source: Abramowitz and Stegun (1964), 6.5.29 (series) and 6.5.31 (continued fraction) of the incomplete gamma function.
 * @param degrees above 0, whole or not
 * @example 2, 5.991 → 0.95
 */
export function chiSquareShare(degrees: number, x: number): number {
  if (x <= 0) return 0;
  const [a, half] = [degrees / 2, x / 2];
  const scale = Math.exp(a * Math.log(half) - half - logGamma(a));
  if (half < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let k = 1; k < MOST_TERMS && term > SMALL * sum; k += 1) {
      term *= half / (a + k);
      sum += term;
    }
    return Math.min(1, scale * sum);
  }
  // Lentz's way to sum a continued fraction.
  let b = half + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let fraction = d;
  for (let k = 1; k < MOST_TERMS; k += 1) {
    const numerator = -k * (k - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    fraction *= d * c;
    if (Math.abs(d * c - 1) < SMALL) break;
  }
  return Math.max(0, 1 - scale * fraction);
}

/**
 * Regularised incomplete beta function I_x(a, b). Source: Abramowitz and Stegun (1964), 26.5.8 (continued fraction).
 * @param x from 0 to 1
 */
export function betaShare(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - betaShare(b, a, 1 - x);
  const scale = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(1 - x)) / a;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let k = 1; k < MOST_TERMS; k += 1) {
    const even = (k * (b - k) * x) / ((a + 2 * k - 1) * (a + 2 * k));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    fraction *= d * c;
    const odd = (-(a + k) * (a + b + k) * x) / ((a + 2 * k) * (a + 2 * k + 1));
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    fraction *= d * c;
    if (Math.abs(d * c - 1) < SMALL) break;
  }
  return scale * fraction;
}
