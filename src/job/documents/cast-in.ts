import * as z from 'zod';
import { coordinate, key, label, length, lengthOrZero, text } from './values.ts';

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
  /** The way of holding; null: not decided. */
  holding: label.nullable().default(null),
  /**
   * The bar through the cross hole, as the designer asks for it: its direction on the face (in the axes of x and y), its size where it is not the
   * maker's. Null: as the catalogue says, along x. It adds nothing to a resistance.
   */
  crossBar: z
    .strictObject({
      direction_deg: coordinate.default(0),
      diameter_mm: length.nullable().default(null),
      length_mm: length.nullable().default(null),
    })
    .nullable()
    .default(null),
  /** Room that something without a catalogue type takes, from the face inward; null: not known. */
  size: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('round'), diameter_mm: length, depth_mm: length }),
      z.strictObject({ kind: z.literal('box'), width_mm: length, height_mm: length, depth_mm: length }),
    ])
    .nullable()
    .default(null),
  /** How far it may be off its place, along each axis; null: as the rules say. */
  tolerance_mm: length.nullable().default(null),
});

export type CastIn = z.infer<typeof castIn>;
