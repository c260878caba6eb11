import type { Point } from '../geometry/point.ts';

/** A half that floating point has put a hair below is still a half [mm]. */
const ROUNDING = 1e-9;

/** A length in whole millimetres: halves go up, so that equal shifts of all lengths round alike. Never a negative zero. */
export function wholeMillimetres(length: number): number {
  return Math.floor(length + 0.5 + ROUNDING) + 0;
}

/** A group in whole mm: its centre, and each member from the centre. */
export interface PrintedGroup {
  readonly centre: Point;
  readonly offsets: readonly Point[];
}

/**
 * Sets a group out from its centre in whole millimetres. Printed centre + printed offset is each member's own place, rounded once: no
 * error adds up, none is above 0.5 mm.
 *
 * @param places exact places of the members in one frame [mm], at least one
 * @param centre the exact centre; the middle of the members' extent when left out
 * @example 1000.4 and 1150.4, centre 1075.4: printed 1075, −75 and +75
 */
export function printGroup(places: readonly Point[], centre: Point = middleOf(places)): PrintedGroup {
  const printed: Point = [wholeMillimetres(centre[0]), wholeMillimetres(centre[1])];
  return {
    centre: printed,
    offsets: places.map(([x, y]): Point => [wholeMillimetres(x) - printed[0], wholeMillimetres(y) - printed[1]]),
  };
}

/** The middle of the extent of some places, at least one [mm]. */
export function middleOf(places: readonly Point[]): Point {
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return [middle(places.map(([x]) => x)), middle(places.map(([, y]) => y))];
}
