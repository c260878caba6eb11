import type { Region } from './region.ts';
import { TOLERANCE } from './rings.ts';

/** How near the start of a ray a side may pass without stopping it [mm]: the ray may start on a corner. */
const START = 1e-6;

/**
 * Length of a ray from a point of the concrete to the first side that it meets, ends of sides included; sides along the ray do
 * not stop it [mm]. Infinity where it meets none.
 * @param x, y start, within the concrete or on its boundary
 * @param ux, uy unit direction
 */
export function measureRay(region: Region, x: number, y: number, ux: number, uy: number): number {
  const { ends } = region;
  let shortest = Number.POSITIVE_INFINITY;
  for (let k = 0; k < ends.length; k += 4) {
    const ax = ends[k]! - x;
    const ay = ends[k + 1]! - y;
    const bx = ends[k + 2]! - x;
    const by = ends[k + 3]! - y;
    // Offsets of the two ends to the left of the ray.
    const a = ux * ay - uy * ax;
    const b = ux * by - uy * bx;
    if ((a > TOLERANCE && b > TOLERANCE) || (a < -TOLERANCE && b < -TOLERANCE)) continue;
    if (Math.abs(a - b) <= 2 * TOLERANCE) continue;
    const share = Math.min(1, Math.max(0, a / (a - b)));
    const length = (ax + share * (bx - ax)) * ux + (ay + share * (by - ay)) * uy;
    if (length > START && length < shortest) shortest = length;
  }
  return shortest;
}
