import type { Clause } from '../standards/clause.ts';
import { ELASTIC_MODULUS, LOW_TENSILE_STRENGTH, MEAN_STRENGTH, MEAN_TENSILE_STRENGTH } from './concrete-class.ts';
import { YEARS_OF_ZINC } from './corrosion.ts';
import { NOMINAL_COVER } from './cover.ts';
import { CHARACTERISTIC_AT_AGE, HARDENING_RATIO, HYPERBOLIC_RATIO, MEAN_STRENGTH_AT_AGE } from './hardening.ts';
import { AGE_FROM_INDEX, AGING_RATE } from './maturity.ts';

/** Every formula on materials that has a record, in the order of the documents. */
export const MATERIAL_CLAUSES: readonly Clause[] = [
  MEAN_STRENGTH,
  MEAN_TENSILE_STRENGTH,
  LOW_TENSILE_STRENGTH,
  ELASTIC_MODULUS,
  HARDENING_RATIO,
  MEAN_STRENGTH_AT_AGE,
  CHARACTERISTIC_AT_AGE,
  HYPERBOLIC_RATIO,
  NOMINAL_COVER,
  AGING_RATE,
  AGE_FROM_INDEX,
  YEARS_OF_ZINC,
];
