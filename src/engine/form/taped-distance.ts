import type { Point } from '../geometry/point.ts';

/** One distance taken with a tape. Lengths mm. */
export interface TapedDistance {
  /** Square to the straight line through an edge, or to a point. */
  readonly to:
    | { readonly kind: 'edge'; readonly from: Point; readonly end: Point }
    | { readonly kind: 'point'; readonly at: Point };
  readonly distance: number;
  /** Its standard deviation. */
  readonly deviation: number;
}

/** Distance from an edge, positive on the side that lies on the left hand going from its first end, or from a point. */
export function signedDistance(to: TapedDistance['to'], [x, y]: Point): number {
  if (to.kind === 'point') return Math.hypot(x - to.at[0], y - to.at[1]);
  const [ux, uy] = directionOf(to.from, to.end);
  return ux * (y - to.from[1]) - uy * (x - to.from[0]);
}

/** How the signed distance grows with x and y: a unit vector. */
export function distanceGradient(to: TapedDistance['to'], at: Point): Point {
  if (to.kind === 'point') return directionOf(to.at, at);
  const [ux, uy] = directionOf(to.from, to.end);
  return [0 - uy, ux];
}

function directionOf(from: Point, end: Point): Point {
  const length = Math.hypot(end[0] - from[0], end[1] - from[1]);
  return [(end[0] - from[0]) / length, (end[1] - from[1]) / length];
}
