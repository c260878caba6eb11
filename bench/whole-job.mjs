/** A job of 12,500 connections: one pass over all against as many single checks, and the memory it takes. */

import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const CHILD = fileURLToPath(new URL('./whole-job/child.mjs', import.meta.url));

/** @returns { connections, singleMs: single checks one by one, passMs: one pass, peakMB: resident memory } */
export function benchWholeJob() {
  return new Promise((resolve, reject) => {
    let result = null;
    const child = fork(CHILD);
    child.on('message', (message) => {
      result = message;
    });
    child.on('error', reject);
    child.on('exit', (code) => {
      if (code === 0 && result !== null) resolve(result);
      else reject(new Error(`the whole-job run ended with code ${code}`));
    });
  });
}
