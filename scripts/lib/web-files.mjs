// Files of dist/web/: copied, compressed once at the build, and listed.

import { copyFileSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';

const COMPRESSED = new Set(['.js', '.css', '.html', '.svg', '.ttf', '.json', '.webmanifest', '.txt']);

/** Copies a file into a folder that need not be there yet. */
export function copyFile(from, to) {
  mkdirSync(dirname(to), { recursive: true });
  copyFileSync(from, to);
}

/** Every file by address, with its size and that of the compressed copy, which is written beside it; null: not worth one. */
export function listFiles(out) {
  return walk(out, '')
    .filter((path) => !path.endsWith('.gz') && path !== '/assets.json')
    .sort()
    .map((path) => {
      const bytes = statSync(join(out, path)).size;
      return { path, bytes, gz: COMPRESSED.has(extname(path)) ? compress(join(out, path)) : null };
    });
}

function compress(file) {
  const bytes = gzipSync(readFileSync(file), { level: 9 });
  writeFileSync(`${file}.gz`, bytes);
  return bytes.length;
}

function walk(out, folder) {
  return readdirSync(join(out, folder), { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? walk(out, `${folder}/${entry.name}`) : [`${folder}/${entry.name}`],
  );
}
