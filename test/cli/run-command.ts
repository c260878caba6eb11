import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Runs the real command, as built into dist/. */
export function onepour(args: readonly string[], input?: string) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(ROOT, 'bin/onepour.js'), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    ...(input === undefined ? {} : { input }),
  });
  return { status, stdout, stderr };
}
