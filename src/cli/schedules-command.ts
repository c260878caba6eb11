import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeSchedules } from '../files/csv/write-schedules.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { loadJob } from './load-job.ts';

/**
 * Writes a job as CSV schedules into a folder that is new or empty.
 * @returns the exit code
 * @throws UsageError where the job cannot be read or the folder holds files already
 */
export function runSchedules(path: string, folder: string): number {
  const { file } = loadJob(path);
  if (existsSync(folder) && readdirSync(folder).length > 0)
    throw new UsageError(`${folder}: is not empty, expected a new or empty folder, so that nothing is overwritten`);
  mkdirSync(folder, { recursive: true });
  const texts = writeSchedules(file);
  for (const [name, text] of texts) writeFileSync(join(folder, name), text);
  process.stdout.write(`${texts.size} files written to ${folder}: ${[...texts.keys()].join(', ')}\n`);
  return EXIT.pass;
}
