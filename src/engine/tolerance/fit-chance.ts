import { chiTail } from '../statistics/chi.ts';
import { prepareHoles } from './hole-fit.ts';
import { POWERS, preparePowerSums } from './power-sums.ts';
import { prepareReach } from './ray-reach.ts';
import { type ScatteredHole, splitScatter } from './scatter-space.ts';
import { drawShifts, prepareLattice, prepareRandom } from './shifted-lattice.ts';

/** Chance that a plate goes on. */
export interface FitChance {
  /** That it goes on, and that it does not: the smaller of the two keeps all its digits. */
  readonly fits: number;
  readonly misses: number;
  /** Of either, from independent shifts of the points. */
  readonly standardError: number;
  /** Rays that were solved. */
  readonly rays: number;
}

/** How much is worked for an answer. */
export interface ChanceEffort {
  readonly seed: number;
  /** Standard error at which it is enough. */
  readonly enough: number;
  /** Most points of one shift, a power of two. */
  readonly most: number;
}

/** Independent shifts: their spread is the error. */
const SHIFTS = 16;
const PILOT = 32;
/** A column of which less than that share is left beside the others. */
const SAYS_NOTHING = 1e-9;
/** A column whose mean square is less is rounding: in one dimension all directions are alike. */
const ROUNDING = 1e-20;

/**
 * Chance that a plate goes on, its bolts scattered, the plate free to shift and to turn, by any angle.
 *
 * Bolts are drawn by direction only: along a ray from the design the farthest place at which the plate goes on is found (`ray-reach.ts`), and how likely
 * the scatter lies beyond it is the tail of a chi distribution. The turn has a dimension of its own, so that it stays exact. Sums of powers of the
 * distances, whose means over all directions are known, take away what they tell (control variates). Points are shifted lattices.
 *
 * A ray on which nothing is found from the design outwards (biased bolts, hardly any slack) is looked at by steps that no crossing can hide from: the
 * margin of `hole-fit` changes by no more than the farthest bolt moves.
 *
 * @param given two holes at least; a slack of 0 or less: it never goes on
 */
export function findFitChance(given: readonly ScatteredHole[], effort: ChanceEffort): FitChance {
  if (given.some(({ slack }) => slack < 0)) return { fits: 0, misses: 1, standardError: 0, rays: 0 };
  if (given.length < 2) return { fits: 1, misses: 0, standardError: 0, rays: 0 };
  if (given.some(({ slack }) => slack === 0)) return { fits: 0, misses: 1, standardError: 0, rays: 0 };
  const sampler = prepareSampler(given);
  const random = prepareRandom(effort.seed);
  const slopes = runPilot(sampler, random);
  const shifts = Array.from({ length: SHIFTS }, () => drawShifts(sampler.dimensions, random));
  const sums = new Float64Array(SHIFTS);
  for (let points = PILOT; ; points *= 2) {
    // What was drawn are the even points of twice as many.
    const isFirst = points === PILOT;
    for (const [j, shift] of shifts.entries())
      sums[j] += addPoints(sampler, prepareLattice(sampler.dimensions, points, random, shift), points, isFirst, slopes);
    const rays = SHIFTS * (PILOT + points);
    const means = Array.from(sums, (sum) => sum / points);
    const mean = means.reduce((sum, one) => sum + one, 0) / SHIFTS;
    const square = means.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    const standardError = Math.sqrt(square / (SHIFTS - 1) / SHIFTS);
    if (standardError > effort.enough && points < effort.most) continue;
    const misses = Math.max(0, Math.min(1, mean));
    return { fits: 1 - misses, misses, standardError, rays };
  }
}

interface Sampler {
  readonly dimensions: number;
  /** Takes a point: a standard normal number a dimension. */
  draw(point: Float64Array): void;
  /** Chance to lie beyond, along the direction of the point. */
  exact(): number;
  /** Writes the sums of powers, less their means. */
  control(out: Float64Array): void;
}

function prepareSampler(given: readonly ScatteredHole[]): Sampler {
  const { holes, rest, turning, turnOfOne, axes } = splitScatter(given);
  const reach = prepareReach(holes);
  const count = 2 * holes.length;
  const bias = Float64Array.from({ length: count }, (_, k) => holes[k >> 1]!.bias?.[k % 2] ?? 0);
  const base = new Float64Array(count);
  const direction = new Float64Array(count);
  const off = new Float64Array(count);
  const scale = Math.sqrt(rest);
  const matrix = new Float64Array(count * rest);
  axes.forEach((axis, j) => {
    matrix.set(axis, j * count);
  });
  const walk = prepareWalk(given, holes);
  const control = preparePowerSums(holes, axes);
  let turn = 0;
  return {
    dimensions: rest + (turning === null ? 0 : 1),
    draw(point) {
      let square = 0;
      for (let j = 0; j < rest; j += 1) square += point[j] * point[j];
      const part = 1 / Math.sqrt(square);
      direction.fill(0);
      for (let j = 0; j < rest; j += 1) {
        const share = point[j] * part;
        const row = j * count;
        for (let k = 0; k < count; k += 1) direction[k] += share * matrix[row + k];
      }
      const turned = turning === null ? 0 : point[rest];
      for (let k = 0; k < count; k += 1) {
        base[k] = bias[k] + (turning === null ? 0 : turned * turning[k]);
        off[k] = scale * direction[k];
      }
      turn = Math.atan(turned * turnOfOne);
    },
    exact() {
      const far = reach.far(base, direction, reach.near(off), scale, turn);
      return far === null ? walk(base, direction, rest) : chiTail(rest, far);
    },
    control(out) {
      control(direction, out);
    },
  };
}

