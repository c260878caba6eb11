import * as z from 'zod';
import type { JobFile } from '../job/documents/job-file.ts';

const looseFile = z.looseObject({
  format: z.literal('onepour-job'),
  version: z.int(),
  job: z.unknown(),
  library: z.unknown(),
});

/**
 * A whole job file in an answer. The server sends only files that `readJobDocument` has taken, so that the answer is looked at no
 * deeper than its head; whoever keeps an answer for longer than a program lives reads it with `readJobDocument` again.
 */
// The cast says what the server promises: its store holds nothing that readJobDocument did not give.
export const jobBody = looseFile as unknown as z.ZodType<JobFile, JobFile>;
