import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/** psi_c,N of cast-in anchors, 17.6.2.5.1. */
export const BREAKOUT_CRACKING = { cracked: 1, uncracked: 1.25 } as const;

/**
 * Breakout strength of one anchor in tension in cracked concrete, far from edges and neighbours, N_b = k_c λ_a √f'c h_ef^1.5.
 * Source: ACI 318-19 and 318M-19, 17.6.2.2.1.
 * @param k_c 24 of cast-in anchors converted, in SI 10 [N, mm, MPa]
 * @param lambda λ_a for lightweight concrete, 1 for normal weight [-]
 * @param f_c specified compressive strength f'c [MPa]
 * @param h_ef effective embedment [mm]
 * @returns N_b [N]. Example: 10, 1, 28 MPa, 100 mm → 52 915 N.
 */
export function breakoutBasic(k_c: number, lambda: number, f_c: number, h_ef: number): number {
  return k_c * lambda * Math.sqrt(f_c) * h_ef * Math.sqrt(h_ef);
}

export const BREAKOUT_BASIC = aciClause({
  clause: '17.6.2.2.1',
  gives: 'breakout strength of one anchor without edge or neighbour',
  symbol: 'N_b',
  unit: 'N',
  formula: 'k_c * lambda * sqrt(f_c) * h_ef^1.5',
  args: listArguments(
    ['k_c', '-', 'breakout factor', 9, 11],
    ['lambda', '-', 'factor for lightweight concrete', 0.75, 1],
    ['f_c', 'MPa', 'specified compressive strength', 17, 70],
    ['h_ef', 'mm', 'effective embedment', 40, 640],
  ),
  fn: breakoutBasic,
});

/**
 * The same for a deep headed anchor (280 to 635 mm, 11 to 25 in), permitted in place of 17.6.2.2.1: N_b = k_d λ_a √f'c
 * h_ef^(5/3).
 * Source: ACI 318-19 and 318M-19, 17.6.2.2.3.
 * @param k_d 16 converted, in SI 3.9 [N, mm, MPa]
 * @param lambda λ_a for lightweight concrete, 1 for normal weight [-]
 * @param f_c specified compressive strength f'c [MPa]
 * @param h_ef effective embedment [mm]
 * @returns N_b [N]. Example: 3.9, 1, 36 MPa, 343 mm → 393 284 N.
 */
export function breakoutBasicDeep(k_d: number, lambda: number, f_c: number, h_ef: number): number {
  return k_d * lambda * Math.sqrt(f_c) * h_ef ** (5 / 3);
}

export const BREAKOUT_BASIC_DEEP = aciClause({
  clause: '17.6.2.2.3',
  gives: 'breakout strength of one deep anchor without edge or neighbour',
  symbol: 'N_b',
  unit: 'N',
  formula: 'k_d * lambda * sqrt(f_c) * h_ef^(5/3)',
  args: listArguments(
    ['k_d', '-', 'breakout factor of deep anchors', 3.5, 4.5],
    ['lambda', '-', 'factor for lightweight concrete', 0.75, 1],
    ['f_c', 'MPa', 'specified compressive strength', 17, 70],
    ['h_ef', 'mm', 'effective embedment', 279, 635],
  ),
  fn: breakoutBasicDeep,
});

/**
 * Projected area of one undisturbed breakout body, A_Nco = 9 h_ef². The area of a group, A_Nc, is never more than n A_Nco.
 * Source: ACI 318-19 and 318M-19, 17.6.2.1.4.
 * @param h_ef effective embedment [mm]
 * @returns A_Nco [mm²]. Example: 100 mm → 90 000 mm².
 */
export function breakoutReferenceArea(h_ef: number): number {
  return 9 * h_ef * h_ef;
}

export const BREAKOUT_REFERENCE_AREA = aciClause({
  clause: '17.6.2.1.4',
  gives: 'projected area of one undisturbed breakout body',
  symbol: 'A_Nco',
  unit: 'mm2',
  formula: '9 * h_ef^2',
  args: listArguments(['h_ef', 'mm', 'effective embedment', 40, 640]),
  fn: breakoutReferenceArea,
});

/**
 * Unequal tension in a group, one axis: ψ_ec,N = 1/(1 + e'_N/(1.5 h_ef)) ≤ 1. With two axes the two factors are multiplied.
 * Source: ACI 318-19 and 318M-19, 17.6.2.3.1.
 * @param e_N eccentricity of the tension along the axis [mm], not negative
 * @param h_ef effective embedment [mm]
 * @returns ψ_ec,N [-]. Example: 30 and 100 mm → 0.833.
 */
export function breakoutEccentricityFactor(e_N: number, h_ef: number): number {
  return 1 / (1 + e_N / (1.5 * h_ef));
}

export const BREAKOUT_ECCENTRICITY_FACTOR = aciClause({
  clause: '17.6.2.3.1',
  gives: 'factor for unequal tension along one axis',
  symbol: 'psi_ec_N',
  unit: '-',
  formula: '1 / (1 + e_N / (1.5 * h_ef))',
  args: listArguments(
    ['e_N', 'mm', 'eccentricity of the tension', 0, 300],
    ['h_ef', 'mm', 'effective embedment', 40, 640],
  ),
  fn: breakoutEccentricityFactor,
});

