/**
 * A face that cannot be worked with. The message names the ring, the corner, the value and what was expected
 * (rings and corners are counted from 1 in the text, as people count; from 0 in the fields).
 */
export class GeometryError extends Error {
  override readonly name = 'GeometryError';

  constructor(
    message: string,
    /** Which ring: 'outline', the index of an opening (from 0), or 'shape' for a polygon that is neither. */
    readonly ring: 'outline' | 'shape' | number,
    /** The corner as given (from 0), or null where the ring as a whole is wrong. */
    readonly corner: number | null,
  ) {
    super(message);
  }
}
