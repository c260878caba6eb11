import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/**
 * k8 where the product document gives none: 1 below 60 mm of embedment, else 2.
 * Source: EN 1992-4:2018, 7.2.2.4 (values of CEN/TS 1992-4-2:2009, 6.3.4).
 * @param h_ef effective embedment [mm]
 * @returns k8 [-]. Example: 59 mm → 1.0; 60 mm → 2.0.
 */
export function pryOutFactor(h_ef: number): number {
  return h_ef < 60 ? 1 : 2;
}

export const PRY_OUT_FACTOR = enClause({
  clause: '7.2.2.4',
  gives: 'ratio of pry-out to cone resistance',
  symbol: 'k_8',
  unit: '-',
  formula: 'h_ef < 60 ? 1 : 2',
  args: listArguments(['h_ef', 'mm', 'effective embedment', 40, 200]),
  fn: pryOutFactor,
});

/**
 * Characteristic pry-out resistance, V_Rk,cp = k8 N_Rk,c, times 0.75 with supplementary reinforcement.
 * Source: EN 1992-4:2018, 7.2.2.4.
 * @param k_re 1, or 0.75 with supplementary reinforcement [-]
 * @param k8 1 or 2 [-]
 * @param N_Rk_c cone resistance of the inserts that carry shear [N]
 * @returns V_Rk,cp [N]. Example: 1, 2, 30 000 N → 60 000 N.
 */
export function pryOut(k_re: number, k8: number, N_Rk_c: number): number {
  return k_re * k8 * N_Rk_c;
}

export const PRY_OUT = enClause({
  clause: '7.2.2.4',
  gives: 'characteristic pry-out resistance',
  symbol: 'V_Rk_cp',
  unit: 'N',
  formula: 'k_re * k_8 * N_Rk_c',
  args: listArguments(
    ['k_re', '-', '1, or 0.75 with supplementary reinforcement', 0.75, 1],
    ['k_8', '-', 'pry-out factor', 1, 2],
    ['N_Rk_c', 'N', 'cone resistance of the inserts in shear', 1e3, 1e6],
  ),
  fn: pryOut,
});
