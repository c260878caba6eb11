import { measureBounds } from '../../geometry/solid-distance.ts';
import type { ClashItem, ClashPart, ClashRules, ClashScene } from './clash-scene.ts';
import type { Surroundings } from './compare-parts.ts';

/**
 * Everything that may come near some parts when they are moved.
 * @param own the item that they belong to
 * @param way how far they may be moved [mm]
 */
export function gatherSurroundings(
  scene: ClashScene,
  rules: ClashRules,
  own: ClashItem,
  parts: readonly ClashPart[],
  way: number,
): Surroundings {
  const reach = way + Math.max(rules.clearance, own.cover) + 1;
  const isNear = (solid: ClashPart['solid']) => parts.some((part) => measureBounds(part.solid, solid) < reach);
  return {
    bars: scene.bars.filter(({ solid }) => isNear(solid)),
    items: scene.items.filter((item) => item !== own && item.parts.some(({ solid }) => isNear(solid))),
    sides: scene.sides.flatMap((side) => {
      const pieces = side.pieces.filter(isNear);
      return pieces.length > 0 ? [{ ...side, pieces }] : [];
    }),
  };
}

/**
 * Says whether parts that were moved or turned keep off the large faces: by the item's cover, or as far as they did before where that
 * is less.
 */
export function openFaceCheck(
  { thickness }: ClashScene,
  cover: number,
  before: readonly ClashPart[],
): (after: readonly ClashPart[]) => boolean {
  const limits = before.map(({ solid }) => ({
    top: Math.min(cover, solid.minZ),
    bottom: Math.min(cover, thickness - solid.maxZ),
  }));
  return (after) =>
    after.every(({ solid }, i) => {
      const { top, bottom } = limits[i]!;
      return solid.minZ >= top - ROUNDING && thickness - solid.maxZ >= bottom - ROUNDING;
    });
}

/** [mm] */
const ROUNDING = 1e-6;
