import { approximateNormalQuantile } from '../statistics/normal.ts';
import { type BirthRate, prepareBirthRate } from './birth-rate.ts';
import type { ChanceEffort, FitChance } from './fit-chance.ts';
import { type ScatteredHole, splitScatter } from './scatter-space.ts';
import { drawShifts, LATTICE_VECTOR, prepareRandom } from './shifted-lattice.ts';

/** Independent shifts of the points: their spread is the error. */
const SHIFTS = 16;
/** Points of the first pilot, each next one has twice as many. */
const PILOT = 256;
const PILOTS = 3;
const PILOT_DIRECTIONS = 4;
/** Points are drawn that much wider than where births were found. */
const WIDER = 1.6;
const END = 1e-15;
/** Turn and shift; what is found over them, with its moments. */
const AXES = 3;
const SUMS = 10;
/** Normals of a hole: with more holes there are so many threes that fewer do. */
const DIRECTIONS = 8;
const DIRECTIONS_OF_MANY = 4;
const MANY = 6;
const FIRST_POINTS = 256;
/** Threes of holes grow with the third power: beyond that many holes rays are better. */
const MOST_HOLES = 8;
/** Holes are that many slacks apart, or two turns with nothing between them are not ruled out. */
const SLACKS_APART = 3 + Math.sqrt(5);

/**
 * Whether births can be counted: the turns at which the plate goes on are then one interval.
 *
 * Let it go on at two turns, Δ apart. At the chord's middle, where the plate would be smaller by sin²(Δ/2)/2 or so, each bolt has gained |Δ(p − pole)|²/(8 · slack):
 * the middle of a chord lies inside a circle. Going back out to the unit circle takes at most 2 · (Δ²/8) · |p − pole|, which the gain pays wherever the pole is two
 * slacks away; where it is nearer to one hole, the plate goes out about that hole, and the others pay if holes are 3 + √5 slacks apart. For slots that is
 * taken over with the straight part added to the slack; there it is not proven.
 */
export function canCountBirths(holes: readonly ScatteredHole[]): boolean {
  const most = Math.max(...holes.map(({ slack, slot }) => slack + slot / 2));
  const apart = (one: ScatteredHole, other: ScatteredHole): number =>
    Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]);
  return (
    holes.length <= MOST_HOLES &&
    holes.every(
      (hole, i) => hole.slack > 0 && holes.slice(0, i).every((other) => apart(hole, other) >= SLACKS_APART * most),
    )
  );
}

/** Where points are drawn: normal about a place, along the columns of a lower triangle. */
interface Proposal {
  readonly at: readonly [number, number, number];
  readonly root: readonly [number, number, number, number, number, number];
}

/**
 * Chance that a plate goes on, as the expected number of turns at which it begins to go on: an integral over turn and shift (`birth-rate.ts`). Where the turns at which
 * it goes on are one interval, that number is 1 or 0. Points are shifted lattices on a torus, drawn from a normal density that a few pilots fitted.
 * @param given for which `canCountBirths`
 * @returns `rays`: the points, pilots apart
 */
export function findBirthChance(given: readonly ScatteredHole[], effort: ChanceEffort): FitChance {
  const { holes } = splitScatter(given);
  const random = prepareRandom(effort.seed);
  let proposal = propose(holes);
  const pilot = prepareBirthRate(holes, PILOT_DIRECTIONS);
  for (let k = 0; k < PILOTS; k += 1) {
    const found = new Float64Array(SUMS);
    addPoints(pilot, proposal, PILOT << k, drawShifts(AXES + pilot.offsets, random), false, found);
    proposal = fitProposal(proposal, found);
  }
  const rate = prepareBirthRate(holes, holes.length < MANY ? DIRECTIONS : DIRECTIONS_OF_MANY);
  const runs = Array.from({ length: SHIFTS }, () => ({
    shifts: drawShifts(AXES + rate.offsets, random),
    sums: new Float64Array(SUMS),
  }));
  const first = Math.min(FIRST_POINTS, effort.most);
  for (let points = first; ; points *= 2) {
    // What was drawn are the even points of twice as many.
    for (const { shifts, sums } of runs) addPoints(rate, proposal, points, shifts, points > first, sums);
    const means = runs.map(({ sums }) => sums[0] / points);
    const mean = means.reduce((sum, one) => sum + one, 0) / SHIFTS;
    const square = means.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    const standardError = Math.sqrt(square / (SHIFTS - 1) / SHIFTS);
    if (standardError > effort.enough && points < effort.most) continue;
    const fits = Math.max(0, Math.min(1, mean));
    return { fits, misses: 1 - fits, standardError, rays: SHIFTS * points };
  }
}

