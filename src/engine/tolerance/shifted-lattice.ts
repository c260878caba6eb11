import { approximateNormalQuantile } from '../statistics/normal.ts';

/**
 * Generating vector of an embedded lattice rule. Source: Cools, Kuo and Nuyens, Constructing embedded lattice rules for multivariate integration (2006), tables
 * of F. Y. Kuo; from memory. Which vector is taken moves the error only: with a random shift any one gives the right mean.
 */
export const LATTICE_VECTOR = [
  1, 182667, 469891, 498753, 110745, 446247, 250185, 118627, 245333, 283199, 408519, 391023, 246327, 126539, 399185,
  461527, 300343, 69681, 516695, 436179, 106383, 238523, 413283, 70841, 47719, 300129, 113029, 123925, 410745, 211325,
  17489, 511893,
] as const;
/** Nearest to 0 and 1 that a coordinate comes. */
const END = 1e-15;

/** Uniform numbers from 0 to 1, a linear congruential generator of 64 bits cut to 53 would be as good: a mixed counter (splitmix32). */
export function prepareRandom(seed: number): () => number {
  let state = seed | 0;
  const draw = (): number => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return (mixed ^ (mixed >>> 15)) >>> 0;
  };
  return () => (draw() + 0.5 + (draw() >>> 11) / 2 ** 21 - 0.5) / 2 ** 32;
}

/**
 * Standard normal points spread evenly: a rank-1 lattice of 2^k points, moved by one random shift, folded (the tent of baker's transformation) and taken
 * through the normal quantile. Dimensions beyond those of the vector are plain random numbers.
 * With the same shifts the points with even k of twice as many are those of the lattice itself, so that points may be doubled by adding those with odd k.
 * @param out receives one number a dimension
 */
export function prepareLattice(
  dimensions: number,
  points: number,
  random: () => number,
  shifts: Float64Array = drawShifts(dimensions, random),
): (k: number, out: Float64Array) => void {
  return (k, out) => {
    for (let j = 0; j < dimensions; j += 1) {
      const z = LATTICE_VECTOR[j];
      const raw = z === undefined ? random() : ((k * z) % points) / points + shifts[j];
      const inside = raw - Math.floor(raw);
      const folded = 1 - Math.abs(2 * inside - 1);
      out[j] = approximateNormalQuantile(Math.max(END, Math.min(1 - END, folded)));
    }
  };
}

/** One random shift: a number from 0 to 1 for each dimension. */
export function drawShifts(dimensions: number, random: () => number): Float64Array {
  return Float64Array.from({ length: dimensions }, random);
}
