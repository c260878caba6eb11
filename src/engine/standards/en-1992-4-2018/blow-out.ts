import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/** k5 for headed fasteners, 7.2.1.8. */
export const BLOW_OUT_FACTOR = { cracked: 8.7, uncracked: 12.2 } as const;

/**
 * Side-face blow-out of one insert, N⁰_Rk,cb = k5 c1 √A_h √f_ck; needed where c1 ≤ 0.5 h_ef.
 * Source: EN 1992-4:2018, 7.2.1.8.
 * @param k5 8.7 cracked, 12.2 uncracked [N, mm, MPa]
 * @param c1 edge distance [mm]
 * @param A_h bearing area of the foot [mm²]
 * @param f_ck cylinder strength [MPa]
 * @returns N⁰_Rk,cb [N]. Example: 8.7, 45 mm, 1068 mm², 32 MPa → 72 376 N.
 */
export function blowOutBasic(k5: number, c1: number, A_h: number, f_ck: number): number {
  return k5 * c1 * Math.sqrt(A_h) * Math.sqrt(f_ck);
}

export const BLOW_OUT_BASIC = enClause({
  clause: '7.2.1.8',
  gives: 'side-face blow-out resistance of one insert',
  symbol: 'N0_Rk_cb',
  unit: 'N',
  formula: 'k5 * c_1 * sqrt(A_h) * sqrt(f_ck)',
  args: listArguments(
    ['k5', '-', 'blow-out factor', 8, 13],
    ['c_1', 'mm', 'edge distance', 20, 200],
    ['A_h', 'mm2', 'bearing area of the foot', 200, 4000],
    ['f_ck', 'MPa', 'cylinder strength', 12, 90],
  ),
  fn: blowOutBasic,
});

/**
 * Projected area of one undisturbed blow-out body on the side face, A⁰_c,Nb = (4 c1)².
 * Source: EN 1992-4:2018, 7.2.1.8.
 * @param c1 edge distance [mm]
 * @returns A⁰_c,Nb [mm²]. Example: 45 mm → 32 400 mm².
 */
export function blowOutReferenceArea(c1: number): number {
  return 16 * c1 * c1;
}

export const BLOW_OUT_REFERENCE_AREA = enClause({
  clause: '7.2.1.8',
  gives: 'projected area of one undisturbed blow-out body',
  symbol: 'A0_c_Nb',
  unit: 'mm2',
  formula: '(4 * c_1)^2',
  args: listArguments(['c_1', 'mm', 'edge distance', 20, 200]),
  fn: blowOutReferenceArea,
});

/**
 * Disturbance by a corner, ψ_s,Nb = 0.7 + 0.3 c2/(2 c1) ≤ 1.
 * Source: EN 1992-4:2018, 7.2.1.8.
 * @param c2 distance to the corner, along the edge [mm]
 * @param c1 edge distance [mm]
 * @returns ψ_s,Nb [-]. Example: 60 and 45 mm → 0.9.
 */
export function blowOutCornerFactor(c2: number, c1: number): number {
  return Math.min(1, 0.7 + (0.3 * c2) / (2 * c1));
}

export const BLOW_OUT_CORNER_FACTOR = enClause({
  clause: '7.2.1.8',
  gives: 'factor for the nearest corner',
  symbol: 'psi_s_Nb',
  unit: '-',
  formula: 'min(1, 0.7 + 0.3 * c_2 / (2 * c_1))',
  args: listArguments(['c_2', 'mm', 'distance to the corner', 20, 500], ['c_1', 'mm', 'edge distance', 20, 200]),
  fn: blowOutCornerFactor,
});

/**
 * Effect of a row of inserts, ψ_g,Nb = √n + (1 − √n) s2/(4 c1) ≥ 1, with s2 at most 4 c1.
 * Source: EN 1992-4:2018, 7.2.1.8.
 * @param n tensioned inserts in the row along the edge
 * @param s2 their mean spacing along the edge [mm]
 * @param c1 edge distance [mm]
 * @returns ψ_g,Nb [-]. Example: 2, 90 and 45 mm → 1.207.
 */
export function blowOutGroupFactor(n: number, s2: number, c1: number): number {
  return Math.max(1, Math.sqrt(n) + ((1 - Math.sqrt(n)) * s2) / (4 * c1));
}

export const BLOW_OUT_GROUP_FACTOR = enClause({
  clause: '7.2.1.8',
  gives: 'factor for a row of inserts along the edge',
  symbol: 'psi_g_Nb',
  unit: '-',
  formula: 'max(1, sqrt(n) + (1 - sqrt(n)) * s_2 / (4 * c_1))',
  args: listArguments(
    ['n', '-', 'tensioned inserts in the row', 1, 6],
    ['s_2', 'mm', 'mean spacing along the edge', 0, 400],
    ['c_1', 'mm', 'edge distance', 20, 200],
  ),
  fn: blowOutGroupFactor,
});

/**
 * Unequal tension along the row, ψ_ec,Nb = 1/(1 + 2 e_N/(4 c1)).
 * Source: EN 1992-4:2018, 7.2.1.8.
 * @param e_N eccentricity along the edge [mm], not negative
 * @param c1 edge distance [mm]
 * @returns ψ_ec,Nb [-]. Example: 20 and 45 mm → 0.818.
 */
export function blowOutEccentricityFactor(e_N: number, c1: number): number {
  return 1 / (1 + (2 * e_N) / (4 * c1));
}

export const BLOW_OUT_ECCENTRICITY_FACTOR = enClause({
  clause: '7.2.1.8',
  gives: 'factor for unequal tension along the edge',
  symbol: 'psi_ec_Nb',
  unit: '-',
  formula: '1 / (1 + 2 * e_N / (4 * c_1))',
  args: listArguments(['e_N', 'mm', 'eccentricity along the edge', 0, 200], ['c_1', 'mm', 'edge distance', 20, 200]),
  fn: blowOutEccentricityFactor,
});

/**
 * Characteristic blow-out resistance of a row along one edge.
 * Source: EN 1992-4:2018, 7.2.1.8.
 * @returns N_Rk,cb [N]. Example: 72 376 N · 1.5 · 0.9 · 1.207 · 1 → 117 933 N.
 */
export function blowOutResistance(N0: number, areaRatio: number, psi_s: number, psi_g: number, psi_ec: number): number {
  return N0 * areaRatio * psi_s * psi_g * psi_ec;
}

export const BLOW_OUT_RESISTANCE = enClause({
  clause: '7.2.1.8',
  gives: 'characteristic side-face blow-out resistance',
  symbol: 'N_Rk_cb',
  unit: 'N',
  formula: 'N0_Rk_cb * A_c_Nb_ratio * psi_s_Nb * psi_g_Nb * psi_ec_Nb',
  args: listArguments(
    ['N0_Rk_cb', 'N', 'basic blow-out resistance', 1e3, 1e6],
    ['A_c_Nb_ratio', '-', 'A_c,Nb / A0_c,Nb', 0.1, 6],
    ['psi_s_Nb', '-', 'factor for the nearest corner', 0.7, 1],
    ['psi_g_Nb', '-', 'factor for a row of inserts', 1, 2.5],
    ['psi_ec_Nb', '-', 'factor for unequal tension', 0.3, 1],
  ),
  fn: blowOutResistance,
});
