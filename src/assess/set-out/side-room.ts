import type { Point } from '../../engine/geometry/point.ts';
import { isInside, type Region, type Side } from '../../engine/geometry/region.ts';

/** A side that passes a point nearer than this [mm] goes through it. */
const ON_SIDE = 1e-6;

function distanceToSegment(at: Point, from: Point, to: Point): number {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const along = ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / (dx * dx + dy * dy);
  const place = Math.min(1, Math.max(0, along));
  return Math.hypot(at[0] - from[0] - place * dx, at[1] - from[1] - place * dy);
}

/** Twice the signed area of a triangle: which side of a-b is c on. */
function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

function doCross(a: Point, b: Point, c: Point, d: Point): boolean {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

function segmentDistance(a: Point, b: Point, c: Point, d: Point): number {
  if (doCross(a, b, c, d)) return 0;
  return Math.min(
    distanceToSegment(a, c, d),
    distanceToSegment(b, c, d),
    distanceToSegment(c, a, b),
    distanceToSegment(d, a, b),
  );
}

function ends(side: Side): readonly [Point, Point] {
  return [
    [side.fromX, side.fromY],
    [side.toX, side.toY],
  ];
}

/** A straight thing with flat ends, seen from above: a bar or a body. Lengths mm. */
export interface Strip {
  readonly from: Point;
  readonly to: Point;
  readonly width: number;
}

/**
 * Concrete between a strip and the nearest side of a panel or opening [mm], exact for flat ends; 0 where it touches or crosses one.
 * @param through sides through this point are passed over: those that the strip starts from; null: all count
 */
export function findSideRoom(region: Region, { from, to, width }: Strip, through: Point | null): number {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const across: Point = [(-(to[1] - from[1]) / length) * (width / 2), ((to[0] - from[0]) / length) * (width / 2)];
  const corners: readonly Point[] = [
    [from[0] + across[0], from[1] + across[1]],
    [to[0] + across[0], to[1] + across[1]],
    [to[0] - across[0], to[1] - across[1]],
    [from[0] - across[0], from[1] - across[1]],
  ];
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  if (!isInside(region, middle[0], middle[1])) return 0;
  const sides = region.sides.filter((side) => through === null || distanceToSegment(through, ...ends(side)) > ON_SIDE);
  const distances = sides.flatMap((side) =>
    corners.map((corner, i) => segmentDistance(corner, corners[(i + 1) % 4]!, ...ends(side))),
  );
  return Math.min(...distances);
}
