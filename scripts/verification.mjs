// npm run verification: writes docs/verification.md from the published values and the engine as it is.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const PAGE = join(ROOT, 'docs', 'verification.md');

const folder = mkdtempSync(join(tmpdir(), 'onepour-verification-'));
try {
  const outfile = join(folder, 'page.mjs');
  const entry = join(ROOT, 'test', 'published', 'verification-page.ts');
  await build({ entryPoints: [entry], outfile, bundle: true, format: 'esm', platform: 'node', logLevel: 'warning' });
  const { writeVerificationPage } = await import(pathToFileURL(outfile).href);
  writeFileSync(PAGE, writeVerificationPage());
  process.stdout.write('docs/verification.md written\n');
} finally {
  rmSync(folder, { recursive: true, force: true });
}
