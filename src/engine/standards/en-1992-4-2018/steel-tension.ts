import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/**
 * Characteristic resistance of one insert's steel in tension, N_Rk,s = A_s f_uk.
 * Source: EN 1992-4:2018, 7.2.1.3.
 * @param A_s net section [mm²]
 * @param f_uk ultimate strength [MPa]
 * @returns N_Rk,s [N]. Example: 157 mm², 800 MPa → 125 600 N.
 */
export function steelTension(A_s: number, f_uk: number): number {
  return A_s * f_uk;
}

export const STEEL_TENSION = enClause({
  clause: '7.2.1.3',
  gives: 'characteristic steel resistance in tension',
  symbol: 'N_Rk_s',
  unit: 'N',
  formula: 'A_s * f_uk',
  args: listArguments(
    ['A_s', 'mm2', 'net section', 50, 1000],
    ['f_uk', 'MPa', 'ultimate strength of the steel', 300, 1000],
  ),
  fn: steelTension,
});
