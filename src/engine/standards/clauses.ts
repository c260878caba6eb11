import { CLAUSES as ACI_318_19 } from './aci-318-19/clauses.ts';
import { CLAUSES as AS_5216_2021 } from './as-5216-2021/clauses.ts';
import type { Clause } from './clause.ts';
import { CLAUSES as EN_1992_4_2018 } from './en-1992-4-2018/clauses.ts';

/** Every clause record of every edition. */
export const CLAUSES: readonly Clause[] = [...EN_1992_4_2018, ...AS_5216_2021, ...ACI_318_19];
