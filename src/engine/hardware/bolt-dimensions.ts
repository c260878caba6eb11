import type { Thread, ThreadName } from './threads.ts';

/** Sizes of a hexagon bolt's head [mm]. */
export interface BoltHead {
  /** Height k, nominal. */
  readonly height: number;
  /** Width across flats s: the spanner. */
  readonly acrossFlats: number;
}

/** ISO 4014 and ISO 4017; M6, M8, M14, M18 and M22 recalled. */
const heads: Readonly<Record<ThreadName, readonly [height: number, acrossFlats: number]>> = {
  M6: [4, 10],
  M8: [5.3, 13],
  M10: [6.4, 16],
  M12: [7.5, 18],
  M14: [8.8, 21],
  M16: [10, 24],
  M18: [11.5, 27],
  M20: [12.5, 30],
  M22: [14, 34],
  M24: [15, 36],
};

/** Gives the head of a hexagon bolt by ISO 4014 and ISO 4017 [mm]. Example: M16 → height 10, 24 across flats. */
export function findBoltHead(thread: Thread): BoltHead {
  const [height, acrossFlats] = heads[thread.name];
  return { height, acrossFlats };
}

/**
 * Gives the length of thread b on a bolt that is not threaded to its head [mm].
 *
 * Source: ISO 4014: b = 2d + 6 up to 125 mm, 2d + 12 up to 200 mm, 2d + 25 above; never longer than the bolt.
 * - length: nominal length l [mm]
 * Example: M16 × 100 → 38.
 */
export function findThreadLength(thread: Thread, length: number): number {
  const twice = 2 * thread.diameter;
  const b = length <= 125 ? twice + 6 : length <= 200 ? twice + 12 : twice + 25;
  return Math.min(b, length);
}

/** Standards of hexagon bolts: with shank, and threaded to the head. */
export type BoltStandard = 'ISO 4014' | 'ISO 4017';

/** Nominal lengths up to 300 mm, whatever the size of the thread; which of them are made in one size, the maker says. */
const nominalLengths: Readonly<Record<BoltStandard, readonly number[]>> = {
  'ISO 4014': [
    12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200, 220, 240,
    260, 280, 300,
  ],
  'ISO 4017': [
    2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160,
    180, 200,
  ],
};

/** Gives the nominal lengths of a standard, in order [mm]. 75, 85 and 95 are none. */
export function listNominalLengths(standard: BoltStandard): readonly number[] {
  return nominalLengths[standard];
}

/** Gives the standards that have this nominal length. Example: 220 → only ISO 4014; 75 → none. */
export function findStandardsWithLength(length: number): readonly BoltStandard[] {
  return (['ISO 4017', 'ISO 4014'] as const).filter((standard) => nominalLengths[standard].includes(length));
}
