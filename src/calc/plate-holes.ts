import * as z from 'zod';
import type { PlateHole } from '../engine/tolerance/plate-hole.ts';
import { numberAbove0, numberIn, words } from './fields.ts';

/** A hole of a plate, round or slotted, in the plate's axes. */
export const holeField = z.strictObject(
  {
    id: words('the name of the hole'),
    x_mm: numberIn(-1e6, 1e6, 'mm', 'x of the middle of the hole'),
    y_mm: numberIn(-1e6, 1e6, 'mm', 'y of the middle of the hole'),
    diameter_mm: numberAbove0(1000, 'mm', 'the diameter of the hole, or the width of the slot'),
    slot_mm: numberIn(0, 1e4, 'mm', 'the straight part of a slot, between the centres of its ends').default(0),
    angle_deg: numberIn(-3600, 3600, 'degrees', 'the direction of the slot from the x axis').default(0),
  },
  {
    error:
      'expected a hole { "id", "x_mm", "y_mm", "diameter_mm" }, with "slot_mm" and "angle_deg" where it is slotted',
  },
);

/** Reads a hole for bolts of one diameter [mm]. */
export function readHole(hole: z.output<typeof holeField>, bolt_mm: number): PlateHole {
  return {
    at: [hole.x_mm, hole.y_mm],
    slack: (hole.diameter_mm - bolt_mm) / 2,
    slot: hole.slot_mm,
    angle: (hole.angle_deg * Math.PI) / 180,
  };
}

/** Names that stand twice in a list, each with its place. */
export function listNameFaults(
  key: string,
  all: readonly { readonly id: string }[],
  what: string,
): readonly { readonly path: readonly (string | number)[]; readonly message: string }[] {
  return all.flatMap(({ id }, i) =>
    all.findIndex((other) => other.id === id) === i
      ? []
      : [{ path: [key, i, 'id'], message: `"${id}" names two ${what}, expected a name of its own for each` }],
  );
}