/** Beyond that radius nothing is looked for: the share of the scatter out there is below 1e-12. */
const OUT_OF_SIGHT = 1e-12;
/** Shortest step [mm]: where a bolt is that near to touching, on which side it lies does not matter. */
const SHORTEST = 1e-4;

/** Goes along a ray by steps of the margin: no bolt moves more in a step than the margin that is left, so that no crossing is passed over. */
function prepareWalk(
  given: readonly ScatteredHole[],
  holes: readonly ScatteredHole[],
): (base: Float64Array, direction: Float64Array, degrees: number) => number {
  const fit = prepareHoles(given.map((hole, i) => ({ ...hole, at: holes[i]!.at })));
  const bolts = new Float64Array(2 * holes.length);
  return (base, direction, degrees) => {
    let fastest = 0;
    for (let k = 0; k < bolts.length; k += 2) fastest = Math.max(fastest, Math.hypot(direction[k], direction[k + 1]));
    let end = Math.sqrt(degrees);
    while (chiTail(degrees, end) > OUT_OF_SIGHT) end += 1;
    let misses = 0;
    for (let r = 0; r < end; ) {
      for (let k = 0; k < bolts.length; k += 1) bolts[k] = holes[k >> 1]!.at[k % 2]! + base[k] + r * direction[k];
      const margin = fit.margin(bolts);
      const next = r + Math.max(SHORTEST, Math.abs(margin)) / fastest;
      if (margin < 0) misses += chiTail(degrees, r) - chiTail(degrees, next);
      r = next;
    }
    return Math.min(1, misses + (misses > 0 ? chiTail(degrees, end) : 0));
  };
}

/** How steeply chances go with the sums of powers: least squares over a few rays that are not used again. */
function runPilot(sampler: Sampler, random: () => number): Float64Array {
  const point = new Float64Array(sampler.dimensions);
  const sums = new Float64Array(POWERS);
  const rows: number[][] = [];
  const values: number[] = [];
  for (let shift = 0; shift < SHIFTS; shift += 1) {
    const lattice = prepareLattice(sampler.dimensions, PILOT, random);
    for (let k = 0; k < PILOT; k += 1) {
      lattice(k, point);
      sampler.draw(point);
      sampler.control(sums);
      rows.push([1, ...sums]);
      values.push(sampler.exact());
    }
  }
  return fitSlopes(rows, values);
}

/** Slopes of values on columns, the first of which is 1: normal equations, by elimination; a column that says nothing new gets none. */
function fitSlopes(rows: readonly (readonly number[])[], values: readonly number[]): Float64Array {
  const size = POWERS + 1;
  const normal = Array.from({ length: size }, (_, i) =>
    Float64Array.from({ length: size + 1 }, (__, j) =>
      rows.reduce((sum, row, k) => sum + row[i]! * (j === size ? values[k]! : row[j]!), 0),
    ),
  );
  const own = normal.map((line, i) => line[i]!);
  const isNews = (left: number, i: number): boolean =>
    left > SAYS_NOTHING * own[i]! && own[i]! > ROUNDING * rows.length;
  normal.forEach((line, i) => {
    for (const [j, other] of normal.entries()) {
      if (j === i || !isNews(line[i]!, i)) continue;
      const part = other[i]! / line[i]!;
      for (let k = i; k <= size; k += 1) other[k]! -= part * line[k]!;
    }
  });
  return Float64Array.from({ length: POWERS }, (_, j) => {
    const line = normal[j + 1]!;
    return isNews(line[j + 1]!, j + 1) ? line[size]! / line[j + 1]! : 0;
  });
}

/** Sum over the points of one shifted lattice: all of them, or those with odd numbers. */
function addPoints(
  sampler: Sampler,
  lattice: (k: number, out: Float64Array) => void,
  points: number,
  isFirst: boolean,
  slopes: Float64Array,
): number {
  const point = new Float64Array(sampler.dimensions);
  const sums = new Float64Array(POWERS);
  let sum = 0;
  for (let k = isFirst ? 0 : 1; k < points; k += isFirst ? 1 : 2) {
    lattice(k, point);
    sampler.draw(point);
    sampler.control(sums);
    sum += sampler.exact();
    for (let j = 0; j < POWERS; j += 1) sum -= slopes[j] * sums[j];
  }
  return sum;
}
