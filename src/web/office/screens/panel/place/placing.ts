import type { Point } from '../../../../../engine/geometry/point.ts';

/** Something that waits for a place on the drawing. */
export interface Placing {
  /** What the person should do now: `Click where C61 goes`. */
  readonly words: string;
  /** A first corner that was clicked already, on the drawn face; null: none. */
  readonly corner: Point | null;
  /** Puts it there, on the drawn face. @returns null when it stands, else why not */
  readonly put: (drawn: Point) => string | null;
}
