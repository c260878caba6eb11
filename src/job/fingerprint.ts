import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { writeCanonical } from './canonical.ts';
import type { JobFile } from './documents/job-file.ts';

/** As many digits of the hash as go onto a sheet. */
const DIGITS = 12;

/** SHA-256 of a text as UTF-8: 64 hexadecimal digits. */
export function hashText(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** SHA-256 of bytes, a photo's: 64 hexadecimal digits. */
export function hashBytes(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}

/** First digits of the SHA-256 of a job file's canonical text: two sheets with the same are of the same state of the job. */
export function fingerprintJob(file: JobFile): string {
  return hashText(writeCanonical(file)).slice(0, DIGITS);
}
