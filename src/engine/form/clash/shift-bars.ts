import { type Cylinder, makeCylinder, type Vector } from '../../geometry/solid.ts';
import { measureBounds, measureWithin } from '../../geometry/solid-distance.ts';
import type { ClashBar, ClashItem, ClashRules, ClashScene, ClashSide } from './clash-scene.ts';
import { findShortOfBar } from './compare-parts.ts';
import type { Remedy } from './remedy.ts';

/**
 * Least free distance between parallel bars [mm], or a bar's diameter where that is more: ACI 318-19 25.2.1 (1 in.), EN 1992-1-1 8.2(2) with
 * aggregate of 20 mm (20 + 5 mm); both recalled.
 */
const BAR_GAP = 25;

/** How much of its cover to a side a shifted bar may lose [mm]: common practice, well within the tolerance of cutting bars to length. */
const COVER_LOSS = 5;

/** [mm] */
const ROUNDING = 1e-6;

/** What a bar has to keep off while it is shifted. */
interface BarSurroundings {
  readonly bar: ClashBar;
  readonly items: readonly ClashItem[];
  /** Other bars and pieces of sides, with the distance to keep [mm]: never more than it was before. */
  readonly obstacles: readonly {
    readonly solid: ClashBar['solid'] | ClashSide['pieces'][number];
    readonly needed: number;
  }[];
}

/**
 * The smallest shift of one loose bar, across its direction in whole mm, that clears all items and keeps its distance from bars and sides;
 * null where it cannot be shifted, or not within half the spacing (common practice: beyond that it takes its neighbour's place).
 */
export function shiftBar(scene: ClashScene, rules: ClashRules, bar: number): Remedy | null {
  const one = scene.bars[bar]!;
  const found = findShift([one], scene, rules);
  return found === null ? null : { kind: 'shift bar', bar, ...found };
}

/** The same for all bars of a layer together: they keep their distances from each other. */
export function shiftLayer(scene: ClashScene, rules: ClashRules, layer: string): Remedy | null {
  const found = findShift(
    scene.bars.filter((bar) => bar.layer === layer),
    scene,
    rules,
  );
  return found === null ? null : { kind: 'shift layer', layer, ...found };
}

function findShift(
  bars: readonly ClashBar[],
  scene: ClashScene,
  rules: ClashRules,
): { readonly shift: number; readonly otherWay: number | null } | null {
  if (bars.some(({ kind }) => kind !== 'bars')) return null;
  const most = Math.floor(bars[0]!.spacing / 2);
  const moving = new Set(bars);
  const all = bars.map((bar) => gatherAround(bar, moving, scene, rules, most));
  const findWay = (sign: 1 | -1): number | null => {
    for (let n = 1; n <= most; n++) {
      // What stands in the way is not passed: beyond it the bar would lie in an opening or among the next bars.
      if (!all.every((one) => keepsOff(one, sign * n))) return null;
      if (all.every((one) => clearsItems(one, sign * n, rules))) return sign * n;
    }
    return null;
  };
  const [up, down] = [findWay(1), findWay(-1)];
  if (up === null) return down === null ? null : { shift: down, otherWay: null };
  if (down === null || up <= -down) return { shift: up, otherWay: down };
  return { shift: down, otherWay: up };
}

function gatherAround(
  bar: ClashBar,
  moving: ReadonlySet<ClashBar>,
  scene: ClashScene,
  rules: ClashRules,
  most: number,
): BarSurroundings {
  const { solid, endCover } = bar;
  const isNear = (other: ClashItem['parts'][number]['solid'], needed: number) =>
    measureBounds(solid, other) < most + needed + 1;
  const keep = (other: ClashBar['solid'] | ClashSide['pieces'][number], needed: number) => {
    if (needed <= 0 || !isNear(other, needed)) return [];
    const now = measureWithin(solid, other, needed);
    return [{ solid: other, needed: Math.min(needed, now) }];
  };
  const gap = Math.max(BAR_GAP, 2 * solid.radius);
  return {
    bar,
    items: scene.items.filter(({ parts }) => parts.some((part) => isNear(part.solid, rules.clearance))),
    obstacles: [
      ...scene.bars.filter((other) => !moving.has(other)).flatMap((other) => keep(other.solid, gap)),
      ...scene.sides.flatMap(({ pieces }) => pieces.flatMap((piece) => keep(piece, endCover - COVER_LOSS))),
    ].filter(({ needed }) => needed > 0),
  };
}

function keepsOff({ bar, obstacles }: BarSurroundings, shift: number): boolean {
  const moved = shiftAcross(bar, shift);
  return obstacles.every(
    ({ solid, needed }) => measureWithin(moved, solid, needed - ROUNDING) === Number.POSITIVE_INFINITY,
  );
}

function clearsItems({ bar, items }: BarSurroundings, shift: number, rules: ClashRules): boolean {
  const moved = shiftAcross(bar, shift);
  return items.every(({ parts }) => parts.every((part) => findShortOfBar(part, moved, rules) === null));
}

/** A bar's solid after a shift across its direction [mm]. */
export function shiftAcross({ solid, across }: ClashBar, shift: number): Cylinder {
  const move = ([x, y, z]: Vector): Vector => [x + shift * across[0], y + shift * across[1], z + shift * across[2]];
  return makeCylinder(move(solid.from), move(solid.to), solid.radius);
}
