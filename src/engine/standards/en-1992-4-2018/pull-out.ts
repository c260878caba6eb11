import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/** k2 for headed fasteners, 7.2.1.5. */
export const PULL_OUT_FACTOR = { cracked: 7.5, uncracked: 10.5 } as const;

/**
 * Bearing area of the foot, A_h = π/4 (d_h² − d²); of the diameter d_h at most 6 t_h + d counts.
 * Source: EN 1992-4:2018, 7.2.1.5.
 * @param d_h diameter of the foot [mm]
 * @param d_h_max largest diameter that counts, 6 t_h + d; infinite where the thickness is not known [mm]
 * @param d body diameter [mm]
 * @returns A_h [mm²]. Example: 44, 90, 24 mm → 1068 mm².
 */
function bearingArea(d_h: number, d_h_max: number, d: number): number {
  const counted = Math.min(d_h, d_h_max);
  return (Math.PI / 4) * (counted * counted - d * d);
}

export const BEARING_AREA = enClause({
  clause: '7.2.1.5',
  gives: 'bearing area of the foot',
  symbol: 'A_h',
  unit: 'mm2',
  formula: 'pi / 4 * (min(d_h, d_h_max)^2 - d^2)',
  args: listArguments(
    ['d_h', 'mm', 'diameter of the foot (head)', 30, 90],
    ['d_h_max', 'mm', 'largest diameter that counts, 6 t_h + d', 30, 90],
    ['d', 'mm', 'body diameter', 10, 30],
  ),
  fn: bearingArea,
});

/**
 * Pull-out of one insert, N_Rk,p = k2 A_h f_ck.
 * Source: EN 1992-4:2018, 7.2.1.5.
 * @param k2 7.5 cracked, 10.5 uncracked [-]
 * @param A_h bearing area of the foot [mm²]
 * @param f_ck cylinder strength [MPa]
 * @returns N_Rk,p [N]. Example: 7.5, 1068 mm², 32 MPa → 256 320 N.
 */
export function pullOut(k2: number, A_h: number, f_ck: number): number {
  return k2 * A_h * f_ck;
}

export const PULL_OUT = enClause({
  clause: '7.2.1.5',
  gives: 'characteristic pull-out resistance of one insert',
  symbol: 'N_Rk_p',
  unit: 'N',
  formula: 'k2 * A_h * f_ck',
  args: listArguments(
    ['k2', '-', 'pull-out factor', 6, 11],
    ['A_h', 'mm2', 'bearing area of the foot', 200, 4000],
    ['f_ck', 'MPa', 'cylinder strength', 12, 90],
  ),
  fn: pullOut,
});
