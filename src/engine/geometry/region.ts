import { GeometryError } from './geometry-error.ts';
import type { Point, Polygon } from './point.ts';
import {
  isWithinRing,
  measureDistance,
  nameRing,
  prepareRing,
  type Ring,
  refuseContact,
  showPoint,
  TOLERANCE,
} from './rings.ts';

/** A side of the concrete: of the outline or of an opening. Walking along it, the concrete lies on the left. */
export interface Side {
  /** Its place in `Region.sides`. */
  readonly index: number;
  /** 'outline', or the index of the opening as given. */
  readonly ring: 'outline' | number;
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  /** [mm] */
  readonly length: number;
  /** Unit vector along the side. */
  readonly ux: number;
  readonly uy: number;
  /** Unit normal pointing out of the concrete. */
  readonly nx: number;
  readonly ny: number;
  /** Indices in `Region.sides` of the neighbours on the same ring. */
  readonly previous: number;
  readonly next: number;
  /** Angle of the concrete at the two ends [rad]; above π the corner is re-entrant (all corners of a convex opening are). */
  readonly angleAtFrom: number;
  readonly angleAtTo: number;
}

/** The face of a panel: a polygon with polygon openings, or an infinite face with openings. All lengths in mm. */
export interface Region {
  /** The cleaned outline, counter-clockwise; null for an infinite face. */
  readonly outline: Polygon | null;
  /** The cleaned openings, clockwise. */
  readonly openings: readonly Polygon[];
  /** All sides, those of the outline first, then opening by opening, in order. */
  readonly sides: readonly Side[];
  /** fromX, fromY, toX, toY of every side in one row, for the loops that run often. Never written to. */
  readonly ends: Float64Array;
  /** Whether a corner of the concrete is above π. Without one, nothing hides anything from a point inside. */
  readonly hasReentrantCorner: boolean;
  /** Bounding box of the concrete; infinite for an infinite face. */
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * Checks and prepares a face once, for every area and distance that is asked of it later.
 *
 * Corners closer than 1e-7 mm are merged and corners that leave the line between their neighbours by no more than 1e-7 mm
 * are dropped (see TOLERANCE); either sense of turning is taken.
 *
 * @param outline corners of the panel [mm], or null for a face without an edge near
 * @param openings corners of each opening [mm]
 * @throws GeometryError naming ring and corner: fewer than 3 corners, no area, a number that is not finite, a ring that
 *   crosses or touches itself or another, an opening outside the outline or within another opening
 */
export function prepareRegion(outline: Polygon | null, openings: readonly Polygon[]): Region {
  const outer = outline === null ? null : prepareRing(outline, 'outline');
  const holes = openings.map((opening, i) => prepareRing(opening, i));
  holes.forEach((hole, i) => {
    if (outer !== null) refuseOutside(hole, outer);
    for (const other of holes.slice(0, i)) refuseOverlap(hole, other);
  });

  const sides: Side[] = [];
  for (const ring of outer === null ? holes : [outer, ...holes]) appendSides(ring, sides);
  const ends = new Float64Array(4 * sides.length);
  let hasReentrantCorner = false;
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const { index, fromX, fromY, toX, toY, angleAtFrom } of sides) {
    ends[4 * index] = fromX;
    ends[4 * index + 1] = fromY;
    ends[4 * index + 2] = toX;
    ends[4 * index + 3] = toY;
    if (angleAtFrom > Math.PI) hasReentrantCorner = true;
    minX = Math.min(minX, fromX);
    minY = Math.min(minY, fromY);
    maxX = Math.max(maxX, fromX);
    maxY = Math.max(maxY, fromY);
  }
  const isEndless = outer === null;
  return {
    outline: outer === null ? null : outer.points,
    openings: holes.map((hole) => hole.points),
    sides,
    ends,
    hasReentrantCorner,
    minX: isEndless ? Number.NEGATIVE_INFINITY : minX,
    minY: isEndless ? Number.NEGATIVE_INFINITY : minY,
    maxX: isEndless ? Number.POSITIVE_INFINITY : maxX,
    maxY: isEndless ? Number.POSITIVE_INFINITY : maxY,
  };
}

/** Whether (x, y) lies in the concrete and more than 1e-7 mm (TOLERANCE) from its boundary. */
export function isInside(region: Region, x: number, y: number): boolean {
  if (region.outline !== null && !isWithinRing(region.outline, x, y)) return false;
  for (const opening of region.openings) if (isWithinRing(opening, x, y)) return false;
  return distanceToBoundary(region, x, y) > TOLERANCE;
}

/** Distance [mm] from (x, y), inside or outside, to the nearest side, hidden or not; Infinity when there is none. */
export function distanceToBoundary(region: Region, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const side of region.sides) {
    const dx = x - side.fromX;
    const dy = y - side.fromY;
    const along = Math.min(side.length, Math.max(0, dx * side.ux + dy * side.uy));
    const offX = dx - along * side.ux;
    const offY = dy - along * side.uy;
    least = Math.min(least, offX * offX + offY * offY);
  }
  return Math.sqrt(least);
}

function refuseOutside(hole: Ring, outer: Ring): void {
  refuseContact(hole, outer);
  const [x, y] = hole.points[0]!;
  if (isWithinRing(outer.points, x, y)) return;
  throw new GeometryError(
    `${nameRing(hole.ring)}, corner ${hole.given[0]! + 1} ${showPoint([x, y])} lies outside the outline; expected within it`,
    hole.ring,
    hole.given[0]!,
  );
}

function refuseOverlap(hole: Ring, other: Ring): void {
  refuseContact(hole, other);
  for (const [inner, around] of [[hole, other] as const, [other, hole] as const]) {
    const [x, y] = inner.points[0]!;
    if (!isWithinRing(around.points, x, y)) continue;
    throw new GeometryError(
      `${nameRing(inner.ring)}, corner ${inner.given[0]! + 1} ${showPoint([x, y])} lies within ${nameRing(around.ring)}; ` +
        'expected openings apart from each other',
      inner.ring,
      inner.given[0]!,
    );
  }
}

function appendSides(ring: Ring, sides: Side[]): void {
  const first = sides.length;
  const n = ring.points.length;
  const angles = ring.points.map((at, i) => measureAngle(ring.points[(i + n - 1) % n]!, at, ring.points[(i + 1) % n]!));
  for (let i = 0; i < n; i++) {
    const from = ring.points[i]!;
    const to = ring.points[(i + 1) % n]!;
    const length = measureDistance(from, to);
    const ux = (to[0] - from[0]) / length;
    const uy = (to[1] - from[1]) / length;
    sides.push({
      index: first + i,
      ring: ring.ring,
      fromX: from[0],
      fromY: from[1],
      toX: to[0],
      toY: to[1],
      length,
      ux,
      uy,
      nx: uy,
      ny: -ux,
      previous: first + ((i + n - 1) % n),
      next: first + ((i + 1) % n),
      angleAtFrom: angles[i]!,
      angleAtTo: angles[(i + 1) % n]!,
    });
  }
}

/** Angle of the concrete (left of the way a-b-c) at b. */
function measureAngle(a: Point, b: Point, c: Point): number {
  const px = b[0] - a[0];
  const py = b[1] - a[1];
  const qx = c[0] - b[0];
  const qy = c[1] - b[1];
  return Math.PI - Math.atan2(px * qy - py * qx, px * qx + py * qy);
}
