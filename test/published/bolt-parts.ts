// Source of the values: data/hardware.json: tables after ISO 4014, 4017, 7089, 7093-1 in open-source libraries; textbooks on tightening.

import { findBoltHead, findThreadLength, listNominalLengths } from '../../src/engine/hardware/bolt-dimensions.ts';
import { expectNutFactors, findPublishedNutFactors } from '../../src/engine/hardware/nut-factors.ts';
import { findThread, type ThreadName } from '../../src/engine/hardware/threads.ts';
import { findTorque } from '../../src/engine/hardware/tightening.ts';
import { listWashers, type Washer } from '../../src/engine/hardware/washers.ts';
import { findLeastDistances } from '../../src/engine/standards/aci-318-19/least-distances.ts';
import type { Evaluator, PublishedCase } from './published.ts';

const SIZES = ['M10', 'M12', 'M16', 'M20', 'M24'] as const satisfies readonly ThreadName[];

type Values = PublishedCase['values'];

/** A value for each size. */
function forSizes(name: (size: ThreadName) => string, part: string, give: (size: ThreadName) => number): Values {
  return Object.fromEntries(SIZES.map((size) => [name(size), (by: Evaluator) => by.part(part, give(size))]));
}

/** b1, b2 and b3 belong to lengths up to 125 mm, up to 200 mm and above: computed at the ends of these ranges. */
const threadLengths: Values = Object.fromEntries(
  Object.entries({ b1: [125], b2: [126, 200], b3: [201, 300] }).flatMap(([symbol, lengths]) =>
    Object.entries(
      forSizes(
        (size) => `${symbol} ${size}`,
        'thread length of a bolt with shank',
        (size) => {
          const found = new Set(lengths.map((length) => findThreadLength(findThread(size), length)));
          return found.size === 1 ? [...found][0]! : Number.NaN;
        },
      ),
    ),
  ),
);

function nominalLengths(standard: 'ISO 4014' | 'ISO 4017', name: string): Values {
  return Object.fromEntries(
    listNominalLengths(standard).map((length, i) => [
      `${name} ${i}`,
      (by: Evaluator) => by.part('nominal lengths', length),
    ]),
  );
}

function washers(which: 0 | 1): Values {
  const sizes = { d2: 'outside', h: 'thickness', h_max: 'thicknessMax' } as const;
  return Object.fromEntries(
    Object.entries(sizes).flatMap(([symbol, key]) =>
      Object.entries(
        forSizes(
          (size) => `${size} ${symbol}`,
          'washers',
          (size) => {
            const washer: Washer = listWashers(findThread(size))[which];
            return washer[key];
          },
        ),
      ),
    ),
  );
}

const factor = (finish: 'plain' | 'zinc' | 'stainless', end: 'least' | 'greatest') => (by: Evaluator) =>
  by.part('nut factors in books', findPublishedNutFactors(finish)?.[end] ?? Number.NaN);

const aci = (isTorqued: boolean, which: 'edge' | 'spacing') => (by: Evaluator) =>
  by.part('least distances', findLeastDistances(1, isTorqued)[which] ?? Number.NaN);

export const CASES: readonly PublishedCase[] = [
  { entry: 'H5-01', how: 'both ends of each range of lengths', values: threadLengths },
  {
    entry: 'H5-02',
    how: 'the lists, in order',
    values: { ...nominalLengths('ISO 4014', 'iso4014'), ...nominalLengths('ISO 4017', 'iso4017') },
  },
  { entry: 'H5-04', how: 'normal series', values: washers(0) },
  { entry: 'H5-05', how: 'large series', values: washers(1) },
  {
    entry: 'H5-06',
    how: 'hexagon head',
    values: {
      ...forSizes(
        (size) => `k ${size}`,
        'bolt head',
        (size) => findBoltHead(findThread(size)).height,
      ),
      ...forSizes(
        (size) => `s ${size}`,
        'bolt head',
        (size) => findBoltHead(findThread(size)).acrossFlats,
      ),
    },
  },
  {
    entry: 'H3-02',
    how: 'T = K d F, in the units of the source',
    values: Object.fromEntries(
      ['0.30', '0.25', '0.20', '0.15', '0.10'].map((K) => [
        K,
        (by: Evaluator) => by.part('torque for a tension', findTorque(Number(K), 0.19, 1275)),
      ]),
    ),
  },
  {
    entry: 'H3-04',
    how: 'ends of the range for a finish',
    values: {
      'Shigley non-plated': factor('plain', 'greatest'),
      'Shigley zinc': factor('zinc', 'least'),
      'Bickford_Nassar bare steel': factor('plain', 'least'),
      'Bickford_Nassar zinc dry': factor('zinc', 'greatest'),
    },
  },
  {
    entry: 'H3-06',
    how: 'ends of the range for a finish',
    values: { lubricated: factor('stainless', 'greatest'), 'Bowman anti-seize': factor('stainless', 'least') },
  },
  {
    entry: 'H3-07',
    how: 'from the range of K about a nominal value, where no book has a range',
    values: {
      'scatter_percent 1': (by) =>
        by.part('scatter of the tension', (0.2 / expectNutFactors(0.2, 'galvanised').least - 1) * 100),
    },
  },
  {
    entry: 'H12-08',
    how: 'd_a = 1',
    values: {
      spacing_untorqued_d: aci(false, 'spacing'),
      spacing_torqued_d: aci(true, 'spacing'),
      edge_torqued_d: aci(true, 'edge'),
    },
  },
];
