import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/** Yield strength of supplementary reinforcement that may be counted at most, 7.2.1.9 and 7.2.2.6 [MPa]. */
const LARGEST_BAR_YIELD = 600;

/** Efficiency of loops that take up shear toward an edge, k10 of 7.2.2.6: the lower of the two values is taken. */
export const LOOP_EFFICIENCY = 0.5;

/**
 * Steel resistance of bars crossing the failure surface, N_Rk,re = k10 n A_s f_yk with f_yk at most 600 MPa.
 * Source: EN 1992-4:2018, 7.2.1.9.2 (tension, k10 = 1) and 7.2.2.6.2 (shear).
 * @param k10 efficiency: 1 in tension, 0.5 for loops in shear [-]
 * @param n_re legs that count [-]
 * @param d_s bar diameter [mm]
 * @param f_yk yield strength, at most 600 [MPa]
 * @returns N_Rk,re [N]. Example: 1, 2 legs, 10 mm, 500 MPa → 78 540 N.
 */
function barSteel(k10: number, n_re: number, d_s: number, f_yk: number): number {
  return (k10 * n_re * Math.PI * d_s * d_s * Math.min(f_yk, LARGEST_BAR_YIELD)) / 4;
}

export const BAR_STEEL = enClause({
  clause: '7.2.1.9.2, 7.2.2.6.2',
  gives: 'steel resistance of supplementary reinforcement',
  symbol: 'N_Rk_re',
  unit: 'N',
  formula: 'k_10 * n_re * pi * d_s^2 / 4 * min(f_yk, 600)',
  args: listArguments(
    ['k_10', '-', 'efficiency', 0.5, 1],
    ['n_re', '-', 'legs that count', 1, 8],
    ['d_s', 'mm', 'bar diameter', 6, 16],
    ['f_yk', 'MPa', 'yield strength', 400, 700],
  ),
  recalled: true,
  fn: barSteel,
});

/**
 * Bond strength of ribbed bars, f_bd = 2.25 η1 η2 f_ctd with f_ctd = 0.7 f_ctm/γ_c; f_ctm = 0.3 f_ck^(2/3) up to C50/60,
 * above it 2.12 ln(1 + (f_ck + 8)/10), held at its value for C60/75.
 * Source: EN 1992-1-1:2004, 8.4.2 and Table 3.1; η2 = 1 up to 32 mm.
 * @param eta_1 1.0 good bond, 0.7 otherwise [-]
 * @param f_ck cylinder strength, of which at most 60 counts [MPa]
 * @param gamma_c partial factor for concrete [-]
 * @returns f_bd [MPa]. Example: 1, 30 MPa, 1.5 → 3.04 MPa.
 */
function bondStrength(eta_1: number, f_ck: number, gamma_c: number): number {
  const f_ctm = f_ck <= 50 ? 0.3 * f_ck ** (2 / 3) : 2.12 * Math.log(1 + (Math.min(f_ck, 60) + 8) / 10);
  return (2.25 * eta_1 * 0.7 * f_ctm) / gamma_c;
}

export const BOND_STRENGTH = enClause({
  document: 'EN 1992-1-1',
  edition: '2004',
  clause: '8.4.2',
  gives: 'design bond strength of ribbed bars',
  symbol: 'f_bd',
  unit: 'MPa',
  formula: '2.25 * eta_1 * 0.7 * (f_ck <= 50 ? 0.3 * f_ck^(2/3) : 2.12 * log(1 + (min(f_ck, 60) + 8) / 10)) / gamma_c',
  args: listArguments(
    ['eta_1', '-', 'bond condition', 0.7, 1],
    ['f_ck', 'MPa', 'cylinder strength', 12, 90],
    ['gamma_c', '-', 'partial factor for concrete', 1.2, 1.8],
  ),
  recalled: true,
  fn: bondStrength,
});

/**
 * Anchorage of the bars in the failure body, N_Rd,a = n l_1 π d_s f_bd/(α1 α2), with α1 = 0.7 for hooked ends, else 1, and
 * α2 = 1; the bars' own design strength is checked apart.
 * Source: EN 1992-4:2018, 7.2.1.9.3 and 7.2.2.6.3, with EN 1992-1-1:2004, 8.4.4.
 * @param n_re legs that count [-]
 * @param l_1 bonded length in the failure body [mm]
 * @param d_s bar diameter [mm]
 * @param f_bd bond strength [MPa]
 * @param alpha_1 shape of the end: 0.7 hook or loop, 1 straight [-]
 * @returns N_Rd,a [N]. Example: 2 legs, 100 mm, 10 mm, 3.04 MPa, 0.7 → 27 287 N.
 */
function barAnchorage(n_re: number, l_1: number, d_s: number, f_bd: number, alpha_1: number): number {
  return (n_re * l_1 * Math.PI * d_s * f_bd) / alpha_1;
}

export const BAR_ANCHORAGE = enClause({
  clause: '7.2.1.9.3, 7.2.2.6.3',
  gives: 'design anchorage of supplementary reinforcement in the failure body',
  symbol: 'N_Rd_a',
  unit: 'N',
  formula: 'n_re * l_1 * pi * d_s * f_bd / alpha_1',
  args: listArguments(
    ['n_re', '-', 'legs that count', 1, 8],
    ['l_1', 'mm', 'bonded length in the failure body', 40, 400],
    ['d_s', 'mm', 'bar diameter', 6, 16],
    ['f_bd', 'MPa', 'bond strength', 1, 5],
    ['alpha_1', '-', 'shape of the end', 0.7, 1],
  ),
  recalled: true,
  fn: barAnchorage,
});

/**
 * Tension in supplementary reinforcement from a shear load, N_Ed,re = (e_s/z + 1) V_Ed, with z = 0.85 d, d the depth of the
 * member from the reinforcement to the far face, at most min(2 h_ef, 2 c1).
 * Source: EN 1992-4:2018, 6.2.2.4.
 * @param e_s distance between the reinforcement and the shear force [mm]
 * @param z internal lever arm [mm]
 * @param V_Ed shear toward the edge [N]
 * @returns N_Ed,re [N]. Example: 40, 120 mm, 10 000 N → 13 333 N.
 */
function barTensionFromShear(e_s: number, z: number, V_Ed: number): number {
  return (e_s / z + 1) * V_Ed;
}

export const BAR_TENSION_FROM_SHEAR = enClause({
  clause: '6.2.2.4',
  gives: 'tension in supplementary reinforcement from shear',
  symbol: 'N_Ed_re',
  unit: 'N',
  formula: '(e_s / z + 1) * V_Ed',
  args: listArguments(
    ['e_s', 'mm', 'distance between reinforcement and shear force', 0, 100],
    ['z', 'mm', 'internal lever arm', 50, 300],
    ['V_Ed', 'N', 'shear toward the edge', 0, 1e5],
  ),
  recalled: true,
  fn: barTensionFromShear,
});

/** Which bars may count, 7.2.1.2 and 7.2.2.2 (recalled). */
export const BAR_LIMITS = {
  diameter: 16,
  reach: 0.75,
  hookedLength: 4,
  straightLength: 10,
  hookShape: 0.7,
} as const;
