import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/** k1 for headed fasteners, 7.2.1.4. */
export const CONE_FACTOR = { cracked: 8.9, uncracked: 12.7 } as const;

/**
 * Cone resistance of one insert far from edges and neighbours, N⁰_Rk,c = k1 √f_ck h_ef^1.5.
 * Source: EN 1992-4:2018, 7.2.1.4.
 * @param k1 8.9 cracked, 12.7 uncracked (headed fasteners) [N, mm, MPa]
 * @param f_ck cylinder strength [MPa]
 * @param h_ef effective embedment [mm]
 * @returns N⁰_Rk,c [N]. Example: 8.9, 32 MPa, 96 mm → 47 356 N.
 */
export function coneBasic(k1: number, f_ck: number, h_ef: number): number {
  return k1 * Math.sqrt(f_ck) * h_ef * Math.sqrt(h_ef);
}

export const CONE_BASIC = enClause({
  clause: '7.2.1.4',
  gives: 'cone resistance of one insert without edge or neighbour',
  symbol: 'N0_Rk_c',
  unit: 'N',
  formula: 'k1 * sqrt(f_ck) * h_ef^1.5',
  args: listArguments(
    ['k1', '-', 'cone factor', 8, 13],
    ['f_ck', 'MPa', 'cylinder strength', 12, 90],
    ['h_ef', 'mm', 'effective embedment', 40, 400],
  ),
  fn: coneBasic,
});

/**
 * Projected area of one undisturbed cone, A⁰_c,N = s_cr,N² = (2 c_cr,N)².
 * Source: EN 1992-4:2018, 7.2.1.4 (3).
 * @param c_cr characteristic edge distance, 1.5 h_ef [mm]
 * @returns A⁰_c,N [mm²]. Example: 144 mm → 82 944 mm².
 */
export function coneReferenceArea(c_cr: number): number {
  return 4 * c_cr * c_cr;
}

export const CONE_REFERENCE_AREA = enClause({
  clause: '7.2.1.4 (3)',
  gives: 'projected area of one undisturbed cone',
  symbol: 'A0_c_N',
  unit: 'mm2',
  formula: '(2 * c_cr_N)^2',
  args: listArguments(['c_cr_N', 'mm', 'characteristic edge distance, 1.5 h_ef', 60, 600]),
  fn: coneReferenceArea,
});

/**
 * Disturbance of the stresses by an edge, ψ_s,N = 0.7 + 0.3 c/c_cr,N ≤ 1.
 * Source: EN 1992-4:2018, 7.2.1.4 (4).
 * @param c smallest edge distance [mm]
 * @param c_cr characteristic edge distance [mm]
 * @returns ψ_s,N [-]. Example: 100 and 144 mm → 0.908.
 */
export function coneEdgeFactor(c: number, c_cr: number): number {
  return Math.min(1, 0.7 + (0.3 * c) / c_cr);
}

export const CONE_EDGE_FACTOR = enClause({
  clause: '7.2.1.4 (4)',
  gives: 'factor for the nearest edge',
  symbol: 'psi_s_N',
  unit: '-',
  formula: 'min(1, 0.7 + 0.3 * c / c_cr_N)',
  args: listArguments(
    ['c', 'mm', 'smallest edge distance', 20, 600],
    ['c_cr_N', 'mm', 'characteristic edge distance', 60, 600],
  ),
  fn: coneEdgeFactor,
});

/**
 * Shell spalling under dense surface reinforcement, ψ_re,N = 0.5 + h_ef/200 ≤ 1. Taken as 1 where the reinforcement is
 * not dense (bar spacing at least 150 mm, or at least 100 mm for diameters up to 10 mm).
 * Source: EN 1992-4:2018, 7.2.1.4 (5).
 * @param h_ef effective embedment [mm]
 * @returns ψ_re,N [-]. Example: 80 mm → 0.9.
 */
export function coneShellFactor(h_ef: number): number {
  return Math.min(1, 0.5 + h_ef / 200);
}

export const CONE_SHELL_FACTOR = enClause({
  clause: '7.2.1.4 (5)',
  gives: 'factor for dense surface reinforcement',
  symbol: 'psi_re_N',
  unit: '-',
  formula: 'min(1, 0.5 + h_ef / 200)',
  args: listArguments(['h_ef', 'mm', 'effective embedment', 40, 400]),
  fn: coneShellFactor,
});

/**
 * Unequal tension in a group, one axis: ψ_ec,N = 1/(1 + 2 e_N/s_cr,N) ≤ 1. With two axes the two factors are multiplied.
 * Source: EN 1992-4:2018, 7.2.1.4 (6).
 * @param e_N eccentricity of the tension along the axis [mm], not negative
 * @param s_cr characteristic spacing, 2 c_cr,N [mm]
 * @returns ψ_ec,N [-]. Example: 30 and 288 mm → 0.828.
 */
export function coneEccentricityFactor(e_N: number, s_cr: number): number {
  return 1 / (1 + (2 * e_N) / s_cr);
}

