// Source: coefficients, commentary and factors of ACI 318-19 and 318M-19, seen second hand; the entries name each.

import { BLOW_OUT_BASIC } from '../../src/engine/standards/aci-318-19/blow-out.ts';
import {
  BREAKOUT_BASIC,
  BREAKOUT_BASIC_DEEP,
  BREAKOUT_CRACKING,
  BREAKOUT_ECCENTRICITY_FACTOR,
  BREAKOUT_EDGE_FACTOR,
  BREAKOUT_REDUCED_EMBEDMENT,
} from '../../src/engine/standards/aci-318-19/breakout.ts';
import { INCH_POUND, SI } from '../../src/engine/standards/aci-318-19/coefficients.ts';
import {
  EDGE_BASIC,
  EDGE_CORNER_FACTOR,
  EDGE_ECCENTRICITY_FACTOR,
  EDGE_THICKNESS_FACTOR,
} from '../../src/engine/standards/aci-318-19/edge-breakout.ts';
import { USABLE_ULTIMATE } from '../../src/engine/standards/aci-318-19/steel-tension.ts';
import { STEEL_PHI } from '../../src/engine/standards/aci-318-19/strength-reduction.ts';
import { INCH, POUND, PSI, SQUARE_INCH } from './inch-pound.ts';
import type { PublishedCase } from './published.ts';

const COEFFICIENT = 'coefficient of the edition';

const coefficientsOfSi: PublishedCase = {
  entry: 'aci-us-si',
  how: 'the coefficient that the engine uses for 318M-19',
  values: {
    'kc 24': (by) => by.part(COEFFICIENT, SI.breakout),
    'Nb 16 (5/3)': (by) => by.part(COEFFICIENT, SI.deepBreakout),
    'Nsb 160': (by) => by.part(COEFFICIENT, SI.blowOut),
    'Vb 7': (by) => by.part(COEFFICIENT, SI.edge),
    'Vb 9': (by) => by.part(COEFFICIENT, SI.edgeCap),
  },
};

/** One millimetre, one square millimetre and one MPa, as the inch-pound formulas take them. */
const MILLIMETRE = 1 / INCH;
const SQUARE_MILLIMETRE = 1 / SQUARE_INCH;
const MEGAPASCAL = 1 / PSI;
const ANY = Number.POSITIVE_INFINITY;

/** With 1 mm and 1 MPa, given in inches and psi, each formula gives its coefficient in pounds. */
const coefficientsOfInchPound: PublishedCase = {
  entry: 'aci-us-si',
  how: 'the formula with the inch-pound coefficient, evaluated in inches and psi for 1 mm and 1 MPa, its pounds as newtons',
  values: {
    'kc 24': (by) => POUND * by.clause(BREAKOUT_BASIC, 24, 1, MEGAPASCAL, MILLIMETRE),
    'kc 17': (by) => POUND * by.clause(BREAKOUT_BASIC, 17, 1, MEGAPASCAL, MILLIMETRE),
    'Nb 16 (5/3)': (by) => POUND * by.clause(BREAKOUT_BASIC_DEEP, 16, 1, MEGAPASCAL, MILLIMETRE),
    'Nsb 160': (by) => POUND * by.clause(BLOW_OUT_BASIC, 160, MILLIMETRE, SQUARE_MILLIMETRE, 1, MEGAPASCAL),
    'Vb 7': (by) => POUND * by.clause(EDGE_BASIC, 7, ANY, MILLIMETRE, MILLIMETRE, 1, MEGAPASCAL, MILLIMETRE),
    'Vb 8': (by) => POUND * by.clause(EDGE_BASIC, 8, ANY, MILLIMETRE, MILLIMETRE, 1, MEGAPASCAL, MILLIMETRE),
    'Vb 9': (by) => POUND * by.clause(EDGE_BASIC, ANY, 9, MILLIMETRE, MILLIMETRE, 1, MEGAPASCAL, MILLIMETRE),
  },
  widened: {
    'Vb 9': { by: 0.02, because: '9 is 3.766 in SI; the SI edition prints 3.7, not 3.8' },
  },
};

const threeEdges: PublishedCase = {
  entry: 'aci-hef4',
  how: 'c_a,max 6 in, s 9 in; the full embedment cancels, taken as 12 in',
  values: {
    "h'ef": (by) => by.clause(BREAKOUT_REDUCED_EMBEDMENT, 6 * INCH, 9 * INCH, 18 * INCH, 12 * INCH) / INCH,
  },
};

const steelLimit: PublishedCase = {
  entry: 'aci-19fya',
  how: 'load factor 1.4 over the φ of ductile steel in tension',
  values: { '1.4/0.75': (by) => 1.4 / by.part('strength-reduction factor', STEEL_PHI.ductile.tension) },
};

const factors: PublishedCase = {
  entry: 'aci-factors',
  how: 'inputs of the entry; f_uta above its cap',
  values: {
    'psi_ec,N': (by) => by.clause(BREAKOUT_ECCENTRICITY_FACTOR, 6 * INCH, 12 * INCH),
    'psi_ed,N': (by) => by.clause(BREAKOUT_EDGE_FACTOR, 9 * INCH, 12 * INCH),
    'psi_ec,V': (by) => by.clause(EDGE_ECCENTRICITY_FACTOR, 3 * INCH, 6 * INCH),
    'psi_ed,V': (by) => by.clause(EDGE_CORNER_FACTOR, 6 * INCH, 8 * INCH),
    'psi_h,V': (by) => by.clause(EDGE_THICKNESS_FACTOR, 12 * INCH, 12 * INCH),
    'psi_c,N uncracked cast-in': (by) => by.part(COEFFICIENT, BREAKOUT_CRACKING.uncracked),
    'futa cap': (by) => by.clause(USABLE_ULTIMATE, 100_000 * PSI, 36_000 * PSI, INCH_POUND.highestUltimate) / PSI,
  },
};

export const CASES: readonly PublishedCase[] = [
  coefficientsOfSi,
  coefficientsOfInchPound,
  threeEdges,
  steelLimit,
  factors,
];
