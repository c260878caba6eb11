/**
 * Times numbers-only checks (preparation and ten combinations) in a process of its own, so that what the process has learned
 * of other editions is the only difference. Its argument: the editions checked in turns, separated by commas; the first is
 * timed. Sends the median time of one group of the first edition [µs].
 */

import { checkAnchorage, prepare } from '../dist/engine-parts.mjs';
import { makeCase, toEngine } from '../spreadsheet/cases.mjs';
import { takeMiddle } from '../timing.mjs';

const CASES = 32;
const WARM = 250;
const ROUNDS = 81;

const [first, ...others] = process.argv[2].split(',');
const cases = Array.from({ length: CASES }, (_, index) => toEngine(makeCase(index)));

/** All cases by one edition; returns a sum, so that nothing is left out as unused. */
function runAll(standard) {
  let sum = 0;
  for (const { group, combinations } of cases) {
    const prepared = prepare({ ...group, standard });
    for (const actions of combinations) sum += checkAnchorage(prepared, actions).ratio;
  }
  return sum;
}

function timeFirst() {
  const start = performance.now();
  const sum = runAll(first);
  if (!Number.isFinite(sum)) throw new Error(`the sum of ${first} is ${sum}; expected a finite number`);
  return ((performance.now() - start) * 1000) / CASES;
}

const times = [];
for (let round = 0; round < WARM + ROUNDS; round++) {
  const us = timeFirst();
  for (const other of others) runAll(other);
  if (round >= WARM) times.push(us);
}
process.send({ us: takeMiddle(times) });
