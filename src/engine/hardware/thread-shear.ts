import type { Thread } from './threads.ts';

/** Tolerance class of an insert's internal thread: normal, or tapped oversize so that a hot-dip galvanised bolt goes in. */
export type InternalThreadClass = '6H' | '6AZ' | '6AX';

/**
 * Gives by how much an internal thread is larger in diameter than 6H [mm].
 *
 * Source: ISO 965-5 and ISO 10684, fundamental deviations EI of AZ = 300 + 20 P µm and AX = 220 P − 20 µm (P in mm),
 * recalled: confirm in print. Example: M16, 6AZ → 0.340 mm.
 */
export function diametralAllowance(thread: Thread, threadClass: InternalThreadClass): number {
  switch (threadClass) {
    case '6H':
      return 0;
    case '6AZ':
      return (300 + 20 * thread.pitch) / 1000;
    case '6AX':
      return (220 * thread.pitch - 20) / 1000;
  }
}

/** tan 30°: how much a thread with a 60° profile widens at each flank over its height. */
const FLANK = 1 / Math.sqrt(3);

/**
 * Gives the area along which the bolt's thread strips [mm²], at the minor diameter of the internal thread.
 *
 * Source: FED-STD-H28/2B (form of ASME B1.1, Appendix B): A = π L/P · D1 (P/2 + (d2 − D1)/√3), least bolt in greatest internal thread.
 * - engagement: L, length of full thread in contact [mm]
 * - allowance: by how much the internal thread is oversize in diameter [mm]
 * Range: 0 where the threads no longer touch. Example: M16, L = 16 mm, allowance 0 → 417.55 mm².
 */
export function externalStripArea(thread: Thread, engagement: number, allowance: number): number {
  const D1 = thread.internal6H.minorMax + allowance;
  const width = thread.pitch / 2 + FLANK * (thread.bolt6g.pitchMin - D1);
  return (Math.PI * engagement * D1 * Math.max(0, width)) / thread.pitch;
}

/**
 * Gives the area along which the insert's thread strips [mm²], at the outside diameter of the bolt.
 *
 * Source: FED-STD-H28/2B: A = π L/P · d (P/2 + (d − D2)/√3), least bolt in greatest internal thread. Arguments as for the bolt's.
 * Example: M16, L = 16 mm, allowance 0 → 569.1 mm².
 */
export function internalStripArea(thread: Thread, engagement: number, allowance: number): number {
  const d = thread.bolt6g.outsideMin;
  const width = thread.pitch / 2 + FLANK * (d - (thread.internal6H.pitchMax + allowance));
  return (Math.PI * engagement * d * Math.max(0, width)) / thread.pitch;
}

/**
 * Gives how much of the strip area counts, since threads bend and a thin-walled body swells under the wedge of the flanks.
 *
 * Source: E. M. Alexander, SAE 770420 (also VDI 2230-1), recalled: dilation C1 = 3.8 r − r² − 2.61 for 1.4 ≤ r < 1.9, 1 above;
 * bending C2 = C3 = 0.897, their least value over all ratios of strength.
 * - wallRatio: r, outside diameter of the body over the thread's diameter
 * Range: null below r = 1.4, where the source gives nothing. Example: r = 1.5 → 0.84 × 0.897 = 0.7535.
 */
export function stripReduction(wallRatio: number): number | null {
  if (wallRatio < 1.4) return null;
  const dilation = wallRatio < 1.9 ? 3.8 * wallRatio - wallRatio ** 2 - 2.61 : 1;
  return dilation * 0.897;
}
