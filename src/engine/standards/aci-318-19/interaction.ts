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
