import * as z from 'zod';
import { revision } from '../job/documents/pour.ts';
import { jobBody } from './job-body.ts';
import { jobId, moment, version } from './values.ts';

/** What a list of jobs shows of each. */
export const jobHead = z.strictObject({
  id: jobId,
  name: z.string(),
  number: z.string().nullable(),
  version,
  savedAt: moment,
  panels: z.int(),
  connections: z.int(),
  /** What the file says of itself. */
  revision: revision.nullable(),
  /** The letter issued last. */
  issued: z.string().nullable(),
});

export const jobList = z.strictObject({ jobs: z.array(jobHead).readonly() });

export const newJob = z.strictObject({ file: z.unknown() });

/** A job as it stands. */
export const openJob = z.strictObject({ id: jobId, version, savedAt: moment, file: jobBody });

/** A job as it stood after so many edits. */
export const jobAt = z.strictObject({ id: jobId, version, file: jobBody });

export const removed = z.strictObject({ removedAt: moment });

export type JobHead = z.infer<typeof jobHead>;
export type OpenJob = z.infer<typeof openJob>;
export type JobAt = z.infer<typeof jobAt>;
