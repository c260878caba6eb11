import type { Point } from '../../engine/geometry/point.ts';
import type { Box } from '../boxes.ts';

/** The part of a segment inside a box (clipping by Liang and Barsky); null where there is none. */
export function clipSegment(from: Point, to: Point, box: Box): readonly [Point, Point] | null {
  const delta: Point = [to[0] - from[0], to[1] - from[1]];
  let enter = 0;
  let leave = 1;
  for (const axis of [0, 1] as const) {
    const low = axis === 0 ? box.x : box.y;
    const high = low + (axis === 0 ? box.width : box.height);
    if (delta[axis] === 0) {
      if (from[axis] < low || from[axis] > high) return null;
      continue;
    }
    const places = [(low - from[axis]) / delta[axis], (high - from[axis]) / delta[axis]];
    enter = Math.max(enter, Math.min(...places));
    leave = Math.min(leave, Math.max(...places));
  }
  if (enter >= leave) return null;
  const at = (share: number): Point => [from[0] + share * delta[0], from[1] + share * delta[1]];
  return [at(enter), at(leave)];
}

/** The sides of a closed ring inside a box. */
export function clipRing(ring: readonly Point[], box: Box): readonly (readonly [Point, Point])[] {
  return ring.flatMap((from, i) => {
    const piece = clipSegment(from, ring[(i + 1) % ring.length]!, box);
    return piece === null ? [] : [piece];
  });
}
