import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/**
 * Length over which the anchor bears on the concrete in shear, l_e = h_ef, at most 8 d_a.
 * Source: ACI 318-19 and 318M-19, 17.7.2.2.1 (uniform shaft).
 * @param h_ef effective embedment [mm]
 * @param d_a outside diameter of the anchor at the face [mm]
 * @returns l_e [mm]. Example: 96 and 24 mm → 96 mm; 150 and 16 mm → 128 mm.
 */
export function bearingLength(h_ef: number, d_a: number): number {
  return Math.min(h_ef, 8 * d_a);
}

export const BEARING_LENGTH = aciClause({
  clause: '17.7.2.2.1',
  gives: 'bearing length of the anchor in shear',
  symbol: 'l_e',
  unit: 'mm',
  formula: 'min(h_ef, 8 * d_a)',
  args: listArguments(
    ['h_ef', 'mm', 'effective embedment', 40, 500],
    ['d_a', 'mm', 'outside diameter at the face', 8, 50],
  ),
  fn: bearingLength,
});

/**
 * Edge breakout strength of one anchor in cracked concrete, in a thick, wide member: the smaller of
 * k_1 (l_e/d_a)^0.2 √d_a λ_a √f'c c_a1^1.5 and k_2 λ_a √f'c c_a1^1.5.
 * Source: ACI 318-19 and 318M-19, 17.7.2.2.1(a) and (b).
 * @param k_1 7 converted, in SI 0.6 [N, mm, MPa]
 * @param k_2 9 converted, in SI 3.7 [N, mm, MPa]
 * @param l_e bearing length [mm]
 * @param d_a outside diameter of the anchor at the face [mm]
 * @param lambda λ_a for lightweight concrete, 1 for normal weight [-]
 * @param f_c specified compressive strength f'c [MPa]
 * @param c_a1 edge distance in the direction of the shear [mm]
 * @returns V_b [N]. Example: 0.6, 3.7, 96, 16 mm, 1, 28 MPa, 100 mm → 18 173 N; 0.6, 3.7, 96, 40 mm, 1, 28 MPa,
 * 100 mm → 19 579 N.
 */
export function edgeBasic(
  k_1: number,
  k_2: number,
  l_e: number,
  d_a: number,
  lambda: number,
  f_c: number,
  c_a1: number,
): number {
  const coefficient = Math.min(k_1 * (l_e / d_a) ** 0.2 * Math.sqrt(d_a), k_2);
  return coefficient * lambda * Math.sqrt(f_c) * c_a1 * Math.sqrt(c_a1);
}

export const EDGE_BASIC = aciClause({
  clause: '17.7.2.2.1',
  gives: 'edge breakout strength of one anchor in a thick, wide member',
  symbol: 'V_b',
  unit: 'N',
  formula: 'min(k_1 * (l_e / d_a)^0.2 * sqrt(d_a), k_2) * lambda * sqrt(f_c) * c_a1^1.5',
  args: listArguments(
    ['k_1', '-', 'edge factor with the diameter', 0.5, 0.7],
    ['k_2', '-', 'edge factor of the cap', 3.5, 4],
    ['l_e', 'mm', 'bearing length', 40, 400],
    ['d_a', 'mm', 'outside diameter at the face', 8, 60],
    ['lambda', '-', 'factor for lightweight concrete', 0.75, 1],
    ['f_c', 'MPa', 'specified compressive strength', 17, 70],
    ['c_a1', 'mm', 'edge distance', 30, 800],
  ),
  fn: edgeBasic,
});

/**
 * Projected area of one undisturbed edge body, A_Vco = 4.5 c_a1². The area of a row, A_Vc, is never more than n A_Vco.
 * Source: ACI 318-19 and 318M-19, 17.7.2.1.3.
 * @param c_a1 edge distance [mm]
 * @returns A_Vco [mm²]. Example: 100 mm → 45 000 mm².
 */
export function edgeReferenceArea(c_a1: number): number {
  return 4.5 * c_a1 * c_a1;
}

export const EDGE_REFERENCE_AREA = aciClause({
  clause: '17.7.2.1.3',
  gives: 'projected area of one undisturbed edge body',
  symbol: 'A_Vco',
  unit: 'mm2',
  formula: '4.5 * c_a1^2',
  args: listArguments(['c_a1', 'mm', 'edge distance', 30, 800]),
  fn: edgeReferenceArea,
});

