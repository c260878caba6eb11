import type { Bounds } from '../../geometry/solid.ts';
import type { Clash, ClashItem, ClashRules, ClashScene, ClashSide } from './clash-scene.ts';
import { compareItems, compareWithBar, compareWithSides } from './compare-parts.ts';
import { makeItemGrid, walkBox, walkLine } from './item-grid.ts';

/**
 * Everything in a panel that is nearer to an insert or another cast-in item than it may be: bars, other items, edges, openings.
 *
 * Items are sorted into cells of the face; bars and sides look only at the items of the cells that they pass. The result is that
 * of comparing all with all.
 *
 * @returns by item, then bars, other items and sides in the order of the scene; two items are compared once, under the first of them
 */
export function findClashes(scene: ClashScene, rules: ClashRules): readonly Clash[] {
  const { items, bars, sides } = scene;
  if (items.length === 0) return [];
  const boxes = items.map(boundItem);
  const thickest = bars.reduce((most, { solid }) => Math.max(most, solid.radius), 0);
  const reach = thickest + items.reduce((most, { cover }) => Math.max(most, cover), rules.clearance);
  const grid = makeItemGrid(boxes, reach);
  const { starts, entries } = grid;
  const found: Clash[] = [];
  // Which bar, item or side an item was last compared with: it may lie in several of the cells passed.
  const last = new Int32Array(items.length).fill(-1);
  const openVisit = (number: number, compare: (item: number) => void) => (cell: number) => {
    for (let k = starts[cell]!; k < starts[cell + 1]!; k++) {
      const item = entries[k]!;
      if (last[item] === number) continue;
      last[item] = number;
      compare(item);
    }
  };

  bars.forEach(({ solid }, bar) => {
    const { from, to, minZ, maxZ } = solid;
    const visit = openVisit(bar, (item) => {
      const box = boxes[item]!;
      if (minZ - reach > box.maxZ || maxZ + reach < box.minZ) return;
      found.push(...compareWithBar(scene, rules, item, bar));
    });
    walkLine(grid, from[0], from[1], to[0], to[1], visit);
  });

  last.fill(-1);
  boxes.forEach((box, first) => {
    const visit = openVisit(first, (second) => {
      if (second > first) found.push(...compareItems(scene, rules, first, second));
    });
    walkBox(grid, box, visit);
  });

  const near: ClashSide[][] = items.map(() => []);
  last.fill(-1);
  sides.forEach((side, number) => {
    const visit = openVisit(number, (item) => {
      near[item]!.push(side);
    });
    for (const piece of side.pieces) walkBox(grid, piece, visit);
  });
  near.forEach((few, item) => {
    found.push(...compareWithSides(scene, item, few));
  });
  return found.sort(compareClashes);
}

const KINDS = ['bar', 'item', 'side'] as const;

/** The order of the result. */
export function compareClashes(a: Clash, b: Clash): number {
  const place = ({ other }: Clash) =>
    other.kind === 'bar' ? other.bar : other.kind === 'item' ? other.item : other.side;
  const part = ({ other }: Clash) => (other.kind === 'item' ? other.part : 0);
  return (
    a.item - b.item ||
    KINDS.indexOf(a.other.kind) - KINDS.indexOf(b.other.kind) ||
    place(a) - place(b) ||
    a.part - b.part ||
    part(a) - part(b)
  );
}

/** The box around all parts of an item. */
function boundItem({ parts }: ClashItem): Bounds {
  const solids = parts.map(({ solid }) => solid);
  return {
    minX: Math.min(...solids.map(({ minX }) => minX)),
    minY: Math.min(...solids.map(({ minY }) => minY)),
    minZ: Math.min(...solids.map(({ minZ }) => minZ)),
    maxX: Math.max(...solids.map(({ maxX }) => maxX)),
    maxY: Math.max(...solids.map(({ maxY }) => maxY)),
    maxZ: Math.max(...solids.map(({ maxZ }) => maxZ)),
  };
}
