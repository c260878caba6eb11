import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/**
 * Ratio of pry-out to breakout strength, k_cp: 1 below 2.5 in (in SI 65 mm) of embedment, else 2.
 * Source: ACI 318-19 and 318M-19, 17.7.3.1.
 * @param h_ef effective embedment [mm]
 * @param h_k embedment from which k_cp is 2 [mm]
 * @returns k_cp [-]. Example: 64, 65 mm → 1.0; 65, 65 mm → 2.0.
 */
export function pryOutFactor(h_ef: number, h_k: number): number {
  return h_ef < h_k ? 1 : 2;
}

export const PRY_OUT_FACTOR = aciClause({
  clause: '17.7.3.1',
  gives: 'ratio of pry-out to breakout strength',
  symbol: 'k_cp',
  unit: '-',
  formula: 'h_ef < h_k ? 1 : 2',
  args: listArguments(
    ['h_ef', 'mm', 'effective embedment', 40, 90],
    ['h_k', 'mm', 'embedment from which k_cp is 2', 63, 65],
  ),
  recalled: true,
  fn: pryOutFactor,
});

/**
 * Nominal pry-out strength, V_cpg = k_cp N_cpg.
 * Source: ACI 318-19 and 318M-19, 17.7.3.1.
 * @param k_cp 1 or 2 [-]
 * @param N_cpg breakout strength of the anchors that carry shear [N]
 * @returns V_cpg [N]. Example: 2, 30 000 N → 60 000 N.
 */
export function pryOut(k_cp: number, N_cpg: number): number {
  return k_cp * N_cpg;
}

export const PRY_OUT = aciClause({
  clause: '17.7.3.1',
  gives: 'nominal pry-out strength',
  symbol: 'V_cpg',
  unit: 'N',
  formula: 'k_cp * N_cpg',
  args: listArguments(
    ['k_cp', '-', 'pry-out factor', 1, 2],
    ['N_cpg', 'N', 'breakout strength of the anchors in shear', 1e3, 1e6],
  ),
  fn: pryOut,
});
