import { listArguments } from '../standards/clause.ts';
import { materialClause } from './material-clause.ts';

const document = { document: 'EN 1992-1-1', edition: '2004', clause: '3.1.2(6)' } as const;

/**
 * Strength at an age over that at 28 days, β_cc(t) = exp(s (1 − √(28/t))), for concrete kept at 20 °C.
 * Source: EN 1992-1-1:2004, 3.1.2(6), Eq. (3.2).
 * @param s coefficient of the cement [-]
 * @param t age [days]
 * @returns β_cc [-]. Example: 0.25, 7 → 0.7788.
 */
export function hardeningRatio(s: number, t: number): number {
  return Math.exp(s * (1 - Math.sqrt(28 / t)));
}

export const HARDENING_RATIO = materialClause({
  ...document,
  gives: 'strength at an age over that at 28 days',
  symbol: 'beta_cc',
  unit: '-',
  formula: 'exp(s * (1 - sqrt(28 / t)))',
  args: listArguments(['s', '-', 'coefficient of the cement', 0.2, 0.38], ['t', 'days', 'age', 0.5, 3650]),
  fn: hardeningRatio,
});

/**
 * Mean strength at an age, f_cm(t) = β_cc(t) f_cm.
 * Source: EN 1992-1-1:2004, 3.1.2(6), Eq. (3.1).
 * @param beta_cc strength at the age over that at 28 days [-]
 * @param f_cm mean strength at 28 days [MPa]
 * @returns f_cm(t) [MPa]. Example: 0.8, 48 → 38.4.
 */
export function meanStrengthAtAge(beta_cc: number, f_cm: number): number {
  return beta_cc * f_cm;
}

export const MEAN_STRENGTH_AT_AGE = materialClause({
  ...document,
  gives: 'mean compressive strength at an age',
  symbol: 'f_cm_t',
  unit: 'MPa',
  formula: 'beta_cc * f_cm',
  args: listArguments(
    ['beta_cc', '-', 'strength at the age over that at 28 days', 0.1, 1.4],
    ['f_cm', 'MPa', 'mean strength at 28 days', 20, 98],
  ),
  fn: meanStrengthAtAge,
});

/**
 * Characteristic strength at an age between 3 and 28 days, f_ck(t) = f_cm(t) − 8 MPa.
 * Source: EN 1992-1-1:2004, 3.1.2(5).
 * @param f_cm_t mean strength at the age [MPa]
 * @returns f_ck(t) [MPa]. Example: 38.4 → 30.4.
 */
export function characteristicAtAge(f_cm_t: number): number {
  return f_cm_t - 8;
}

export const CHARACTERISTIC_AT_AGE = materialClause({
  ...document,
  clause: '3.1.2(5)',
  gives: 'characteristic compressive strength between 3 and 28 days',
  symbol: 'f_ck_t',
  unit: 'MPa',
  formula: 'f_cm_t - 8',
  args: listArguments(['f_cm_t', 'MPa', 'mean strength at the age', 9, 98]),
  fn: characteristicAtAge,
});

/**
 * Strength at an age over that at 28 days, t/(a + b t).
 * Source: ACI 209R-92, 2.2.1, Eq. (2-1).
 * @param a constant of cement and curing [days]
 * @param b constant of cement and curing [-]
 * @param t age [days]
 * @returns f'c(t)/f'c [-]. Example: 4, 0.85, 7 → 0.7035.
 */
export function hyperbolicRatio(a: number, b: number, t: number): number {
  return t / (a + b * t);
}

export const HYPERBOLIC_RATIO = materialClause({
  document: 'ACI 209R',
  edition: '92',
  clause: '2.2.1',
  gives: 'strength at an age over that at 28 days',
  symbol: 'ratio',
  unit: '-',
  formula: 't / (a + b * t)',
  args: listArguments(
    ['a', 'days', 'constant of cement and curing', 0.7, 4],
    ['b', '-', 'constant of cement and curing', 0.85, 0.98],
    ['t', 'days', 'age', 0.5, 3650],
  ),
  recalled: true,
  fn: hyperbolicRatio,
});
