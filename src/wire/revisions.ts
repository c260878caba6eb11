import * as z from 'zod';
import { revision } from '../job/documents/pour.ts';
import { text } from '../job/documents/values.ts';
import { jobBody } from './job-body.ts';
import { moment, version } from './values.ts';

/** Who is handed an issued revision, and how: `by e-mail`, `2 prints A3`. */
const recipient = z.strictObject({ name: text, firm: text.nullable(), how: text });

const transmittal = z.strictObject({
  ...revision.shape,
  /** What the issue is for, as the recipients read it. */
  note: text.nullable(),
  recipients: z.array(recipient).max(200).readonly(),
});

/** Issues version `base` of the job under a letter. */
export const newRevision = z.strictObject({ base: version, ...transmittal.shape });

/** A frozen revision. `version`: that of the job whose file was frozen, the edit that set the letter included. */
export const issued = z.strictObject({
  ...transmittal.shape,
  version,
  issuedAt: moment,
  /** SHA-256 of the canonical text (RFC 8785) of the frozen file, 64 hexadecimal digits. */
  fingerprint: z.string().regex(/^[0-9a-f]{64}$/),
});

export const issuedList = z.strictObject({ revisions: z.array(issued).readonly() });

export const issuedRevision = issued.extend({ file: jobBody });

export type NewRevision = z.infer<typeof newRevision>;
export type Issued = z.infer<typeof issued>;
export type IssuedRevision = z.infer<typeof issuedRevision>;
