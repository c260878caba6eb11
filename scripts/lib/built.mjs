// Says whether dist/ was built from the sources as they are now: a hash over what the build reads.

import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const INPUTS = [
  'src',
  'bin',
  'scripts/build.mjs',
  'scripts/lib',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'tsconfig.engine.json',
  'tsconfig.types.json',
];
const OUTPUTS = ['dist/cli.js', 'dist/engine.js', 'dist/types/engine/index.d.ts', 'dist/web/assets.json'];
const STAMP = '.stamp/build';

export function isBuilt(root) {
  if (OUTPUTS.some((file) => !existsSync(join(root, file)))) return false;
  const stamp = join(root, STAMP);
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === hashSources(root);
}

/** Hash of every file that the build reads, names and bytes. */
export function hashSources(root) {
  const hash = createHash('sha256');
  for (const input of INPUTS) addPath(hash, root, input);
  return hash.digest('hex');
}

export function writeStamp(root, hash) {
  const stamp = join(root, STAMP);
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, hash);
}

export function clearStamp(root) {
  rmSync(join(root, STAMP), { force: true });
}

function addPath(hash, root, path) {
  const full = join(root, path);
  if (!existsSync(full)) return;
  let entries;
  try {
    entries = readdirSync(full, { withFileTypes: true });
  } catch {
    hash.update(`${path}\0`).update(readFileSync(full)).update('\0');
    return;
  }
  entries.sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const entry of entries) addPath(hash, root, `${path}/${entry.name}`);
}
