import { listArguments } from '../clause.ts';
import { asClause } from './document.ts';

const STEEL_ARGS = listArguments(
  ['f_uf', 'MPa', 'ultimate strength of the steel', 300, 1000],
  ['f_yf', 'MPa', 'yield strength of the steel', 200, 300],
);

/**
 * Capacity factor for steel in tension, φ_Ms,N = 5 f_yf/(6 f_uf), at most 1/1.4.
 * Source: AS 5216:2021, capacity factors for steel in tension (recalled; values of an open-source library agree).
 * @param f_uf ultimate strength [MPa]
 * @param f_yf yield strength [MPa]
 * @returns φ_Ms,N [-]. Example: 400, 240 MPa → 0.500; 830, 660 MPa → 0.66265; 830, 750 MPa → 0.714286.
 */
export function steelTensionCapacityFactor(f_uf: number, f_yf: number): number {
  return Math.min(1 / 1.4, (5 * f_yf) / (6 * f_uf));
}

export const STEEL_TENSION_CAPACITY_FACTOR = asClause({
  clause: 'capacity factors, steel in tension',
  gives: 'capacity factor, steel in tension',
  symbol: 'phi_Ms_N',
  unit: '-',
  formula: 'min(1 / 1.4, 5 * f_yf / (6 * f_uf))',
  args: STEEL_ARGS,
  fn: steelTensionCapacityFactor,
});

/**
 * Capacity factor for steel in shear: f_yf/f_uf, at most 0.8, for f_uf ≤ 800 MPa and f_yf/f_uf ≤ 0.8; else 2/3.
 * Source: AS 5216:2021, capacity factors for steel in shear (recalled; values of an open-source library agree).
 * @param f_uf ultimate strength [MPa]
 * @param f_yf yield strength [MPa]
 * @returns φ_Ms,V [-]. Example: 400, 240 MPa → 0.600; 830, 660 MPa → 0.66667; 400, 360 MPa → 0.66667.
 */
export function steelShearCapacityFactor(f_uf: number, f_yf: number): number {
  return f_uf <= 800 && f_yf / f_uf <= 0.8 ? f_yf / f_uf : 2 / 3;
}

export const STEEL_SHEAR_CAPACITY_FACTOR = asClause({
  clause: 'capacity factors, steel in shear',
  gives: 'capacity factor, steel in shear',
  symbol: 'phi_Ms_V',
  unit: '-',
  formula: '(f_uf <= 800 and f_yf / f_uf <= 0.8) ? f_yf / f_uf : 2 / 3',
  args: STEEL_ARGS,
  fn: steelShearCapacityFactor,
});

/** Capacity factor of supplementary reinforcement, φ_Ms,re (recalled; EN 1992-4 has 1/1.15 = 0.87). */
export const REINFORCEMENT_CAPACITY_FACTOR = 0.8;

/**
 * Design capacity: capacity factor times characteristic capacity.
 * Source: AS 5216:2021, design capacities (recalled).
 * @param R_k characteristic capacity [N]
 * @param phi capacity factor [-]
 * @returns φR_k [N]. Example: 150 000 N, 0.5 → 75 000 N.
 */
function designCapacity(R_k: number, phi: number): number {
  return phi * R_k;
}

export const DESIGN_CAPACITY = asClause({
  clause: 'design capacities',
  gives: 'design capacity',
  symbol: 'R_d',
  unit: 'N',
  formula: 'phi * R_k',
  args: listArguments(['R_k', 'N', 'characteristic capacity', 1e3, 1e6], ['phi', '-', 'capacity factor', 0.3, 0.9]),
  fn: designCapacity,
});
