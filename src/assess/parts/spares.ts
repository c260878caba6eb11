import type { Yard } from '../../job/documents/yard.ts';
import type { PartKind } from './part-kind.ts';

export type SparesRule = Yard['spares'];

/** A share that floating point has put a hair above a whole number is that number: 7 % of 100 is 7, not 8. */
const ROUNDING = 1e-9;

/** A share of a count, rounded up to whole pieces. */
export function roundShareUp(share: number, count: number): number {
  return Math.ceil(share * count - ROUNDING) + 0;
}

/**
 * Spares to take along for a count: the yard's share of it rounded up, and at least its least number. None for what comes back from the pour,
 * what is made for one place, or what is not needed at all.
 * @example 5 %, at least 2: for 12 inserts 2 (0.6 is less), for 60 inserts 3
 */
export function countSpares({ hasSpares }: PartKind, count: number, { share, atLeast }: SparesRule): number {
  return !hasSpares || count === 0 ? 0 : Math.max(atLeast, roundShareUp(share, count));
}

/**
 * Whole packs that hold a count.
 * @example 101 nails in packs of 50: 3
 */
export function countPacks(count: number, packSize: number): number {
  return Math.ceil(count / packSize);
}
