// Source of the values: data/hardware.json: ISO 898-1 transcribed by distributors and reference pages, thread limits, strip areas.

import {
  findBoltLoads,
  findLeastStrengths,
  type LeastStrengths,
  nominalStressArea,
} from '../../src/engine/hardware/bolt-strengths.ts';
import type { PropertyClass } from '../../src/engine/hardware/property-classes.ts';
import { findCoatingRoom } from '../../src/engine/hardware/thread-pairing.ts';
import { stripReduction } from '../../src/engine/hardware/thread-shear.ts';
import { findThread, type ThreadName } from '../../src/engine/hardware/threads.ts';
import type { Evaluator, PublishedCase } from './published.ts';

const SIZES = ['M10', 'M12', 'M16', 'M20', 'M24'] as const satisfies readonly ThreadName[];
const CLASSES = ['4.6', '5.8', '8.8', '10.9'] as const satisfies readonly PropertyClass[];

/** One load for each class and size, named "8.8 M16" and so on, but for those left out. */
function loads(which: 'proof' | 'breaking', leftOut: readonly string[]): PublishedCase['values'] {
  return Object.fromEntries(
    CLASSES.flatMap((propertyClass) => SIZES.map((size) => [propertyClass, size] as const))
      .filter(([propertyClass, size]) => !leftOut.includes(`${propertyClass} ${size}`))
      .map(([propertyClass, size]) => [
        `${propertyClass} ${size}`,
        (by: Evaluator) => by.part('loads of a bolt', findBoltLoads(propertyClass, findThread(size))[which]),
      ]),
  );
}

/** Published name of a stress → the engine's. */
const STRESSES = { Rm_min: 'ultimate', Rp02_min: 'yield', Re_min: 'yield', Sp: 'proof' } as const;

function stress(propertyClass: PropertyClass, size: ThreadName, symbol: keyof typeof STRESSES) {
  const key: keyof LeastStrengths = STRESSES[symbol];
  return (by: Evaluator) =>
    by.part('least strengths of a class', findLeastStrengths(propertyClass, findThread(size))[key] ?? Number.NaN);
}

export const CASES: readonly PublishedCase[] = [
  {
    entry: 'H1-05',
    how: 'the nominal area of ISO 898-1, three figures',
    values: { 'As M10': (by) => by.part('nominal stress area', nominalStressArea(findThread('M10'))) },
  },
  { entry: 'H1-06', how: 'A_s,nom × S_p', values: loads('proof', ['8.8 M10', '8.8 M16']) },
  { entry: 'H1-07', how: 'A_s,nom × R_m,min', values: loads('breaking', ['8.8 M16']) },
  {
    entry: 'H1-08',
    how: 'least strengths by class and size',
    values: {
      '8.8 d<=16 Rm_min': stress('8.8', 'M16', 'Rm_min'),
      '8.8 d<=16 Rp02_min': stress('8.8', 'M16', 'Rp02_min'),
      '8.8 d>16 Rm_min': stress('8.8', 'M18', 'Rm_min'),
      '8.8 d>16 Rp02_min': stress('8.8', 'M18', 'Rp02_min'),
      '10.9 Rm_min': stress('10.9', 'M16', 'Rm_min'),
      '10.9 Rp02_min': stress('10.9', 'M16', 'Rp02_min'),
    },
  },
  {
    entry: 'H1-09',
    how: 'least strengths by class and size',
    values: {
      '4.6 Sp': stress('4.6', 'M16', 'Sp'),
      '4.6 Re_min': stress('4.6', 'M16', 'Re_min'),
      '4.6 Rm_min': stress('4.6', 'M16', 'Rm_min'),
      '5.8 Sp': stress('5.8', 'M16', 'Sp'),
      '5.8 Re_min': stress('5.8', 'M16', 'Re_min'),
      '5.8 Rm_min': stress('5.8', 'M16', 'Rm_min'),
      '8.8 d>=17 Re_min': stress('8.8', 'M18', 'Re_min'),
      '8.8 d>=17 Rm_min': stress('8.8', 'M18', 'Rm_min'),
      '10.9 Sp': stress('10.9', 'M20', 'Sp'),
      '10.9 Re_min': stress('10.9', 'M20', 'Re_min'),
      '10.9 Rm_min': stress('10.9', 'M20', 'Rm_min'),
    },
  },
  {
    entry: 'H1-13',
    how: 'the greatest bolt before coating',
    values: { d2_max_6g: (by) => by.part('thread limits', findThread('M10').bolt6g.pitchMax) },
  },
  {
    entry: 'H6-08',
    how: 'room for a coating on a 6g bolt in 6H, M10, in µm',
    values: {
      limit_6g_M10_M12: (by) => by.part('room for a coating', findCoatingRoom(findThread('M10'), '6H') * 1000),
    },
  },
  {
    entry: 'H2-07',
    how: 'a thick body, where only the bending of the threads is left',
    values: Object.fromEntries(
      ['C3_Rs_ge_1', 'C2_Rs_le_1'].map((name) => [
        name,
        (by: Evaluator) => by.part('what counts of a strip area', stripReduction(2) ?? Number.NaN),
      ]),
    ),
  },
];
