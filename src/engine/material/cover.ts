import { listArguments } from '../standards/clause.ts';
import { materialClause } from './material-clause.ts';

/** Exposure class of concrete (EN 206, EN 1992-1-1 Table 4.1). */
export type ExposureClass = 'X0' | 'XC1' | 'XC2' | 'XC3' | 'XC4' | 'XD1' | 'XD2' | 'XD3' | 'XS1' | 'XS2' | 'XS3';

/** Structural class: S4 is meant for 50 years (EN 1992-1-1, 4.4.1.2(5)). */
export type StructuralClass = 'S1' | 'S2' | 'S3' | 'S4' | 'S5' | 'S6';

/** Columns of Table 4.4N. */
const COLUMNS: Readonly<Record<ExposureClass, number>> = {
  X0: 0,
  XC1: 1,
  XC2: 2,
  XC3: 2,
  XC4: 3,
  XD1: 4,
  XS1: 4,
  XD2: 5,
  XS2: 5,
  XD3: 6,
  XS3: 6,
};

/** c_min,dur [mm]: X0, XC1, XC2 and XC3, XC4, XD1 and XS1, XD2 and XS2, XD3 and XS3. Recalled; XC1 and XC3 of S4 confirmed. */
const DURABILITY_COVER: Readonly<Record<StructuralClass, readonly number[]>> = {
  S1: [10, 10, 10, 15, 20, 25, 30],
  S2: [10, 10, 15, 20, 25, 30, 35],
  S3: [10, 10, 20, 25, 30, 35, 40],
  S4: [10, 15, 25, 30, 35, 40, 45],
  S5: [15, 20, 30, 35, 40, 45, 50],
  S6: [20, 25, 35, 40, 45, 50, 55],
};

/** Allowance for deviation Δc_dev [mm], recommended value. Source: EN 1992-1-1:2004, 4.4.1.3(1). */
export const COVER_DEVIATION = 10;

/**
 * Gives the least cover against corrosion c_min,dur of steel that can rust [mm].
 *
 * Source: EN 1992-1-1:2004, Table 4.4N (recommended values). Example: XC3, S4 → 25.
 */
export function findDurabilityCover(exposure: ExposureClass, structuralClass: StructuralClass): number {
  return DURABILITY_COVER[structuralClass][COLUMNS[exposure]]!;
}

/**
 * Nominal cover, c_nom = max(c_min,b, c_min,dur, 10 mm) + Δc_dev.
 * Source: EN 1992-1-1:2004, 4.4.1.1(2), 4.4.1.2(2), without the reductions for stainless steel and coatings.
 * @param c_min_b least cover for bond: the bar's diameter; 0 for a part that needs none [mm]
 * @param c_min_dur least cover against corrosion [mm]
 * @param dc_dev allowance for deviation [mm]
 * @returns c_nom [mm]. Example: 8, 15, 10 → 25.
 */
export function nominalCover(c_min_b: number, c_min_dur: number, dc_dev: number): number {
  return Math.max(c_min_b, c_min_dur, 10) + dc_dev;
}

export const NOMINAL_COVER = materialClause({
  document: 'EN 1992-1-1',
  edition: '2004',
  clause: '4.4.1.1(2)',
  gives: 'nominal cover',
  symbol: 'c_nom',
  unit: 'mm',
  formula: 'max(c_min_b, c_min_dur, 10) + dc_dev',
  args: listArguments(
    ['c_min_b', 'mm', 'least cover for bond', 0, 40],
    ['c_min_dur', 'mm', 'least cover against corrosion', 10, 55],
    ['dc_dev', 'mm', 'allowance for deviation', 0, 10],
  ),
  fn: nominalCover,
});

/** Whether rain, spray or salt reaches concrete of a class, so that two metals in contact there stand wet. */
export function isWet(exposure: ExposureClass): boolean {
  return exposure === 'XC4' || bringsSalt(exposure);
}

/** Whether concrete of a class stands in chlorides, of the sea or of de-icing salt. */
export function bringsSalt(exposure: ExposureClass): boolean {
  return exposure.startsWith('XD') || exposure.startsWith('XS');
}
