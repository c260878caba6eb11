import { listArguments } from '../clause.ts';
import { aciClause } from './document.ts';

/**
 * Side-face blow-out strength of one deep anchor near an edge (h_ef > 2.5 c_a1), N_sb = k_sb c_a1 √A_brg λ_a √f'c.
 * Source: ACI 318-19 and 318M-19, 17.6.4.1.
 * @param k_sb 160 converted, in SI 13 [N, mm, MPa]
 * @param c_a1 edge distance [mm]
 * @param A_brg net bearing area of the foot [mm²]
 * @param lambda λ_a for lightweight concrete, 1 for normal weight [-]
 * @param f_c specified compressive strength f'c [MPa]
 * @returns N_sb [N]. Example: 13, 45 mm, 1068 mm², 1, 28 MPa → 101 163 N.
 */
export function blowOutBasic(k_sb: number, c_a1: number, A_brg: number, lambda: number, f_c: number): number {
  return k_sb * c_a1 * Math.sqrt(A_brg) * lambda * Math.sqrt(f_c);
}

export const BLOW_OUT_BASIC = aciClause({
  clause: '17.6.4.1',
  gives: 'side-face blow-out strength of one anchor',
  symbol: 'N_sb',
  unit: 'N',
  formula: 'k_sb * c_a1 * sqrt(A_brg) * lambda * sqrt(f_c)',
  args: listArguments(
    ['k_sb', '-', 'blow-out factor', 12, 14],
    ['c_a1', 'mm', 'edge distance', 20, 250],
    ['A_brg', 'mm2', 'net bearing area of the foot', 200, 4000],
    ['lambda', '-', 'factor for lightweight concrete', 0.75, 1],
    ['f_c', 'MPa', 'specified compressive strength', 17, 70],
  ),
  fn: blowOutBasic,
});

/**
 * One anchor near a corner: N_sb times (1 + c_a2/c_a1)/4, with c_a2/c_a1 kept within 1 and 3.
 * Source: ACI 318-19 and 318M-19, 17.6.4.1.1.
 * @param c_a2 distance to the corner, along the edge [mm]
 * @param c_a1 edge distance [mm]
 * @returns factor [-]. Example: 90 and 45 mm → 0.75; 40 and 45 mm → 0.5; 200 and 45 mm → 1.
 */
export function blowOutCornerFactor(c_a2: number, c_a1: number): number {
  return (1 + Math.min(3, Math.max(1, c_a2 / c_a1))) / 4;
}

export const BLOW_OUT_CORNER_FACTOR = aciClause({
  clause: '17.6.4.1.1',
  gives: 'factor for the nearest corner',
  symbol: 'k_corner',
  unit: '-',
  formula: '(1 + min(3, max(1, c_a2 / c_a1))) / 4',
  args: listArguments(['c_a2', 'mm', 'distance to the corner', 20, 900], ['c_a1', 'mm', 'edge distance', 20, 250]),
  recalled: true,
  fn: blowOutCornerFactor,
});

/**
 * A row of anchors closer than 6 c_a1 along the edge: N_sb times 1 + s/(6 c_a1).
 * Source: ACI 318-19 and 318M-19, 17.6.4.2.
 * @param s distance between the outer anchors along the edge [mm]
 * @param c_a1 edge distance [mm]
 * @returns factor [-]. Example: 90 and 45 mm → 1.333.
 */
export function blowOutGroupFactor(s: number, c_a1: number): number {
  return 1 + s / (6 * c_a1);
}

export const BLOW_OUT_GROUP_FACTOR = aciClause({
  clause: '17.6.4.2',
  gives: 'factor for a row of anchors along the edge',
  symbol: 'k_group',
  unit: '-',
  formula: '1 + s / (6 * c_a1)',
  args: listArguments(
    ['s', 'mm', 'distance between the outer anchors', 0, 1500],
    ['c_a1', 'mm', 'edge distance', 20, 250],
  ),
  fn: blowOutGroupFactor,
});

/**
 * Nominal side-face blow-out strength of a row along one edge (of one anchor, N_sb). The factor for a corner belongs to one
 * anchor, that for a row to a group; the other of the two is 1.
 * Source: ACI 318-19 and 318M-19, 17.6.4.1 and 17.6.4.2.
 * @param N_sb basic blow-out strength [N]
 * @param corner factor for the nearest corner [-]
 * @param group factor for a row [-]
 * @returns N_sbg [N]. Example: 101 163 N · 1 · 1.333 → 134 850 N.
 */
export function blowOutResistance(N_sb: number, corner: number, group: number): number {
  return N_sb * corner * group;
}

export const BLOW_OUT_RESISTANCE = aciClause({
  clause: '17.6.4.2',
  gives: 'nominal side-face blow-out strength',
  symbol: 'N_sbg',
  unit: 'N',
  formula: 'N_sb * k_corner * k_group',
  args: listArguments(
    ['N_sb', 'N', 'basic blow-out strength', 1e3, 1e6],
    ['k_corner', '-', 'factor for the nearest corner', 0.5, 1],
    ['k_group', '-', 'factor for a row', 1, 6],
  ),
  fn: blowOutResistance,
});
