// npm run mutants: plants each fault of test/mutants/*.json, one at a time, in a copy of the project and wants a red test.
// --only TEXT takes the faults whose file, reason or list holds the text; --list plants none and says whether each could
// be planted. The project itself is never touched.

import { fork } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { readMutants } from './lib/mutant-list.mjs';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const NOT_COPIED = new Set(['node_modules', '.git', 'dist', '.stamp', 'coverage']);
const AT_ONCE = 2;
/** A planted fault may turn a loop endless; a run that takes longer counts as red. */
const LONGEST_SECONDS = 120;

const { values } = parseArgs({ options: { only: { type: 'string' }, list: { type: 'boolean', default: false } } });
const { mutants, faults } = readMutants(ROOT, values.only);
for (const fault of faults) say(`error     ${fault}`);
if (mutants.length === 0)
  say(values.only === undefined ? 'no planted faults found' : `no planted fault fits "${values.only}"`);

const counts = { caught: 0, survived: 0, error: faults.length + (mutants.length === 0 ? 1 : 0) };
if (values.list) for (const mutant of mutants) say(`${mutant.file}: ${mutant.why}`);
else if (mutants.length > 0) await plantAll();
say(
  values.list
    ? `${mutants.length} can be planted, ${faults.length} cannot`
    : `${counts.caught} caught, ${counts.survived} survived, ${counts.error} errors`,
);
process.exitCode = counts.survived + counts.error === 0 ? 0 : 1;

/** Plants each fault in turn and counts what became of it. */
async function plantAll() {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-mutants-'));
  try {
    const runners = Array.from({ length: Math.min(AT_ONCE, mutants.length) }, (_, index) =>
      makeRunner(join(folder, String(index))),
    );
    try {
      const red = await findRedTests(runners);
      const waiting = mutants.filter((mutant) => !mutant.tests.some((test) => red.has(test)));
      counts.error += mutants.length - waiting.length;
      if (waiting.length < mutants.length)
        say(`${mutants.length - waiting.length} faults not planted: their tests are red already`);
      await share(runners, waiting, async (runner, mutant, number) => {
        const start = performance.now();
        const verdict = await plant(runner, mutant);
        counts[verdict.kind] += 1;
        const seconds = ((performance.now() - start) / 1000).toFixed(1);
        say(
          `${verdict.kind.padEnd(9)} ${number}/${waiting.length} ${mutant.file}: ${mutant.why}${verdict.note} (${seconds} s)`,
        );
        if (verdict.kind !== 'caught')
          say(`          ${mutant.find}  →  ${mutant.replace}\n          ${mutant.tests.join(', ')}`);
      });
    } finally {
      for (const runner of runners) runner.stop();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function say(line) {
  process.stdout.write(`${line}\n`);
}

/** Runs every named test on the sound sources; gives the files that are red. */
async function findRedTests(runners) {
  const red = new Set();
  await share(runners, [...new Set(mutants.flatMap((mutant) => mutant.tests))], async (runner, test) => {
    const result = await runner.run([test], null);
    if (result.kind === 'green') return;
    red.add(test);
    say(`error     ${test} is red without a planted fault: ${result.note}`);
  });
  return red;
}

async function plant(runner, mutant) {
  const file = join(runner.folder, mutant.file);
  const sound = readFileSync(file, 'utf8');
  writeFileSync(
    file,
    sound.replace(mutant.find, () => mutant.replace),
  );
  const result = await runner.run(mutant.tests, mutant.file);
  writeFileSync(file, sound);
  if (result.kind === 'red') return { kind: 'caught', note: '' };
  if (result.kind === 'endless') return { kind: 'caught', note: ', never ended' };
  if (result.kind === 'green') return { kind: 'survived', note: '' };
  return { kind: 'error', note: `, no test ran: ${result.note}` };
}

/** Hands the items out one at a time to whichever runner is free. */
async function share(runners, items, work) {
  let next = 0;
  const serve = async (runner) => {
    while (next < items.length) {
      next += 1;
      await work(runner, items[next - 1], next);
    }
  };
  await Promise.all(runners.map(serve));
}

/** A copy of the project with a process that keeps the test runner warm in it. */
function makeRunner(copy) {
  mkdirSync(copy);
  for (const name of readdirSync(ROOT)) {
    if (NOT_COPIED.has(name)) continue;
    cpSync(join(ROOT, name), join(copy, name), { recursive: true, filter: (from) => !NOT_COPIED.has(basename(from)) });
  }
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'), 'junction');
  let child = null;
  let changedBefore = null;
  const start = () =>
    fork(join(copy, 'scripts', 'lib', 'mutant-worker.mjs'), {
      cwd: copy,
      stdio: ['ignore', 'ignore', 2, 'ipc'],
      env: { ...process.env, NO_COLOR: '1' },
    });
  const stop = () => {
    child?.kill('SIGKILL');
    child = null;
  };
  const run = (tests, changed) =>
    new Promise((resolve) => {
      child ??= start();
      const end = (result) => {
        clearTimeout(timer);
        child?.removeAllListeners();
        resolve(result);
      };
      const timer = setTimeout(() => {
        stop();
        end({ kind: 'endless', note: '' });
      }, LONGEST_SECONDS * 1000);
      child.once('message', end);
      child.once('exit', (code) => {
        child = null;
        end({ kind: 'broken', note: `the test runner ended with code ${code}` });
      });
      child.send({ tests, changed: [changedBefore, changed].filter((name) => name !== null) });
      changedBefore = changed;
    });
  return { folder: copy, run, stop };
}
