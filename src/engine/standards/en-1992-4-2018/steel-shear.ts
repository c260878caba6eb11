import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/**
 * k6 of 7.2.2.3.1: 0.6 for f_uk ≤ 500 MPa, 0.5 up to 1000 MPa.
 * Source: EN 1992-4:2018, 7.2.2.3.1.
 * @param f_uk ultimate strength [MPa]
 * @returns k6 [-]. Example: 500 MPa → 0.60; 800 MPa → 0.50.
 */
export function shearFactor(f_uk: number): number {
  return f_uk <= 500 ? 0.6 : 0.5;
}

export const SHEAR_FACTOR = enClause({
  clause: '7.2.2.3.1',
  gives: 'ratio of shear to tension strength of the steel',
  symbol: 'k_6',
  unit: '-',
  formula: 'f_uk <= 500 ? 0.6 : 0.5',
  args: listArguments(['f_uk', 'MPa', 'ultimate strength of the steel', 300, 1000]),
  fn: shearFactor,
});

/**
 * Characteristic steel resistance of one insert in shear without lever arm, V_Rk,s = k7 k6 A_s f_uk.
 * Source: EN 1992-4:2018, 7.2.2.3.1.
 * @param k7 1, or 0.8 for a group with A5 ≤ 8 % [-]
 * @param k6 0.6 or 0.5 by strength [-]
 * @param A_s section [mm²]
 * @param f_uk ultimate strength [MPa]
 * @returns V_Rk,s [N]. Example: 1, 0.5, 157 mm², 800 MPa → 62 800 N.
 */
export function steelShear(k7: number, k6: number, A_s: number, f_uk: number): number {
  return k7 * k6 * A_s * f_uk;
}

export const STEEL_SHEAR = enClause({
  clause: '7.2.2.3.1',
  gives: 'characteristic steel resistance in shear',
  symbol: 'V_Rk_s',
  unit: 'N',
  formula: 'k_7 * k_6 * A_s * f_uk',
  args: listArguments(
    ['k_7', '-', 'ductility factor of a group', 0.8, 1],
    ['k_6', '-', 'ratio of shear to tension strength', 0.5, 0.6],
    ['A_s', 'mm2', 'section', 50, 1000],
    ['f_uk', 'MPa', 'ultimate strength of the steel', 300, 1000],
  ),
  fn: steelShear,
});

/**
 * Characteristic bending resistance left beside a tension, M_Rk,s = 1.2 W_el f_uk (1 − N_Ed/N_Rd,s), not below zero.
 * Source: EN 1992-4:2018, 7.2.2.3.2.
 * @param W_el elastic section modulus [mm³]
 * @param f_uk ultimate strength [MPa]
 * @param N_Ed tension on the insert, not below zero [N]
 * @param N_Rd_s design steel resistance in tension [N]
 * @returns M_Rk,s [N mm]. Example: 277 mm³, 800 MPa, 10 kN, 83.7 kN → 234 149 N mm.
 */
export function steelBending(W_el: number, f_uk: number, N_Ed: number, N_Rd_s: number): number {
  return 1.2 * W_el * f_uk * Math.max(0, 1 - N_Ed / N_Rd_s);
}

export const STEEL_BENDING = enClause({
  clause: '7.2.2.3.2',
  gives: 'characteristic bending resistance beside the tension',
  symbol: 'M_Rk_s',
  unit: 'N mm',
  formula: '1.2 * W_el * f_uk * max(0, 1 - N_Ed / N_Rd_s)',
  args: listArguments(
    ['W_el', 'mm3', 'elastic section modulus', 50, 2000],
    ['f_uk', 'MPa', 'ultimate strength of the steel', 300, 1000],
    ['N_Ed', 'N', 'tension on the insert', 0, 1e5],
    ['N_Rd_s', 'N', 'design steel resistance in tension', 2e4, 3e5],
  ),
  fn: steelBending,
});

/**
 * Characteristic steel resistance in shear with a lever arm, V_Rk,s = α_M M_Rk,s/l_a.
 * Source: EN 1992-4:2018, 7.2.2.3.2.
 * @param alpha_M restraint of the fixture: 1 free to turn, 2 fully held [-]
 * @param M_Rk_s bending resistance [N mm]
 * @param l_a lever arm [mm]
 * @returns V_Rk,s [N]. Example: 1, 234 149 N mm, 30 mm → 7805 N.
 */
export function leverArmShear(alpha_M: number, M_Rk_s: number, l_a: number): number {
  return (alpha_M * M_Rk_s) / l_a;
}

export const LEVER_ARM_SHEAR = enClause({
  clause: '7.2.2.3.2',
  gives: 'characteristic steel resistance in shear with lever arm',
  symbol: 'V_Rk_s_M',
  unit: 'N',
  formula: 'alpha_M * M_Rk_s / l_a',
  args: listArguments(
    ['alpha_M', '-', 'restraint of the fixture', 1, 2],
    ['M_Rk_s', 'N mm', 'bending resistance', 1e4, 1e6],
    ['l_a', 'mm', 'lever arm', 5, 200],
  ),
  fn: leverArmShear,
});
