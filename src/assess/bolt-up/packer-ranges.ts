import type { PackerRange } from '../../engine/hardware/bolt-length.ts';

/** Packers come in steps of this on a card [mm] (common practice: one length for 0–10, one for 10–20). */
const STEP = 10;

/** Beyond what is stated a card goes two steps on: more is for the designer to ask about. */
const STEPS = 2;

/**
 * Ranges of packers that a card has lengths for: first the stated thickness by itself, then steps of 10 mm up to at least 20 mm and to what is stated.
 * @example 0 → [0, 0], [0, 10], [10, 20]; 25 → [25, 25], [0, 10], [10, 20], [20, 30]
 */
export function listPackerRanges(stated: number): readonly PackerRange[] {
  const count = Math.max(STEPS, Math.ceil(stated / STEP));
  return [[stated, stated], ...Array.from({ length: count }, (_, k): PackerRange => [k * STEP, (k + 1) * STEP])];
}

/**
 * Packers as they count for the length of a bolt where an insert stands out of the face: the plate then lies on the insert, not on the packers.
 * @param lift how far the foremost insert of the connection stands out of the face; 0: none [mm]
 */
export function liftRange([least, greatest]: PackerRange, lift: number): PackerRange {
  return [Math.max(least, lift), Math.max(greatest, lift)];
}
