import { COVER_DEVIATION, type ExposureClass, findDurabilityCover, nominalCover } from '../../engine/material/cover.ts';

/** Meant for 50 years: EN 1992-1-1, 4.4.1.2(5). */
const STRUCTURAL_CLASS = 'S4';

/**
 * Concrete that a steel part wants toward a face or side, c_nom [mm]: EN 1992-1-1, 4.4.1, structural class S4, with the recommended allowance
 * for deviation. Steel that cannot rust wants none against corrosion, but the 10 mm that any cover has.
 *
 * @param bond least cover for bond: a bar's diameter; 0 for an insert [mm]
 * @example zinc-coated insert in XC4: 30 + 10 = 40 mm.
 */
export function findWantedCover(exposure: ExposureClass, bond: number, isStainless: boolean): number {
  const durability = isStainless ? 0 : findDurabilityCover(exposure, STRUCTURAL_CLASS);
  return nominalCover(bond, durability, COVER_DEVIATION);
}
