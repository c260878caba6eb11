import * as z from 'zod';
import { catalogue } from './catalogue.ts';
import { details } from './details.ts';
import { holdingParts } from './holding-parts.ts';
import { job } from './job.ts';
import { JOB_FILE_VERSION } from './job-file-version.ts';
import { rules } from './rules.ts';
import { yard } from './yard.ts';

/** A job together with the library documents that it pins, so that a file can be opened anywhere and gives the same answers. */
export const jobFile = z.strictObject({
  format: z.literal('onepour-job'),
  version: z.literal(JOB_FILE_VERSION),
  job,
  library: z.strictObject({ catalogue, details, holding: holdingParts, rules, yard }),
});

export type JobFile = z.infer<typeof jobFile>;
