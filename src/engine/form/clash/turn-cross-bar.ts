import { turnSolid } from '../../geometry/solid.ts';
import type { ClashPart, ClashRules, ClashScene } from './clash-scene.ts';
import { isClear } from './compare-parts.ts';
import type { Remedy } from './remedy.ts';
import { gatherSurroundings, openFaceCheck } from './try-places.ts';

/** Common practice: a bar is turned by eye against a mark, not finer than this [rad]. */
const STEP = Math.PI / 36;

/** Steps to a right angle; a bar turned by more is one turned less the other way. */
const MOST_STEPS = 18;

/** The smallest turn of an item's cross bar with which it is clear of everything; null where there is none, or no cross bar. */
export function turnCrossBar(scene: ClashScene, rules: ClashRules, item: number): Remedy | null {
  const own = scene.items[item]!;
  const bar = own.parts.find(({ name }) => name === 'cross bar');
  if (bar === undefined || own.turning === null || bar.solid.kind !== 'cylinder') return null;
  const { centre, about } = own.turning;
  const around = gatherSurroundings(scene, rules, own, [bar], bar.solid.length);
  const keepsOffFaces = openFaceCheck(scene, own.cover, [bar]);
  for (let step = 1; step <= MOST_STEPS; step++) {
    for (const sign of [1, -1]) {
      const angle = sign * step * STEP;
      const turned: ClashPart = { name: bar.name, solid: turnSolid(bar.solid, centre, about, angle) };
      if (!keepsOffFaces([turned]) || !isClear([turned], own, around, scene.region, rules)) continue;
      return { kind: 'turn cross bar', item, angle };
    }
  }
  return null;
}
