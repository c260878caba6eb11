/** Accuracy classes of measuring tapes (OIML R 35-1; Directive 2014/32/EU, MI-008). */
export type TapeClass = 'I' | 'II' | 'III';

/** a and b of a + b L: mm, and mm a metre. */
const COEFFICIENTS: Readonly<Record<TapeClass, readonly [a: number, b: number]>> = {
  I: [0.1, 0.1],
  II: [0.3, 0.2],
  III: [0.6, 0.4],
};

const MM_PER_M = 1000;
/** A length above a whole metre by less than this [mm] is that metre: rounding in floating point. */
const ROUNDING = 1e-6;
/** Reading to the nearest whole millimetre [mm]. */
const READING = 0.5;
/** Play and wear of the hook, or of what stands for it at the zero end [mm]: common practice. */
const HOOK = 1;

/**
 * Largest permissible error of a tape [mm], either way: a + b L, with L in metres rounded up to the next whole metre.
 *
 * Source: OIML R 35-1 and Directive 2014/32/EU Annex X (MI-008), as printed by a reference page and a maker's table; at 20 °C and the
 * pull that the tape is marked with.
 *
 * @param length the measured length [mm], not negative
 * @example class II, 2400 mm: 0.3 + 0.2 · 3 = 0.9 mm
 */
export function permissibleTapeError(tapeClass: TapeClass, length: number): number {
  const [a, b] = COEFFICIENTS[tapeClass];
  return a + b * Math.ceil((length - ROUNDING) / MM_PER_M);
}

/**
 * Standard deviation of a length that may lie anywhere within ± `half` with equal chance: half/√3.
 *
 * Source: JCGM 100:2008 (GUM) 4.3.7 (number of the clause recalled).
 */
export function uniformDeviation(half: number): number {
  return half / Math.sqrt(3);
}

/**
 * Standard deviation of one length taken with a tape [mm]: the tape's permissible error, reading to the millimetre (± 0.5 mm) and the hook
 * (± 1 mm, common practice), each uniform, their variances added.
 *
 * @example class II, 2400 mm: √(0.9² + 0.5² + 1²)/√3 = 0.829 mm
 */
export function tapeDeviation(tapeClass: TapeClass, length: number): number {
  return uniformDeviation(Math.hypot(permissibleTapeError(tapeClass, length), READING, HOOK));
}
