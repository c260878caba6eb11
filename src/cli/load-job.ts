import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { FileTexts } from '../files/job-reading.ts';
import { readJob } from '../files/read-job.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { CAUTIONS } from '../say/cautions.ts';
import { UsageError } from './exit-codes.ts';

/** A job read from disk, with what was taken where its files say nothing. */
export interface LoadedJob {
  readonly file: JobFile;
  readonly assumptions: readonly string[];
  /** The cautions that go with every answer about it. */
  readonly cautions: readonly string[];
}

function isText(name: string): boolean {
  return /\.(json|csv)$/i.test(name);
}

function readTexts(path: string): FileTexts {
  try {
    if (!statSync(path).isDirectory()) return new Map([[basename(path), readFileSync(path, 'utf8')]]);
    const names = readdirSync(path).filter(isText).sort();
    return new Map(names.map((name) => [name, readFileSync(join(path, name), 'utf8')]));
  } catch {
    throw new UsageError(`${path}: cannot be read, expected a job file or a folder of schedules`);
  }
}

/**
 * Reads a job file or a folder of schedules.
 * @throws UsageError with every fault, one a line
 */
export function loadJob(path: string): LoadedJob {
  const reading = readJob(readTexts(path));
  if (!reading.ok) {
    const count = reading.faults.length === 1 ? '1 fault' : `${reading.faults.length} faults`;
    const lines = reading.faults.map(({ message }) => message);
    const more = reading.isCutShort === true ? '; once these are right, marks, places and sizes are looked at' : '';
    throw new UsageError(`${[...lines, `${path}: ${count}, nothing was read${more}`].join('\n')}`);
  }
  return { file: reading.file, assumptions: reading.assumptions, cautions: CAUTIONS };
}
