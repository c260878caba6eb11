import { createHash } from 'node:crypto';
import { writeCanonical } from '../job/canonical.ts';
import type { JobFile } from '../job/documents/job-file.ts';

/** As many digits of the hash as go onto a sheet. */
const DIGITS = 12;

/** First digits of the SHA-256 of a job file's canonical text: two sheets with the same are of the same state of the job. */
export function fingerprintJob(file: JobFile): string {
  return createHash('sha256').update(writeCanonical(file)).digest('hex').slice(0, DIGITS);
}
