import { existsSync, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { writeJobJson } from '../files/json.ts';
import { readJob } from '../files/read-job.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { UsageError } from './exit-codes.ts';

/** Where a changed job is to be written: the option that names it (such as "--out"), its path, whether a file there may go. */
export interface JobTarget {
  readonly option: string;
  readonly path: string;
  readonly mayOverwrite: boolean;
}

function refuseToWrite({ option, path }: JobTarget): UsageError {
  return new UsageError(`${option} ${path}: cannot be written, expected a file in a folder that is there`);
}

/**
 * Refuses before any work what could not be written after it.
 * @throws UsageError with what was expected
 */
export function checkJobTarget(target: JobTarget): void {
  const { option, path, mayOverwrite } = target;
  if (!path.toLowerCase().endsWith('.json'))
    throw new UsageError(`${option} ${path}: expected a name that ends in .json, so that it can be read again`);
  if (!existsSync(dirname(path))) throw refuseToWrite(target);
  if (existsSync(path) && !mayOverwrite)
    throw new UsageError(`${option} ${path}: is there already, expected a new name (or --overwrite, to write over it)`);
}

/**
 * Writes a job, once it is sure that it can be read again.
 * @throws UsageError where it cannot be written
 */
export function writeJob(target: JobTarget, file: JobFile): void {
  const text = writeJobJson(file);
  const again = readJob(new Map([[basename(target.path), text]]));
  if (!again.ok)
    throw new Error(`the job as changed would not be read: ${again.faults.map(({ message }) => message).join('; ')}`);
  try {
    writeFileSync(target.path, text);
  } catch {
    throw refuseToWrite(target);
  }
}
