import * as z from 'zod';

/**
 * Words that people write: no control characters, no space at the ends, and no first sign that a spreadsheet would take for a
 * formula, so that every text travels through a schedule unchanged.
 */
const plainText = /^(?![=+\-@\s])[^\p{Cc}]*(?<!\s)$/u;

/** A name, mark or remark. */
export const text = z
  .string()
  .min(1)
  .max(400)
  .regex(plainText, 'a text without line breaks, not starting with = + - @ or a space, not ending with a space');

/** A short name that other places refer to: a mark, an id. */
export const label = text.max(60);

/** The permanent key of a panel, cast-in item or connection: never shown, never used again. */
export const key = text.max(120);

export const length = z.number().positive();
export const lengthOrZero = z.number().nonnegative();
export const coordinate = z.number();
export const stress = z.number().positive();

/** [x, y] in mm. */
export const point = z.tuple([coordinate, coordinate]).readonly();

/** Corners of an area in mm, not closed. Whether it is simple is checked with its panel. */
export const polygon = z.array(point).min(3).readonly();

/** Which library documents a job was made with. */
export const pin = z.strictObject({ id: label, edition: label });
