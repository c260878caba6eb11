import { createHash } from 'node:crypto';
import { writeCanonical } from '../job/canonical.ts';
import type { JobFile } from '../job/documents/job-file.ts';

/** Hash of a job file as it stands: SHA-256 of its canonical text, in hexadecimal digits. */
export function hashJob(file: JobFile): string {
  return createHash('sha256').update(writeCanonical(file)).digest('hex');
}

/** As much of the hash as goes onto a sheet. */
export function fingerprintJob(file: JobFile): string {
  return hashJob(file).slice(0, 12);
}
