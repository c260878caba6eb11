/** A pour folder of 100 panels with 1,000 inserts in one run, against one of a quarter of it: pages a second, memory, and whether time is linear. */

import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { takeMiddle } from './timing.mjs';

const PANELS = 100;
const PART = 4;
const ROUNDS = 3;
const CHILD = fileURLToPath(new URL('./folder/child.mjs', import.meta.url));

/** @returns { panels, inserts, pages, largeMs, smallMs, ratio, peakMB } */
export async function benchFolder() {
  const large = [];
  const small = [];
  for (let round = 0; round < ROUNDS; round++) {
    small.push(await runChild(PANELS / PART));
    large.push(await runChild(PANELS));
  }
  const { inserts, pages } = large[0];
  return {
    panels: PANELS,
    inserts,
    pages,
    largeMs: takeMiddle(large.map(({ ms }) => ms)),
    smallMs: takeMiddle(small.map(({ ms }) => ms)),
    ratio: takeMiddle(large.map(({ ms }, i) => ms / small[i].ms)),
    peakMB: Math.max(...large.map(({ peakMB }) => peakMB)),
    part: PART,
  };
}

function runChild(panels) {
  return new Promise((resolve, reject) => {
    let result = null;
    const child = fork(CHILD, [String(panels)]);
    child.on('message', (message) => {
      result = message;
    });
    child.on('error', reject);
    child.on('exit', (code) => {
      if (code === 0 && result !== null) resolve(result);
      else reject(new Error(`the folder run of ${panels} panels ended with code ${code}`));
    });
  });
}
