import { wholeMillimetres } from '../../engine/form/whole-millimetres.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { HoldingPart } from '../../job/documents/holding-parts.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import { holdingKind, type PartKind } from './part-kind.ts';

/** Holes of a board as it lies, seen from above, from their least x and y: whole mm, in rising order. */
function findHoles(items: readonly Pick<SetOutItem, 'plan'>[]): readonly Point[] {
  const x = Math.min(...items.map(({ plan }) => plan[0]));
  const y = Math.min(...items.map(({ plan }) => plan[1]));
  return items
    .map(({ plan }): Point => [wholeMillimetres(plan[0] - x), wholeMillimetres(plan[1] - y)])
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

/** Whether length and width say where the holes are: one, two along a side, or four corners. */
function isPlain(holes: readonly Point[], width: number, height: number): boolean {
  if (holes.length <= 2) return width === 0 || height === 0;
  return (
    holes.length === 4 &&
    holes.every(([x, y]) => (x === 0 || x === width) && (y === 0 || y === height)) &&
    width * height > 0
  );
}

/**
 * A template board drilled for a group. Boards are one kind, and serve one after another, only where threads and holes are the same as they lie: one
 * for the handed partner is another, unless its pattern is its own mirror image.
 */
export function boardKind(part: HoldingPart, items: readonly Pick<SetOutItem, 'plan' | 'item'>[]): PartKind {
  const holes = findHoles(items);
  const width = Math.max(...holes.map(([x]) => x));
  const height = Math.max(...holes.map(([, y]) => y));
  const threads = [...new Set(items.flatMap(({ item }) => item?.thread ?? []))].sort().join('+');
  const places = isPlain(holes, width, height) ? '' : ` at ${holes.map(([x, y]) => `${x}/${y}`).join(' ')}`;
  const pattern = `${holes.length}x${threads} ${width}x${height}${places}`;
  return { ...holdingKind(part), id: `${part.id} ${pattern}`, words: `${part.name}: ${pattern}` };
}
