import type { Vector } from '../../geometry/solid.ts';
import type { ClashRules, ClashScene } from './clash-scene.ts';
import { isClear, shiftPart } from './compare-parts.ts';
import type { Remedy } from './remedy.ts';
import { gatherSurroundings, openFaceCheck } from './try-places.ts';

/**
 * The smallest move of an item along its face, whole mm and within its tolerance along both directions, with which all of it is
 * clear of everything; null where there is none.
 */
export function moveItem(scene: ClashScene, rules: ClashRules, item: number): Remedy | null {
  const own = scene.items[item]!;
  const most = Math.floor(own.tolerance);
  if (most < 1) return null;
  const around = gatherSurroundings(scene, rules, own, own.parts, most * Math.SQRT2);
  const keepsOffFaces = openFaceCheck(scene, own.cover, own.parts);
  const [u, v] = own.directions;
  for (const [a, b] of listMoves(most)) {
    const by: Vector = [a * u[0] + b * v[0], a * u[1] + b * v[1], a * u[2] + b * v[2]];
    const moved = own.parts.map((part) => shiftPart(part, by));
    if (!keepsOffFaces(moved) || !isClear(moved, own, around, scene.region, rules)) continue;
    return { kind: 'move', item, along: [a, b], distance: Math.hypot(a, b) };
  }
  return null;
}

/** Every move of whole mm within a square, the shortest first; of equal ones those along a direction, and the positive. */
function listMoves(most: number): readonly (readonly [number, number])[] {
  const moves: [number, number][] = [];
  for (let a = -most; a <= most; a++) for (let b = -most; b <= most; b++) if (a !== 0 || b !== 0) moves.push([a, b]);
  return moves.sort(
    ([a, b], [c, d]) =>
      a * a + b * b - (c * c + d * d) ||
      Math.min(Math.abs(a), Math.abs(b)) - Math.min(Math.abs(c), Math.abs(d)) ||
      c - a ||
      d - b,
  );
}
