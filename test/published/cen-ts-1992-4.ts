// Source: CEN/TS 1992-4-1 and 1992-4-2:2009, from a text copy, and the coefficients of EN 1992-4:2018, seen second hand.

import { BLOW_OUT_BASIC, BLOW_OUT_FACTOR } from '../../src/engine/standards/en-1992-4-2018/blow-out.ts';
import {
  CONE_BASIC,
  CONE_FACTOR,
  CONE_REDUCED_EMBEDMENT,
} from '../../src/engine/standards/en-1992-4-2018/concrete-cone.ts';
import { EDGE_BASIC, EDGE_FACTOR } from '../../src/engine/standards/en-1992-4-2018/concrete-edge.ts';
import {
  CONCRETE_FACTOR,
  STEEL_SHEAR_FACTOR,
  STEEL_TENSION_FACTOR,
} from '../../src/engine/standards/en-1992-4-2018/partial-factors.ts';
import { PULL_OUT, PULL_OUT_FACTOR } from '../../src/engine/standards/en-1992-4-2018/pull-out.ts';
import type { PublishedCase } from './published.ts';

const figure6: PublishedCase = {
  entry: 'cents-fig6',
  how: 'c_max 120 mm, s_max 210 mm, each alone for its own part; the full embedment cancels, taken as 200 mm',
  values: {
    "h'ef": (by) => by.clause(CONE_REDUCED_EMBEDMENT, 120, 210, 300, 200),
    'c_max/1.5': (by) => by.clause(CONE_REDUCED_EMBEDMENT, 120, 0, 300, 200),
    's_max/3': (by) => by.clause(CONE_REDUCED_EMBEDMENT, 0, 210, 300, 200),
  },
};

const partialFactors: PublishedCase = {
  entry: 'cents-gamma',
  how: 'f_uk, f_yk of the entry; γ_Mc as the engine takes it for cast-in inserts',
  values: {
    'gamma_Ms,N 4.6': (by) => by.clause(STEEL_TENSION_FACTOR, 400, 240),
    'gamma_Ms,N 8.8': (by) => by.clause(STEEL_TENSION_FACTOR, 800, 640),
    'gamma_Ms,N 10.9': (by) => by.clause(STEEL_TENSION_FACTOR, 1000, 900),
    'gamma_Ms,V 4.6': (by) => by.clause(STEEL_SHEAR_FACTOR, 400, 240),
    'gamma_Ms,V 8.8': (by) => by.clause(STEEL_SHEAR_FACTOR, 800, 640),
    'gamma_Ms,V 10.9': (by) => by.clause(STEEL_SHEAR_FACTOR, 1000, 900),
    gamma_Mc: (by) => by.part('partial factor for concrete', CONCRETE_FACTOR),
  },
};

const COEFFICIENT = 'coefficient of the edition';

const coefficients: PublishedCase = {
  entry: 'cents-to-en',
  how: 'the coefficient that the engine uses',
  values: {
    'k1 cracked': (by) => by.part(COEFFICIENT, CONE_FACTOR.cracked),
    'k1 uncracked': (by) => by.part(COEFFICIENT, CONE_FACTOR.uncracked),
    'k2 cracked': (by) => by.part(COEFFICIENT, PULL_OUT_FACTOR.cracked),
    'k2 uncracked': (by) => by.part(COEFFICIENT, PULL_OUT_FACTOR.uncracked),
    'k5 cracked': (by) => by.part(COEFFICIENT, BLOW_OUT_FACTOR.cracked),
    'k5 uncracked': (by) => by.part(COEFFICIENT, BLOW_OUT_FACTOR.uncracked),
    'k9 cracked': (by) => by.part(COEFFICIENT, EDGE_FACTOR.cracked),
    'k9 uncracked': (by) => by.part(COEFFICIENT, EDGE_FACTOR.uncracked),
  },
};

/** Cube over cylinder strength; for pull-out, where the strength itself counts and not its root, 1.25 fits exactly. */
const CUBE = 1.2;
const CUBE_PULL_OUT = 1.25;

/** "A few percent", as the entry says of the change of edition, is read as at most five. */
const fewPercent = (value: number) => ({
  by: 0.05 * value,
  because: 'a rounded value on the cylinder basis, and the edition lowers it by a few percent (read as at most 5 %)',
});

/** The coefficient of the older edition (cube strength) in the clause's own formula, for a cylinder strength of 1 MPa. */
const fromOlderEdition: PublishedCase = {
  entry: 'cents-to-en',
  how: 'coefficient of CEN/TS 1992-4-2 (8.5, 11.9; 6, 8.4; 8, 11.2; 1.6, 2.24) with cube = 1.2 cylinder strength, pull-out 1.25',
  values: {
    'k1 cracked': (by) => by.clause(CONE_BASIC, 8.5, CUBE, 1),
    'k1 uncracked': (by) => by.clause(CONE_BASIC, 11.9, CUBE, 1),
    'k2 cracked': (by) => by.clause(PULL_OUT, 6, 1, CUBE_PULL_OUT),
    'k2 uncracked': (by) => by.clause(PULL_OUT, 6 * 1.4, 1, CUBE_PULL_OUT),
    'k5 cracked': (by) => by.clause(BLOW_OUT_BASIC, 8, 1, 1, CUBE),
    'k5 uncracked': (by) => by.clause(BLOW_OUT_BASIC, 8 * 1.4, 1, 1, CUBE),
    'k9 cracked': (by) => by.clause(EDGE_BASIC, 1.6, 1, 1, CUBE, 1),
    'k9 uncracked': (by) => by.clause(EDGE_BASIC, 1.6 * 1.4, 1, 1, CUBE, 1),
  },
  widened: {
    'k1 cracked': fewPercent(8.9),
    'k1 uncracked': fewPercent(12.7),
    'k5 cracked': fewPercent(8.7),
    'k5 uncracked': fewPercent(12.2),
    'k9 cracked': fewPercent(1.7),
    'k9 uncracked': fewPercent(2.4),
  },
};

export const CASES: readonly PublishedCase[] = [figure6, partialFactors, coefficients, fromOlderEdition];
