/**
 * Measures in a process of its own, so that its memory is only that of a job: sends { connections, singleMs, passMs, peakMB }.
 * Singles and passes take turns; both times are the median of the rounds.
 */

import { checkAnchorage, prepare } from '../dist/engine-parts.mjs';
import { makeConnection } from './connections.mjs';

const CONNECTIONS = 12_500;
const SAMPLE = 500;
const ROUNDS = 5;
const MB = 2 ** 20;

const job = Array.from({ length: CONNECTIONS }, (_, index) => makeConnection(index));
const sample = Array.from({ length: SAMPLE }, (_, i) => job[Math.floor((i * CONNECTIONS) / SAMPLE)]);
let peak = 0;
const singles = [];
const passes = [];
timeSingles();
for (let round = 0; round < ROUNDS; round++) {
  singles.push(timeSingles());
  passes.push(timePass());
}
process.send({
  connections: CONNECTIONS,
  singleMs: (takeMiddle(singles) / SAMPLE) * CONNECTIONS,
  passMs: takeMiddle(passes),
  peakMB: peak / MB,
});

/** The largest ratio of a connection and its verdicts, geometry prepared anew. */
function checkConnection({ group, combinations }) {
  const prepared = prepare(group);
  let worst = null;
  for (const actions of combinations) {
    const numbers = checkAnchorage(prepared, actions);
    if (worst === null || numbers.ratio > worst.ratio) worst = numbers;
  }
  return worst;
}

/** Each connection of the sample timed by itself; the sum [ms]. */
function timeSingles() {
  let total = 0;
  for (const connection of sample) {
    const start = performance.now();
    const { verdict } = checkConnection(connection);
    total += performance.now() - start;
    if (verdict === null) throw new Error('a connection gave no verdict');
  }
  return total;
}

/** One pass over the job with every answer kept, as a caller would; memory is looked at every 250 connections [ms]. */
function timePass() {
  const start = performance.now();
  const answers = [];
  for (const connection of job) {
    answers.push(checkConnection(connection));
    if (answers.length % 250 === 0) peak = Math.max(peak, process.memoryUsage.rss());
  }
  const ms = performance.now() - start;
  if (answers.some(({ verdict }) => verdict === null)) throw new Error('a connection gave no verdict');
  return ms;
}

function takeMiddle(times) {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)];
}
