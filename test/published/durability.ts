// Source of the values: data/hardware.json, topic 6 (durability), each entry with its own.

import {
  CORROSION_CATEGORIES,
  type CorrosionCategory,
  coatingLife,
  findSteelLoss,
  findZincLoss,
  type LossRange,
} from '../../src/engine/material/corrosion.ts';
import {
  COVER_DEVIATION,
  type ExposureClass,
  findDurabilityCover,
  NOMINAL_COVER,
} from '../../src/engine/material/cover.ts';
import { chooseStainless, type StainlessSite } from '../../src/engine/material/stainless-grade.ts';
import { type GalvanisedKind, leastGalvanising, PLATINGS } from '../../src/engine/material/zinc-coatings.ts';
import type { Evaluator, PublishedCase } from './published.ts';

type Values = PublishedCase['values'];

/** The lower and upper loss of each category, as the sources print them. */
function lossesOf(
  categories: readonly CorrosionCategory[],
  what: string,
  find: (category: CorrosionCategory) => LossRange,
): Values {
  return Object.fromEntries(
    categories.flatMap((category) => [
      [`${category} 0`, (by: Evaluator) => by.part(what, find(category).low)],
      [`${category} 1`, (by: Evaluator) => by.part(what, find(category).high)],
    ]),
  );
}

const zinc = (categories: readonly CorrosionCategory[]): Values => lossesOf(categories, 'losses of zinc', findZincLoss);

/** Local and mean minimum of rows that are named by a size in mm. */
function galvanised(kind: GalvanisedKind, rows: Readonly<Record<string, number>>): Values {
  return Object.fromEntries(
    Object.entries(rows).flatMap(([row, size]) => [
      [`${row} local`, (by: Evaluator) => by.part('least galvanising', leastGalvanising(kind, size).local)],
      [`${row} mean`, (by: Evaluator) => by.part('least galvanising', leastGalvanising(kind, size).mean)],
    ]),
  );
}

const plating: Values = Object.fromEntries(
  PLATINGS.flatMap(({ nominal, localMin, meanMin, meanMax }, i) => [
    [`nominal ${i}`, (by: Evaluator) => by.part('electroplated zinc', nominal)],
    [`local_min ${i}`, (by: Evaluator) => by.part('electroplated zinc', localMin)],
    [`batch_mean_min ${i}`, (by: Evaluator) => by.part('electroplated zinc', meanMin)],
    [`batch_mean_max ${i}`, (by: Evaluator) => by.part('electroplated zinc', meanMax)],
  ]),
);

/** Clean air, washed by rain, far from the sea and from salted roads. */
const INLAND: StainlessSite = {
  chlorides: { kind: 'distances', sea: 100, saltedRoad: 100, isMildCoast: false },
  sulphurDioxide: 5,
  washing: 'rain',
};
const at = (sea: number, isMildCoast = false): StainlessSite => ({
  ...INLAND,
  chlorides: { kind: 'distances', sea, saltedRoad: 100, isMildCoast },
});
const part = (by: Evaluator, value: number) => by.part('corrosion resistance factor', value);
const F1 = (site: StainlessSite) => (by: Evaluator) => part(by, chooseStainless(site).chlorides);
const F2 = (sulphurDioxide: number) => (by: Evaluator) =>
  part(by, chooseStainless({ ...INLAND, sulphurDioxide }).sulphurDioxide);
const F3 = (washing: StainlessSite['washing']) => (by: Evaluator) =>
  part(by, chooseStainless({ ...INLAND, washing }).washing);

const cover = (exposure: ExposureClass) => (by: Evaluator) =>
  by.part('EN 1992-1-1 Table 4.4N', findDurabilityCover(exposure, 'S4'));

export const CASES: readonly PublishedCase[] = [
  { entry: 'H6-01', how: 'the limits of each category', values: zinc(['C1', 'C2', 'C3', 'C4', 'C5']) },
  { entry: 'H6-02', how: 'the limits of the category', values: zinc(['CX']) },
  {
    entry: 'H6-03',
    how: 'the limits of each category',
    values: lossesOf(CORROSION_CATEGORIES, 'losses of steel', findSteelLoss),
  },
  {
    entry: 'H6-04',
    how: 'the limits that the older rounding leaves alone',
    values: { ...zinc(['C1', 'C2']), 'C3 0': (by) => by.part('losses of zinc', findZincLoss('C3').low) },
  },
  {
    entry: 'H6-05',
    how: 'a thickness of steel inside each row',
    values: galvanised('not centrifuged', { '>6': 7, '>3-6': 5, '1.5-3': 2, '<1.5': 1 }),
  },
  {
    entry: 'H6-06',
    how: 'a size inside each row',
    values: {
      ...galvanised('thread', { 'thread dia > 6': 16, 'thread dia <= 6': 6 }),
      ...galvanised('centrifuged', { 'other >= 3 mm': 3, 'other < 3 mm': 2 }),
    },
  },
  { entry: 'H6-08', how: 'every nominal thickness', values: plating },
  {
    entry: 'H6-09',
    how: 'thickness over the losses of C4',
    values: {
      'years 0': (by) => by.part('coating life', coatingLife(85, 'C4').shortest),
      'years 1': (by) => by.part('coating life', coatingLife(85, 'C4').longest!),
    },
  },
  {
    entry: 'H6-10',
    how: 'a site inside each row',
    values: {
      'F1 internal controlled': F1({ ...INLAND, chlorides: { kind: 'internal' } }),
      'F1 M>10 km or S>0.1 km': F1(INLAND),
      'F1 1<M<=10 km or 0.01<S<=0.1 km': F1(at(5)),
      'F1 0.25<M<=1 km or S<=0.01 km': F1(at(0.5)),
      'F1 road tunnels; M<=0.25 km North Sea coast of Germany and Baltic': F1(at(0.1, true)),
      'F1 M<=0.25 km other European coasts': F1(at(0.1)),
      'F2 <10 ug/m3': F2(5),
      'F2 10-90 ug/m3': F2(50),
      'F2 90-250 ug/m3': F2(200),
    },
  },
  {
    entry: 'H6-11',
    how: 'each kind of washing',
    values: {
      'F3 fully washed by rain': F3('rain'),
      'F3 specified cleaning regime': F3('regime'),
      'F3 no washing or no specified cleaning': F3('none'),
    },
  },
  {
    entry: 'H6-12',
    how: 'link of 8 mm, bar of 20 mm; the bar inside the link has its cover and the link more',
    values: {
      cnom_link: (by) => by.clause(NOMINAL_COVER, 8, findDurabilityCover('XC1', 'S4'), COVER_DEVIATION),
      cnom_bar: (by) => by.clause(NOMINAL_COVER, 20, findDurabilityCover('XC1', 'S4'), COVER_DEVIATION),
      cover_bar_governed_by_link: (by) =>
        by.clause(NOMINAL_COVER, 8, findDurabilityCover('XC1', 'S4'), COVER_DEVIATION) + 8,
    },
  },
  {
    entry: 'H6-14',
    how: 'row S4',
    values: {
      X0: cover('X0'),
      XC1: cover('XC1'),
      'XC2/XC3': cover('XC3'),
      XC4: cover('XC4'),
      'XD1/XS1': cover('XS1'),
      'XD2/XS2': cover('XS2'),
      'XD3/XS3': cover('XS3'),
    },
  },
];
