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
  let enter = 0;
  let leave = 1;
  const low = [x, y];
  const high = [x + width, y + height];
  for (const axis of [0, 1] as const) {
    const start = from[axis];
    const run = to[axis] - start;
    if (run === 0) {
      if (start <= low[axis]! || start >= high[axis]!) return false;
      continue;
    }
    const [a, b] = [(low[axis]! - start) / run, (high[axis]! - start) / run];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter < leave;
}