/**
 * Unequal shear in the row, ψ_ec,V = 1/(1 + e'_V/(1.5 c_a1)) ≤ 1.
 * Source: ACI 318-19 and 318M-19, 17.7.2.3.1.
 * @param e_V eccentricity along the edge [mm], not negative
 * @param c_a1 edge distance [mm]
 * @returns ψ_ec,V [-]. Example: 30 and 100 mm → 0.833.
 */
export function edgeEccentricityFactor(e_V: number, c_a1: number): number {
  return 1 / (1 + e_V / (1.5 * c_a1));
}

export const EDGE_ECCENTRICITY_FACTOR = aciClause({
  clause: '17.7.2.3.1',
  gives: 'factor for unequal shear along the edge',
  symbol: 'psi_ec_V',
  unit: '-',
  formula: '1 / (1 + e_V / (1.5 * c_a1))',
  args: listArguments(['e_V', 'mm', 'eccentricity along the edge', 0, 300], ['c_a1', 'mm', 'edge distance', 30, 800]),
  fn: edgeEccentricityFactor,
});

/**
 * Disturbance by a corner, ψ_ed,V = 0.7 + 0.3 c_a2/(1.5 c_a1) ≤ 1.
 * Source: ACI 318-19 and 318M-19, 17.7.2.4.1.
 * @param c_a2 smaller distance to a corner along the edge [mm]
 * @param c_a1 edge distance [mm]
 * @returns ψ_ed,V [-]. Example: 90 and 100 mm → 0.88.
 */
export function edgeCornerFactor(c_a2: number, c_a1: number): number {
  return Math.min(1, 0.7 + (0.3 * c_a2) / (1.5 * c_a1));
}

export const EDGE_CORNER_FACTOR = aciClause({
  clause: '17.7.2.4.1',
  gives: 'factor for the nearest corner',
  symbol: 'psi_ed_V',
  unit: '-',
  formula: 'min(1, 0.7 + 0.3 * c_a2 / (1.5 * c_a1))',
  args: listArguments(['c_a2', 'mm', 'distance to the corner', 0, 1000], ['c_a1', 'mm', 'edge distance', 30, 800]),
  fn: edgeCornerFactor,
});

/**
 * Thin member: the strength falls less than the area does, ψ_h,V = √(1.5 c_a1/h_a) ≥ 1.
 * Source: ACI 318-19 and 318M-19, 17.7.2.6.1.
 * @param c_a1 edge distance [mm]
 * @param h_a thickness of the member [mm]
 * @returns ψ_h,V [-]. Example: 150 and 150 mm → 1.225.
 */
export function edgeThicknessFactor(c_a1: number, h_a: number): number {
  return Math.max(1, Math.sqrt((1.5 * c_a1) / h_a));
}

export const EDGE_THICKNESS_FACTOR = aciClause({
  clause: '17.7.2.6.1',
  gives: 'factor for the member thickness',
  symbol: 'psi_h_V',
  unit: '-',
  formula: 'max(1, sqrt(1.5 * c_a1 / h_a))',
  args: listArguments(['c_a1', 'mm', 'edge distance', 30, 800], ['h_a', 'mm', 'thickness of the member', 80, 500]),
  fn: edgeThicknessFactor,
});

/**
 * Reduced edge distance in a thin and narrow member (both corners nearer than 1.5 c_a1 and h_a < 1.5 c_a1),
 * c'_a1 = max(c_a2,max/1.5, h_a/1.5, s/3), never above c_a1.
 * Source: ACI 318-19 and 318M-19, 17.7.2.1.2.
 * @param c_a2_max larger distance to a corner along the edge [mm]
 * @param h_a thickness of the member [mm]
 * @param s_max largest spacing in the row; 0 for one anchor [mm]
 * @param c_a1 edge distance [mm]
 * @returns c'_a1 [mm]. Example: 100, 120, 0, 200 mm → 80 mm.
 */
export function edgeReducedDistance(c_a2_max: number, h_a: number, s_max: number, c_a1: number): number {
  return Math.min(c_a1, Math.max(c_a2_max / 1.5, h_a / 1.5, s_max / 3));
}

