import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/** k9, 7.2.2.5. */
export const EDGE_FACTOR = { cracked: 1.7, uncracked: 2.4 } as const;

/** Two inserts in torsion with overlapping edge bodies, 7.2.2.5 (recalled, not confirmed). */
export const TORSION_PAIR_FACTOR = 0.8;

/**
 * Length over which the insert bears on the concrete, l_f = h_ef, at most 12 d for d ≤ 24 mm, else at most max(8 d, 300).
 * Source: EN 1992-4:2018, 7.2.2.5 (uniform shaft).
 * @param h_ef effective embedment [mm]
 * @param d body diameter at the face [mm]
 * @returns l_f [mm]. Example: 96 and 24 mm → 96 mm.
 */
export function bearingLength(h_ef: number, d: number): number {
  return Math.min(h_ef, d <= 24 ? 12 * d : Math.max(8 * d, 300));
}

export const BEARING_LENGTH = enClause({
  clause: '7.2.2.5',
  gives: 'bearing length of the insert',
  symbol: 'l_f',
  unit: 'mm',
  formula: 'min(h_ef, d <= 24 ? 12 * d : max(8 * d, 300))',
  args: listArguments(['h_ef', 'mm', 'effective embedment', 40, 500], ['d', 'mm', 'body diameter at the face', 8, 50]),
  fn: bearingLength,
});

/**
 * Edge resistance of one insert in a thick, wide member, V⁰_Rk,c = k9 d^α l_f^β √f_ck c1^1.5 with α = 0.1 √(l_f/c1) and
 * β = 0.1 (d/c1)^0.2.
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @param k9 1.7 cracked, 2.4 uncracked [N, mm, MPa]
 * @param d body diameter at the face, at most 60 [mm]
 * @param l_f bearing length [mm]
 * @param f_ck cylinder strength [MPa]
 * @param c1 edge distance in the direction of the shear [mm]
 * @returns V⁰_Rk,c [N]. Example: 1.7, 24, 96 mm, 32 MPa, 100 mm → 18 504 N.
 */
export function edgeBasic(k9: number, d: number, l_f: number, f_ck: number, c1: number): number {
  const alpha = 0.1 * Math.sqrt(l_f / c1);
  const beta = 0.1 * (d / c1) ** 0.2;
  return k9 * d ** alpha * l_f ** beta * Math.sqrt(f_ck) * c1 * Math.sqrt(c1);
}

export const EDGE_BASIC = enClause({
  clause: '7.2.2.5',
  gives: 'edge resistance of one insert in a thick, wide member',
  symbol: 'V0_Rk_c',
  unit: 'N',
  formula: 'k9 * d^(0.1 * sqrt(l_f / c_1)) * l_f^(0.1 * (d / c_1)^0.2) * sqrt(f_ck) * c_1^1.5',
  args: listArguments(
    ['k9', '-', 'edge factor', 1.5, 2.5],
    ['d', 'mm', 'body diameter at the face', 8, 60],
    ['l_f', 'mm', 'bearing length', 40, 400],
    ['f_ck', 'MPa', 'cylinder strength', 12, 90],
    ['c_1', 'mm', 'edge distance', 30, 800],
  ),
  fn: edgeBasic,
});

/**
 * Projected area of one undisturbed edge body, A⁰_c,V = 4.5 c1².
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @param c1 edge distance [mm]
 * @returns A⁰_c,V [mm²]. Example: 100 mm → 45 000 mm².
 */
export function edgeReferenceArea(c1: number): number {
  return 4.5 * c1 * c1;
}

export const EDGE_REFERENCE_AREA = enClause({
  clause: '7.2.2.5',
  gives: 'projected area of one undisturbed edge body',
  symbol: 'A0_c_V',
  unit: 'mm2',
  formula: '4.5 * c_1^2',
  args: listArguments(['c_1', 'mm', 'edge distance', 30, 800]),
  fn: edgeReferenceArea,
});

/**
 * Disturbance by a corner, ψ_s,V = 0.7 + 0.3 c2/(1.5 c1) ≤ 1.
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @param c2 smaller distance to a corner along the edge [mm]
 * @param c1 edge distance [mm]
 * @returns ψ_s,V [-]. Example: 90 and 100 mm → 0.88.
 */
export function edgeCornerFactor(c2: number, c1: number): number {
  return Math.min(1, 0.7 + (0.3 * c2) / (1.5 * c1));
}

export const EDGE_CORNER_FACTOR = enClause({
  clause: '7.2.2.5',
  gives: 'factor for the nearest corner',
  symbol: 'psi_s_V',
  unit: '-',
  formula: 'min(1, 0.7 + 0.3 * c_2 / (1.5 * c_1))',
  args: listArguments(['c_2', 'mm', 'distance to the corner', 0, 1000], ['c_1', 'mm', 'edge distance', 30, 800]),
  fn: edgeCornerFactor,
});

/**
 * Thin member: the resistance falls less than the area does, ψ_h,V = √(1.5 c1/h) ≥ 1.
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @param c1 edge distance [mm]
 * @param h thickness of the member [mm]
 * @returns ψ_h,V [-]. Example: 150 and 150 mm → 1.225.
 */
export function edgeThicknessFactor(c1: number, h: number): number {
  return Math.max(1, Math.sqrt((1.5 * c1) / h));
}

export const EDGE_THICKNESS_FACTOR = enClause({
  clause: '7.2.2.5',
  gives: 'factor for the member thickness',
  symbol: 'psi_h_V',
  unit: '-',
  formula: 'max(1, sqrt(1.5 * c_1 / h))',
  args: listArguments(['c_1', 'mm', 'edge distance', 30, 800], ['h', 'mm', 'thickness of the member', 80, 500]),
  fn: edgeThicknessFactor,
});

