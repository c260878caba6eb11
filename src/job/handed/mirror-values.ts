import type { Point } from '../../engine/geometry/point.ts';

/** The mirror of a panel: coordinates of its drawn face turned round left to right, within its extent. */
export interface Mirror {
  /** Least and greatest x of the outline together [mm]: x becomes ends − x. */
  readonly ends: number;
  /** Number of the outline's corners. */
  readonly corners: number;
}

/** The mirror of a panel's own outline. */
export function mirrorOf(outline: readonly Point[]): Mirror {
  const xs = outline.map(([x]) => x);
  return { ends: Math.min(...xs) + Math.max(...xs), corners: outline.length };
}

/** A point of the drawn face, mirrored. For a plate's own axes, ends is 0. */
export function mirrorPoint(ends: number, [x, y]: Point): Point {
  return [ends - x, y];
}

/**
 * A ring, mirrored. Its order is turned round, so that it keeps its sense of turning, and it begins with the second corner, so that side 0 stays side
 * 0: of a rectangle the bottom stays the bottom, and the sides 1 and 3 change places.
 */
export function mirrorRing(ends: number, ring: readonly Point[]): readonly Point[] {
  const n = ring.length;
  return ring.map((_, k) => mirrorPoint(ends, ring[(n + 1 - k) % n]!));
}

/** Which side of a mirrored ring of n corners was side `edge`. It is its own reverse. */
export function mirrorEdge(corners: number, edge: number): number {
  return (corners - edge) % corners;
}

/** Direction of a vector, counter-clockwise in degrees, mirrored left to right. */
export function mirrorDirection(degrees: number): number {
  return 180 - degrees;
}

/** Direction of a line that has no sense (a bar, a slot): level ones stay as they are written. */
export function mirrorLine(degrees: number): number {
  return degrees % 180 === 0 ? degrees : 180 - degrees;
}
