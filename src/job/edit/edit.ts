import * as z from 'zod';
import { key, text } from '../documents/values.ts';

/** One step of a change: `add`, `remove` and `replace` as in RFC 6902, the path as a list of keys and places. */
export const patch = z.strictObject({
  op: z.enum(['add', 'remove', 'replace']),
  path: z.array(z.union([z.string(), z.int().nonnegative()])).readonly(),
  value: z.json().optional(),
});

/** One thing that a person did to a job file, with the way back. */
export const edit = z.strictObject({
  /** Its own for ever: the same edit sent twice counts once. */
  id: key,
  /** What was done, as a list of edits shows it: `Insert 3 of P04 moved`. */
  label: text,
  at: z.iso.datetime(),
  changes: z.array(patch).min(1).readonly(),
  back: z.array(patch).min(1).readonly(),
});

export type Patch = z.infer<typeof patch>;
export type Edit = z.infer<typeof edit>;
