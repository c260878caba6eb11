// Source: capacity factors of AS 5216 as an open-source library has them; the entries name it.

import {
  REINFORCEMENT_CAPACITY_FACTOR,
  STEEL_SHEAR_CAPACITY_FACTOR,
  STEEL_TENSION_CAPACITY_FACTOR,
} from '../../src/engine/standards/as-5216-2021/capacity-factors.ts';
import { AS_5216_2021 } from '../../src/engine/standards/as-5216-2021/edition.ts';
import type { ConcreteMode } from '../../src/engine/standards/edition.ts';
import { makeGroup } from '../engine/checks/groups.ts';
import type { PublishedCase } from './published.ts';

const tension: PublishedCase = {
  entry: 'as5216-phi-tension',
  how: 'f_y and f_u as named',
  values: {
    'phi_Ms,N 240/400': (by) => by.clause(STEEL_TENSION_CAPACITY_FACTOR, 400, 240),
    'phi_Ms,N 660/830': (by) => by.clause(STEEL_TENSION_CAPACITY_FACTOR, 830, 660),
    'phi_Ms,N 750/830': (by) => by.clause(STEEL_TENSION_CAPACITY_FACTOR, 830, 750),
  },
};

const shear: PublishedCase = {
  entry: 'as5216-phi-shear',
  how: 'f_y and f_u as named',
  values: {
    'phi_Ms,V 240/400': (by) => by.clause(STEEL_SHEAR_CAPACITY_FACTOR, 400, 240),
    'phi_Ms,V 660/830': (by) => by.clause(STEEL_SHEAR_CAPACITY_FACTOR, 830, 660),
    'phi_Ms,V 360/400': (by) => by.clause(STEEL_SHEAR_CAPACITY_FACTOR, 400, 360),
  },
};

/** φ of a concrete mode, by the partial factor γ = 1.5/φ_inst; null: none given, φ_inst 1. */
function concreteFactor(mode: ConcreteMode, partialFactor: number | null): number {
  const group = makeGroup({
    standard: 'AS 5216',
    other: { partialFactors: { concrete: partialFactor, steelTension: null, steelShear: null } },
  });
  return AS_5216_2021.concreteSafety(mode, group, null);
}

const PART = 'capacity factor of the edition';

const concrete: PublishedCase = {
  entry: 'as5216-phi-concrete',
  how: 'φ_inst 1 where no partial factor is given; φ_inst 0.5 is the partial factor 1.5/0.5 = 3',
  values: {
    'phi_Mc (phi_inst=1)': (by) => by.part(PART, concreteFactor('concrete-cone', null)),
    'phi_Mc (phi_inst=0.5)': (by) => by.part(PART, concreteFactor('concrete-cone', 3)),
    'phi_Mp (phi_inst=1)': (by) => by.part(PART, concreteFactor('pull-out', null)),
    'phi_Msp (phi_inst=1)': (by) => by.part(PART, concreteFactor('splitting', null)),
    'phi_Ms,re': (by) => by.part(PART, REINFORCEMENT_CAPACITY_FACTOR),
  },
};

export const CASES: readonly PublishedCase[] = [tension, shear, concrete];
