import * as z from 'zod';
import { coordinate, label, length, lengthOrZero, point, polygon, stress } from './values.ts';

/** A hole in a plate, in the plate's own axes. A slot's length is the straight part, between the centres of its ends. */
const hole = z.strictObject({
  id: label,
  at_mm: point,
  diameter_mm: length,
  slot_mm: lengthOrZero.default(0),
  slotAngle_deg: coordinate.default(0),
  takesShear: z.boolean().default(true),
});

/** A steel plate on the face of a panel, in its own axes: x right and y up as one stands in front of it. */
export const fixture = z.strictObject({
  outline_mm: polygon,
  thickness_mm: length,
  yield_MPa: stress.nullable().default(null),
  holes: z.array(hole).min(1).readonly(),
  /** Outline of what is welded on, for the bending of the plate; null where it is not known. */
  attachment_mm: polygon.nullable().default(null),
});

export type Fixture = z.infer<typeof fixture>;
export type FixtureHole = Fixture['holes'][number];
