import type { Point, Polygon } from '../../engine/geometry/point.ts';
import { distanceToBoundary, isInside, type Region } from '../../engine/geometry/region.ts';
import { isWithinRing } from '../../engine/geometry/rings.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';

/** Cones of two inserts nearer than this times the embedment overlap (3 h_ef). */
const APART = 3;

/** Rounding of a position [mm]. */
const ROUNDING = 1e-6;

/** Where a cast-in item stands as one looks at the drawn face; an edge insert at the side of the panel. */
function planPoint(panel: Panel, { face, edge, x_mm, y_mm }: CastIn): Point {
  if (face !== 'edge' || edge === null) return [x_mm, y_mm];
  const { from, along } = panelSide(panel, edge);
  return [from[0] + along[0] * x_mm, from[1] + along[1] * x_mm];
}

function isOnFaceOf(a: CastIn, b: CastIn): boolean {
  return a.face === b.face && a.edge === b.edge;
}

/** Distance of two cast-in items: on their face where they share one, else as one looks at the drawn face [mm]. */
function measureApart(panel: Panel, a: CastIn, b: CastIn): number {
  const [p, q]: readonly [Point, Point] = isOnFaceOf(a, b)
    ? [
        [a.x_mm, a.y_mm],
        [b.x_mm, b.y_mm],
      ]
    : [planPoint(panel, a), planPoint(panel, b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1]);
}

/**
 * Whether inserts, moved, keep clear of everything else in the panel, whatever its role and face: none comes nearer to it than
 * 3 h_ef, where the cones of two inserts begin to overlap, or than it stands already. Connections are computed apart, so a
 * move must not bring them together.
 */
export function keepsClear(
  panel: Panel,
  before: readonly CastIn[],
  after: readonly CastIn[],
  others: readonly CastIn[],
  embedment: number,
): boolean {
  return after.every((moved, i) =>
    others.every((other) => {
      const least = Math.min(APART * embedment, measureApart(panel, before[i]!, other));
      return measureApart(panel, moved, other) >= least - ROUNDING;
    }),
  );
}

/** Whether two segments cross, each going through the other. */
function doCross([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point, [dx, dy]: Point): boolean {
  const side = (px: number, py: number, qx: number, qy: number, x: number, y: number) =>
    (qx - px) * (y - py) - (qy - py) * (x - px);
  const area = Math.hypot(bx - ax, by - ay) * Math.hypot(dx - cx, dy - cy) * 1e-9;
  const [c, d] = [side(ax, ay, bx, by, cx, cy), side(ax, ay, bx, by, dx, dy)];
  const [a, b] = [side(cx, cy, dx, dy, ax, ay), side(cx, cy, dx, dy, bx, by)];
  return (
    Math.abs(c) > area &&
    Math.abs(d) > area &&
    c > 0 !== d > 0 &&
    Math.abs(a) > area &&
    Math.abs(b) > area &&
    a > 0 !== b > 0
  );
}

/** Whether a plate lies on the concrete of a face all over; its sides may lie on the edge. */
export function liesOnConcrete(face: Region, plate: Polygon): boolean {
  const isOn = ([x, y]: Point) => isInside(face, x, y) || distanceToBoundary(face, x, y) <= ROUNDING;
  if (!plate.every(isOn)) return false;
  return face.sides.every(({ fromX, fromY, toX, toY }) => {
    const isCornerUnder = isWithinRing(plate, fromX, fromY) && distanceToRing(plate, fromX, fromY) > ROUNDING;
    return (
      !isCornerUnder &&
      plate.every((corner, i) => !doCross(corner, plate[(i + 1) % plate.length]!, [fromX, fromY], [toX, toY]))
    );
  });
}

function distanceToRing(ring: Polygon, x: number, y: number): number {
  return Math.min(
    ...ring.map(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length]!;
      const length = Math.hypot(bx - ax, by - ay);
      const along = Math.min(length, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length));
      return Math.hypot(x - ax - (along * (bx - ax)) / length, y - ay - (along * (by - ay)) / length);
    }),
  );
}
