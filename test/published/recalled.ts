// Rules that are recalled and stand in no clause record. Source: memory; to confirm
// against print.

export const RECALLED_RULES: readonly string[] = [
  'EN: range of the standard: concrete C12/15 to C90/105, embedment at least 40 mm.',
  'EN: ψ_re,V = 1.0 with a straight edge bar only; 1.4 with bar and stirrups, in cracked concrete, at a spacing of at most 100 mm and 2 c_1.',
  'EN: two inserts in torsion whose edge bodies overlap: 0.8 V_Rk,c.',
  'ACI: highest ultimate strength that counts 125 000 psi, in SI 860 MPa; k_cp = 2 from 2.5 in, in SI 65 mm.',
  'ACI: in SI the formula for deep anchors holds from 280 to 635 mm.',
  'ACI: ψ_c,V = 1.0, 1.2 or 1.4 by edge reinforcement in cracked concrete, 1.4 in uncracked.',
  'ACI: full strength in tension or shear where the other is at most 0.2 of its own.',
  'ACI: in side-face blow-out a corner counts for one anchor only, and the spacing of a row is that of its outer anchors.',
  'ACI: least spacing 4 d_a, torqued 6 d_a, edge 6 d_a torqued (Table 17.9.2(a)).',
  'AS: 0.8 for supplementary bars; every clause of AS 5216:2021 is named by that of EN 1992-4 which it follows.',
  'Bolts: sizes between M10, M12, M16, M20 and M24 in the tables of washers, holes and threads; class 5.6; nut factor of lubricated threads; 35 % of scatter in preload; ISO 10684 and ISO 965-5 allowances of 6AZ and 6AX.',
  'Bolts: torsion left by a cross hole, and half the yield stress on the strip area while tightening, are our own derivations on the safe side.',
  'Materials: constants of ACI 209, form of ASTM C1074, zinc in CX, ISO 1461 Table 4, class limits and F3 of EN 1993-1-4 Annex A, most of EN 1992-1-1 Table 4.4N.',
];
