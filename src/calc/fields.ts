import * as z from 'zod';

/** A finite number between limits; the message names the unit and the limits. */
export function numberIn(low: number, high: number, unit: string, what: string) {
  const error = `expected ${what}, a number from ${low} to ${high}${unit === '' ? '' : ` ${unit}`}`;
  return z.number({ error }).min(low, { error }).max(high, { error });
}

/** A finite number above zero. */
export function numberAbove0(high: number, unit: string, what: string) {
  const error = `expected ${what}, a number above 0, at most ${high}${unit === '' ? '' : ` ${unit}`}`;
  return z.number({ error }).positive({ error }).max(high, { error });
}

/** True or false, nothing else. */
export function yesNo(what: string) {
  return z.boolean({ error: `expected true or false: ${what}` });
}

/** A text that is not empty. */
export function words(what: string) {
  const error = `expected ${what}, a text that is not empty`;
  return z.string({ error }).min(1, { error });
}

/** A point [x, y] in mm. */
export const pointField = z.tuple([numberIn(-1e6, 1e6, 'mm', 'x'), numberIn(-1e6, 1e6, 'mm', 'y')], {
  error: 'expected a point [x, y] in mm',
});

/** A polygon, a list of at least three points; the message for anything else is the caller's. */
export function polygonOf(error: string) {
  return z.array(pointField, { error }).min(3, { error: 'expected at least three corners' });
}

/** A polygon, a list of at least three points. */
export const polygonField = polygonOf('expected a list of corners [[x, y], …] in mm');

/** Keys that any calculation takes and ignores, so that a file can say where it is from. */
export const IGNORED_KEYS = {
  id: z.unknown().optional(),
  source: z.unknown().optional(),
  note: z.unknown().optional(),
  expect: z.unknown().optional(),
};
