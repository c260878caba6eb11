// Published values that no case computes, each with its reason. Source of the entries: test/published/data/anchorage.json.

/** Entries on documents that the engine does not know yet: ACI 318-19 and AS 5216. */
export const NEXT_PART: readonly string[] = [
  'dg1-4.7-3-steel',
  'dg1-4.7-3-breakout',
  'dg1-4.7-5-lug',
  'dg1-4.7-7',
  'dg1-4.7-9',
  'dg1-4.7-11',
  'dg1-table-4-1',
  'dg1-table-4-2',
  'aci349.2r-A1',
  'aci349.2r-A2',
  'aci349.2r-A4',
  'as5216-phi-tension',
  'as5216-phi-shear',
  'as5216-phi-concrete',
  'as5216-differences',
  'aci-coefficients',
  'aci-us-si',
  'aci-hef4',
  'aci-19fya',
  'aci-factors',
  'aci-318-25-changes',
  'edu-pullout',
  'edu-interaction',
];

/** Entry → why none of its values is computed. */
export const NOT_USED: Readonly<Record<string, string>> = {
  'dg1-4.7-3-hook': 'a hooked bolt; only feet that bear all round are computed',
  'b19-dowel': "the handbook's dowel model, not the edge failure of EN 1992-4",
  'b19-19.4.2': "the handbook's own model of bars near an edge, not the edge failure of EN 1992-4",
  'b19-dowel-table': "the handbook's dowel model, not the edge failure of EN 1992-4",
  'cents-coefficients': 'text only; its coefficients enter the cases of b19 and cents-to-en as arguments',
  'tests-databases': 'text only: test populations without numbers to compare',
  'ccd-mean': 'mean values of test evidence in two systems of units, from memory; no design rule',
};

/** Entry → value → why this value of an entry that is otherwise computed is not. */
export const VALUES_NOT_USED: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'b19-steel-m24': {
    'M_Rd,s': 'bending by the plastic section and f_y (EN 1993); EN 1992-4 takes 1.2 W_el f_uk',
  },
  'b19-thin-wall': {
    'N_Rd,b bond': 'bond of a straight rod; no failure mode of a headed insert, and the formula is not given',
  },
};
