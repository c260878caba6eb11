import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/** φ of the steel, ductile (elongation at least 14 %, reduction of area at least 30 %) or brittle. 17.5.3, Table 17.5.3(a). */
export const STEEL_PHI = {
  ductile: { tension: 0.75, shear: 0.65 },
  brittle: { tension: 0.65, shear: 0.6 },
} as const;

/** φ of cast-in anchors in breakout and side-face blow-out, by supplementary reinforcement. 17.5.3, Table 17.5.3(b). */
export const CONCRETE_PHI = { plain: 0.7, supplementary: 0.75 } as const;

/** φ of cast-in anchors in pull-out and pry-out. 17.5.3, Table 17.5.3(c). */
export const PULL_OUT_PHI = 0.7;

/**
 * Design strength: nominal strength times strength-reduction factor.
 * Source: ACI 318-19 and 318M-19, 17.5.2.
 * @param R_n nominal strength [N]
 * @param phi strength-reduction factor φ [-]
 * @returns φ R_n [N]. Example: 100 000 N, 0.7 → 70 000 N.
 */
function designStrength(R_n: number, phi: number): number {
  return phi * R_n;
}

export const DESIGN_STRENGTH = aciClause({
  clause: '17.5.2',
  gives: 'design strength',
  symbol: 'phi_R_n',
  unit: 'N',
  formula: 'phi * R_n',
  args: listArguments(['R_n', 'N', 'nominal strength', 1e3, 1e6], ['phi', '-', 'strength-reduction factor', 0.55, 0.8]),
  fn: designStrength,
});
