import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const folder = mkdtempSync(join(tmpdir(), 'onepour-count-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const START = "import { afterAll, beforeAll, describe, expect, it } from 'vitest';\n";
const FILES: Readonly<Record<string, string>> = {
  // Two pass, one fails, one error comes out of no test, one hook keeps its test from running: 2 passed, 3 failed.
  mixed: `${START}it('is well', () => {});
it('is not', () => { expect(1).toBe(2); });
it('leaves an error behind', async () => {
  setTimeout(() => { throw new Error('late'); }, 0);
  await new Promise((resolve) => setTimeout(resolve, 20));
});
describe('hook', () => { beforeAll(() => { throw new Error('hook'); }); it('never runs', () => {}); });
`,
  // Each of these is one failure more; the last has a test that passes.
  missing: "import './nowhere.ts';\n",
  empty: 'export {};\n',
  after: `${START}afterAll(() => { throw new Error('after'); });\nit('is well', () => {});\n`,
};

function runTests(filter: readonly string[]): { readonly code: number | null; readonly lines: readonly string[] } {
  const vitest = join(ROOT, 'node_modules', 'vitest', 'vitest.mjs');
  const reporters = ['--reporter=default', `--reporter=${join(ROOT, 'scripts', 'count-reporter.mjs')}`];
  const { COUNTS_FILE: _, ...env } = process.env;
  const done = spawnSync(process.execPath, [vitest, 'run', ...reporters, ...filter], {
    cwd: folder,
    env,
    encoding: 'utf8',
  });
  return { code: done.status, lines: done.stdout.split('\n') };
}

it('ends a run with one true line, whatever went wrong', () => {
  mkdirSync(join(folder, 'node_modules'));
  symlinkSync(join(ROOT, 'node_modules', 'vitest'), join(folder, 'node_modules', 'vitest'));
  for (const [name, text] of Object.entries(FILES)) writeFileSync(join(folder, `${name}.test.ts`), text);

  const all = runTests([]);
  expect(all.lines.slice(-2)).toEqual(['3 passed, 6 failed', '']);
  expect(all.code).toBe(1);
  expect(runTests(['no-such-file']).lines.slice(-2)).toEqual(['0 passed, 1 failed', '']);
});
