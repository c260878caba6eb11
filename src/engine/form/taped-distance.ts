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
