import { unionOfPolygonsArea } from './polygons-area.ts';
import type { Region, Side } from './region.ts';
import { TOLERANCE } from './rings.ts';
import { squaresArea } from './union-area.ts';
import { findVisiblePolygon, hasHiddenPart, measureFlatPolygon } from './visible-polygon.ts';

/** A place on the boundary that is nearer to a point than all of the visible boundary around it. */
export interface NearPoint {
  /** 'side': the foot of the perpendicular on a side. 'corner': a re-entrant corner. */
  readonly kind: 'side' | 'corner';
  /** Index of the side; for a corner, of the side that starts there. */
  readonly side: number;
  /** From the point [mm]. */
  readonly distance: number;
  readonly x: number;
  readonly y: number;
  /** Unit vector from the point to the near point. */
  readonly nx: number;
  readonly ny: number;
}

/**
 * Whether the straight way from p to q stays in the concrete. Touching the boundary (at q, or grazing a corner or a side
 * on the way) is allowed; p must lie in the concrete. Corners within 1e-7 mm (TOLERANCE) of the way count as grazed.
 */
export function isInSight(region: Region, px: number, py: number, qx: number, qy: number): boolean {
  const length = Math.hypot(qx - px, qy - py);
  if (length <= TOLERANCE) return true;
  const ux = (qx - px) / length;
  const uy = (qy - py) / length;
  // Corners on the way are taken as left of it, then as right of it: free one time means grazed, never crossed.
  return isWayFree(region, px, py, ux, uy, length, 1) || isWayFree(region, px, py, ux, uy, length, -1);
}

function isWayFree(
  region: Region,
  px: number,
  py: number,
  ux: number,
  uy: number,
  length: number,
  onLine: number,
): boolean {
  const ends = region.ends;
  for (let k = 0; k < ends.length; k += 4) {
    const ax = ends[k]! - px;
    const ay = ends[k + 1]! - py;
    const bx = ends[k + 2]! - px;
    const by = ends[k + 3]! - py;
    const a = ay * ux - ax * uy;
    const b = by * ux - bx * uy;
    const aLeft = (Math.abs(a) <= TOLERANCE ? onLine : a) > 0;
    const bLeft = (Math.abs(b) <= TOLERANCE ? onLine : b) > 0;
    if (aLeft === bLeft) continue;
    const share = Math.min(1, Math.max(0, a / (a - b)));
    const at = ax * ux + ay * uy + share * ((bx - ax) * ux + (by - ay) * uy);
    if (at > 0 && at < length - TOLERANCE) return false;
  }
  return true;
}

/**
 * Where the visible boundary comes nearest to a point: all local minima of distance within reach, nearest first (equal
 * distances in the order of the sides).
 *
 * @param px, py a point in the concrete [mm]
 * @param reach greatest distance that counts [mm]
 */
export function nearPoints(region: Region, px: number, py: number, reach: number): NearPoint[] {
  const found: NearPoint[] = [];
  for (const side of region.sides) {
    const along = (px - side.fromX) * side.ux + (py - side.fromY) * side.uy;
    if (along >= -TOLERANCE && along <= side.length + TOLERANCE) {
      const distance = measureToSide(side, px, py);
      if (distance < 0 || distance > reach) continue;
      const x = px + distance * side.nx;
      const y = py + distance * side.ny;
      if (region.hasReentrantCorner && !isInSight(region, px, py, x, y)) continue;
      found.push({ kind: 'side', side: side.index, distance, x, y, nx: side.nx, ny: side.ny });
    } else if (along < 0 && side.angleAtFrom > Math.PI) {
      const previous = region.sides[side.previous]!;
      const alongPrevious = (px - previous.fromX) * previous.ux + (py - previous.fromY) * previous.uy;
      if (alongPrevious <= previous.length + TOLERANCE) continue;
      const dx = side.fromX - px;
      const dy = side.fromY - py;
      const distance = Math.hypot(dx, dy);
      if (distance > reach || !isInSight(region, px, py, side.fromX, side.fromY)) continue;
      found.push({
        kind: 'corner',
        side: side.index,
        distance,
        x: side.fromX,
        y: side.fromY,
        nx: dx / distance,
        ny: dy / distance,
      });
    }
  }
  return found.sort((a, b) => a.distance - b.distance || a.side - b.side);
}

/**
 * The part of a side that is in sight from p and holds the foot of the perpendicular from p: mm along the side from its
 * start. Null when the foot is off the side or hidden, p is behind the side, or nothing but the foot itself is in sight
 * (a grazed corner on either hand).
 */
export function visibleSpan(
  region: Region,
  sideIndex: number,
  px: number,
  py: number,
): { readonly from: number; readonly to: number } | null {
  const side = region.sides[sideIndex]!;
  const foot = (px - side.fromX) * side.ux + (py - side.fromY) * side.uy;
  if (foot < -TOLERANCE || foot > side.length + TOLERANCE) return null;
  return visibleSpanAround(region, sideIndex, px, py, foot);
}

