import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/**
 * Influence of the member's thickness on splitting, ψ_h,sp = (h/h_min)^(2/3), at most
 * max(1, ((h_ef + 1.5 c1)/h_min)^(2/3)) and at most 2.
 * Source: EN 1992-4:2018, 7.2.1.7.
 * @param h thickness [mm]
 * @param h_min smallest thickness of the product document [mm]
 * @param h_ef effective embedment [mm]
 * @param c1 edge distance [mm]
 * @returns ψ_h,sp [-]. Example: 200, 160, 100, 80 mm → 1.160.
 */
export function splittingThicknessFactor(h: number, h_min: number, h_ef: number, c1: number): number {
  const limit = Math.max(1, ((h_ef + 1.5 * c1) / h_min) ** (2 / 3));
  return Math.min((h / h_min) ** (2 / 3), limit, 2);
}

export const SPLITTING_THICKNESS_FACTOR = enClause({
  clause: '7.2.1.7',
  gives: 'factor for the member thickness in splitting',
  symbol: 'psi_h_sp',
  unit: '-',
  formula: 'min((h / h_min)^(2/3), max(1, ((h_ef + 1.5 * c_1) / h_min)^(2/3)), 2)',
  args: listArguments(
    ['h', 'mm', 'thickness of the member', 100, 500],
    ['h_min', 'mm', 'smallest thickness of the product document', 80, 300],
    ['h_ef', 'mm', 'effective embedment', 40, 300],
    ['c_1', 'mm', 'edge distance', 30, 500],
  ),
  recalled: true,
  fn: splittingThicknessFactor,
});

/**
 * Basic splitting resistance where the product document gives none: the smaller of pull-out and basic cone resistance.
 * Source: EN 1992-4:2018, 7.2.1.7.
 * @param N_p pull-out resistance [N]
 * @param N0_c basic cone resistance [N]
 * @returns N⁰_Rk,sp [N]. Example: 256 320 and 47 356 N → 47 356 N.
 */
export function splittingBasic(N_p: number, N0_c: number): number {
  return Math.min(N_p, N0_c);
}

export const SPLITTING_BASIC = enClause({
  clause: '7.2.1.7',
  gives: 'basic splitting resistance',
  symbol: 'N0_Rk_sp',
  unit: 'N',
  formula: 'min(N_Rk_p, N0_Rk_c)',
  args: listArguments(
    ['N_Rk_p', 'N', 'pull-out resistance', 1e4, 1e6],
    ['N0_Rk_c', 'N', 'basic cone resistance', 1e4, 1e6],
  ),
  recalled: true,
  fn: splittingBasic,
});

/**
 * Characteristic splitting resistance.
 * Source: EN 1992-4:2018, 7.2.1.7.
 * @returns N_Rk,sp [N]. Example: 47 356 N · 0.8 · 0.9 · 1 · 1 · 1 · 1.16 → 39 552 N.
 */
export function splittingResistance(
  N0: number,
  areaRatio: number,
  psi_s: number,
  psi_re: number,
  psi_ec_1: number,
  psi_ec_2: number,
  psi_h: number,
): number {
  return N0 * areaRatio * psi_s * psi_re * psi_ec_1 * psi_ec_2 * psi_h;
}

export const SPLITTING_RESISTANCE = enClause({
  clause: '7.2.1.7',
  gives: 'characteristic splitting resistance',
  symbol: 'N_Rk_sp',
  unit: 'N',
  formula: 'N0_Rk_sp * A_c_N_ratio * psi_s_N * psi_re_N * psi_ec_N_1 * psi_ec_N_2 * psi_h_sp',
  args: listArguments(
    ['N0_Rk_sp', 'N', 'basic splitting resistance', 1e3, 1e6],
    ['A_c_N_ratio', '-', 'A_c,N / A0_c,N with c_cr,sp', 0.1, 9],
    ['psi_s_N', '-', 'factor for the nearest edge', 0.7, 1],
    ['psi_re_N', '-', 'factor for dense reinforcement', 0.7, 1],
    ['psi_ec_N_1', '-', 'factor for unequal tension, first axis', 0.3, 1],
    ['psi_ec_N_2', '-', 'factor for unequal tension, second axis', 0.3, 1],
    ['psi_h_sp', '-', 'factor for the thickness', 1, 2],
  ),
  fn: splittingResistance,
});
