import type { Region } from '../engine/geometry/region.ts';
import type { Panel } from './documents/panel.ts';
import { panelSide } from './face-frame.ts';

/** A side met sooner than this behind the edge [mm] is the edge itself. */
const OFF_THE_EDGE = 1e-6;

/**
 * How much concrete lies behind a point of an edge, straight inward to the next side or opening [mm].
 *
 * @param along distance from the edge's first corner [mm]
 */
export function widthBehindEdge(panel: Panel, region: Region, edge: number, along: number): number {
  const side = panelSide(panel, edge);
  const x = side.from[0] + side.along[0] * along;
  const y = side.from[1] + side.along[1] * along;
  const [dx, dy] = side.inward;
  let width = Number.POSITIVE_INFINITY;
  for (const other of region.sides) {
    const facing = dx * other.uy - dy * other.ux;
    if (Math.abs(facing) < 1e-12) continue;
    const relX = other.fromX - x;
    const relY = other.fromY - y;
    const depth = (relX * other.uy - relY * other.ux) / facing;
    const place = (relX * dy - relY * dx) / facing;
    if (depth > OFF_THE_EDGE && place >= 0 && place <= other.length) width = Math.min(width, depth);
  }
  return width;
}
