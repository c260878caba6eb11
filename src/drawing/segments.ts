import type { Point } from '../engine/geometry/point.ts';
import type { Box } from './boxes.ts';

/** Which side of the line a → b a point lies on: positive to its counter-clockwise side. */
function sideOf(a: Point, b: Point, p: Point): number {
  return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
}

/** Whether two segments cross in a point inside both. */
export function doSegmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  return sideOf(a, b, c) * sideOf(a, b, d) < 0 && sideOf(c, d, a) * sideOf(c, d, b) < 0;
}

/** Whether a part of a segment lies inside a box (clipping by Liang and Barsky); one that only touches its rim does not. */
export function doesSegmentMeetBox(from: Point, to: Point, { x, y, width, height }: Box): boolean {
  // Most segments and boxes lie apart: told without a division.
  if (Math.max(from[0], to[0]) <= x || Math.min(from[0], to[0]) >= x + width) return false;
  if (Math.max(from[1], to[1]) <= y || Math.min(from[1], to[1]) >= y + height) return false;
  // Where along the segment it enters and leaves the strips between the sides of the box, by x and by y.
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  let enter = 0;
  let leave = 1;
  if (dx !== 0) {
    const low = (x - from[0]) / dx;
    const high = (x + width - from[0]) / dx;
    enter = Math.max(enter, Math.min(low, high));
    leave = Math.min(leave, Math.max(low, high));
  }
  if (dy !== 0) {
    const low = (y - from[1]) / dy;
    const high = (y + height - from[1]) / dy;
    enter = Math.max(enter, Math.min(low, high));
    leave = Math.min(leave, Math.max(low, high));
  }
  return enter < leave;
}
