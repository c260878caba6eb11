// Published values that no case computes, each with its reason. Source of the entries: test/published/data/.

import type { PublishedEntry } from './entry.ts';

/** Topics of data/hardware.json whose questions the engine does not answer yet, by their number. */
const LATER_TOPICS: ReadonlySet<string> = new Set(['8', '9', '11', '12']);

/** Entries of these topics that the engine answers all the same. */
const NOT_LATER: ReadonlySet<string> = new Set([
  'H9-01',
  'H9-02',
  'H9-03',
  'H9-04',
  'H9-05',
  'H11-01',
  'H11-02',
  'H11-03',
  'H11-05',
  'H12-08',
]);

/** Whether an entry belongs to a later part: tolerances, rules of members. */
export function isForLater(entry: PublishedEntry): boolean {
  return /^H\d/.test(entry.id) && !NOT_LATER.has(entry.id) && LATER_TOPICS.has(entry.mode.split(' ')[0] ?? '');
}

/** Entry → why none of its values is computed. */
export const NOT_USED: Readonly<Record<string, string>> = {
  'dg1-4.7-3-hook': 'a hooked bolt; only feet that bear all round are computed',
  'aci-coefficients':
    'text only; its coefficients are those of the inch-pound edition, which the other ACI entries run',
  'aci-318-25-changes': 'text only, and on the edition of 2025',
  'edu-interaction': 'wrong in the source: its own ratios add up to 1.179; a test holds that ours is not 1.181',
  'as5216-differences': 'text only: how AS 5216 differs from EN 1992-4; its factors are run as cases of their own',
  'b19-dowel': "the handbook's dowel model, not the edge failure of EN 1992-4",
  'b19-19.4.2': "the handbook's own model of bars near an edge, not the edge failure of EN 1992-4",
  'b19-dowel-table': "the handbook's dowel model, not the edge failure of EN 1992-4",
  'cents-coefficients': 'text only; its coefficients enter the cases of b19 and cents-to-en as arguments',
  'tests-databases': 'text only: test populations without numbers to compare',
  'ccd-mean': 'mean values of test evidence in two systems of units, from memory; no design rule',
  'H1-11': 'a loose check only, as the entry notes: the page rounds the thread differently',
  'H1-12': 'proof loads of nuts; an insert is no nut: its thread is computed from its own strip area',
  'H2-04': 'formula only: the engine computes with it, a test holds it term by term',
  'H2-06': 'formula only, of another rule, which the entry warns not to mix with the strip areas',
  'H4-09':
    'text only, recalled: limits as multiples of d; where a hole stands by EN 1090-2 and AISC 360 is told instead',
  'H4-10': 'inch rods only, recalled, as fractions in text; the engine has metric threads only',
  'H6-15': 'from memory, and in the exposure classes of AS 3600, which no rules of a job have',
  'H6-16': 'a list of contents only: it prints no value',
  'H7-03': "a rule in words only; its worked values are not the source's own. Tests work it by hand",
  'H9-01': 'formulas in words only; H9-02 is computed by what they say, and a test holds them at random places',
  'H10-05': 'another model: tension by the distance from a tilting edge',
  'H10-08': 'the source cuts the depth of the compressed zone from 4.9277 in to 4.92 in and goes on with it',
  'H10-09': 'formula only',
  'H11-03': 'its control points and distances are pictures in the source; tests of taped positions are worked by hand',
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
  'H1-06': {
    '8.8 M10': 'printed 33 700; its own 58.0 mm² × 580 MPa are 33 640 N',
    '8.8 M16': 'printed 91 000; its own 157 mm² × 580 MPa are 91 060 N',
  },
  'H1-07': { '8.8 M16': 'printed 125 000; its own 157 mm² × 800 MPa are 125 600 N' },
  'H1-09': { '8.8 d>=17 Sp': 'wrong in the source, as the entry notes; a test holds that ours is 600' },
  'H1-10': {
    '50 A_min_times_d': 'the elongation of stainless bolts is not used',
    '70 A_min_times_d': 'the elongation of stainless bolts is not used',
    '80 A_min_times_d': 'the elongation of stainless bolts is not used',
  },
  'H1-13': { d_max_6g: 'only the least outside diameter of a bolt is used' },
  'H2-01': {
    'ASs M12': "the source's own formula and limits give 227.7148, printed 227.72: 0.0002 mm² more than half a digit",
  },
  'H3-04': {
    'Shigley cadmium': 'no finish of a bolt here is cadmium',
    'Bickford_Nassar cadmium dry': 'no finish of a bolt here is cadmium',
  },
  'H3-06': {
    cadmium: 'no finish of a bolt here is cadmium',
    permanent_fraction_of_proof: 'only told beside a larger fraction; a test of the bolt calculation holds it',
  },
  'H3-07': { 'scatter_percent 0': 'the smaller of two figures; the larger is the safe one' },
  'H4-03': Object.fromEntries(
    ['normal M12', 'normal M16', 'loose M12', 'loose M16'].map((name) => [
      name,
      'wrong in the source, as the entry notes; a test holds that ours differ',
    ]),
  ),
  'H4-05': { 'df 10': 'no thread M27 here', 'df 11': 'no thread M30 here' },
  'H4-07': Object.fromEntries(
    ['M30', 'M36'].flatMap((size) =>
      ['hole', 'washer', 't'].map((symbol) => [`${size} ${symbol}`, `no thread ${size} here`]),
    ),
  ),
  'H5-04': Object.fromEntries(
    ['M10', 'M12', 'M16', 'M20', 'M24'].map((size) => [`${size} d1`, 'the hole of a washer decides nothing here']),
  ),
  'H5-05': Object.fromEntries(
    ['M10', 'M12', 'M16', 'M20', 'M24'].map((size) => [`${size} d1`, 'the hole of a washer decides nothing here']),
  ),
  'H5-06': Object.fromEntries(
    ['M10', 'M12', 'M16', 'M20', 'M24'].map((size) => [`m ${size}`, 'no nut on a bolt into an insert']),
  ),
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
  'H7-04': { '28': 'printed as 1 by definition; its own constants give 1.0072, which a test holds' },
  'H10-04': {
    sum_r2: 'printed 72 448; the layout gives 72 450',
    res_published: 'wrong in the source, as the entry notes',
  },
};