export const EDGE_REDUCED_DISTANCE = aciClause({
  clause: '17.7.2.1.2',
  gives: 'reduced edge distance in a thin and narrow member',
  symbol: 'c_a1_red',
  unit: 'mm',
  formula: 'min(c_a1, max(c_a2_max / 1.5, h_a / 1.5, s_max / 3))',
  args: listArguments(
    ['c_a2_max', 'mm', 'larger distance to a corner', 20, 800],
    ['h_a', 'mm', 'thickness of the member', 80, 500],
    ['s_max', 'mm', 'largest spacing in the row', 0, 900],
    ['c_a1', 'mm', 'edge distance', 30, 800],
  ),
  recalled: true,
  fn: edgeReducedDistance,
});

/** Factors of an edge body that do not depend on the direction of the shear. */
const SHARED_ARGS = [
  ['psi_h_V', '-', 'factor for the thickness', 1, 2],
  ['psi_ec_V', '-', 'factor for unequal shear', 0.3, 1],
  ['psi_c_V', '-', 'factor for cracking and edge reinforcement', 1, 1.4],
] as const;

/**
 * Nominal edge breakout strength of a row under shear toward the edge (of one anchor, V_cb).
 * Source: ACI 318-19 and 318M-19, 17.7.2.1(a) and (b).
 * @param V_b basic edge breakout strength [N]
 * @param areaRatio A_Vc/A_Vco [-]
 * @param psi_ed factor for the nearest corner [-]
 * @param psi_h factor for the thickness [-]
 * @param psi_ec factor for unequal shear [-]
 * @param psi_c factor for cracking and edge reinforcement [-]
 * @returns V_cbg [N]. Example: 18 173 N · 0.9 · 0.88 · 1.1 · 0.833 · 1.4 → 18 464 N.
 */
export function edgeResistance(
  V_b: number,
  areaRatio: number,
  psi_ed: number,
  psi_h: number,
  psi_ec: number,
  psi_c: number,
): number {
  return V_b * areaRatio * psi_ed * psi_h * psi_ec * psi_c;
}

export const EDGE_RESISTANCE = aciClause({
  clause: '17.7.2.1',
  gives: 'nominal edge breakout strength, shear toward the edge',
  symbol: 'V_cbg',
  unit: 'N',
  formula: 'V_b * A_Vc_ratio * psi_ed_V * psi_h_V * psi_ec_V * psi_c_V',
  args: listArguments(
    ['V_b', 'N', 'basic edge breakout strength', 1e3, 1e6],
    ['A_Vc_ratio', '-', 'A_Vc / A_Vco', 0.1, 5],
    ['psi_ed_V', '-', 'factor for the nearest corner', 0.7, 1],
    ...SHARED_ARGS,
  ),
  fn: edgeResistance,
});

/**
 * The same under shear along the edge: twice the strength toward the edge, with ψ_ed,V taken as 1.
 * Source: ACI 318-19 and 318M-19, 17.7.2.1(c).
 * @param V_b basic edge breakout strength [N]
 * @param areaRatio A_Vc/A_Vco [-]
 * @param psi_h factor for the thickness [-]
 * @param psi_ec factor for unequal shear [-]
 * @param psi_c factor for cracking and edge reinforcement [-]
 * @returns V_cbg [N]. Example: 18 173 N · 0.9 · 1.1 · 0.833 · 1.4 → 41 963 N.
 */
export function edgeResistanceAlong(
  V_b: number,
  areaRatio: number,
  psi_h: number,
  psi_ec: number,
  psi_c: number,
): number {
  return 2 * V_b * areaRatio * psi_h * psi_ec * psi_c;
}

export const EDGE_RESISTANCE_ALONG = aciClause({
  clause: '17.7.2.1(c)',
  gives: 'nominal edge breakout strength, shear along the edge',
  symbol: 'V_cbg_along',
  unit: 'N',
  formula: '2 * V_b * A_Vc_ratio * psi_h_V * psi_ec_V * psi_c_V',
  args: listArguments(
    ['V_b', 'N', 'basic edge breakout strength', 1e3, 1e6],
    ['A_Vc_ratio', '-', 'A_Vc / A_Vco', 0.1, 5],
    ...SHARED_ARGS,
  ),
  recalled: true,
  fn: edgeResistanceAlong,
});
