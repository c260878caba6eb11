import { listArguments } from '../clause.ts';
import { enClause } from './document.ts';

/**
 * Steel under tension and shear together, n² + v² ≤ 1, for one insert. Not needed with a lever arm: the bending resistance
 * already carries the tension.
 * Source: EN 1992-4:2018, 7.2.3.1, Table 7.3.
 * @param n N_Ed/N_Rd,s [-]
 * @param v V_Ed/V_Rd,s [-]
 * @returns n² + v² [-]. Example: 0.6, 0.8 → 1.
 */
function steelInteraction(n: number, v: number): number {
  return n * n + v * v;
}

export const STEEL_INTERACTION = enClause({
  clause: '7.2.3.1',
  gives: 'steel under tension and shear',
  symbol: 'ratio_steel',
  unit: '-',
  formula: 'n^2 + v^2',
  args: listArguments(['n', '-', 'N_Ed / N_Rd,s', 0, 2], ['v', '-', 'V_Ed / V_Rd,s', 0, 2]),
  fn: steelInteraction,
});

/**
 * Concrete under tension and shear together, n^1.5 + v^1.5 ≤ 1, given as (n^1.5 + v^1.5)^(2/3) so that the ratio grows in
 * step with the load.
 * Source: EN 1992-4:2018, 7.2.3.1, Table 7.3.
 * @param n largest N_Ed/N_Rd of the concrete modes [-]
 * @param v largest V_Ed/V_Rd of the concrete modes [-]
 * @returns (n^1.5 + v^1.5)^(2/3) [-]. Example: 0.5, 0.5 → 0.794.
 */
function concreteInteraction(n: number, v: number): number {
  return Math.cbrt(n * Math.sqrt(n) + v * Math.sqrt(v)) ** 2;
}

export const CONCRETE_INTERACTION = enClause({
  clause: '7.2.3.1',
  gives: 'concrete under tension and shear',
  symbol: 'ratio_concrete',
  unit: '-',
  formula: '(n^1.5 + v^1.5)^(2/3)',
  args: listArguments(
    ['n', '-', 'largest N_Ed / N_Rd of the concrete modes', 0, 2],
    ['v', '-', 'largest V_Ed / V_Rd of the concrete modes', 0, 2],
  ),
  fn: concreteInteraction,
});

/**
 * Tension and shear with supplementary reinforcement for one of the two only, n^k11 + v^k11 ≤ 1 with k11 = 2/3, given as
 * (n^(2/3) + v^(2/3))^1.5.
 * Source: EN 1992-4:2018, 7.2.3.2.
 * @param n largest N_Ed/N_Rd [-]
 * @param v largest V_Ed/V_Rd [-]
 * @returns (n^(2/3) + v^(2/3))^1.5 [-]. Example: 0.5, 0.5 → 1.414.
 */
function reinforcedInteraction(n: number, v: number): number {
  return (n ** (2 / 3) + v ** (2 / 3)) ** 1.5;
}

export const REINFORCED_INTERACTION = enClause({
  clause: '7.2.3.2',
  gives: 'tension and shear with bars for one of the two only',
  symbol: 'ratio_concrete',
  unit: '-',
  formula: '(n^(2/3) + v^(2/3))^1.5',
  args: listArguments(['n', '-', 'largest N_Ed / N_Rd', 0, 2], ['v', '-', 'largest V_Ed / V_Rd', 0, 2]),
  recalled: true,
  fn: reinforcedInteraction,
});
