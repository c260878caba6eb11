// Builds dist/: the shell command (cli.js), the engine alone (engine.js) and the engine's types.
// Also npm's "prepare": an install without the build tools then says so and goes on.

import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { clearStamp, hashSources, writeStamp } from './lib/built.mjs';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const require = createRequire(import.meta.url);

const esbuild = await import('esbuild').catch((error) => {
  if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
  return null;
});
if (esbuild === null) {
  const line =
    'onepour: dist/ not built: the build tools are left out of this install ("npm ci --include=dev" brings them).';
  process.stderr.write(`${line}\n`);
  process.exit(process.env.npm_lifecycle_event === 'prepare' ? 0 : 1);
}

const hash = hashSources(ROOT);
clearStamp(ROOT);
rmSync(join(ROOT, 'dist'), { recursive: true, force: true });
await bundle('src/cli/main.ts', 'dist/cli.js', {
  platform: 'node',
  target: 'node20',
  // Packages written as CommonJS call require for Node's own modules; a module file has none.
  banner: {
    js: "import { createRequire as makeRequire } from 'node:module';\nconst require = makeRequire(import.meta.url);",
  },
});
await bundle('src/engine/index.ts', 'dist/engine.js', { platform: 'neutral', target: 'es2022' });
emitTypes();
writeStamp(ROOT, hash);

async function bundle(from, to, options) {
  try {
    await esbuild.build({
      absWorkingDir: ROOT,
      entryPoints: [from],
      outfile: to,
      bundle: true,
      format: 'esm',
      charset: 'utf8',
      legalComments: 'inline',
      logLevel: 'warning',
      ...options,
    });
  } catch {
    // esbuild has printed what is wrong, with file and line.
    process.exit(1);
  }
}

/** The declarations keep the sources' ./x.ts; a consumer's compiler takes ./x.d.ts for it. */
function emitTypes() {
  const tsc = require.resolve('typescript/bin/tsc');
  const args = [tsc, '-p', join(ROOT, 'tsconfig.types.json'), '--noEmitOnError'];
  const done = spawnSync(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 2, 2] });
  if (done.status !== 0) process.exit(1);
}