/** To begin with: where each bolt lies within its scatter and the room of its hole, by least squares. */
function propose(holes: readonly ScatteredHole[]): Proposal {
  const known = new Float64Array(6);
  for (const { at, sigma, slack, slot, angle } of holes) {
    const across = 1 / (sigma ** 2 + slack ** 2 / 2);
    const along = 1 / (sigma ** 2 + slack ** 2 / 2 + slot ** 2 / 4);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const xx = along * cos * cos + across * sin * sin;
    const xy = (along - across) * cos * sin;
    const yy = along * sin * sin + across * cos * cos;
    const [x, y] = [-at[1], at[0]];
    known[0] += x * x * xx + 2 * x * y * xy + y * y * yy;
    known[1] += x * xx + y * xy;
    known[2] += xx;
    known[3] += x * xy + y * yy;
    known[4] += xy;
    known[5] += yy;
  }
  const [tt, tx, xx, ty, xy, yy] = known;
  const det = tt * (xx * yy - xy * xy) - tx * (tx * yy - xy * ty) + ty * (tx * xy - xx * ty);
  const spread = [
    (xx * yy - xy * xy) / det,
    (xy * ty - tx * yy) / det,
    (tt * yy - ty * ty) / det,
    (tx * xy - xx * ty) / det,
    (tx * ty - tt * xy) / det,
    (tt * xx - tx * tx) / det,
  ];
  return { at: [0, 0, 0], root: takeRoot(spread)! };
}

/** Adds to the sums what the points of one shifted lattice find, and its first and second moments: all points, or those with odd numbers. */
function addPoints(
  rate: BirthRate,
  proposal: Proposal,
  points: number,
  shifts: Float64Array,
  onlyOdd: boolean,
  sums: Float64Array,
): void {
  const dimensions = shifts.length;
  const raw = new Float64Array(dimensions);
  const offsets = raw.subarray(AXES);
  const [a, b, c, d, e, f] = proposal.root;
  const volume = (2 * Math.PI) ** 1.5 * a * c * f;
  for (let k = onlyOdd ? 1 : 0; k < points; k += onlyOdd ? 2 : 1) {
    for (let j = 0; j < dimensions; j += 1) {
      const one = ((k * LATTICE_VECTOR[j % LATTICE_VECTOR.length]) % points) / points + shifts[j];
      raw[j] = one - Math.floor(one);
    }
    const z0 = draw(raw[0]);
    const z1 = draw(raw[1]);
    const z2 = draw(raw[2]);
    const p0 = a * z0;
    const p1 = b * z0 + c * z1;
    const p2 = d * z0 + e * z1 + f * z2;
    const found = rate.find(proposal.at[0] + p0, proposal.at[1] + p1, proposal.at[2] + p2, offsets);
    const weight = found * volume * Math.exp(0.5 * (z0 * z0 + z1 * z1 + z2 * z2));
    sums[0] += weight;
    sums[1] += weight * p0;
    sums[2] += weight * p1;
    sums[3] += weight * p2;
    sums[4] += weight * p0 * p0;
    sums[5] += weight * p0 * p1;
    sums[6] += weight * p1 * p1;
    sums[7] += weight * p0 * p2;
    sums[8] += weight * p1 * p2;
    sums[9] += weight * p2 * p2;
  }
}

function draw(raw: number): number {
  return approximateNormalQuantile(Math.max(END, Math.min(1 - END, raw)));
}

/** A normal density of the same middle and spread as the births that were found, somewhat wider. */
function fitProposal(old: Proposal, sums: Float64Array): Proposal {
  if (!(sums[0] > 0)) return old;
  const [m0, m1, m2] = [sums[1] / sums[0], sums[2] / sums[0], sums[3] / sums[0]];
  const means = [m0 * m0, m0 * m1, m1 * m1, m0 * m2, m1 * m2, m2 * m2];
  const root = takeRoot(means.map((mean, k) => sums[4 + k] / sums[0] - mean));
  return root === null ? old : { at: [old.at[0] + m0, old.at[1] + m1, old.at[2] + m2], root };
}

/** Lower triangle (Cholesky) of a symmetric matrix that is given by its own lower triangle, times `WIDER`; null: there is none. */
function takeRoot(lower: readonly number[]): Proposal['root'] | null {
  const [xx, xy, yy, xz, yz, zz] = lower as [number, number, number, number, number, number];
  const a = Math.sqrt(xx);
  const [b, d] = [xy / a, xz / a];
  const c = Math.sqrt(yy - b * b);
  const e = (yz - b * d) / c;
  const f = Math.sqrt(zz - d * d - e * e);
  if (!(a > 0 && c > 0 && f > 0)) return null;
  return [WIDER * a, WIDER * b, WIDER * c, WIDER * d, WIDER * e, WIDER * f];
}
