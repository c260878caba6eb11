// Says whether a folder's packages are installed as its lock file wants them, without starting npm.
// npm writes node_modules/.package-lock.json at the end of an install: it lists what really lies there.

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Why the packages of `folder` are not ready, in one phrase; null when they are.
 * Packages for another system (left there by a copied folder) count as not ready.
 */
export function findInstallFault(folder) {
  const wanted = readPackages(join(folder, 'package-lock.json'));
  if (wanted === null) return 'package-lock.json cannot be read';
  const present = readPackages(join(folder, 'node_modules', '.package-lock.json'));
  if (present === null) return 'packages are not installed';
  for (const [path, entry] of Object.entries(wanted)) {
    if (path === '' || entry.optional || entry.devOptional || entry.peer) continue;
    const found = present[path];
    if (found === undefined || !existsSync(join(folder, path))) return `${path} is not installed`;
    if (found.version !== entry.version || found.integrity !== entry.integrity)
      return `${path} is not ${entry.version}`;
  }
  for (const [path, entry] of Object.entries(present)) {
    if (isForOtherSystem(entry.os, process.platform) || isForOtherSystem(entry.cpu, process.arch)) {
      return `${path} is for another system`;
    }
    const entryWanted = wanted[path];
    if (entryWanted !== undefined && entryWanted.version !== entry.version)
      return `${path} is not ${entryWanted.version}`;
  }
  return null;
}

function readPackages(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages ?? null;
  } catch {
    return null;
  }
}

/** npm's `os` and `cpu` fields: names that are allowed, or names with "!" that are not. */
function isForOtherSystem(names, here) {
  if (!Array.isArray(names) || names.length === 0) return false;
  if (names.includes(`!${here}`)) return true;
  const allowed = names.filter((name) => !name.startsWith('!'));
  return allowed.length > 0 && !allowed.includes(here);
}
