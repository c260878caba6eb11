import { existsSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { UsageError } from './exit-codes.ts';

/**
 * Refuses before any work what could not be written after it.
 * @param option as the call names it, for the message
 * @param why the ending matters, behind the message; left out: nothing
 * @throws UsageError with one line
 */
export function checkTarget(option: string, path: string, ending: string, mayOverwrite: boolean, why = ''): void {
  if (!path.toLowerCase().endsWith(ending))
    throw new UsageError(`${option} ${path}: expected a name that ends in ${ending}${why}`);
  if (!existsSync(dirname(path))) throw refuse(option, path);
  if (existsSync(path) && !mayOverwrite)
    throw new UsageError(`${option} ${path}: is there already, expected a new name (or --overwrite, to write over it)`);
}

/** Writes a file. @throws UsageError with one line where that cannot be done */
export function writeTarget(option: string, path: string, content: string | Uint8Array): void {
  try {
    writeFileSync(path, content);
  } catch {
    throw refuse(option, path);
  }
}

function refuse(option: string, path: string): UsageError {
  return new UsageError(`${option} ${path}: cannot be written, expected a file in a folder that is there`);
}
