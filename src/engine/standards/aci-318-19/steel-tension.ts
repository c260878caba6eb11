import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/**
 * Ultimate strength of the steel that may be counted: f_uta, at most 1.9 f_ya and at most a fixed limit. It keeps the steel
 * from yielding under service loads.
 * Source: ACI 318-19 and 318M-19, 17.6.1.2; 17.7.1.2 for shear.
 * @param f_uta specified ultimate strength [MPa]
 * @param f_ya specified yield strength [MPa]
 * @param f_max 125 000 psi, in SI 860 MPa [MPa]
 * @returns f_uta that counts [MPa]. Example: 500, 240, 860 MPa → 456 MPa; 1000, 900, 860 MPa → 860 MPa.
 */
export function usableUltimate(f_uta: number, f_ya: number, f_max: number): number {
  return Math.min(f_uta, 1.9 * f_ya, f_max);
}

export const USABLE_ULTIMATE = aciClause({
  clause: '17.6.1.2',
  gives: 'ultimate strength of the steel that may be counted',
  symbol: 'f_uta_lim',
  unit: 'MPa',
  formula: 'min(f_uta, 1.9 * f_ya, f_max)',
  args: listArguments(
    ['f_uta', 'MPa', 'specified ultimate strength', 300, 1100],
    ['f_ya', 'MPa', 'specified yield strength', 200, 900],
    ['f_max', 'MPa', 'highest ultimate strength', 850, 870],
  ),
  fn: usableUltimate,
});

/**
 * Nominal steel strength of one anchor in tension, N_sa = A_se,N f_uta.
 * Source: ACI 318-19 and 318M-19, 17.6.1.2.
 * @param A_se effective section in tension [mm²]
 * @param f_uta_lim ultimate strength that may be counted [MPa]
 * @returns N_sa [N]. Example: 157 mm², 800 MPa → 125 600 N.
 */
export function steelTension(A_se: number, f_uta_lim: number): number {
  return A_se * f_uta_lim;
}

export const STEEL_TENSION = aciClause({
  clause: '17.6.1.2',
  gives: 'nominal steel strength in tension',
  symbol: 'N_sa',
  unit: 'N',
  formula: 'A_se * f_uta_lim',
  args: listArguments(
    ['A_se', 'mm2', 'effective section in tension', 50, 1000],
    ['f_uta_lim', 'MPa', 'ultimate strength that may be counted', 300, 870],
  ),
  fn: steelTension,
});
