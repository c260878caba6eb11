import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/** psi_c,P, 17.6.3.3.1. */
export const PULL_OUT_CRACKING = { cracked: 1, uncracked: 1.4 } as const;

/**
 * Net bearing area of the foot (head), A_brg = π/4 (d_h² − d²). The code names no limit to the diameter that bears; as in
 * EN 1992-4:2018, 7.2.1.5, at most 6 t_h + d counts here: a choice, since a wider thin disc bends.
 * Source: ACI 318-19 and 318M-19, 17.6.3.2.2 and the notation of chapter 2.
 * @param d_h diameter of the foot [mm]
 * @param d_h_max largest diameter that counts, 6 t_h + d; infinite where the thickness is not known [mm]
 * @param d body diameter [mm]
 * @returns A_brg [mm²]. Example: 44, 90, 24 mm → 1068 mm².
 */
function bearingArea(d_h: number, d_h_max: number, d: number): number {
  const counted = Math.min(d_h, d_h_max);
  return (Math.PI / 4) * (counted * counted - d * d);
}

export const BEARING_AREA = aciClause({
  clause: '17.6.3.2.2',
  gives: 'net bearing area of the foot',
  symbol: 'A_brg',
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
 * Pull-out strength of one headed anchor in cracked concrete, N_p = 8 A_brg f'c.
 * Source: ACI 318-19 and 318M-19, 17.6.3.2.2(a).
 * @param A_brg net bearing area of the foot [mm²]
 * @param f_c specified compressive strength f'c [MPa]
 * @returns N_p [N]. Example: 1068 mm², 28 MPa → 239 232 N.
 */
export function pullOutBasic(A_brg: number, f_c: number): number {
  return 8 * A_brg * f_c;
}

export const PULL_OUT_BASIC = aciClause({
  clause: '17.6.3.2.2(a)',
  gives: 'pull-out strength of one anchor in cracked concrete',
  symbol: 'N_p',
  unit: 'N',
  formula: '8 * A_brg * f_c',
  args: listArguments(
    ['A_brg', 'mm2', 'net bearing area of the foot', 200, 4000],
    ['f_c', 'MPa', 'specified compressive strength', 17, 70],
  ),
  fn: pullOutBasic,
});

/**
 * Nominal pull-out strength of one anchor, N_pn = ψ_c,P N_p.
 * Source: ACI 318-19 and 318M-19, 17.6.3.1.
 * @param psi_c_P 1 cracked, 1.4 uncracked concrete [-]
 * @param N_p pull-out strength in cracked concrete [N]
 * @returns N_pn [N]. Example: 1.4, 239 232 N → 334 925 N.
 */
export function pullOutResistance(psi_c_P: number, N_p: number): number {
  return psi_c_P * N_p;
}

export const PULL_OUT_RESISTANCE = aciClause({
  clause: '17.6.3.1',
  gives: 'nominal pull-out strength of one anchor',
  symbol: 'N_pn',
  unit: 'N',
  formula: 'psi_c_P * N_p',
  args: listArguments(
    ['psi_c_P', '-', 'factor for uncracked concrete', 1, 1.4],
    ['N_p', 'N', 'pull-out strength in cracked concrete', 1e4, 1e6],
  ),
  fn: pullOutResistance,
});
