// npm run check: everything about the sources that needs no run of the program.
// One line a step; the output of a step that fails follows at the end.

import { spawn } from 'node:child_process';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const TSC = 'node_modules/typescript/bin/tsc';

const STEPS = [
  { name: 'types', args: [TSC, '-p', 'tsconfig.json'] },
  { name: 'types of the screens', args: [TSC, '-p', 'tsconfig.web.json'] },
  { name: 'types of the tests of the screens', args: [TSC, '-p', 'tsconfig.webtest.json'] },
  { name: 'types of the engine alone', args: [TSC, '-p', 'tsconfig.engine.json'] },
  {
    name: 'import directions',
    args: ['node_modules/dependency-cruiser/bin/dependency-cruise.mjs', '--config', '.dependency-cruiser.mjs', 'src'],
  },
  {
    name: 'dead exports, files and packages',
    args: ['node_modules/knip/bin/knip.js', '--treat-config-hints-as-errors'],
  },
  {
    name: 'lint and formatting',
    args: ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'],
  },
  { name: 'house rules', args: ['scripts/house-rules.mjs'] },
];
const AT_ONCE = 2;

const waiting = [...STEPS];
const faults = [];
await Promise.all(Array.from({ length: AT_ONCE }, work));
for (const { name, output } of faults) process.stdout.write(`\n--- ${name}\n${output.trimEnd()}\n`);
process.stdout.write(
  faults.length === 0 ? 'check: all well\n' : `\ncheck: ${faults.map((f) => f.name).join('; ')}: failed\n`,
);
process.exitCode = faults.length === 0 ? 0 : 1;

async function work() {
  for (let step = waiting.shift(); step !== undefined; step = waiting.shift()) {
    const start = performance.now();
    const { ok, output } = await run(step.args);
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    process.stdout.write(`check: ${ok ? 'ok    ' : 'FAILED'} ${step.name} (${seconds} s)\n`);
    if (!ok) faults.push({ name: step.name, output });
  }
}

function run(args) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    const add = (chunk) => {
      output += chunk;
    };
    child.stdout.setEncoding('utf8').on('data', add);
    child.stderr.setEncoding('utf8').on('data', add);
    child.on('error', (error) => resolve({ ok: false, output: `${output}${error.message}\n` }));
    child.on('close', (code) => resolve({ ok: code === 0, output }));
  });
}
