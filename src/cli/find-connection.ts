import type { Connection } from '../job/documents/connection.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { findNearestWord } from '../job/nearest-word.ts';
import { UsageError } from './exit-codes.ts';

/** As many marks are named where none is near. */
const MOST_MARKS = 10;

/** A mark without the noughts in front of its numbers: C2 and C02 are one to a person. */
const plain = (mark: string) => mark.replace(/0+(?=\d)/g, '');

/**
 * A mark that a job does not have, with the one that was probably meant, or those that there are.
 * @param asked what to say it was asked by: an option with its value, or the mark alone
 * @param what a job would have to have, where it has no mark at all
 */
export function refuseMark(asked: string, mark: string, marks: readonly string[], what: string): UsageError {
  const near = findNearestWord(plain(mark), marks.map(plain));
  const meant = marks.find((candidate) => plain(candidate) === near);
  const more = marks.length > MOST_MARKS ? ` and ${marks.length - MOST_MARKS} more` : '';
  const known = marks.length === 0 ? `a job with ${what}` : `one of ${marks.slice(0, MOST_MARKS).join(', ')}${more}`;
  const hint = meant === undefined ? `expected ${known}` : `did you mean ${meant}?`;
  return new UsageError(`${asked}: not in this job, ${hint}`);
}

/**
 * The connection of a job with this mark.
 * @param asked what to say it was asked by: an option with its value, or the mark alone
 * @throws UsageError where the job has none
 */
export function findConnection({ job }: JobFile, mark: string, asked: string): Connection {
  const connection = job.connections.find((candidate) => candidate.mark === mark);
  if (connection !== undefined) return connection;
  const marks = job.connections.map((candidate) => candidate.mark);
  throw refuseMark(asked, mark, marks, 'connections');
}
