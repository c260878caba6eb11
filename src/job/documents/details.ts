import * as z from 'zod';
import { fixture } from './fixture.ts';
import { label, text } from './values.ts';

/** A standard detail: one plate with its holes, used by many connections. */
export const detail = z.strictObject({ id: label, name: text, fixture, item: label.nullable().default(null) });

/** The standard details of a firm. */
export const details = z.strictObject({
  format: z.literal('onepour-details'),
  version: z.literal(1),
  id: label,
  edition: label,
  name: text,
  details: z.array(detail).readonly(),
});

export type Detail = z.infer<typeof detail>;
