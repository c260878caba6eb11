import * as z from 'zod';

/** The name of a job in addresses: drawn by chance when the job is created, never used again. */
export const jobId = z.string().regex(/^[a-z0-9]{12}$/, 'the id of a job: 12 small letters and digits');

/** Number of edits that a job has had; 0 as created. */
export const version = z.int().nonnegative();

/** A version or a number of edits as it stands in an address. */
export const versionInAddress = z
  .string()
  .regex(/^\d{1,9}$/, 'a whole number, 0 or more')
  .transform(Number);

/** A moment in UTC, as ISO 8601 writes it. */
export const moment = z.iso.datetime();

/** Who edits: a name that a browser tab gives itself. Not a person; there are no accounts yet. */
export const editor = z.string().min(1).max(120);
