import { normalQuantile } from '../statistics/normal.ts';
import { canCountBirths, findBirthChance } from './birth-chance.ts';
import { type ChanceEffort, type FitChance, findFitChance } from './fit-chance.ts';
import type { ScatteredHole } from './scatter-space.ts';
import { findTwoHoleChance } from './two-hole-chance.ts';

/** Steps of the search; it is there after four or five. */
const MOST_STEPS = 20;
/** A slack is known to that share of itself. */
const CLOSE = 1e-4;
/** Chances are kept that far from 0 and 1 while their normal quantiles are compared. */
const END = 1e-15;
/** The search goes from a thousandth of the scatter to a thousand times it. */
const RANGE = 1000;

/** A plate that misses less often is left to rays, which keep the digits of what is rare. */
const RARE = 0.05;
const PILOT_RAYS = 32;
/** Points of births for one of rays at most: their error falls faster than the points grow. */
const BIRTHS_FOR_RAYS = 4;

/**
 * Chance of a plate: in closed form for two round holes without bias; where it is not nearly sure, by counting births; else by rays. A few rays tell which.
 */
export function findChance(holes: readonly ScatteredHole[], effort: ChanceEffort): FitChance {
  const closed = findClosed(holes);
  if (closed !== null) return closed;
  if (holes.length < 3 || !canCountBirths(holes)) return findFitChance(holes, effort);
  const pilot = findFitChance(holes, { ...effort, most: Math.min(PILOT_RAYS, effort.most) });
  if (pilot.standardError <= effort.enough) return pilot;
  return pilot.misses < RARE
    ? findFitChance(holes, effort)
    : findBirthChance(holes, { ...effort, most: BIRTHS_FOR_RAYS * effort.most });
}

function findClosed(holes: readonly ScatteredHole[]): FitChance | null {
  const [one, other] = holes;
  const isTwoRound =
    holes.length === 2 && holes.every(({ slot, bias, slack }) => slot === 0 && bias === undefined && slack >= 0);
  if (!isTwoRound || one === undefined || other === undefined) return null;
  const distance = Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]);
  const fits = findTwoHoleChance(distance, one.slack + other.slack, Math.hypot(one.sigma, other.sigma));
  return { fits, misses: 1 - fits, standardError: 0, rays: 0 };
}

/**
 * The equal slack of all holes with which the plate goes on with a chance [mm]; slots keep their straight part. Every step of the search sees the same
 * rays, so that it finds the root of one smooth curve.
 * @param target above 0 and below 1
 * @returns 0 for one hole; null: at no slack from a thousandth of the scatter to a thousand times it
 */
export function findSlackForChance(
  holes: readonly ScatteredHole[],
  target: number,
  effort: ChanceEffort,
): number | null {
  if (holes.length < 2) return 0;
  const sigma = Math.max(...holes.map((hole) => hole.sigma));
  const wanted = normalQuantile(target);
  const excess = (logarithm: number): number => {
    const slack = sigma * Math.exp(logarithm);
    const trial = holes.map((hole) => ({ ...hole, slack }));
    const { fits, misses } = findClosed(trial) ?? findFitChance(trial, effort);
    const level = fits < 0.5 ? normalQuantile(Math.max(END, fits)) : -normalQuantile(Math.max(END, misses));
    return level - wanted;
  };
  let [low, high] = [-Math.log(RANGE), Math.log(RANGE)];
  let [at, step] = [Math.log(2), 0.5];
  let before: readonly [at: number, excess: number] | null = null;
  for (let steps = 0; steps < MOST_STEPS; steps += 1) {
    const over = excess(at);
    if (over > 0) high = Math.min(high, at);
    else low = Math.max(low, at);
    const slope: number = before === null ? 1.5 : (over - before[1]) / (at - before[0]);
    before = [at, over];
    step = slope > 0.05 ? -over / slope : -Math.sign(over) * step;
    const next: number = Math.max(at - 2, Math.min(at + 2, at + step));
    if (Math.abs(next - at) < CLOSE) return sigma * Math.exp(next);
    at = next > low && next < high ? next : (low + high) / 2;
    if (high - low < CLOSE) break;
  }
  return high - low < CLOSE && low > -Math.log(RANGE) && high < Math.log(RANGE) ? sigma * Math.exp(at) : null;
}
