import { externalStripArea, internalStripArea, stripReduction } from './thread-shear.ts';
import type { Thread } from './threads.ts';

/** A bolt in an insert, as far as its threads can strip. Lengths mm, stresses MPa. */
export interface ThreadPair {
  readonly thread: Thread;
  /** By how much the insert's thread is oversize in diameter (`diametralAllowance`). */
  readonly allowance: number;
  /** Outside diameter of the insert around the thread; null where it is not known. */
  readonly bodyDiameter: number | null;
}

/** Strength in shear over strength in tension, as the formula for the length of engagement takes it. */
const SHEAR_SHARE = 1 / 2;
/** The same by von Mises; `stripReduction` goes with it. */
const VON_MISES = 1 / Math.sqrt(3);

/**
 * Gives which share of strip area × tensile strength counts.
 *
 * Source: FED-STD-H28/2B takes 1/2 ("shear area twice the tensile area"). Where the body is known, not more than what the steel parts of a
 * job take: von Mises less bending and swelling (`stripReduction`), which governs in thin walls.
 * Range: null for a body below 1.4 d, where the source gives nothing. Example: body 24 mm around M16 → 0.4350.
 */
function findShare({ thread, bodyDiameter }: ThreadPair): number | null {
  if (bodyDiameter === null) return SHEAR_SHARE;
  const reduction = stripReduction(bodyDiameter / thread.diameter);
  return reduction === null ? null : Math.min(SHEAR_SHARE, VON_MISES * reduction);
}

/** Something about each of the two threads: the bolt's and the insert's. */
export interface BothThreads {
  readonly bolt: number;
  readonly insert: number;
}

/**
 * Gives the loads at which the two threads strip at given stresses [N]; null where no rule covers the thin wall.
 *
 * Source: strip areas of FED-STD-H28/2B (`thread-shear.ts`) with the share above.
 * - engagement: length of full thread in contact [mm]; stress: tensile stress of the bolt's and of the insert's steel [MPa]
 * Example: M16, 6H, 16 mm, 640 and 350 MPa, body unknown → 133 616 N and 99 594 N.
 */
export function findStripLoads(pair: ThreadPair, engagement: number, stress: BothThreads): BothThreads | null {
  const share = findShare(pair);
  if (share === null) return null;
  return {
    bolt: share * externalStripArea(pair.thread, engagement, pair.allowance) * stress.bolt,
    insert: share * internalStripArea(pair.thread, engagement, pair.allowance) * stress.insert,
  };
}

/**
 * Gives the length of engagement at which the bolt breaks before either thread strips [mm]; null where no rule covers the thin wall.
 *
 * Source: FED-STD-H28/2B (also Machinery's Handbook): L_e = 2 A_s / (π n D1max (1/2n + (d2min − D1max)/√3)) for the bolt's thread,
 * times J = strip area × strength of the bolt's over that of the insert's thread where that is above 1. The same here as
 * load over load per millimetre, so that an oversize thread and a thin wall come in.
 * - ultimate: tensile strength of the bolt and of the insert [MPa]
 * Example: M16, 6H, 800 and 800 MPa → 12.01 mm, the bolt's thread governs.
 */
export function findFullStrengthEngagement(pair: ThreadPair, ultimate: BothThreads): number | null {
  const perMillimetre = findStripLoads(pair, 1, ultimate);
  if (perMillimetre === null) return null;
  return (pair.thread.stressArea * ultimate.bolt) / Math.min(perMillimetre.bolt, perMillimetre.insert);
}
