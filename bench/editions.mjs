/** What choosing the edition at run time costs: one edition in a process that knows it alone, and in one that checks by all in turns. */

import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { takeMiddle } from './timing.mjs';

const CHILD = fileURLToPath(new URL('./editions/child.mjs', import.meta.url));
const STANDARDS = ['EN 1992-4', 'AS 5216', 'ACI 318-19', 'ACI 318M-19'];
/** Pairs of processes, alone and in turns; odd. */
const PAIRS = 5;

/** @returns { aloneUs, mixedUs, ratio }: medians over the pairs of processes */
export async function benchEditions() {
  const pairs = [];
  for (let pair = 0; pair < PAIRS; pair++) {
    const alone = await timeIn([STANDARDS[0]]);
    const mixed = await timeIn(STANDARDS);
    pairs.push({ alone, mixed });
  }
  return {
    aloneUs: takeMiddle(pairs.map(({ alone }) => alone)),
    mixedUs: takeMiddle(pairs.map(({ mixed }) => mixed)),
    ratio: takeMiddle(pairs.map(({ alone, mixed }) => mixed / alone)),
  };
}

function timeIn(standards) {
  return new Promise((resolve, reject) => {
    let result = null;
    const child = fork(CHILD, [standards.join(',')]);
    child.on('message', (message) => {
      result = message;
    });
    child.on('error', reject);
    child.on('exit', (code) => {
      if (code === 0 && result !== null) resolve(result.us);
      else reject(new Error(`timing ${standards.join(', ')} ended with code ${code}`));
    });
  });
}
