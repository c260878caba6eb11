// Builds dist/: the shell command (cli.js), the engine alone (engine.js) with its types, and the screens (web/).
// It is made beside and then put in place, so that whoever runs the last build keeps it until the new one is whole.
// Also npm's "prepare": an install without the build tools then says so and goes on.

import { spawn } from 'node:child_process';
import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { clearStamp, hashSources, writeStamp } from './lib/built.mjs';
import { buildWeb } from './lib/web-build.mjs';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const MADE = join(ROOT, '.stamp', `dist-${process.pid}`);
const OLD = join(ROOT, '.stamp', `dist-old-${process.pid}`);
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
mkdirSync(MADE, { recursive: true });
try {
  await Promise.all([
    bundle('src/cli/main.ts', 'cli', {
      platform: 'node',
      // What a command reads when it is wanted lies beside, in files of its own.
      splitting: true,
      chunkNames: 'cli-[name]-[hash]',
      minifyWhitespace: true,
      minifySyntax: true,
      target: 'node20',
      // libsql loads a binary that lies in its own package.
      external: ['libsql'],
      // Packages written as CommonJS call require for Node's own modules; a module file has none.
      banner: {
        js: "import { createRequire as makeRequire } from 'node:module';\nconst require = makeRequire(import.meta.url);",
      },
    }),
    bundle('src/engine/index.ts', 'engine', { platform: 'neutral', target: 'es2022' }),
    buildWeb(esbuild, ROOT, join(MADE, 'web')),
    emitTypes(),
  ]);
  putInPlace();
  writeStamp(ROOT, hash);
} catch (error) {
  // esbuild and the compiler have printed what is wrong, with file and line.
  if (error.errors === undefined && error.isPrinted !== true) process.stderr.write(`onepour: ${error.stack}\n`);
  process.exitCode = 1;
} finally {
  for (const folder of [MADE, OLD]) rmSync(folder, { recursive: true, force: true });
}

function bundle(from, to, options) {
  return esbuild.build({
    absWorkingDir: ROOT,
    entryPoints: [{ in: from, out: to }],
    outdir: MADE,
    bundle: true,
    format: 'esm',
    charset: 'utf8',
    legalComments: 'inline',
    logLevel: 'warning',
    ...options,
  });
}

/** The declarations keep the sources' ./x.ts; a consumer's compiler takes ./x.d.ts for it. */
function emitTypes() {
  const tsc = require.resolve('typescript/bin/tsc');
  const args = [tsc, '-p', join(ROOT, 'tsconfig.types.json'), '--noEmitOnError', '--outDir', join(MADE, 'types')];
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 2, 2] });
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve();
      else reject(Object.assign(new Error('the types of the engine were not written'), { isPrinted: true }));
    });
  });
}

function putInPlace() {
  const dist = join(ROOT, 'dist');
  try {
    renameSync(dist, OLD);
  } catch (error) {
    if (error.code !== 'ENOENT') throw error;
  }
  renameSync(MADE, dist);
}
