import { roundForText } from './messages.ts';
import type { PreparedAnchorage } from './prepare.ts';
import type { Projection } from './projection.ts';

/**
 * Says how an area can be followed by hand: as length times width where the union of the squares, cut by the panel, is a
 * rectangle; else with the squares and what cuts them.
 */
export function describeArea(p: PreparedAnchorage, projection: Projection, ux: number, uy: number): string {
  const half = projection.criticalEdge;
  let minU = Number.POSITIVE_INFINITY;
  let maxU = Number.NEGATIVE_INFINITY;
  let minV = Number.POSITIVE_INFINITY;
  let maxV = Number.NEGATIVE_INFINITY;
  for (const i of projection.members) {
    const u = p.xs[i]! * ux + p.ys[i]! * uy;
    const v = p.ys[i]! * ux - p.xs[i]! * uy;
    let [left, right, below, above] = [half, half, half, half];
    for (const point of p.near[i]!) {
      const along = point.nx * ux + point.ny * uy;
      const across = point.ny * ux - point.nx * uy;
      if (along > 1 - 1e-12) right = Math.min(right, point.distance);
      else if (along < -1 + 1e-12) left = Math.min(left, point.distance);
      else if (across > 1 - 1e-12) above = Math.min(above, point.distance);
      else if (across < -1 + 1e-12) below = Math.min(below, point.distance);
    }
    minU = Math.min(minU, u - left);
    maxU = Math.max(maxU, u + right);
    minV = Math.min(minV, v - below);
    maxV = Math.max(maxV, v + above);
  }
  const length = maxU - minU;
  const width = maxV - minV;
  const side = roundForText(2 * half, 2);
  if (Math.abs(length * width - projection.area) <= 1e-9 * projection.area)
    return `${roundForText(length, 2)} mm x ${roundForText(width, 2)} mm: union of squares of ${side} mm, cut by the panel`;
  return `union of ${projection.members.length} squares of ${side} mm, cut by the panel's edges and by what is out of sight`;
}
