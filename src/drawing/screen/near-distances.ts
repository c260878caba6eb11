import type { Point } from '../../engine/geometry/point.ts';
import { measureRay } from '../../engine/geometry/ray.ts';
import type { Region } from '../../engine/geometry/region.ts';

/** A length that is measured on the panel, from one point to the other along an axis of the view [mm, drawn face]. */
export interface NearDistance {
  readonly axis: 'x' | 'y';
  /** Toward which side of the view. */
  readonly toward: 'left' | 'right' | 'below' | 'above';
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

const TOWARD = ['left', 'right', 'below', 'above'] as const;

/** Unit directions of the view. */
const STEPS: Readonly<Record<NearDistance['toward'], Point>> = {
  left: [-1, 0],
  right: [1, 0],
  below: [0, -1],
  above: [0, 1],
};

/** The point of several that reaches furthest in a direction. */
function findOutermost(points: readonly Point[], [ux, uy]: Point): Point {
  return points.reduce((best, at) => (at[0] * ux + at[1] * uy > best[0] * ux + best[1] * uy ? at : best));
}

/**
 * From a group of points to the first side of the concrete in each direction of the view, each from its outermost point; nothing where no side is met.
 * @param points in coordinates of the drawn face, within the concrete, at least one
 * @param turn a direction of the view on the drawn face
 */
export function measureToEdges(
  region: Region,
  points: readonly Point[],
  turn: (view: Point) => Point,
): readonly NearDistance[] {
  return TOWARD.flatMap((toward): NearDistance[] => {
    const step = turn(STEPS[toward]);
    const from = findOutermost(points, step);
    const length = measureRay(region, from[0], from[1], step[0], step[1]);
    if (!Number.isFinite(length)) return [];
    const to: Point = [from[0] + length * step[0], from[1] + length * step[1]];
    return [{ axis: toward === 'left' || toward === 'right' ? 'x' : 'y', toward, from, to, length }];
  });
}

/** Of the distances along each axis the shorter one: what is shown while something moves. */
export function keepNearest(distances: readonly NearDistance[]): readonly NearDistance[] {
  return (['x', 'y'] as const).flatMap((axis) => {
    const [nearest] = distances.filter((one) => one.axis === axis).sort((a, b) => a.length - b.length);
    return nearest === undefined ? [] : [nearest];
  });
}

/** The two points of two groups that lie nearest to each other [mm]; null where a group is empty. */
export function measureToNeighbour(
  points: readonly Point[],
  others: readonly Point[],
): { readonly from: Point; readonly to: Point; readonly length: number } | null {
  let best: { from: Point; to: Point; length: number } | null = null;
  for (const from of points)
    for (const to of others) {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      if (best === null || length < best.length) best = { from, to, length };
    }
  return best;
}
