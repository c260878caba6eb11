import type { Thread } from './threads.ts';

/** What stands between the head of the bolt and the bottom of the insert's thread. Lengths mm. */
export interface BoltPath {
  readonly thread: Thread;
  /** Between washer and face: the plate, and packers that are always there. */
  readonly grip: number;
  readonly washer: number;
  /** What the washer may be at most: least engagement counts with it. */
  readonly thickestWasher: number;
  /** From the face of the concrete to the first full thread: recess and the insert's own beginning. */
  readonly threadStart: number;
  /** Length of full thread. */
  readonly threadDepth: number;
  /** Least length of full thread in contact. */
  readonly minEngagement: number;
}

/** Packers that may lie under the plate [mm]: from the least to the greatest. */
export type PackerRange = readonly [least: number, greatest: number];

/** A stock length and how deep it goes [mm]. */
export interface LengthChoice {
  readonly length: number;
  /** With the greatest packers and the thickest washer, and with the least packers. */
  readonly engagement: { readonly least: number; readonly greatest: number };
  /** What is left to the bottom of the thread with the least packers. */
  readonly clearToBottom: number;
}

/** Packers and the length for them; null where no stock length serves them. */
export interface PackerRow {
  readonly packers: PackerRange;
  readonly choice: LengthChoice | null;
}

/** Sums of decimal lengths may be off by rounding [mm]. */
const ROUNDING = 1e-9;

/** Room that must be left at the bottom of the thread: one pitch (common practice). */
export function leastClearance(thread: Thread): number {
  return thread.pitch;
}

/** Length under the head up to the first full thread of the insert [mm]. */
function lengthToThread({ grip, threadStart }: BoltPath, washer: number, packers: number): number {
  return washer + grip + packers + threadStart;
}

/**
 * Gives the shortest and the longest bolt that serves every thickness of packers in a range [mm]. The shortest has the least engagement
 * with all packers in; the longest ends one pitch above the bottom with the fewest. None fits where the first is above the second.
 * Example: M16, washer 3, grip 15, thread 40 deep from the face, engagement 16, no packers: 34 to 56.
 */
export function findLengthLimits(path: BoltPath, packers: PackerRange): readonly [shortest: number, longest: number] {
  const shortest = lengthToThread(path, path.thickestWasher, packers[1]) + path.minEngagement;
  const longest = lengthToThread(path, path.washer, packers[0]) + path.threadDepth - leastClearance(path.thread);
  return [shortest, longest];
}

/** What a bolt of a given length does over a range of packers. Its numbers may be negative: too short, or on the bottom. */
export function placeBolt(path: BoltPath, length: number, packers: PackerRange): LengthChoice {
  const greatest = length - lengthToThread(path, path.washer, packers[0]);
  return {
    length,
    engagement: { least: length - lengthToThread(path, path.thickestWasher, packers[1]), greatest },
    clearToBottom: path.threadDepth - greatest,
  };
}

/** Gives the shortest stock length that serves a range of packers; null when none does. */
export function chooseLength(path: BoltPath, stock: readonly number[], packers: PackerRange): LengthChoice | null {
  const [shortest, longest] = findLengthLimits(path, packers);
  const fitting = stock.filter((length) => length >= shortest - ROUNDING && length <= longest + ROUNDING);
  return fitting.length === 0 ? null : placeBolt(path, Math.min(...fitting), packers);
}

/**
 * Splits a range of packers into as few parts as the stock allows, each with its one length; a part that no length serves has none.
 *
 * Each part begins where the last one ends and takes the length that reaches farthest. Example: M16, thread 25 deep, engagement 16,
 * grip 15, washer 3, stock 35, 40, 45, packers 0 to 15 → 40 for 0 to 6, 45 for 6 to 11, none above.
 */
export function splitPackerRange(
  path: BoltPath,
  stock: readonly number[],
  [least, greatest]: PackerRange,
): readonly PackerRow[] {
  const rows: PackerRow[] = [];
  let from = least;
  for (;;) {
    const part = findFarthestPart(path, stock, from, greatest);
    const choice = part.isServed ? chooseLength(path, stock, [from, part.to]) : null;
    rows.push({ packers: [from, part.to], choice });
    if (part.to >= greatest) return rows;
    from = part.to;
  }
}

/** How far from `from` on one length serves; where none does, up to where one begins to. */
function findFarthestPart(
  path: BoltPath,
  stock: readonly number[],
  from: number,
  greatest: number,
): { readonly to: number; readonly isServed: boolean } {
  const served = stock.map((length) => rangeServed(path, length)).filter(([low, high]) => low <= high + ROUNDING);
  const isLast = greatest - from <= ROUNDING;
  const ends = served
    .filter(([low, high]) => low <= from + ROUNDING && (isLast ? high >= from - ROUNDING : high > from + ROUNDING))
    .map(([, high]) => high);
  if (ends.length > 0) return { to: Math.min(greatest, Math.max(...ends)), isServed: true };
  const later = served.map(([low]) => low).filter((low) => low > from + ROUNDING);
  return { to: Math.min(greatest, ...later), isServed: false };
}

/** The packers that one length serves: fewer would bring it to the bottom, more would leave too little thread. */
function rangeServed(path: BoltPath, length: number): PackerRange {
  const { clearToBottom, engagement } = placeBolt(path, length, [0, 0]);
  return [leastClearance(path.thread) - clearToBottom, engagement.least - path.minEngagement];
}
