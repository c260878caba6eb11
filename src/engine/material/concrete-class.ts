import { listArguments } from '../standards/clause.ts';
import { materialClause } from './material-clause.ts';

/** Range of EN 1992-1-1, Table 3.1: cylinder strengths of C12/15 to C90/105 [MPa]. */
export const CONCRETE_RANGE = { low: 12, high: 90 } as const;

const document = { document: 'EN 1992-1-1', edition: '2004', clause: 'Table 3.1' } as const;

/**
 * Mean compressive strength at 28 days, f_cm = f_ck + 8 MPa.
 * Source: EN 1992-1-1:2004, Table 3.1.
 * @param f_ck characteristic cylinder strength [MPa]
 * @returns f_cm [MPa]. Example: 40 → 48.
 */
export function meanStrength(f_ck: number): number {
  return f_ck + 8;
}

export const MEAN_STRENGTH = materialClause({
  ...document,
  gives: 'mean compressive strength at 28 days',
  symbol: 'f_cm',
  unit: 'MPa',
  formula: 'f_ck + 8',
  args: listArguments(['f_ck', 'MPa', 'characteristic cylinder strength', 12, 90]),
  fn: meanStrength,
});

/**
 * Mean tensile strength, f_ctm = 0.30 f_ck^(2/3) up to C50/60, 2.12 ln(1 + f_cm/10) above.
 * Source: EN 1992-1-1:2004, Table 3.1.
 * @param f_ck characteristic cylinder strength [MPa]
 * @returns f_ctm [MPa]. Example: 30 → 2.896; 60 → 4.355.
 */
export function meanTensileStrength(f_ck: number): number {
  return f_ck <= 50 ? 0.3 * f_ck ** (2 / 3) : 2.12 * Math.log(1 + meanStrength(f_ck) / 10);
}

export const MEAN_TENSILE_STRENGTH = materialClause({
  ...document,
  gives: 'mean tensile strength',
  symbol: 'f_ctm',
  unit: 'MPa',
  formula: 'f_ck <= 50 ? 0.3 * f_ck^(2/3) : 2.12 * log(1 + (f_ck + 8) / 10)',
  args: listArguments(['f_ck', 'MPa', 'characteristic cylinder strength', 12, 90]),
  fn: meanTensileStrength,
});

/**
 * Characteristic tensile strength that 5 % fall below, f_ctk,0.05 = 0.7 f_ctm.
 * Source: EN 1992-1-1:2004, Table 3.1.
 * @param f_ck characteristic cylinder strength [MPa]
 * @returns f_ctk,0.05 [MPa]. Example: 30 → 2.028.
 */
export function lowTensileStrength(f_ck: number): number {
  return 0.7 * meanTensileStrength(f_ck);
}

export const LOW_TENSILE_STRENGTH = materialClause({
  ...document,
  gives: 'characteristic tensile strength, 5 % fractile',
  symbol: 'f_ctk_005',
  unit: 'MPa',
  formula: '0.7 * (f_ck <= 50 ? 0.3 * f_ck^(2/3) : 2.12 * log(1 + (f_ck + 8) / 10))',
  args: listArguments(['f_ck', 'MPa', 'characteristic cylinder strength', 12, 90]),
  fn: lowTensileStrength,
});

/**
 * Secant modulus of elasticity, E_cm = 22 000 (f_cm/10)^0.3 MPa.
 * Source: EN 1992-1-1:2004, Table 3.1.
 * @param f_ck characteristic cylinder strength [MPa]
 * @returns E_cm [MPa]. Example: 40 → 35 220.
 */
export function elasticModulus(f_ck: number): number {
  return 22_000 * (meanStrength(f_ck) / 10) ** 0.3;
}

export const ELASTIC_MODULUS = materialClause({
  ...document,
  gives: 'secant modulus of elasticity',
  symbol: 'E_cm',
  unit: 'MPa',
  formula: '22000 * ((f_ck + 8) / 10)^0.3',
  args: listArguments(['f_ck', 'MPa', 'characteristic cylinder strength', 12, 90]),
  fn: elasticModulus,
});
