import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

const STEEL_ARGS = listArguments(
  ['f_uk', 'MPa', 'ultimate strength of the steel', 300, 1000],
  ['f_yk', 'MPa', 'yield strength of the steel', 200, 300],
);

/**
 * Partial factor for steel in tension, γ_Ms = 1.2 f_uk/f_yk, at least 1.4.
 * Source: EN 1992-4:2018, Table 4.1 (4.4.2).
 * @param f_uk ultimate strength [MPa]
 * @param f_yk yield strength [MPa]
 * @returns γ_Ms [-]. Example: 800, 640 MPa (8.8) → 1.500.
 */
export function steelTensionFactor(f_uk: number, f_yk: number): number {
  return Math.max(1.4, (1.2 * f_uk) / f_yk);
}

export const STEEL_TENSION_FACTOR = enClause({
  clause: '4.4.2, Table 4.1',
  gives: 'partial factor, steel in tension',
  symbol: 'gamma_Ms',
  unit: '-',
  formula: 'max(1.4, 1.2 * f_uk / f_yk)',
  args: STEEL_ARGS,
  fn: steelTensionFactor,
});

/**
 * Partial factor for steel in shear: f_uk/f_yk, at least 1.25, for f_uk ≤ 800 MPa and f_yk/f_uk ≤ 0.8; else 1.5.
 * Source: EN 1992-4:2018, Table 4.1 (4.4.2).
 * @param f_uk ultimate strength [MPa]
 * @param f_yk yield strength [MPa]
 * @returns γ_Ms [-]. Example: 800, 640 MPa (8.8) → 1.250; 1000, 900 MPa (10.9) → 1.500.
 */
export function steelShearFactor(f_uk: number, f_yk: number): number {
  return f_uk <= 800 && f_yk / f_uk <= 0.8 ? Math.max(1.25, f_uk / f_yk) : 1.5;
}

export const STEEL_SHEAR_FACTOR = enClause({
  clause: '4.4.2, Table 4.1',
  gives: 'partial factor, steel in shear',
  symbol: 'gamma_Ms',
  unit: '-',
  formula: '(f_uk <= 800 and f_yk / f_uk <= 0.8) ? max(1.25, f_uk / f_yk) : 1.5',
  args: STEEL_ARGS,
  fn: steelShearFactor,
});

/** Recommended partial factor for concrete with cast-in fasteners, γ_Mc = γ_c γ_inst = 1.5 · 1.0. EN 1992-4:2018, 4.4.2. */
export const CONCRETE_FACTOR = 1.5;

/** Partial factor for reinforcing steel, γ_Ms,re. EN 1992-4:2018, Table 4.1 (persistent and transient). */
export const REINFORCEMENT_FACTOR = 1.15;

/**
 * Design resistance: characteristic over partial factor.
 * Source: EN 1992-4:2018, 4.2.
 * @param R_k characteristic resistance [N]
 * @param gamma_M partial factor [-]
 * @returns R_d [N]. Example: 150 000 N, 1.5 → 100 000 N.
 */
function designResistance(R_k: number, gamma_M: number): number {
  return R_k / gamma_M;
}

export const DESIGN_RESISTANCE = enClause({
  clause: '4.2',
  gives: 'design resistance',
  symbol: 'R_d',
  unit: 'N',
  formula: 'R_k / gamma_M',
  args: listArguments(['R_k', 'N', 'characteristic resistance', 1e3, 1e6], ['gamma_M', '-', 'partial factor', 1, 2.5]),
  fn: designResistance,
});
