// npm run test:long: the tests that ask test/long.ts how long they shall be, in full length: more kills, more minutes. "npm test" runs the same in short.
// With arguments only those of them whose path holds one.

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const ASKS = /from '(\.\.?\/)+long\.ts'/;

const wanted = process.argv.slice(2);
const tests = readdirSync(join(ROOT, 'test'), { recursive: true })
  .map((name) => `test/${name.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.test.ts') && ASKS.test(readFileSync(join(ROOT, path), 'utf8')))
  .filter((path) => wanted.length === 0 || wanted.some((text) => path.includes(text)));
if (tests.length === 0) {
  process.stderr.write(`onepour: no long test fits ${wanted.join(', ')}\n`);
  process.exitCode = 1;
} else {
  // One file at a time: some measure times.
  const args = [join(ROOT, 'node_modules', 'vitest', 'vitest.mjs'), 'run', '--no-file-parallelism', ...tests];
  const env = { ...process.env, ONEPOUR_LONG: 'yes' };
  process.exitCode = spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit', env }).status ?? 1;
}
