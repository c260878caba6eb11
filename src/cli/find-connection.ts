import type { Connection } from '../job/documents/connection.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { UsageError } from './exit-codes.ts';

/**
 * The connection of a job with this mark.
 * @param asked what to say it was asked by: an option with its value, or the mark alone
 * @throws UsageError where the job has none
 */
export function findConnection({ job }: JobFile, mark: string, asked: string): Connection {
  const connection = job.connections.find((candidate) => candidate.mark === mark);
  if (connection !== undefined) return connection;
  const marks = job.connections.map((candidate) => candidate.mark);
  throw new UsageError(
    `${asked}: not in this job, expected ${marks.length === 0 ? 'a job with connections' : `one of ${marks.join(', ')}`}`,
  );
}
