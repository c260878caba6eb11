import type { Side } from '../geometry/region.ts';
import { groupArea, type NearPoint } from '../geometry/sight.ts';
import type { PreparedAnchorage, Projection } from './prepared.ts';

/** The least angle between two normals for their edges to count as separate: 45 degrees (common practice; the code gives no angle). */
const SEPARATE_EDGES = Math.PI / 4;

/** Areas closer than this, relative, are the same: the axes are then a free choice and the least resistance is taken. */
const SAME_AREA = 1e-9;

/** Near edges of a cluster, each with its least distance: sides in sight and re-entrant corners. */
function collectNearEdges(p: PreparedAnchorage, members: readonly number[], reach: number): NearPoint[] {
  const edges: NearPoint[] = [];
  for (const i of members)
    for (const point of p.near[i]!) {
      if (point.distance >= reach) break;
      const known = edges.findIndex(({ kind, side }) => kind === point.kind && side === point.side);
      if (known < 0) edges.push(point);
      else if (point.distance < edges[known]!.distance) edges[known] = point;
    }
  return edges;
}

/** The largest number of edges whose normals differ pairwise by at least 45 degrees. */
function countDirections(edges: readonly NearPoint[]): number {
  const angles = edges.map(({ nx, ny }) => Math.atan2(ny, nx)).sort((a, b) => a - b);
  const step = SEPARATE_EDGES - 1e-9;
  let best = 0;
  for (const [start, first] of angles.entries()) {
    let count = 1;
    let last = first;
    for (let k = 1; k < angles.length; k++) {
      const wrapped = start + k >= angles.length;
      const angle = angles[(start + k) % angles.length]! + (wrapped ? 2 * Math.PI : 0);
      if (angle - last >= step && first + 2 * Math.PI - angle >= step) {
        count += 1;
        last = angle;
      }
    }
    best = Math.max(best, count);
  }
  return best;
}

/** A square reaches this multiple of half its side at its corners. */
export const SQUARE_REACH = Math.SQRT2;

/** Distance from a point to a side [mm]. */
function measureToSide(side: Side, x: number, y: number): number {
  const dx = x - side.fromX;
  const dy = y - side.fromY;
  const along = Math.min(side.length, Math.max(0, dx * side.ux + dy * side.uy));
  const u = dx - along * side.ux;
  const v = dy - along * side.uy;
  return Math.sqrt(u * u + v * v);
}

/**
 * Directions a square may take: along an edge that it could touch or a line between two inserts, a quarter turn being the
 * same. None where one insert has no edge as near as that: every direction then gives the same area.
 * @param reach how far a corner of the square lies from its insert [mm]
 */
export function collectAxes(
  p: PreparedAnchorage,
  members: readonly number[],
  reach: number,
): { ux: number; uy: number }[] {
  const axes: { ux: number; uy: number }[] = [];
  const add = (x: number, y: number) => {
    for (const { ux, uy } of axes) if (Math.abs((ux * x + uy * y) * (ux * y - uy * x)) < 1e-9) return;
    axes.push({ ux: x, uy: y });
  };
  for (const side of p.region.sides)
    if (members.some((i) => measureToSide(side, p.xs[i]!, p.ys[i]!) < reach)) add(side.ux, side.uy);
  for (const i of members)
    for (const j of members) {
      if (j <= i) continue;
      const dx = p.xs[j]! - p.xs[i]!;
      const dy = p.ys[j]! - p.ys[i]!;
      const length = Math.sqrt(dx * dx + dy * dy);
      add(dx / length, dy / length);
    }
  return axes;
}

/**
 * Projects the squares of a cluster. Near three or more edges the embedment is reduced, h'_ef = max(c_max/c_cr, s_max/s_cr)
 * h_ef, and all that follows uses it. The squares are turned to the direction of least area.
 * @param members indices of the inserts of one cluster
 * @param longestLink longest link of their minimum spanning tree [mm]
 * @param criticalEdge characteristic edge distance for the full embedment [mm]
 */
export function projectSquares(
  p: PreparedAnchorage,
  members: readonly number[],
  longestLink: number,
  criticalEdge: number,
): Projection {
  const edges = collectNearEdges(p, members, criticalEdge);
  let reduction = 1;
  let largestEdge = 0;
  let edge = Number.POSITIVE_INFINITY;
  for (const { distance } of edges) {
    largestEdge = Math.max(largestEdge, distance);
    edge = Math.min(edge, distance);
  }
  if (edges.length >= 3 && countDirections(edges) >= 3)
    reduction = p.edition.reduceEmbedment(largestEdge, longestLink, criticalEdge, 1, null);
  const half = reduction * criticalEdge;

  const xs = members.map((i) => p.xs[i]!);
  const ys = members.map((i) => p.ys[i]!);
  const candidates = collectAxes(p, members, SQUARE_REACH * criticalEdge);
  const areas = candidates.map(({ ux, uy }) => groupArea(p.region, xs, ys, half, ux, uy));
  const area = areas.length > 0 ? Math.min(...areas) : 4 * half * half;
  return {
    members,
    criticalEdge: half,
    reduction,
    largestEdge,
    largestSpacing: longestLink,
    edge,
    area,
    axes: candidates.filter((_, k) => areas[k]! <= area * (1 + SAME_AREA)),
    centroidX: xs.reduce((sum, x) => sum + x, 0) / xs.length,
    centroidY: ys.reduce((sum, y) => sum + y, 0) / ys.length,
  };
}

/** Eccentricities along the axes of the squares [mm], and the product 1/ψ_ec of both as `loss`. */
export interface Eccentricity {
  readonly e1: number;
  readonly e2: number;
  readonly ux: number;
  readonly uy: number;
  readonly loss: number;
}

/** Eccentricities of a load along the axes of the squares: of equal areas, those that lower the resistance most. */
export function findEccentricity(projection: Projection, offsetX: number, offsetY: number): Eccentricity {
  let best: Eccentricity = { e1: 0, e2: 0, ux: 1, uy: 0, loss: 0 };
  const spacing = 2 * projection.criticalEdge;
  for (const { ux, uy } of projection.axes) {
    const e1 = Math.abs(offsetX * ux + offsetY * uy);
    const e2 = Math.abs(offsetY * ux - offsetX * uy);
    const loss = (1 + (2 * e1) / spacing) * (1 + (2 * e2) / spacing);
    if (loss > best.loss) best = { e1, e2, ux, uy, loss };
  }
  return best;
}
