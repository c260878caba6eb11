import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

it('every planted fault still finds its place in the sources, so that npm run mutants can plant it', () => {
  const done = spawnSync(process.execPath, [join(ROOT, 'scripts', 'mutants.mjs'), '--list'], { encoding: 'utf8' });
  expect(done.status, done.stdout + done.stderr).toBe(0);
  expect(done.stdout).toMatch(/\d+ can be planted, 0 cannot\n$/);
});
