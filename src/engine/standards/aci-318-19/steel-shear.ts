import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/** Share of the steel strength in shear that is left on a built-up grout pad, 17.7.1.2.1. */
export const GROUT_PAD_FACTOR = 0.8;

/**
 * Nominal steel strength of one headed bolt or threaded part in shear, V_sa = 0.6 A_se,V f_uta.
 * Source: ACI 318-19 and 318M-19, 17.7.1.2(b), and 17.7.1.2.1 for a grout pad. A headed stud welded to the fixture has
 * A_se,V f_uta (17.7.1.2(a)); an insert is none.
 * @param k_grout 1, or 0.8 on a built-up grout pad [-]
 * @param A_se effective section in shear [mm²]
 * @param f_uta_lim ultimate strength that may be counted [MPa]
 * @returns V_sa [N]. Example: 1, 157 mm², 800 MPa → 75 360 N; 0.8, 157 mm², 800 MPa → 60 288 N.
 */
export function steelShear(k_grout: number, A_se: number, f_uta_lim: number): number {
  return k_grout * 0.6 * A_se * f_uta_lim;
}

export const STEEL_SHEAR = aciClause({
  clause: '17.7.1.2(b)',
  gives: 'nominal steel strength in shear',
  symbol: 'V_sa',
  unit: 'N',
  formula: 'k_grout * 0.6 * A_se * f_uta_lim',
  args: listArguments(
    ['k_grout', '-', '1, or 0.8 on a built-up grout pad', 0.8, 1],
    ['A_se', 'mm2', 'effective section in shear', 50, 1000],
    ['f_uta_lim', 'MPa', 'ultimate strength that may be counted', 300, 870],
  ),
  fn: steelShear,
});
