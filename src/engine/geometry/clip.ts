import { GeometryError } from './geometry-error.ts';
import type { Polygon } from './point.ts';
import type { Region } from './region.ts';
import { showPoint, TOLERANCE } from './rings.ts';
import { findVisiblePolygon, measureFlatPolygon } from './visible-polygon.ts';

/**
 * Area [mm²] of the part of a convex polygon that lies in the concrete and in sight of p.
 *
 * The visible polygon of p, wide enough for the convex one (or the outline itself, where no corner of the concrete can
 * hide anything), is cut along each side of the convex polygon in turn.
 *
 * @param px, py a point in the concrete [mm], within the convex polygon or not
 * @param convex corners of a convex polygon [mm], either way round
 * @throws GeometryError when `convex` has fewer than 3 corners or is not convex
 */
export function visibleAreaWithin(region: Region, px: number, py: number, convex: Polygon): number {
  const sense = readSense(convex);
  let visible: readonly number[];
  if (region.outline !== null && !region.hasReentrantCorner) {
    visible = region.outline.flatMap(([x, y]) => [x - px, y - py]);
  } else {
    const xs = convex.map(([x]) => x - px);
    const ys = convex.map(([, y]) => y - py);
    const margin = Math.max(...xs, ...ys, -Math.min(...xs, ...ys));
    const box = {
      minU: Math.min(-margin, ...xs),
      maxU: Math.max(margin, ...xs),
      minV: Math.min(-margin, ...ys),
      maxV: Math.max(margin, ...ys),
    };
    visible = findVisiblePolygon(region, px, py, 1, 0, box);
  }
  for (let i = 0; i < convex.length; i++) {
    const [ax, ay] = convex[i]!;
    const [bx, by] = convex[(i + 1) % convex.length]!;
    // A corner given twice has no direction to cut along.
    if (Math.hypot(bx - ax, by - ay) <= TOLERANCE) continue;
    visible = keepLeft(visible, ax - px, ay - py, sense * (bx - ax), sense * (by - ay));
  }
  return measureFlatPolygon(visible);
}

/** The part of a polygon on the left of the line through (x, y) along (dx, dy); parts of it may be joined by lines of no width. */
function keepLeft(polygon: readonly number[], x: number, y: number, dx: number, dy: number): readonly number[] {
  const kept: number[] = [];
  const n = polygon.length;
  for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
    const au = polygon[j]!;
    const av = polygon[j + 1]!;
    const bu = polygon[i]!;
    const bv = polygon[i + 1]!;
    const a = dx * (av - y) - dy * (au - x);
    const b = dx * (bv - y) - dy * (bu - x);
    if (a > 0 !== b > 0) {
      const t = a / (a - b);
      kept.push(au + t * (bu - au), av + t * (bv - av));
    }
    if (b > 0) kept.push(bu, bv);
  }
  return kept;
}

/** +1 for counter-clockwise, −1 for clockwise. */
function readSense(convex: Polygon): number {
  if (convex.length < 3) {
    throw new GeometryError(`the convex polygon has ${convex.length} corners; expected at least 3`, 'shape', null);
  }
  let sense = 0;
  for (let i = 0; i < convex.length; i++) {
    const [ax, ay] = convex[i]!;
    const [bx, by] = convex[(i + 1) % convex.length]!;
    const [cx, cy] = convex[(i + 2) % convex.length]!;
    const length = Math.hypot(cx - ax, cy - ay);
    const turn = (bx - ax) * (cy - by) - (by - ay) * (cx - bx);
    if (Math.abs(turn) <= TOLERANCE * length) continue;
    if (turn > 0 ? sense < 0 : sense > 0) {
      throw new GeometryError(
        `the polygon turns both ways at corner ${((i + 1) % convex.length) + 1} ${showPoint([bx, by])}; expected a convex one`,
        'shape',
        (i + 1) % convex.length,
      );
    }
    sense = Math.sign(turn);
  }
  if (sense === 0)
    throw new GeometryError('the convex polygon encloses no area; expected an area above zero', 'shape', null);
  return sense;
}
