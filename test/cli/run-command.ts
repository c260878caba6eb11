import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Runs the real command, as built into dist/. */
export function onepour(args: readonly string[], input?: string, columns?: string) {
  // Pages are those of a pipe, whatever the terminal of the tests is.
  const { COLUMNS: _, ...env } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(ROOT, 'bin/onepour.js'), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    env: columns === undefined ? env : { ...env, COLUMNS: columns },
    ...(input === undefined ? {} : { input }),
  });
  return { status, stdout, stderr };
}
