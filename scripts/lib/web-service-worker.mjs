// Writes /sw.js with the list of what it keeps. Its bytes change with any file on the list: that is how a browser notices a new build.

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One hash over files by address and content. */
export function hashFiles(out, files) {
  const hash = createHash('sha256');
  for (const { path } of files)
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(out, path)))
      .update('\0');
  return hash.digest('hex').slice(0, 16);
}

/** @param precache `first`: kept when the worker is installed; `later`: in the background, once a page is shown */
export async function writeServiceWorker(esbuild, root, out, { first, later }) {
  const version = hashFiles(
    out,
    [...first, ...later].map((path) => ({ path })),
  );
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: ['src/web/service-worker/main.ts'],
    outfile: join(out, 'sw.js'),
    bundle: true,
    format: 'iife',
    minify: true,
    target: 'es2022',
    define: { PRECACHE: JSON.stringify({ version, first, later }) },
    logLevel: 'warning',
  });
}
