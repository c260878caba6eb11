// npm test: the check, then every test, then the plain line "N passed, N failed"; the check counts as one.
// With arguments ("npm test -- test/foo.test.ts") only those tests run, without the check.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const filters = process.argv.slice(2);

const parts = filters.length === 0 ? [runCheck(), runTests([])] : [runTests(filters)];
const passed = parts.reduce((sum, part) => sum + part.passed, 0);
const failed = parts.reduce((sum, part) => sum + part.failed, 0);
process.exitCode = parts.every((part) => part.ok) && failed === 0 ? 0 : 1;
process.stdout.write(`${passed} passed, ${failed} failed\n`);

function runCheck() {
  const done = runNode([join(ROOT, 'scripts', 'check.mjs')], {});
  return { ok: done, passed: done ? 1 : 0, failed: done ? 0 : 1 };
}

function runTests(names) {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-test-'));
  const file = join(folder, 'counts.json');
  try {
    const vitest = join(ROOT, 'node_modules', 'vitest', 'vitest.mjs');
    const ok = runNode([vitest, 'run', ...names], { COUNTS_FILE: file });
    const counts = readCounts(file);
    // A runner that ended in error without a failed test (it could not start, say) is a failure of its own.
    return { ok, passed: counts.passed, failed: !ok && counts.failed === 0 ? 1 : counts.failed };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function runNode(args, env) {
  const done = spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit', env: { ...process.env, ...env } });
  return done.status === 0;
}

/** What the count reporter wrote; nothing when the runner never came that far. */
function readCounts(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return { passed: 0, failed: 0 };
  }
}
