import type { Thread, ThreadName } from './threads.ts';

/** A flat washer [mm]. */
export interface Washer {
  readonly standard: 'ISO 7089' | 'ISO 7093-1';
  readonly outside: number;
  /** Nominal thickness. */
  readonly thickness: number;
  readonly thicknessMax: number;
}

type Row = readonly [outside: number, thickness: number, thicknessMax: number];

/** ISO 7089, normal series; M6, M8, M14, M18 and M22 recalled. */
const normal: Readonly<Record<ThreadName, Row>> = {
  M6: [12, 1.6, 1.8],
  M8: [16, 1.6, 1.8],
  M10: [20, 2, 2.2],
  M12: [24, 2.5, 2.7],
  M14: [28, 2.5, 2.7],
  M16: [30, 3, 3.3],
  M18: [34, 3, 3.3],
  M20: [37, 3, 3.3],
  M22: [39, 3, 3.3],
  M24: [44, 4, 4.3],
};

/** ISO 7093-1, large series; M6, M8, M14, M18 and M22 recalled. */
const large: Readonly<Record<ThreadName, Row>> = {
  M6: [18, 1.6, 1.8],
  M8: [24, 2, 2.2],
  M10: [30, 2.5, 2.7],
  M12: [37, 3, 3.3],
  M14: [44, 3, 3.3],
  M16: [50, 3, 3.3],
  M18: [56, 4, 4.3],
  M20: [60, 4, 4.3],
  M22: [66, 5, 5.6],
  M24: [72, 5, 5.6],
};

/** Gives the normal and the large flat washer of a thread, the smaller first [mm]. Example: M16 → 30 × 3 and 50 × 3. */
export function listWashers(thread: Thread): readonly [normal: Washer, large: Washer] {
  const read = (standard: Washer['standard'], [outside, thickness, thicknessMax]: Row): Washer => ({
    standard,
    outside,
    thickness,
    thicknessMax,
  });
  return [read('ISO 7089', normal[thread.name]), read('ISO 7093-1', large[thread.name])];
}
