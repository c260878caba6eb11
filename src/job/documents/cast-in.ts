import * as z from 'zod';
import { coordinate, key, label, lengthOrZero, text } from './values.ts';

/** What a cast-in item is for. Only fixings are computed. */
const castInRole = z.enum(['fixing', 'brace', 'lifting', 'tie', 'duct', 'plate', 'other']);

/**
 * Anything cast into a panel. On the outside or inside face, x and y are coordinates of the drawn face; on an edge, x runs along the
 * edge from its first corner and y is the distance from the outside face.
 */
export const castIn = z.strictObject({
  key,
  /** Its number in the panel. */
  id: label,
  panel: label,
  role: castInRole,
  /** Which insert of the catalogue; null for other things, which are described in words. */
  item: label.nullable(),
  description: text.nullable().default(null),
  face: z.enum(['outside', 'inside', 'edge']),
  edge: z.int().nonnegative().nullable().default(null),
  x_mm: coordinate,
  y_mm: coordinate,
  /** How far its top lies below the face. */
  recess_mm: lengthOrZero.default(0),
  holding: label.nullable().default(null),
});

export type CastIn = z.infer<typeof castIn>;