/**
 * Disturbance of the stresses by an edge, ψ_ed,N = 0.7 + 0.3 c_a,min/(1.5 h_ef) ≤ 1.
 * Source: ACI 318-19 and 318M-19, 17.6.2.4.1.
 * @param c_min smallest edge distance [mm]
 * @param h_ef effective embedment [mm]
 * @returns ψ_ed,N [-]. Example: 75 and 100 mm → 0.85.
 */
export function breakoutEdgeFactor(c_min: number, h_ef: number): number {
  return Math.min(1, 0.7 + (0.3 * c_min) / (1.5 * h_ef));
}

export const BREAKOUT_EDGE_FACTOR = aciClause({
  clause: '17.6.2.4.1',
  gives: 'factor for the nearest edge',
  symbol: 'psi_ed_N',
  unit: '-',
  formula: 'min(1, 0.7 + 0.3 * c_a_min / (1.5 * h_ef))',
  args: listArguments(
    ['c_a_min', 'mm', 'smallest edge distance', 20, 1000],
    ['h_ef', 'mm', 'effective embedment', 40, 640],
  ),
  fn: breakoutEdgeFactor,
});

/**
 * Reduced embedment with three or more edges nearer than 1.5 h_ef, h'_ef = max(c_a,max/1.5, s/3), never above h_ef; written
 * with c_cr = 1.5 h_ef as max(c_a,max/c_cr, s/(2 c_cr)) h_ef.
 * Source: ACI 318-19 and 318M-19, 17.6.2.1.2.
 * @param c_max largest distance to an edge nearer than c_cr [mm]
 * @param s_max largest spacing in the group, at most 3 h_ef; 0 for one anchor [mm]
 * @param c_cr 1.5 h_ef for the full embedment [mm]
 * @param h_ef effective embedment [mm]
 * @returns h'_ef [mm]. Example: 120, 210, 300, 200 mm → 80 mm.
 */
export function breakoutReducedEmbedment(c_max: number, s_max: number, c_cr: number, h_ef: number): number {
  return Math.min(h_ef, Math.max(c_max / c_cr, s_max / (2 * c_cr)) * h_ef);
}

export const BREAKOUT_REDUCED_EMBEDMENT = aciClause({
  clause: '17.6.2.1.2',
  gives: 'reduced embedment with three or more near edges',
  symbol: 'h_ef_red',
  unit: 'mm',
  formula: 'min(h_ef, max(c_a_max / c_cr, s_max / (2 * c_cr)) * h_ef)',
  args: listArguments(
    ['c_a_max', 'mm', 'largest distance to a near edge', 20, 500],
    ['s_max', 'mm', 'largest spacing in the group', 0, 900],
    ['c_cr', 'mm', '1.5 h_ef, full embedment', 60, 960],
    ['h_ef', 'mm', 'effective embedment', 40, 640],
  ),
  fn: breakoutReducedEmbedment,
});

/**
 * Nominal breakout strength of a group (of one anchor, N_cb): basic value times area ratio and factors.
 * Source: ACI 318-19 and 318M-19, 17.6.2.1.
 * @param N_b basic breakout strength [N]
 * @param areaRatio A_Nc/A_Nco [-]
 * @param psi_ed factor for the nearest edge [-]
 * @param psi_ec_1 factor for unequal tension, first axis [-]
 * @param psi_ec_2 the same, second axis [-]
 * @param psi_c 1 cracked, 1.25 uncracked concrete [-]
 * @param psi_cp factor for splitting, 1 for cast-in anchors [-]
 * @returns N_cbg [N]. Example: 52 915 N · 1.5 · 0.85 · 0.833 · 1 · 1.25 · 1 → 70 250 N.
 */
export function breakoutResistance(
  N_b: number,
  areaRatio: number,
  psi_ed: number,
  psi_ec_1: number,
  psi_ec_2: number,
  psi_c: number,
  psi_cp: number,
): number {
  return N_b * areaRatio * psi_ed * psi_ec_1 * psi_ec_2 * psi_c * psi_cp;
}

export const BREAKOUT_RESISTANCE = aciClause({
  clause: '17.6.2.1',
  gives: 'nominal breakout strength',
  symbol: 'N_cbg',
  unit: 'N',
  formula: 'N_b * A_Nc_ratio * psi_ed_N * psi_ec_N_1 * psi_ec_N_2 * psi_c_N * psi_cp_N',
  args: listArguments(
    ['N_b', 'N', 'basic breakout strength', 1e3, 1e6],
    ['A_Nc_ratio', '-', 'A_Nc / A_Nco', 0.1, 9],
    ['psi_ed_N', '-', 'factor for the nearest edge', 0.7, 1],
    ['psi_ec_N_1', '-', 'factor for unequal tension, first axis', 0.3, 1],
    ['psi_ec_N_2', '-', 'factor for unequal tension, second axis', 0.3, 1],
    ['psi_c_N', '-', 'factor for uncracked concrete', 1, 1.25],
    ['psi_cp_N', '-', 'factor for splitting, 1 for cast-in anchors', 0.5, 1],
  ),
  fn: breakoutResistance,
});
