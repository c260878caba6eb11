import { basename } from 'node:path';
import { writeJobJson } from '../files/json.ts';
import { readJob } from '../files/read-job.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { writeTarget } from './write-file.ts';

/**
 * Writes a job, once it is sure that it can be read again.
 * @param option as the call names it, for the message
 * @throws UsageError where it cannot be written
 */
export function writeJob(option: string, path: string, file: JobFile): void {
  const text = writeJobJson(file);
  const again = readJob(new Map([[basename(path), text]]));
  if (!again.ok)
    throw new Error(`the job as changed would not be read: ${again.faults.map(({ message }) => message).join('; ')}`);
  writeTarget(option, path, text);
}
