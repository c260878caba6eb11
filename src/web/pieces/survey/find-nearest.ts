import type { DesignPoint } from '../../../assess/as-cast/match-points.ts';
import { movePoint, type Pose } from '../../../engine/survey/pose.ts';
import { lengthOf, minus, type Vector } from '../../../engine/survey/vector.ts';

/** The designed point that a surveyed one lies nearest to, once all are laid on the panel, and how far [mm]; null: nothing is within that reach. */
export function findNearest(
  design: readonly DesignPoint[],
  pose: Pose,
  at: Vector,
  reach: number,
): { readonly point: DesignPoint; readonly off: number } | null {
  const place = movePoint(pose, at);
  return design.reduce<{ readonly point: DesignPoint; readonly off: number } | null>((best, point) => {
    const off = lengthOf(minus(place, point.at));
    return off <= (best?.off ?? reach) ? { point, off } : best;
  }, null);
}
