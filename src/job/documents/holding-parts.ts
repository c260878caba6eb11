import * as z from 'zod';
import { threadNames } from '../../engine/hardware/threads.ts';
import { label, lengthOrZero, text } from './values.ts';

/** What holds an insert until the concrete is hard. */
export const holdingPart = z.strictObject({
  id: label,
  name: text,
  kind: z.enum([
    'fixing plate',
    'magnet',
    'side form bolt',
    'template board',
    'bridging bar',
    'chair',
    'cap',
    'recess former',
    'bar',
  ]),
  thread: z.enum(threadNames).nullable().default(null),
  height_mm: lengthOrZero.nullable().default(null),
  /** How far it keeps the top of the insert below the face. */
  recess_mm: lengthOrZero.default(0),
  reusable: z.boolean(),
});

/** The holding parts that a yard owns or buys. */
export const holdingParts = z.strictObject({
  format: z.literal('onepour-holding-parts'),
  version: z.literal(1),
  id: label,
  edition: label,
  name: text,
  parts: z.array(holdingPart).readonly(),
});

export type HoldingPart = z.infer<typeof holdingPart>;
