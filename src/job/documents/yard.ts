import * as z from 'zod';
import { coordinate, label, length, lengthOrZero, text } from './values.ts';

/**
 * A bed (table) that panels are cast on, seen from above with x along it and y across it, both counted from where rail A meets the start. Ends
 * and rails have the yard's own names, since a form has no left and right.
 */
export const bed = z.strictObject({
  id: label,
  name: text,
  /** What the bed is made of: nails hold in timber, magnets on steel. */
  form: z.enum(['timber', 'steel']),
  sideForm: z.enum(['timber', 'steel']),
  length_mm: length,
  width_mm: length,
  /** The ends at x = 0 (the stop end that does not move) and at the far x; the rails at y = 0 and at the far y. */
  names: z.strictObject({ start: text, finish: text, railA: text, railB: text }),
  /** Where north is, counter-clockwise from the bed's x axis; null: not drawn. */
  north_deg: coordinate.nullable().default(null),
  /** How far the form and the screed board give way under wet concrete. */
  sag_mm: lengthOrZero.default(0),
  screedDeflection_mm: lengthOrZero.default(0),
});

/** What a yard has and how it works: its beds, its tapes, what it takes along as spare. */
export const yard = z.strictObject({
  format: z.literal('onepour-yard'),
  version: z.literal(1),
  id: label,
  edition: label,
  name: text,
  /** Accuracy class of the tapes (OIML R 35-1). */
  tapeClass: z.enum(['I', 'II']),
  /** Spares of what is used up: a share of the count, and at least so many. */
  spares: z.strictObject({ share: z.number().min(0).max(1), atLeast: z.int().nonnegative() }),
  beds: z.array(bed).readonly(),
  /** Whom to call, in the order of the sheet. */
  contacts: z
    .array(z.strictObject({ role: text, name: text, phone: text }))
    .readonly()
    .default([]),
});

export type Bed = z.infer<typeof bed>;
export type Yard = z.infer<typeof yard>;
