import type { Polygon } from '../geometry/point.ts';
import type { Side } from '../geometry/region.ts';
import { outlineUnion } from '../geometry/union-outline.ts';
import { findVisiblePolygon } from '../geometry/visible-polygon.ts';
import type { GroupActions } from './anchorage-group.ts';
import { findCones } from './concrete-cone.ts';
import { findSides } from './concrete-edge.ts';
import { BODY } from './edge-report.ts';
import { spanAlong } from './edge-row.ts';
import type { PreparedAnchorage, Projection, ShearRow } from './prepared.ts';
import { type Run, startRun, Tally } from './run.ts';
import { findSplittingClusters } from './splitting.ts';

/** The concrete of one cluster of inserts in tension as the check counts it, on the face [mm, mm²]. */
export interface TensionArea {
  readonly inserts: readonly string[];
  /** A_c,N: the squares joined, cut by the panel, of each what its insert sees. */
  readonly area: number;
  /** Half the side of each square. */
  readonly half: number;
  /** Its outline, covered on the left: outer rings counter-clockwise, holes clockwise. */
  readonly rings: readonly Polygon[];
}

/** The concrete of a row of inserts that may break out toward an edge [mm, mm²]. */
export interface ShearArea {
  readonly inserts: readonly string[];
  readonly edge: Side;
  /** c_1 that counts: c_1' in a member both thin and narrow. */
  readonly edgeUsed: number;
  /** A_c,V: length along the edge times height. */
  readonly area: number;
  readonly length: number;
  readonly height: number;
  /** Stretches along the edge, from its start, that the body covers. */
  readonly spans: readonly { readonly from: number; readonly to: number }[];
  /** The body on the face: from the inserts to what it covers of the edge's line, a ring a stretch. */
  readonly rings: readonly Polygon[];
}

/** What a combination loads; without one, all inserts alike. */
function startFor(p: PreparedAnchorage, actions: GroupActions | null): Run {
  const all = { inserts: p.group.positions.map(() => ({ N: 1, Vx: 1, Vy: 0 })), compression: null };
  return startRun(p, actions ?? all, actions !== null, new Tally(), null);
}

const nameAll = ({ group }: PreparedAnchorage, members: readonly number[]) =>
  [...members].sort((a, b) => a - b).map((i) => group.positions[i]!.id);

/** The squares of a cluster as they lie when their axes are turned to a direction; of equal areas the one nearest to it. */
function outlineSquares(p: PreparedAnchorage, projection: Projection, direction: number): readonly Polygon[] {
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)];
  // A quarter turn of a square is no turn.
  const isNear = ({ ux, uy }: { readonly ux: number; readonly uy: number }) =>
    Math.max(Math.abs(ux * dx + uy * dy), Math.abs(ux * dy - uy * dx));
  const { ux, uy } = projection.axes.reduce((best, axis) => (isNear(axis) > isNear(best) ? axis : best), {
    ux: projection.axes[0]?.ux ?? 1,
    uy: projection.axes[0]?.uy ?? 0,
  });
  const half = projection.criticalEdge;
  const box = { minU: -half, maxU: half, minV: -half, maxV: half };
  // About the first insert, so that no digits are lost to where the origin of the face is.
  const [x0, y0] = [p.xs[projection.members[0]!]!, p.ys[projection.members[0]!]!];
  const seen = projection.members.map((i) => {
    const [x, y] = [p.xs[i]!, p.ys[i]!];
    const u = (x - x0) * ux + (y - y0) * uy;
    const v = (y - y0) * ux - (x - x0) * uy;
    return findVisiblePolygon(p.region, x, y, ux, uy, box).map((value, k) => value + (k % 2 === 0 ? u : v));
  });
  return outlineUnion(seen).map((ring) => ring.map(([u, v]) => [x0 + u * ux - v * uy, y0 + u * uy + v * ux] as const));
}

/**
 * The concrete cones, or the squares of splitting, of one combination.
 * @param actions null: all inserts in tension
 * @param direction axis of the squares as the check's row tells it [rad]
 * @throws AnchorageError where the actions do not match the positions
 */
export function findTensionAreas(
  p: PreparedAnchorage,
  actions: GroupActions | null,
  mode: 'concrete-cone' | 'splitting',
  direction: number,
): readonly TensionArea[] {
  const { tensioned } = startFor(p, actions);
  if (tensioned.length === 0) return [];
  const clusters = mode === 'concrete-cone' ? findCones(p, tensioned) : findSplittingClusters(p, tensioned);
  return clusters.map(({ projection }) => ({
    inserts: nameAll(p, projection.members),
    area: projection.area,
    half: projection.criticalEdge,
    rings: outlineSquares(p, projection, direction),
  }));
}

/** One stretch of a body on the face: the line of the edge, then back along the inserts in front of it. */
function outlineStretch(p: PreparedAnchorage, { row }: ShearRow, from: number, to: number): Polygon {
  const { side, along } = row.view;
  const onEdge = (place: number) => [side.fromX + place * side.ux, side.fromY + place * side.uy] as const;
  const front = row.front.filter((i) => along[i]! >= from && along[i]! <= to);
  const back = [...front].sort((a, b) => along[b]! - along[a]!).map((i) => [p.xs[i]!, p.ys[i]!] as const);
  return [onEdge(from), onEdge(to), ...back];
}

/**
 * The bodies toward one side of the concrete in one combination, the rows in front first.
 * @param actions null: all inserts in shear
 * @throws AnchorageError where the actions do not match the positions
 */
export function findShearAreas(
  p: PreparedAnchorage,
  actions: GroupActions | null,
  sideIndex: number,
): readonly ShearArea[] {
  const { sheared } = startFor(p, actions);
  const side = sheared.length === 0 ? undefined : findSides(p, sheared)[sideIndex];
  if (side === undefined) return [];
  const behind = side.preparedBehind.filter((body) => body !== undefined);
  return [...side.front, ...behind].map((body) => {
    const spans = spanAlong(body.row, BODY * body.edgeUsed);
    return {
      inserts: nameAll(p, body.row.front),
      edge: body.row.view.side,
      edgeUsed: body.edgeUsed,
      area: body.length * body.height,
      length: body.length,
      height: body.height,
      spans,
      rings: spans.map(({ from, to }) => outlineStretch(p, body, from, to)),
    };
  });
}
