// Source of the values: data/hardware.json: ISO 273, EN 1090-2, EN 1992-4, AISC 360 and base plates. A limit of a table is found from
// outside: the widest hole, in steps of 0.5 mm, that the engine still puts into its kind.

import {
  findAisc360Kind,
  findBasePlateHole,
  findEn1090Kind,
  findIso273Fit,
  findWidestHole,
  type HoleKind,
  type PlateHole,
} from '../../src/engine/hardware/clearance-holes.ts';
import { findThread, type Thread, type ThreadName, threadNames } from '../../src/engine/hardware/threads.ts';
import type { Evaluator, PublishedCase } from './published.ts';

const STEP = 0.5;

/** The greatest hole (round) or length over all (slot of the given width) that a judge still finds to be of a kind. */
function greatest<T>(judge: (hole: PlateHole) => T, kind: T, from: number, width: number | null): number {
  let found = Number.NaN;
  for (let size = from; size <= 4 * from; size += STEP) {
    const hole = width === null ? { diameter: size, slot: 0 } : { diameter: width, slot: size - width };
    if (judge(hole) === kind) found = size;
  }
  return found;
}

type Values = PublishedCase['values'];

function fits(
  sizes: readonly ThreadName[],
  fit: 'fine' | 'medium' | 'coarse',
  name: (size: ThreadName) => string,
): Values {
  return Object.fromEntries(
    sizes.map((size) => [
      name(size),
      (by: Evaluator) => {
        const thread = findThread(size);
        return by.part(
          'fit by ISO 273',
          greatest((hole) => findIso273Fit(thread, hole), fit, thread.diameter, null),
        );
      },
    ]),
  );
}

const SIZES = ['M10', 'M12', 'M16', 'M20', 'M24'] as const;

/** What the hole may be larger than the bolt. */
function en1090(symbol: string, kind: HoleKind): Values {
  return Object.fromEntries(
    (['M12', 'M16', 'M20', 'M24'] as const).map((size) => [
      `${symbol} ${size}`,
      (by: Evaluator) => {
        const thread = findThread(size);
        const d = thread.diameter;
        const width = kind === 'short slot' ? d + 1 : null;
        const from = width ?? d;
        return by.part(
          'kind of hole by EN 1090-2',
          greatest((hole) => findEn1090Kind(thread, hole), kind, from, width) - d,
        );
      },
    ]),
  );
}

function aisc(thread: Thread, standard: number): Values {
  const judge = (hole: PlateHole) => findAisc360Kind(thread, hole);
  const find = (kind: HoleKind, width: number | null) => (by: Evaluator) =>
    by.part('kind of hole by AISC 360', greatest(judge, kind, width ?? thread.diameter, width));
  // The width of a slot is that of a standard hole: one step more is beyond the table.
  const width = (kind: HoleKind) => (by: Evaluator) => {
    const isOf = (diameter: number) =>
      judge({ diameter, slot: kind === 'short slot' ? 1 : 2 * thread.diameter - 20 }) === kind;
    let found = Number.NaN;
    for (let size = thread.diameter; size < 2 * thread.diameter; size += STEP) if (isOf(size)) found = size;
    return by.part('kind of hole by AISC 360', found);
  };
  const { name } = thread;
  return {
    [`${name} std`]: find('normal', null),
    [`${name} over`]: find('oversize', null),
    [`${name} short 0`]: width('short slot'),
    [`${name} short 1`]: find('short slot', standard),
    [`${name} long 0`]: width('long slot'),
    [`${name} long 1`]: find('long slot', standard),
  };
}

const basePlate: Values = Object.fromEntries(
  (['M16', 'M20', 'M24'] as const).flatMap((size) => {
    const sizes = { hole: 'widest', washer: 'washerOutside', t: 'washerThickness' } as const;
    return Object.entries(sizes).map(([symbol, key]) => [
      `${size} ${symbol}`,
      (by: Evaluator) => by.part('base plate hole', findBasePlateHole(findThread(size))?.[key] ?? Number.NaN),
    ]);
  }),
);

export const CASES: readonly PublishedCase[] = [
  { entry: 'H4-01', how: 'the widest hole of the fit', values: fits(SIZES, 'medium', (size) => size) },
  {
    entry: 'H4-02',
    how: 'the widest hole of the fit',
    values: {
      ...fits(SIZES, 'fine', (size) => `fine ${size}`),
      ...fits(SIZES, 'coarse', (size) => `coarse ${size}`),
    },
  },
  {
    entry: 'H4-03',
    how: 'the widest hole of the fit; the wrong sizes of the source are held apart by a test',
    values: {
      ...fits(SIZES, 'fine', (size) => `close ${size}`),
      ...fits(['M10', 'M20', 'M24'], 'medium', (size) => `normal ${size}`),
      ...fits(['M10', 'M20', 'M24'], 'coarse', (size) => `loose ${size}`),
    },
  },
  {
    entry: 'H4-04',
    how: 'the widest hole of the kind, less the bolt',
    values: {
      ...en1090('normal', 'normal'),
      ...en1090('oversize', 'oversize'),
      ...en1090('short_slot', 'short slot'),
    },
  },
  {
    entry: 'H4-05',
    how: 'by thread',
    values: Object.fromEntries(
      threadNames.map((size, i) => [
        `df ${i}`,
        (by: Evaluator) => by.part('widest hole that shares a shear', findWidestHole(findThread(size))),
      ]),
    ),
  },
  {
    entry: 'H4-06',
    how: 'the widest hole, or longest slot, of the kind',
    values: {
      ...aisc(findThread('M16'), 18),
      ...aisc(findThread('M20'), 22),
      ...aisc(findThread('M22'), 24),
      ...aisc(findThread('M24'), 27),
    },
  },
  { entry: 'H4-07', how: 'base plate over anchors', values: basePlate },
];
