import type { Thread, ThreadName } from './threads.ts';

/** Table of a standard that has some sizes only. */
type Partly<T> = Readonly<Partial<Record<ThreadName, T>>>;

/** ISO 273 [mm]; all of fine and coarse, and medium beside M10, M12, M16, M20 and M24, recalled. */
const iso273: Readonly<Record<ThreadName, readonly [fine: number, medium: number, coarse: number]>> = {
  M6: [6.4, 6.6, 7],
  M8: [8.4, 9, 10],
  M10: [10.5, 11, 12],
  M12: [13, 13.5, 14.5],
  M14: [15, 15.5, 16.5],
  M16: [17, 17.5, 18.5],
  M18: [19, 20, 21],
  M20: [21, 22, 24],
  M22: [23, 24, 26],
  M24: [25, 26, 28],
};

/** EN 1992-4, Table 6.1: widest hole in the fixture [mm]. Recalled. */
const widestShared: Readonly<Record<ThreadName, number>> = {
  M6: 7,
  M8: 9,
  M10: 12,
  M12: 14,
  M14: 16,
  M16: 18,
  M18: 20,
  M20: 22,
  M22: 24,
  M24: 26,
};

/** EN 1090-2, Table 11: what a hole may be larger than the bolt [mm]; M14, M18 and M22 recalled. Long slots: 1.5 d. */
const en1090: Partly<readonly [normal: number, oversize: number, shortSlot: number]> = {
  M12: [1, 3, 4],
  M14: [1, 3, 4],
  M16: [2, 4, 6],
  M18: [2, 4, 6],
  M20: [2, 4, 6],
  M22: [2, 4, 6],
  M24: [2, 6, 8],
};
const LONG_SLOT = 1.5;

/** ANSI/AISC 360, Table J3.3M [mm]; slots as width and length over all. */
const aisc360: Partly<readonly [standard: number, oversize: number, shortLength: number, longLength: number]> = {
  M16: [18, 20, 22, 40],
  M20: [22, 24, 26, 50],
  M22: [24, 28, 30, 55],
  M24: [27, 30, 32, 60],
};

/** Holes over anchors in base plates, with the plate washer that goes over them [mm]: SCNZ, after AISC Design Guide 1. */
const basePlates: Partly<readonly [hole: number, washer: number, thickness: number]> = {
  M16: [22, 50, 6],
  M20: [26, 50, 6],
  M24: [30, 75, 10],
};

/** A hole in a plate, round or slotted [mm]. */
export interface PlateHole {
  /** Diameter, or width of a slot. */
  readonly diameter: number;
  /** Straight part of a slot, between the centres of its ends; 0: round. */
  readonly slot: number;
}

/** Fit of a round hole by ISO 273; null for a slot, which the standard does not know. */
export type Iso273Fit = 'fine' | 'medium' | 'coarse' | 'wider than coarse' | null;

/** Kind of hole by a standard of steelwork; null where its table does not have the size. */
export type HoleKind = 'normal' | 'oversize' | 'short slot' | 'long slot' | 'beyond the table' | null;

/** Gives the fit of a round hole by ISO 273: the finest series that it belongs to. Example: M16 in 18 mm → coarse. */
export function findIso273Fit(thread: Thread, hole: PlateHole): Iso273Fit {
  if (hole.slot > 0) return null;
  const [fine, medium, coarse] = iso273[thread.name];
  if (hole.diameter <= fine) return 'fine';
  if (hole.diameter <= medium) return 'medium';
  return hole.diameter <= coarse ? 'coarse' : 'wider than coarse';
}

/** Gives the widest hole over which inserts share a shear [mm], by EN 1992-4, Table 6.1 (recalled). Example: M16 → 18. */
export function findWidestHole(thread: Thread): number {
  return widestShared[thread.name];
}

/** The least kind that a hole fits into, of the limits on its width and on its length over all [mm]. */
function sortHole(
  { diameter, slot }: PlateHole,
  limits: { readonly normal: number; readonly oversize: number; readonly short: number; readonly long: number },
): HoleKind {
  if (slot === 0) {
    if (diameter <= limits.normal) return 'normal';
    return diameter <= limits.oversize ? 'oversize' : 'beyond the table';
  }
  if (diameter > limits.normal) return 'beyond the table';
  const length = diameter + slot;
  if (length <= limits.short) return 'short slot';
  return length <= limits.long ? 'long slot' : 'beyond the table';
}

/** Gives the kind of a hole by EN 1090-2, Table 11. Example: M16 in 20 mm → oversize. */
export function findEn1090Kind(thread: Thread, hole: PlateHole): HoleKind {
  const row = en1090[thread.name];
  if (row === undefined) return null;
  const [normal, oversize, short] = row;
  const d = thread.diameter;
  return sortHole(hole, { normal: d + normal, oversize: d + oversize, short: d + short, long: d + LONG_SLOT * d });
}

/** Gives the kind of a hole by ANSI/AISC 360, Table J3.3M. Example: M24 in 27 mm → normal (the table's "standard"). */
export function findAisc360Kind(thread: Thread, hole: PlateHole): HoleKind {
  const row = aisc360[thread.name];
  if (row === undefined) return null;
  const [normal, oversize, short, long] = row;
  return sortHole(hole, { normal, oversize, short, long });
}

/** A hole of a base plate over anchors, and the plate washer over it [mm]. */
export interface BasePlateHole {
  readonly widest: number;
  readonly washerOutside: number;
  readonly washerThickness: number;
}

/**
 * Gives the widest hole over an anchor in a base plate, with its plate washer [mm]; null where the table does not have the size.
 *
 * Source: Steel Construction New Zealand, 2016, after AISC Design Guide 1 and ASI Design Guide 7: d + 6. Example: M16 → 22, washer 50 × 6.
 */
export function findBasePlateHole(thread: Thread): BasePlateHole | null {
  const row = basePlates[thread.name];
  if (row === undefined) return null;
  const [widest, washerOutside, washerThickness] = row;
  return { widest, washerOutside, washerThickness };
}
