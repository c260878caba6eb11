import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { PanelSetOut } from '../set-out/set-out.ts';

/** Two types of insert that are easily taken for one another. */
export interface LookAlike {
  readonly ids: readonly [string, string];
  /** What tells them apart. */
  readonly apartBy: 'length' | 'finish';
  /** Panels that hold both; none where only the pour brings them together. */
  readonly panels: readonly string[];
  readonly text: string;
}

/** A type as it is used: by which ways it is held. */
interface Used {
  readonly item: CatalogueItem;
  readonly ways: Set<string>;
  readonly panels: Set<string>;
}

function describe({ id, thread, length_mm, finish }: CatalogueItem): string {
  return `${id} (${thread} x ${length_mm}, ${finish})`;
}

/** What two types have alike beside the thread: foot, body, or the way in which both are held. */
function listAlike(a: Used, b: Used): readonly string[] {
  const hasOneFoot = JSON.stringify(a.item.foot) === JSON.stringify(b.item.foot);
  return [
    ...(hasOneFoot ? ['foot'] : []),
    ...(a.item.bodyDiameter_mm === b.item.bodyDiameter_mm ? ['body'] : []),
    ...([...a.ways].some((way) => b.ways.has(way)) ? ['way of holding'] : []),
  ];
}

function compare(a: Used, b: Used): Omit<LookAlike, 'panels'> | null {
  if (a.item.thread !== b.item.thread) return null;
  const ids = [a.item.id, b.item.id] as const;
  const both = `${describe(a.item)} and ${describe(b.item)}`;
  if (a.item.length_mm !== b.item.length_mm) {
    const alike = listAlike(a, b);
    if (alike.length === 0) return null;
    const lengths = `${a.item.length_mm} mm and ${b.item.length_mm} mm`;
    const text = `${both} look alike, same thread, ${alike.join(', ')}: told apart by length, ${lengths} over all; measure each before it is fixed`;
    return { ids, apartBy: 'length', text };
  }
  if (a.item.finish === b.item.finish) return null;
  const text = `${both} look alike, same thread and length: told apart by finish, ${a.item.finish} and ${b.item.finish}; keep them in bins of their own`;
  return { ids, apartBy: 'finish', text };
}

/**
 * Types of insert of one panel, or of the panels of one pour, that are easily taken for one another: the same thread with another length, where
 * foot, body or way of holding are alike; the same thread and length with another finish.
 */
export function findLookAlikes(setOuts: readonly Pick<PanelSetOut, 'panel' | 'items'>[]): readonly LookAlike[] {
  const used = new Map<string, Used>();
  for (const { panel, items } of setOuts) {
    for (const { item, way } of items) {
      if (item === null) continue;
      const one = used.get(item.id) ?? { item, ways: new Set(), panels: new Set() };
      used.set(item.id, one);
      one.panels.add(panel.mark);
      if (way !== null) one.ways.add(way.id);
    }
  }
  const types = [...used.values()].sort(
    (a, b) => a.item.length_mm - b.item.length_mm || (a.item.id < b.item.id ? -1 : 1),
  );
  return types.flatMap((a, i) =>
    types.slice(i + 1).flatMap((b) => {
      const found = compare(a, b);
      return found === null ? [] : [{ ...found, panels: [...a.panels].filter((mark) => b.panels.has(mark)) }];
    }),
  );
}