export const CONE_ECCENTRICITY_FACTOR = enClause({
  clause: '7.2.1.4 (6)',
  gives: 'factor for unequal tension along one axis',
  symbol: 'psi_ec_N',
  unit: '-',
  formula: '1 / (1 + 2 * e_N / s_cr_N)',
  args: listArguments(
    ['e_N', 'mm', 'eccentricity of the tension', 0, 300],
    ['s_cr_N', 'mm', 'characteristic spacing, 3 h_ef', 120, 1200],
  ),
  fn: coneEccentricityFactor,
});

/**
 * Compression between fixture and concrete close to the tensioned inserts, ψ_M,N = 2 − z/(1.5 h_ef) ≥ 1. Taken as 1 where
 * an edge is nearer than 1.5 h_ef, the compression is below 0.8 of the tension, or z ≥ 1.5 h_ef.
 * Source: EN 1992-4:2018, 7.2.1.4 (7).
 * @param z internal lever arm of tension and compression [mm]
 * @param h_ef effective embedment [mm]
 * @returns ψ_M,N [-]. Example: 100 and 100 mm → 1.333.
 */
export function coneCompressionFactor(z: number, h_ef: number): number {
  return Math.max(1, 2 - z / (1.5 * h_ef));
}

export const CONE_COMPRESSION_FACTOR = enClause({
  clause: '7.2.1.4 (7)',
  gives: 'factor for compression under the fixture close by',
  symbol: 'psi_M_N',
  unit: '-',
  formula: 'max(1, 2 - z / (1.5 * h_ef))',
  args: listArguments(['z', 'mm', 'internal lever arm', 0, 600], ['h_ef', 'mm', 'effective embedment', 40, 400]),
  fn: coneCompressionFactor,
});

/**
 * Reduced embedment with three or more near edges, h'_ef = max(c_max/c_cr,N, s_max/s_cr,N) h_ef, never above h_ef.
 * Source: EN 1992-4:2018, 7.2.1.4 (8).
 * @param c_max largest distance to an edge nearer than c_cr,N [mm]
 * @param s_max largest spacing in the group, at most s_cr,N; 0 for one insert [mm]
 * @param c_cr characteristic edge distance for the full embedment; s_cr,N is twice that [mm]
 * @param h_ef effective embedment [mm]
 * @returns h'_ef [mm]. Example: 120, 210, 300, 200 mm → 80 mm.
 */
export function coneReducedEmbedment(c_max: number, s_max: number, c_cr: number, h_ef: number): number {
  return Math.min(h_ef, Math.max(c_max / c_cr, s_max / (2 * c_cr)) * h_ef);
}

export const CONE_REDUCED_EMBEDMENT = enClause({
  clause: '7.2.1.4 (8)',
  gives: 'reduced embedment with three or more near edges',
  symbol: 'h_ef_red',
  unit: 'mm',
  formula: 'min(h_ef, max(c_max / c_cr_N, s_max / (2 * c_cr_N)) * h_ef)',
  args: listArguments(
    ['c_max', 'mm', 'largest distance to a near edge', 20, 500],
    ['s_max', 'mm', 'largest spacing in the group', 0, 900],
    ['c_cr_N', 'mm', 'characteristic edge distance, full embedment', 60, 600],
    ['h_ef', 'mm', 'effective embedment', 40, 400],
  ),
  fn: coneReducedEmbedment,
});

/**
 * Characteristic cone resistance: basic value times area ratio and factors.
 * Source: EN 1992-4:2018, 7.2.1.4 (1).
 * @returns N_Rk,c [N]. Example: 47 356 N · 0.75 · 0.9 · 1 · 1 · 1 · 1 → 31 965 N.
 */
export function coneResistance(
  N0: number,
  areaRatio: number,
  psi_s: number,
  psi_re: number,
  psi_ec_1: number,
  psi_ec_2: number,
  psi_M: number,
): number {
  return N0 * areaRatio * psi_s * psi_re * psi_ec_1 * psi_ec_2 * psi_M;
}

export const CONE_RESISTANCE = enClause({
  clause: '7.2.1.4',
  gives: 'characteristic cone resistance',
  symbol: 'N_Rk_c',
  unit: 'N',
  formula: 'N0_Rk_c * A_c_N_ratio * psi_s_N * psi_re_N * psi_ec_N_1 * psi_ec_N_2 * psi_M_N',
  args: listArguments(
    ['N0_Rk_c', 'N', 'basic cone resistance', 1e3, 1e6],
    ['A_c_N_ratio', '-', 'A_c,N / A0_c,N', 0.1, 9],
    ['psi_s_N', '-', 'factor for the nearest edge', 0.7, 1],
    ['psi_re_N', '-', 'factor for dense reinforcement', 0.7, 1],
    ['psi_ec_N_1', '-', 'factor for unequal tension, first axis', 0.3, 1],
    ['psi_ec_N_2', '-', 'factor for unequal tension, second axis', 0.3, 1],
    ['psi_M_N', '-', 'factor for compression close by', 1, 2],
  ),
  fn: coneResistance,
});