/**
 * Unequal shear in the row, ψ_ec,V = 1/(1 + 2 e_V/(3 c1)).
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @param e_V eccentricity along the edge [mm], not negative
 * @param c1 edge distance [mm]
 * @returns ψ_ec,V [-]. Example: 30 and 100 mm → 0.833.
 */
export function edgeEccentricityFactor(e_V: number, c1: number): number {
  return 1 / (1 + (2 * e_V) / (3 * c1));
}

export const EDGE_ECCENTRICITY_FACTOR = enClause({
  clause: '7.2.2.5',
  gives: 'factor for unequal shear along the edge',
  symbol: 'psi_ec_V',
  unit: '-',
  formula: '1 / (1 + 2 * e_V / (3 * c_1))',
  args: listArguments(['e_V', 'mm', 'eccentricity along the edge', 0, 300], ['c_1', 'mm', 'edge distance', 30, 800]),
  fn: edgeEccentricityFactor,
});

/**
 * Shear that does not act square to the edge, ψ_α,V = √(1/(cos²α + (0.5 sin α)²)) ≥ 1, written with the components toward
 * the edge and along it: cos α = V⊥/V, sin α = V∥/V.
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @param V_toward component toward the edge, not negative [N]
 * @param V_along component along the edge, not negative [N]; not both zero
 * @returns ψ_α,V [-]. Example: 0 and 5000 N → 2; 5000 and 5000 N → 1.265.
 */
export function edgeAngleFactor(V_toward: number, V_along: number): number {
  const toward = V_toward * V_toward;
  const along = V_along * V_along;
  return Math.sqrt((toward + along) / (toward + 0.25 * along));
}

export const EDGE_ANGLE_FACTOR = enClause({
  clause: '7.2.2.5',
  gives: 'factor for the direction of the shear',
  symbol: 'psi_alpha_V',
  unit: '-',
  formula: 'sqrt((V_toward^2 + V_along^2) / (V_toward^2 + (0.5 * V_along)^2))',
  args: listArguments(
    ['V_toward', 'N', 'component of the shear toward the edge', 0, 1e5],
    ['V_along', 'N', 'component of the shear along the edge', 1, 1e5],
  ),
  fn: edgeAngleFactor,
});

/**
 * Reduced edge distance in a thin and narrow member (both corners nearer than 1.5 c1 and h < 1.5 c1),
 * c1' = max(c2,max/1.5, h/1.5, s2,max/3), never above c1.
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @param c2_max larger distance to a corner along the edge [mm]
 * @param h thickness of the member [mm]
 * @param s2_max largest spacing in the row; 0 for one insert [mm]
 * @param c1 edge distance [mm]
 * @returns c1' [mm]. Example: 100, 120, 0, 200 mm → 80 mm.
 */
export function edgeReducedDistance(c2_max: number, h: number, s2_max: number, c1: number): number {
  return Math.min(c1, Math.max(c2_max / 1.5, h / 1.5, s2_max / 3));
}

export const EDGE_REDUCED_DISTANCE = enClause({
  clause: '7.2.2.5',
  gives: 'reduced edge distance in a thin and narrow member',
  symbol: 'c_1_red',
  unit: 'mm',
  formula: 'min(c_1, max(c_2_max / 1.5, h / 1.5, s_2_max / 3))',
  args: listArguments(
    ['c_2_max', 'mm', 'larger distance to a corner', 20, 800],
    ['h', 'mm', 'thickness of the member', 80, 500],
    ['s_2_max', 'mm', 'largest spacing in the row', 0, 900],
    ['c_1', 'mm', 'edge distance', 30, 800],
  ),
  fn: edgeReducedDistance,
});

/**
 * Characteristic edge resistance of a row toward one edge; k_T = 0.8 for a group of two inserts in torsion whose bodies
 * overlap (recalled), else 1.
 * Source: EN 1992-4:2018, 7.2.2.5.
 * @returns V_Rk,c [N]. Example: 18 504 N · 0.9 · 0.88 · 1 · 1 · 1 · 1 · 1 → 14 655 N.
 */
export function edgeResistance(
  V0: number,
  areaRatio: number,
  psi_s: number,
  psi_h: number,
  psi_ec: number,
  psi_alpha: number,
  psi_re: number,
  k_T: number,
): number {
  return V0 * areaRatio * psi_s * psi_h * psi_ec * psi_alpha * psi_re * k_T;
}

export const EDGE_RESISTANCE = enClause({
  clause: '7.2.2.5',
  gives: 'characteristic edge resistance',
  symbol: 'V_Rk_c',
  unit: 'N',
  formula: 'V0_Rk_c * A_c_V_ratio * psi_s_V * psi_h_V * psi_ec_V * psi_alpha_V * psi_re_V * k_T',
  args: listArguments(
    ['V0_Rk_c', 'N', 'basic edge resistance', 1e3, 1e6],
    ['A_c_V_ratio', '-', 'A_c,V / A0_c,V', 0.1, 5],
    ['psi_s_V', '-', 'factor for the nearest corner', 0.7, 1],
    ['psi_h_V', '-', 'factor for the thickness', 1, 2],
    ['psi_ec_V', '-', 'factor for unequal shear', 0.3, 1],
    ['psi_alpha_V', '-', 'factor for the direction', 1, 2],
    ['psi_re_V', '-', 'factor for edge reinforcement', 1, 1.4],
    ['k_T', '-', '0.8 for two inserts in torsion with overlapping bodies (recalled), else 1', 0.8, 1],
  ),
  fn: edgeResistance,
});