/**
 * The part of a side that is in sight from p and holds a place on it, or ends there: mm along the side from its start. Null
 * when that place is hidden, p is behind the side, or nothing but the place itself is in sight.
 * @param place along the side from its start [mm]
 */
export function visibleSpanAround(
  region: Region,
  sideIndex: number,
  px: number,
  py: number,
  place: number,
): { readonly from: number; readonly to: number } | null {
  const side = region.sides[sideIndex]!;
  const depth = measureToSide(side, px, py);
  if (depth <= 0) return null;
  if (!region.hasReentrantCorner) return { from: 0, to: side.length };
  const foot = (px - side.fromX) * side.ux + (py - side.fromY) * side.uy;
  const ahead = place - foot;
  let from = -Math.max(0, place);
  let to = Math.max(0, side.length - place);
  for (const other of region.sides) {
    if (other === side) continue;
    // Along the side from the foot (s) and from p toward the side (w).
    const sa = (other.fromX - px) * side.ux + (other.fromY - py) * side.uy;
    const wa = (other.fromX - px) * side.nx + (other.fromY - py) * side.ny;
    const sb = (other.toX - px) * side.ux + (other.toY - py) * side.uy;
    const wb = (other.toX - px) * side.nx + (other.toY - py) * side.ny;
    if (Math.max(wa, wb) <= 0 || Math.min(wa, wb) >= depth - TOLERANCE) continue;
    const p = castOnto(depth, sa, wa, sb, wb) - ahead;
    const q = castOnto(depth, sb, wb, sa, wa) - ahead;
    const low = Math.min(p, q);
    const high = Math.max(p, q);
    if (low < -TOLERANCE && high > TOLERANCE) return null;
    // A side seen end-on at the place casts no shadow of its own; its neighbours say which way it is dark.
    if (low >= -TOLERANCE && high <= TOLERANCE) continue;
    if (low + high > 0) to = Math.min(to, Math.max(0, low));
    else from = Math.max(from, Math.min(0, high));
  }
  if (to - from <= TOLERANCE) return null;
  return { from: Math.max(0, place + from), to: Math.min(side.length, place + to) };
}

/** Where the end a of a segment a-b, held between the point (w = 0) and the side (w = depth), casts its shadow on the side. */
function castOnto(depth: number, sa: number, wa: number, sb: number, wb: number): number {
  if (wa > 0 && wa < depth) return (sa * depth) / wa;
  const w = wa <= 0 ? 0 : depth;
  const s = wa === w ? sa : sa + ((w - wa) / (wb - wa)) * (sb - sa);
  return w > 0 ? s : s > 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
}

function measureToSide(side: Side, px: number, py: number): number {
  return (side.fromX - px) * side.nx + (side.fromY - py) * side.ny;
}

/**
 * Area [mm²] of the union of equal squares, of each square only the part that lies in the concrete and in sight of its
 * own centre. The centres must lie in the concrete.
 *
 * Always goes by way of the visible polygons; `groupArea` gives the same and is quicker where nothing is hidden.
 *
 * @param xs, ys centres of the squares [mm]
 * @param half half a side of the squares [mm]
 * @param ux, uy unit vector along one axis of the squares
 */
export function visibleSquaresArea(
  region: Region,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  half: number,
  ux: number,
  uy: number,
): number {
  const box = { minU: -half, maxU: half, minV: -half, maxV: half };
  const polygons: (readonly number[])[] = [];
  for (let i = 0; i < xs.length; i++) {
    const polygon = findVisiblePolygon(region, xs[i]!, ys[i]!, ux, uy, box);
    if (xs.length === 1) return measureFlatPolygon(polygon);
    const dx = xs[i]! - xs[0]!;
    const dy = ys[i]! - ys[0]!;
    const u = dx * ux + dy * uy;
    const v = dy * ux - dx * uy;
    polygons.push(polygon.map((value, k) => value + (k % 2 === 0 ? u : v)));
  }
  return unionOfPolygonsArea(polygons);
}

/**
 * Area [mm²] of the projected squares of a group of inserts as the codes count it: the union of the squares, of each only
 * what lies in the concrete and in sight of its own insert. Exact. The inserts must lie in the concrete.
 *
 * @param xs, ys the inserts [mm]
 * @param half half a side of the squares [mm]
 * @param ux, uy unit vector along one axis of the squares
 */
export function groupArea(
  region: Region,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  half: number,
  ux: number,
  uy: number,
): number {
  if (region.hasReentrantCorner) {
    const box = { minU: -half, maxU: half, minV: -half, maxV: half };
    for (let i = 0; i < xs.length; i++) {
      if (hasHiddenPart(region, xs[i]!, ys[i]!, ux, uy, box)) {
        return visibleSquaresArea(region, xs, ys, half, ux, uy);
      }
    }
  }
  return squaresArea(region, xs, ys, half, ux, uy);
}
