// Source of the values: data/hardware.json, topic 7 (strength with age), each entry with its own.

import {
  ELASTIC_MODULUS,
  LOW_TENSILE_STRENGTH,
  MEAN_STRENGTH,
  MEAN_TENSILE_STRENGTH,
} from '../../src/engine/material/concrete-class.ts';
import { HARDENING_RATIO, HYPERBOLIC_RATIO } from '../../src/engine/material/hardening.ts';
import { sumMaturity } from '../../src/engine/material/maturity.ts';
import { findAciConstants, findCementCoefficient } from '../../src/engine/material/strength-at-age.ts';
import type { Clause } from '../../src/engine/standards/clause.ts';
import type { Evaluator, PublishedCase } from './published.ts';

type Values = PublishedCase['values'];
const HOURS_A_DAY = 24;
const MPA_A_GPA = 1000;

/** One value a key, each by the same rule. */
function each<T>(
  keys: readonly T[],
  name: (key: T, i: number) => string,
  give: (by: Evaluator, key: T) => number,
): Values {
  return Object.fromEntries(keys.map((key, i) => [name(key, i), (by: Evaluator) => give(by, key)]));
}

const CLASSES = [20, 25, 30, 35, 40, 45, 50];
const ofClasses = (symbol: string, clause: Clause, divisor = 1): Values =>
  each(
    CLASSES,
    (_, i) => `${symbol} ${i}`,
    (by, f_ck) => by.clause(clause, f_ck) / divisor,
  );

export const CASES: readonly PublishedCase[] = [
  {
    entry: 'H7-01',
    how: 'cement N, s = 0.25',
    values: each([9, 27, 56, 365], String, (by, t) => by.clause(HARDENING_RATIO, findCementCoefficient('N'), t)),
  },
  {
    entry: 'H7-02',
    how: 'the columns of f_ck = 20 to 50 MPa; the moduli in GPa',
    values: {
      ...ofClasses('fcm', MEAN_STRENGTH),
      ...ofClasses('fctm', MEAN_TENSILE_STRENGTH),
      ...ofClasses('fctk005', LOW_TENSILE_STRENGTH),
      ...ofClasses('Ecm', ELASTIC_MODULUS, MPA_A_GPA),
    },
  },
  {
    entry: 'H7-04',
    how: 'type I, moist: a = 4, b = 0.85',
    values: each([3, 7, 14], String, (by, t) =>
      by.clause(HYPERBOLIC_RATIO, ...findAciConstants('ACI type I moist'), t),
    ),
  },
  {
    entry: 'H7-05',
    how: 'a steady log of 28 days; the index over 24',
    values: {
      M_Cdays: (by) => {
        const log = [0, 28 * HOURS_A_DAY].map((hours) => ({ hours, temperature: 15 }));
        return by.part('Nurse-Saul index', sumMaturity(log, -11)) / HOURS_A_DAY;
      },
    },
  },
];
