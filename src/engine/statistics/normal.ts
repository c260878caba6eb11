const ROOT_2PI = Math.sqrt(2 * Math.PI);

/** Below this the series is summed, above it the continued fraction is: both are exact to rounding there. */
const SERIES_UP_TO = 2.5;

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_2PI;
}

/**
 * Share of the standard normal distribution above z, exact to rounding in the far tail too.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.11 (series) and 26.2.14 (continued fraction).
 * @example 1.959964 → 0.025
 */
export function normalTail(z: number): number {
  if (z < 0) return 1 - normalTail(-z);
  if (z > 40) return 0;
  if (z <= SERIES_UP_TO) return 0.5 - normalDensity(z) * sumSeries(z);
  return normalDensity(z) / continueFraction(z);
}

/** Share of the standard normal distribution below z. @example 1.644854 → 0.95 */
export function normalShare(z: number): number {
  return normalTail(-z);
}

/** z + z³/3 + z⁵/(3·5) + … */
function sumSeries(z: number): number {
  let term = z;
  let sum = z;
  for (let k = 3; term > 1e-17 * sum; k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return sum;
}

/** z + 1/(z + 2/(z + 3/(z + …))) */
function continueFraction(z: number): number {
  let fraction = z;
  for (let k = Math.ceil(20 + 400 / (z * z)); k >= 1; k -= 1) fraction = z + k / fraction;
  return fraction;
}

/** From here to the ends another fraction is used. */
const END = 0.024_25;

/**
 * The z that a share p of the standard normal distribution lies below, to about 1e-9: for drawing points, where that much does not matter.
 * Acklam's rational approximation (2003), from memory; tested against exact quantiles.
 * @param p above 0 and below 1
 */
export function approximateNormalQuantile(p: number): number {
  if (p < END) return atEnd(Math.sqrt(-2 * Math.log(p)));
  if (p > 1 - END) return -atEnd(Math.sqrt(-2 * Math.log(1 - p)));
  const q = p - 0.5;
  const r = q * q;
  const top =
    ((((-39.696_830_286_653_8 * r + 220.946_098_424_521) * r - 275.928_510_446_969) * r + 138.357_751_867_269) * r -
      30.664_798_066_147_2) *
      r +
    2.506_628_277_459_24;
  const bottom =
    ((((-54.476_098_798_224_1 * r + 161.585_836_858_041) * r - 155.698_979_859_887) * r + 66.801_311_887_719_7) * r -
      13.280_681_552_885_7) *
      r +
    1;
  return (top / bottom) * q;
}

function atEnd(q: number): number {
  const top =
    ((((-0.007_784_894_002_430_29 * q - 0.322_396_458_041_136) * q - 2.400_758_277_161_84) * q - 2.549_732_539_343_73) *
      q +
      4.374_664_141_464_97) *
      q +
    2.938_163_982_698_78;
  const bottom =
    (((0.007_784_695_709_041_46 * q + 0.322_467_129_070_04) * q + 2.445_134_137_143) * q + 3.754_408_661_907_42) * q +
    1;
  return top / bottom;
}

/**
 * The z that a share p of the standard normal distribution lies below.
 * @param p above 0 and below 1
 * @throws RangeError for any other p
 * @example 0.975 → 1.959964
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a share of ${p}, expected above 0 and below 1`);
  if (p > 0.5) return -normalQuantile(1 - p);
  const z = approximateNormalQuantile(p);
  // One step of Halley's method, with the error relative to the density.
  const error = (normalShare(z) - p) / normalDensity(z);
  return z - error / (1 + (z * error) / 2);
}
