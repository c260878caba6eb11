import * as z from 'zod';
import { moment, version } from './values.ts';

/** One thing wrong in a job file that was sent, with its place as `job.panels[2].thickness_mm`. */
const wireFault = z.strictObject({
  path: z.string(),
  value: z.string(),
  expected: z.string(),
  message: z.string(),
});

/** 400: the call itself is wrong; the message says where. */
export const badInput = z.strictObject({ error: z.literal('bad-input'), message: z.string() });

/** 403: the call came from another site, or under a name that the server does not answer to. */
export const refused = z.strictObject({ error: z.literal('refused'), message: z.string() });

/** 404: no such job, version, letter or address. */
export const notFound = z.strictObject({ error: z.literal('not-found'), message: z.string() });

/** 409: somebody else was first; nothing is stored. */
export const conflict = z.strictObject({
  error: z.literal('conflict'),
  message: z.string(),
  version,
  savedAt: moment,
});

/** 413: longer than the server takes. */
export const tooLarge = z.strictObject({ error: z.literal('too-large'), message: z.string() });

/** 422: what was sent, or what would come of it, is no sound job; nothing is stored. */
export const faults = z.strictObject({
  error: z.literal('faults'),
  message: z.string(),
  faults: z.array(wireFault).readonly(),
});

/** 422: a letter is issued once. */
export const issuedBefore = z.strictObject({ error: z.literal('issued-before'), message: z.string() });

/** 500: the server's own fault. */
export const failed = z.strictObject({ error: z.literal('failed'), message: z.string() });

/** 507: no room on the server's disk; nothing of the call was stored. */
export const diskFull = z.strictObject({ error: z.literal('disk-full'), message: z.string() });

export type WireFault = z.infer<typeof wireFault>;
export type Conflict = z.infer<typeof conflict>;
export type WireError = z.infer<
  | typeof badInput
  | typeof refused
  | typeof notFound
  | typeof conflict
  | typeof tooLarge
  | typeof faults
  | typeof issuedBefore
  | typeof failed
  | typeof diskFull
>;
