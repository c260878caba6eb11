import { findVisiblePolygon } from '../geometry/visible-polygon.ts';
import { roundForText } from './messages.ts';
import type { PreparedAnchorage, Projection } from './prepared.ts';

interface Rectangle {
  readonly fromU: number;
  readonly toU: number;
  readonly fromV: number;
  readonly toV: number;
}

/** Each square cut square to its axes at the near edges that lie straight along an axis. */
function cutSquares(p: PreparedAnchorage, projection: Projection, ux: number, uy: number): Rectangle[] {
  const half = projection.criticalEdge;
  return projection.members.map((i) => {
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
    return { fromU: u - left, toU: u + right, fromV: v - below, toV: v + above };
  });
}

/** Strips of the union of rectangles: neighbours of equal height joined. */
function findStrips(rectangles: readonly Rectangle[]): { width: number; height: number }[] {
  const cuts = [...new Set(rectangles.flatMap(({ fromU, toU }) => [fromU, toU]))].sort((a, b) => a - b);
  const strips: { width: number; height: number }[] = [];
  for (let k = 1; k < cuts.length; k++) {
    const [from, to] = [cuts[k - 1]!, cuts[k]!];
    const spans = rectangles
      .filter(({ fromU, toU }) => fromU < (from + to) / 2 && toU > (from + to) / 2)
      .sort((a, b) => a.fromV - b.fromV);
    let height = 0;
    let end = Number.NEGATIVE_INFINITY;
    for (const { fromV, toV } of spans) {
      height += Math.max(0, toV - Math.max(fromV, end));
      end = Math.max(end, toV);
    }
    const last = strips.at(-1);
    if (last !== undefined && Math.abs(last.height - height) < 1e-9) last.width += to - from;
    else if (height > 0) strips.push({ width: to - from, height });
  }
  return strips;
}

/** The part of one square that its insert sees, by its corners in the axes of the face [mm]. */
function listCorners(p: PreparedAnchorage, i: number, half: number, ux: number, uy: number): string {
  const x = p.xs[i]!;
  const y = p.ys[i]!;
  const box = { minU: -half, maxU: half, minV: -half, maxV: half };
  const seen = findVisiblePolygon(p.region, x, y, ux, uy, box);
  const corners: string[] = [];
  for (let k = 0; k < seen.length; k += 2) {
    const [u, v] = [seen[k]!, seen[k + 1]!];
    const corner = `(${roundForText(x + u * ux - v * uy, 2)}, ${roundForText(y + u * uy + v * ux, 2)})`;
    if (corner !== corners.at(-1) && corner !== corners[0]) corners.push(corner);
  }
  return `${p.group.positions[i]!.id}: ${corners.join(' ')}`;
}

/**
 * Says how an area can be followed by hand: strip by strip, width times height, where all cuts are square to the axes; else by
 * the corners of what each insert sees of its square.
 */
export function describeArea(p: PreparedAnchorage, projection: Projection, ux: number, uy: number): string {
  const half = projection.criticalEdge;
  const side = roundForText(2 * half, 2);
  const count = projection.members.length;
  const what =
    count === 1 ? `square of ${side} mm, cut by the panel` : `${count} squares of ${side} mm joined, cut by the panel`;
  const strips = findStrips(cutSquares(p, projection, ux, uy));
  const sum = strips.reduce((area, { width, height }) => area + width * height, 0);
  if (Math.abs(sum - projection.area) <= 1e-9 * projection.area)
    return `${what}: ${strips.map(({ width, height }) => `${roundForText(width, 4)} x ${roundForText(height, 4)}`).join(' + ')} mm2`;
  const polygons = projection.members.map((i) => listCorners(p, i, half, ux, uy));
  return `${what}; area of the polygon${count === 1 ? '' : 's, overlaps once'}, corners in mm: ${polygons.join('; ')}`;
}
