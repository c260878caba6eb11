// Source of the values: data/hardware.json, H11-01 and H11-02 (accuracy classes of OIML R 35-1 and Directive 2014/32/EU, seen second hand).

import { permissibleTapeError, type TapeClass } from '../../src/engine/form/tape-error.ts';
import type { PublishedCase } from './published.ts';

const CLASSES: readonly TapeClass[] = ['I', 'II', 'III'];
const MM_PER_M = 1000;

/** One value for each class and length in metres, named "II 5" and so on. */
function forLengths(metres: readonly number[]): PublishedCase['values'] {
  return Object.fromEntries(
    CLASSES.flatMap((tapeClass) =>
      metres.map((length) => [
        `${tapeClass} ${length}`,
        (by) => by.part('class of tape', permissibleTapeError(tapeClass, length * MM_PER_M)),
      ]),
    ),
  );
}

export const CASES: readonly PublishedCase[] = [
  { entry: 'H11-01', how: 'a + b L, L rounded up to the next metre', values: forLengths([10]) },
  { entry: 'H11-02', how: 'a + b L, L rounded up to the next metre', values: forLengths([3, 5, 8]) },
];
