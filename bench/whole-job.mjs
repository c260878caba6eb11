/** A job of 12,500 connections: one pass over all against as many single checks, and the memory it takes. */

import { fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makeLargeJob } from './whole-job/job.mjs';

const CONNECTIONS = 12_500;
const CHILD = fileURLToPath(new URL('./whole-job/child.mjs', import.meta.url));
const DEMO = new URL('../demo/job.json', import.meta.url);

/** @returns { connections, singleMs: as many single checks, passMs: one pass, peakMB: resident memory, counts: by state } */
export async function benchWholeJob() {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-bench-'));
  try {
    const path = join(folder, 'job.json');
    writeFileSync(path, JSON.stringify(makeLargeJob(JSON.parse(readFileSync(DEMO, 'utf8')), CONNECTIONS)));
    return await runChild(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function runChild(path) {
  return new Promise((resolve, reject) => {
    let result = null;
    const child = fork(CHILD, [path]);
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
