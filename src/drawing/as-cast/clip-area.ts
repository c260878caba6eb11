import type { Point } from '../../engine/geometry/point.ts';
import type { Box } from '../boxes.ts';

/** One side of a box: how far a point lies inside of it. */
type Side = (at: Point) => number;

function clipSide(ring: readonly Point[], inside: Side): readonly Point[] {
  return ring.flatMap((from, i): readonly Point[] => {
    const to = ring[(i + 1) % ring.length]!;
    const [a, b] = [inside(from), inside(to)];
    const kept = a >= 0 ? [from] : [];
    if (a >= 0 === b >= 0) return kept;
    const share = a / (a - b);
    return [...kept, [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]];
  });
}

/**
 * The part of a polygon inside a box, by cutting it at one side of the box after the other (Sutherland and Hodgman). Of one with bays, parts may hang together
 * along a side of the box: to be filled, not outlined.
 */
export function clipArea(ring: readonly Point[], { x, y, width, height }: Box): readonly Point[] {
  const sides: readonly Side[] = [
    ([px]) => px - x,
    ([px]) => x + width - px,
    ([, py]) => py - y,
    ([, py]) => y + height - py,
  ];
  return sides.reduce(clipSide, ring);
}
