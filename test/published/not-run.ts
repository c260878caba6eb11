// Published values that no case computes, each with its reason. Source of the entries: test/published/data/.

import type { PublishedEntry } from './entry.ts';

/** Entries on a document that the engine does not know yet: AS 5216. */
export const NEXT_STANDARDS: readonly string[] = [
  'as5216-phi-tension',
  'as5216-phi-shear',
  'as5216-phi-concrete',
  'as5216-differences',
];

/** Topics of data/hardware.json whose questions the engine does not answer yet, by their number. */
const LATER_TOPICS: ReadonlySet<string> = new Set(['3', '4', '5', '8', '9', '11', '12']);

/** Whether an entry belongs to a later part: torque, holes, lengths, tolerances, fit. */
export function isForLater(entry: PublishedEntry): boolean {
  return /^H\d/.test(entry.id) && LATER_TOPICS.has(entry.mode.split(' ')[0] ?? '');
}

/** Entry → why none of its values is computed. */
export const NOT_USED: Readonly<Record<string, string>> = {
  'dg1-4.7-3-hook': 'a hooked bolt; only feet that bear all round are computed',
  'aci-coefficients':
    'text only; its coefficients are those of the inch-pound edition, which the other ACI entries run',
  'aci-318-25-changes': 'text only, and on the edition of 2025',
  'edu-interaction': 'wrong in the source: its own ratios add up to 1.179; a test holds that ours is not 1.181',
  'b19-dowel': "the handbook's dowel model, not the edge failure of EN 1992-4",
  'b19-19.4.2': "the handbook's own model of bars near an edge, not the edge failure of EN 1992-4",
  'b19-dowel-table': "the handbook's dowel model, not the edge failure of EN 1992-4",
  'cents-coefficients': 'text only; its coefficients enter the cases of b19 and cents-to-en as arguments',
  'tests-databases': 'text only: test populations without numbers to compare',
  'ccd-mean': 'mean values of test evidence in two systems of units, from memory; no design rule',
  'H1-06': 'proof loads are not computed yet',
  'H1-07': "least breaking loads by the standard's least strengths; the engine takes the nominal stresses of the class",
  'H1-08': "the standard's least strengths; the engine takes the nominal stresses of the class, which are not higher",
  'H1-09': 'the page itself holds errors, as the entry notes',
  'H1-11': 'a loose check only, as the entry notes: the page rounds the thread differently',
  'H1-12': 'proof loads are not computed yet',
  'H2-04': 'formula only',
  'H2-06': 'formula only',
  'H2-07': 'recalled, and a formula only',
  'H6-15': 'from memory, and in the exposure classes of AS 3600, which no rules of a job have',
  'H6-16': 'a list of contents only: it prints no value',
  'H7-03': "a rule in words only; its worked values are not the source's own. Tests work it by hand",
  'H10-05': 'another model: tension by the distance from a tilting edge',
  'H10-08': 'the source cuts the depth of the compressed zone from 4.9277 in to 4.92 in and goes on with it',
  'H10-09': 'formula only',
};

/** Entry → value → why this value of an entry that is otherwise computed is not. */
export const VALUES_NOT_USED: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'dg1-4.7-5-lug': {
    ca1: 'a given length; no rule of the standard gives it',
    AVc: "the body before a shear lug, with the lug's width and depth; the engine knows inserts only",
    Vbrg: 'a shear lug bearing on concrete; the engine knows inserts only',
    phiVbrg: 'a shear lug bearing on concrete; the engine knows inserts only',
  },
  'dg1-table-4-1': Object.fromEntries(
    ['0.625', '0.75', '0.875', '1', '1.125', '1.25', '1.5', '1.75', '2'].map((d) => [
      `Ase d=${d}`,
      'the section of an inch thread; the engine takes sections as given and has metric threads only',
    ]),
  ),
  'aci349.2r-A2': {
    Vsa: 'a stud welded to its plate has no 0.6 (17.7.1.2(a)); inserts have, and a test holds the difference',
    'phi Vsa': 'the same welded stud',
  },
  'aci349.2r-A4': {
    Ase: 'the section of an inch thread; the engine takes sections as given and has metric threads only',
  },
  'b19-steel-m24': {
    'M_Rd,s': 'bending by the plastic section and f_y (EN 1993); EN 1992-4 takes 1.2 W_el f_uk',
  },
  'b19-thin-wall': {
    'N_Rd,b bond': 'bond of a straight rod; no failure mode of a headed insert, and the formula is not given',
  },
  'H1-05': { 'As M10': 'printed 58.00, the nominal area of ISO 898-1, not that of the formula (57.99)' },
  'H1-10': {
    '50 A_min_times_d': 'the elongation of stainless bolts is not used',
    '70 A_min_times_d': 'the elongation of stainless bolts is not used',
    '80 A_min_times_d': 'the elongation of stainless bolts is not used',
  },
  'H1-13': {
    d_max_6g: 'only the least bolt is used',
    d2_max_6g: 'only the least bolt is used',
  },
  'H2-01': {
    'ASs M12': "the source's own formula and limits give 227.7148, printed 227.72: 0.0002 mm² more than half a digit",
  },
  'H6-04': Object.fromEntries(
    ['C3 1', 'C4 0', 'C4 1', 'C5 0', 'C5 1'].map((name) => [
      name,
      'rounded as in ISO 14713:1999; a test holds that ours is the value of ISO 9223:2012',
    ]),
  ),
  'H6-05': Object.fromEntries(
    ['>6', '>3-6', '1.5-3', '<1.5'].map((row) => [
      `${row} mean_mass`,
      'the same coating as mass an area, rounded to 5 g/m²; the engine knows thickness only',
    ]),
  ),
  'H6-08': {
    limit_6g_M10_M12: "a limit for bolts, set by the clearance of their thread; only inserts' zinc is judged",
  },
  'H7-04': { '28': 'printed as 1 by definition; its own constants give 1.0072, which a test holds' },
  'H10-04': {
    sum_r2: 'printed 72 448; the layout gives 72 450',
    res_published: 'wrong in the source, as the entry notes',
  },
};
