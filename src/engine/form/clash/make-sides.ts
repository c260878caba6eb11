import type { Region, Side } from '../../geometry/region.ts';
import { makeBlock, type Vector } from '../../geometry/solid.ts';
import type { ClashSide } from './clash-scene.ts';

/** Longest piece of a side [mm]: rounding of a distance grows with the size of what is measured. */
const LONGEST_PIECE = 400;

/**
 * The sides of a panel and its openings as flat pieces over the thickness.
 *
 * A battered side leans: from the outside face inward it recedes into the panel by the tangent of its batter. Where two sides meet, the corner
 * runs along both planes, so that sides stay closed at every depth.
 *
 * @param thickness [mm]
 * @param batterOf batter of a side (by `Side.index`) [rad]; positive: the panel is smaller at its inside face
 */
export function makeSides(region: Region, thickness: number, batterOf: (side: number) => number): readonly ClashSide[] {
  return region.sides.map((side) => {
    const first = findLean(region.sides[side.previous]!, side, batterOf);
    const last = findLean(side, region.sides[side.next]!, batterOf);
    const count = Math.max(1, Math.ceil(side.length / LONGEST_PIECE));
    const at = (share: number, z: number): Vector => [
      side.fromX + share * (side.toX - side.fromX) + z * (first[0] + share * (last[0] - first[0])),
      side.fromY + share * (side.toY - side.fromY) + z * (first[1] + share * (last[1] - first[1])),
      z,
    ];
    const pieces = Array.from({ length: count }, (_, i) => {
      const [from, to] = [i / count, (i + 1) / count];
      return makeBlock([at(from, 0), at(to, 0), at(to, thickness), at(from, thickness)]);
    });
    return { index: side.index, ring: side.ring, pieces };
  });
}

/**
 * How a corner moves with each millimetre of depth: the vector m with m·n = −tan β for the outward normals n of both sides.
 */
function findLean(before: Side, after: Side, batterOf: (side: number) => number): readonly [number, number] {
  const a = -Math.tan(batterOf(before.index));
  const b = -Math.tan(batterOf(after.index));
  if (a === 0 && b === 0) return [0, 0];
  const turn = before.nx * after.ny - before.ny * after.nx;
  return [(a * after.ny - b * before.ny) / turn, (b * before.nx - a * after.nx) / turn];
}
