// Rules of EN 1992-4:2018 that are recalled and stand in no clause record. Source: memory; to confirm against print.

export const RECALLED_RULES: readonly string[] = [
  'Range of the standard: concrete C12/15 to C90/105, embedment at least 40 mm.',
  'ψ_re,V = 1.0 with a straight edge bar only; 1.4 with bar and stirrups, in cracked concrete, at a spacing of at most 100 mm and 2 c_1.',
  'Two inserts in torsion whose edge bodies overlap: 0.8 V_Rk,c.',
];
