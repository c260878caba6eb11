import { hashText } from '../job/fingerprint.ts';

/** What stands for the line before the first one of a log. */
export const LOG_START = '0'.repeat(64);

/**
 * The chain of the server's log: each line holds the one before it, so that nothing before a head that somebody wrote down can be changed
 * unnoticed. All are hexadecimal texts.
 * @param previous hash of the line before; LOG_START for the first
 * @param job id of the job
 * @param hash SHA-256 of the record's text
 */
export function hashLogLine(previous: string, job: string, hash: string): string {
  return hashText(`${previous}\n${job}\n${hash}`);
}
