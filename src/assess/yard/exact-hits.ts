import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { PiecePlan } from './piece-plan.ts';

/** One length that somebody taped, whether it is the printed one to the millimetre, and how probable that is where he really taped it. */
export interface TapedReading {
  readonly person: string;
  readonly isExact: boolean;
  readonly chance: number;
}

/** How often a person read just what is printed. */
export interface ExactHits {
  readonly person: string;
  readonly readings: number;
  readonly exact: number;
  /** So many would be exact by chance. */
  readonly expected: number;
  /** Probability of at least so many by chance. */
  readonly tail: number;
  readonly verdict: 'too few to say' | 'as by taping' | 'far more than by taping';
}

/** From fewer readings nothing is said. */
const FEWEST = 20;
/** Rarer than that it is told to the office: one honest person in a thousand is told, too. */
const RARE = 0.001;
/** Readings are rounded to whole mm. */
const HALF = 0.5;
/** No tape and no hand is better than that [mm]. */
const LEAST_SCATTER = 0.5;

/**
 * Distribution of a standard normal variable. Source: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.17; the error is below 7.5e-8.
 * @example 0.25 → 0.598706
 */
export function normalShare(z: number): number {
  if (z < 0) return 1 - normalShare(-z);
  const t = 1 / (1 + 0.231_641_9 * z);
  const sum =
    t * (0.319_381_53 + t * (-0.356_563_782 + t * (1.781_477_937 + t * (-1.821_255_978 + t * 1.330_274_429))));
  return 1 - (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * sum;
}

/**
 * Probability that an honest reading, rounded to whole mm, is the printed length.
 * @param off printed less designed [mm]
 * @param scatter standard deviation of taping and holding [mm]
 * @example 0, 2 → 0.197
 */
export function chanceOfExact(off: number, scatter: number): number {
  const sigma = Math.max(scatter, LEAST_SCATTER);
  return normalShare((off + HALF) / sigma) - normalShare((off - HALF) / sigma);
}

/**
 * Probability that at least so many of independent events come, each with a probability of its own: exact, by adding one event after another.
 * @example two of 0.5 and 0.5 → 0.25
 */
export function tailOfHits(chances: readonly number[], hits: number): number {
  if (hits <= 0) return 1;
  // Up to `hits` of them; whatever reaches that number stays there.
  const share = new Float64Array(hits + 1);
  share[0] = 1;
  for (const chance of chances) {
    share[hits] = share[hits]! + share[hits - 1]! * chance;
    for (let count = hits - 1; count > 0; count -= 1)
      share[count] = share[count]! * (1 - chance) + share[count - 1]! * chance;
    share[0] = share[0]! * (1 - chance);
  }
  return share[hits]!;
}

function readingsOf({ taped, printed, scatter }: SetOutItem, record: RecordOf<'measured'>): readonly TapedReading[] {
  const person = record.measuredBy ?? record.person;
  const lengths = printed.kind === 'plan' ? [printed.x, printed.y] : [printed.along, printed.aboveBed];
  const values = [record.body.x_mm, record.body.y_mm];
  return values.flatMap((value, axis) => {
    const nominal = lengths[axis]!; // two of each
    if (value === null) return [];
    const sigma = axis === 0 ? scatter.x : scatter.y;
    return [{ person, isExact: Math.round(value) === nominal, chance: chanceOfExact(nominal - taped[axis]!, sigma) }];
  });
}

/** Every length that was taped by what the piece is to be now; choices between readings are none. */
export function listReadings(records: Iterable<FactRecord>, plan: PiecePlan): readonly TapedReading[] {
  const items = new Map(plan.setOut.items.map((item) => [item.castIn.key, item]));
  return [...records].flatMap((record) => {
    if (record.kind !== 'measured' || record.piece !== plan.piece || record.body.basis === 'chosen') return [];
    const item = record.item === null ? undefined : items.get(record.item);
    return item === undefined || record.checkKey !== plan.keys.get(item.castIn.key) ? [] : readingsOf(item, record);
  });
}

/**
 * The share of readings that are just what is printed, person by person, beside what honest taping gives. It proves nothing about anybody: it says where
 * to look. Readings of one piece are taken as independent.
 */
export function judgeExactHits(readings: readonly TapedReading[]): readonly ExactHits[] {
  const people = [...new Set(readings.map(({ person }) => person))].sort();
  return people.map((person) => {
    const own = readings.filter((reading) => reading.person === person);
    const exact = own.filter(({ isExact }) => isExact).length;
    const chances = own.map(({ chance }) => chance);
    const tail = tailOfHits(chances, exact);
    return {
      person,
      readings: own.length,
      exact,
      expected: chances.reduce((sum, chance) => sum + chance, 0),
      tail,
      verdict: own.length < FEWEST ? 'too few to say' : tail < RARE ? 'far more than by taping' : 'as by taping',
    };
  });
}

/** `judgeExactHits` of the readings of one piece. */
export function exactHits(records: Iterable<FactRecord>, plan: PiecePlan): readonly ExactHits[] {
  return judgeExactHits(listReadings(records, plan));
}
