/** The coefficients and limits in which the inch-pound edition and the SI edition differ, for N, mm and MPa. */
export interface AciCoefficients {
  /** k_c of cast-in anchors, 17.6.2.2.1. */
  readonly breakout: number;
  /** Coefficient of the breakout formula for deep anchors, 17.6.2.2.3. */
  readonly deepBreakout: number;
  /** Embedments from and up to which the formula for deep anchors may be used, 17.6.2.2.3 [mm]. */
  readonly deepFrom: number;
  readonly deepTo: number;
  /** Coefficient of side-face blow-out, 17.6.4.1. */
  readonly blowOut: number;
  /** Coefficient of the edge formula with the anchor's diameter and length, 17.7.2.2.1(a). */
  readonly edge: number;
  /** Coefficient of the edge formula that caps it, 17.7.2.2.1(b). */
  readonly edgeCap: number;
  /** Highest ultimate strength of the steel that may be counted, 17.6.1.2 and 17.7.1.2 [MPa]. */
  readonly highestUltimate: number;
  /** Embedment from which k_cp is 2, 17.7.3.1 [mm]. */
  readonly pryOutDepth: number;
  /** Widest spacing of stirrups along an edge that count, 17.7.2.5 [mm]. */
  readonly widestStirrups: number;
}

/** Newtons in a pound, millimetres in an inch, both exact; MPa in a pound for each square inch. */
const POUND = 4.4482216152605;
const INCH = 25.4;
const PSI = POUND / (INCH * INCH);

/** A coefficient of a formula "coefficient √f'c length^power" from lb, psi and inches to N, MPa and mm. */
function convert(coefficient: number, power: number): number {
  return (coefficient * POUND) / (Math.sqrt(PSI) * INCH ** power);
}

/**
 * ACI 318-19, converted exactly: a coefficient k of k √f'c length^p is k · 4.448… N/lb over (√(0.006894… MPa/psi) ·
 * (25.4 mm/in)^p), with p = 1.5 for breakout and the cap of the edge formula, 5/3 for deep breakout, and 2 for blow-out
 * (c_a1 √A_brg) and the edge formula (√d_a c_a1^1.5).
 */
export const INCH_POUND: AciCoefficients = {
  breakout: convert(24, 1.5),
  deepBreakout: convert(16, 5 / 3),
  deepFrom: 11 * INCH,
  deepTo: 25 * INCH,
  blowOut: convert(160, 2),
  edge: convert(7, 2),
  edgeCap: convert(9, 1.5),
  highestUltimate: 125_000 * PSI,
  pryOutDepth: 2.5 * INCH,
  widestStirrups: 4 * INCH,
};

/** ACI 318M-19, which rounds its own. */
export const SI: AciCoefficients = {
  breakout: 10,
  deepBreakout: 3.9,
  deepFrom: 280,
  deepTo: 635,
  blowOut: 13,
  edge: 0.6,
  edgeCap: 3.7,
  highestUltimate: 860,
  pryOutDepth: 65,
  widestStirrups: 100,
};
