/**
 * Measures a job in a process of its own, so that the memory is only that of a job. Its argument is the job file; it sends
 * { connections, singleMs, passMs, peakMB, counts }. The memory is the highest of reading the file and one pass, as a user
 * runs it; then single checks and passes take turns, and both times are the median of the rounds.
 */

import { readFileSync } from 'node:fs';
import { assessConnection, assessJob, indexJob, readJobDocument, resolveConnection } from '../dist/engine-parts.mjs';
import { takeMiddle } from '../timing.mjs';

/** Every 13th connection is timed by itself; the job repeats after 40, so that all kinds are met. */
const EVERY = 13;
const ROUNDS = 5;
const KB_PER_MB = 1024;

const file = readJob(process.argv[2]);
const { connections } = file.job;
const sample = connections.filter((_, i) => i % EVERY === 0);
const index = indexJob(file);
const { counts } = assessJob(file);
const peakMB = process.resourceUsage().maxRSS / KB_PER_MB;
const singles = [];
const passes = [];
timeSingles();
for (let round = 0; round < ROUNDS; round++) {
  singles.push(timeSingles());
  passes.push(timePass());
}
process.send({
  connections: connections.length,
  singleMs: (takeMiddle(singles) / sample.length) * connections.length,
  passMs: takeMiddle(passes),
  peakMB,
  counts,
});

function readJob(path) {
  const read = readJobDocument(JSON.parse(readFileSync(path, 'utf8')));
  if (!read.ok) throw new Error(`the large job is not read: ${JSON.stringify(read.faults.slice(0, 3))}`);
  return read.file;
}

/** Each connection of the sample resolved and checked by itself; the sum of their times [ms]. */
function timeSingles() {
  let total = 0;
  for (const connection of sample) {
    const start = performance.now();
    const { state } = assessConnection(resolveConnection(index, connection));
    total += performance.now() - start;
    if (state === undefined) throw new Error(`connection ${connection.mark} has no state`);
  }
  return total;
}

/** One pass over the whole job [ms]. */
function timePass() {
  const start = performance.now();
  const answer = assessJob(file);
  const ms = performance.now() - start;
  if (answer.connections.length !== connections.length) throw new Error(`${answer.connections.length} answers`);
  return ms;
}
