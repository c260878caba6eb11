// npm run bench: speed, as ratios in one run. bench/ is a package of its own: what it measures against is installed there,
// as locked (by npm's prebench), and never becomes part of the product. Onepour's parts are bundled from the sources as they
// are.

import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const BENCH = join(ROOT, 'bench');

await build({
  absWorkingDir: BENCH,
  entryPoints: ['engine-parts.mjs', 'folder-parts.mjs'],
  outdir: 'dist',
  outExtension: { '.js': '.mjs' },
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  logLevel: 'warning',
});
const done = spawnSync(process.execPath, [join(BENCH, 'run.mjs')], { stdio: 'inherit' });
process.exitCode = done.status ?? 1;
