import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { Panel } from '../../../job/documents/panel.ts';
import { rankTapeSides } from './tape-edges.ts';
import type { TapeEntry } from './tape-entries.ts';

/** One number that a tape shall give. */
export type TapeAsk =
  | { readonly kind: 'side'; readonly item: string; readonly slot: 0 | 1; readonly edge: number }
  | { readonly kind: 'between'; readonly item: string; readonly other: string }
  | { readonly kind: 'depth'; readonly item: string };

type Taped = Pick<SetOutItem, 'castIn'>;

/** More inserts than this are not all taped to each other: each to the first two is enough to fix the shape. */
const ALL_PAIRS = 4;

function askSides(panel: Panel, { castIn }: Taped): readonly TapeAsk[] {
  return rankTapeSides(panel, [castIn.x_mm, castIn.y_mm])
    .slice(0, 2)
    .map((edge, k) => ({ kind: 'side', item: castIn.key, slot: k === 0 ? 0 : 1, edge }));
}

/** Every insert by itself: two sides that cross, and how deep it sits. */
export function askEach(panel: Panel, items: readonly Taped[]): readonly TapeAsk[] {
  return items.flatMap((item) => [...askSides(panel, item), { kind: 'depth', item: item.castIn.key } as const]);
}

/**
 * One connection from a scaffold. Two inserts: each from two sides, four numbers; the distance between them checks them. More: from each other, which
 * is what a plate needs, the first from two sides and the one farthest from it from one.
 */
export function askConnection(panel: Panel, items: readonly Taped[]): readonly TapeAsk[] {
  const [first, second] = items;
  if (first === undefined) return [];
  if (second === undefined) return askSides(panel, first);
  const between = ({ castIn: { key: item } }: Taped, { castIn: { key: other } }: Taped) =>
    ({ kind: 'between', item, other }) as const;
  if (items.length === 2) return [...askSides(panel, first), ...askSides(panel, second), between(first, second)];
  const pairs = items.flatMap((a, i) =>
    items.slice(i + 1).flatMap((b) => (items.length <= ALL_PAIRS || i < 2 ? [between(a, b)] : [])),
  );
  const away = ({ castIn }: Taped) => Math.hypot(castIn.x_mm - first.castIn.x_mm, castIn.y_mm - first.castIn.y_mm);
  const farthest = items.reduce((best, one) => (away(one) > away(best) ? one : best));
  return [...pairs, ...askSides(panel, first), ...askSides(panel, farthest).slice(0, 1)];
}

/** Whether an entry is the answer to what was asked; a side may have been changed for another. */
function answers(entry: TapeEntry, ask: TapeAsk): boolean {
  if (entry.item !== ask.item || entry.kind !== ask.kind) return false;
  if (entry.kind === 'side' && ask.kind === 'side') return entry.slot === ask.slot;
  return entry.kind !== 'between' || ask.kind !== 'between' || entry.other === ask.other;
}

/** What is still to be taped, in order; of one insert, or of all. */
export function listOpen(
  asks: readonly TapeAsk[],
  entries: readonly TapeEntry[],
  item: string | null = null,
): readonly TapeAsk[] {
  return asks.filter((ask) => (item === null || ask.item === item) && !entries.some((entry) => answers(entry, ask)));
}
