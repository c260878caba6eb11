import type { Point } from '../engine/geometry/point.ts';

/** A piece of a hatching line. */
export type Segment = readonly [from: Point, to: Point];

/** Pieces shorter than this [mm] are rounding where two sides meet. */
const SHORTEST = 1e-6;

/**
 * Hatching of a polygon with holes (even-odd rule): the pieces of parallel lines that lie inside it. The lines run at 45° from the origin of the
 * coordinates, so that neighbouring areas are hatched as one.
 *
 * @param rings outlines and holes, each not closed [mm]
 * @param spacing distance of the lines, across them [mm]
 * @param direction +1: lines rise with x; -1: they fall
 */
export function hatchArea(
  rings: readonly (readonly Point[])[],
  spacing: number,
  direction: 1 | -1 = 1,
): readonly Segment[] {
  // Across the lines: v = y − d x; two lines are √2 × spacing apart in v.
  const across = ([x, y]: Point) => y - direction * x;
  const step = spacing * Math.SQRT2;
  const all = rings.flat().map(across);
  if (all.length === 0) return [];
  const first = Math.ceil(Math.min(...all) / step);
  const last = Math.floor(Math.max(...all) / step);
  const pieces: Segment[] = [];
  for (let k = first; k <= last; k++) {
    const v = k * step;
    const xs = rings.flatMap((ring) => findCrossings(ring, v, across)).sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const [from, to] = [xs[i]!, xs[i + 1]!];
      if (to - from > SHORTEST) pieces.push([pointAt(from, v, direction), pointAt(to, v, direction)]);
    }
  }
  return pieces;
}

function pointAt(x: number, v: number, direction: 1 | -1): Point {
  return [x, v + direction * x];
}

/** Where a line crosses the sides of a ring: their x. A corner on the line counts for the side that lies above it only. */
function findCrossings(ring: readonly Point[], v: number, across: (point: Point) => number): number[] {
  const crossings: number[] = [];
  for (const [i, to] of ring.entries()) {
    const from = ring[(i + ring.length - 1) % ring.length]!;
    const [a, b] = [across(from) - v, across(to) - v];
    if (a < 0 === b < 0) continue;
    crossings.push(from[0] + (a / (a - b)) * (to[0] - from[0]));
  }
  return crossings;
}
