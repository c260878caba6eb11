import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/**
 * Tension and shear together, steel included: the full strength of the one where the other is at most 0.2 of its own, else
 * n + v ≤ 1.2. Given as max(n, v, (n + v)/1.2), which is at most 1 in the same cases.
 * Source: ACI 318-19 and 318M-19, 17.8.1 to 17.8.3.
 * @param n largest N_ua/(φ N_n) [-]
 * @param v largest V_ua/(φ V_n) [-]
 * @returns max(n, v, (n + v)/1.2) [-]. Example: 0.6, 0.6 → 1; 0.9, 0.1 → 0.9; 0.1, 0.8 → 0.8.
 */
export function interaction(n: number, v: number): number {
  return Math.max(n, v, (n + v) / 1.2);
}

export const INTERACTION = aciClause({
  clause: '17.8',
  gives: 'tension and shear together',
  symbol: 'ratio_all',
  unit: '-',
  formula: 'max(n, v, (n + v) / 1.2)',
  args: listArguments(['n', '-', 'largest N_ua / (phi N_n)', 0, 2], ['v', '-', 'largest V_ua / (phi V_n)', 0, 2]),
  fn: interaction,
});

/**
 * An edge under shear that is inclined to it: the ratios of the part toward the edge and of the part along it, squared and
 * added. The code is silent on both at once; this is our choice.
 * Source: ACI 318-19 and 318M-19, 17.7.2.1, for each part alone.
 * @param r_toward V_ua/(φ V_cbg) of the part toward the edge [-]
 * @param r_along V_ua/(φ V_cbg) of the part along the edge [-]
 * @returns √(r_toward² + r_along²) [-]. Example: 0.6, 0.8 → 1.
 */
function combineEdgeParts(r_toward: number, r_along: number): number {
  return Math.sqrt(r_toward * r_toward + r_along * r_along);
}

export const EDGE_PARTS = aciClause({
  clause: '17.7.2, both parts',
  gives: 'shear toward an edge and along it together',
  symbol: 'ratio_edge',
  unit: '-',
  formula: 'sqrt(r_toward^2 + r_along^2)',
  args: listArguments(
    ['r_toward', '-', 'ratio of the part toward the edge', 0, 2],
    ['r_along', '-', 'ratio of the part along the edge', 0, 2],
  ),
  recalled: true,
  fn: combineEdgeParts,
});
