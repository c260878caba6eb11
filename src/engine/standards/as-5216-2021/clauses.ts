import type { Clause } from '../clause.ts';
import { DESIGN_CAPACITY, STEEL_SHEAR_CAPACITY_FACTOR, STEEL_TENSION_CAPACITY_FACTOR } from './capacity-factors.ts';

/** Every clause record in which AS 5216 differs from EN 1992-4. */
export const CLAUSES: readonly Clause[] = [STEEL_TENSION_CAPACITY_FACTOR, STEEL_SHEAR_CAPACITY_FACTOR, DESIGN_CAPACITY];
