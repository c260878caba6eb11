import type { Assembly } from '../set-out/assembly-type.ts';
import { findCrossBar } from '../set-out/find-cross-bar.ts';
import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';
import { addLines } from './add-lines.ts';
import { boardKind } from './board-kind.ts';
import type { OpenPoint } from './open-point.ts';
import { crossBarKind, holdingKind, insertKind, otherKind, type PartLine } from './part-kind.ts';

/** Parts of one casting of a panel, and what must be decided before they are complete. */
export interface PanelParts {
  readonly mark: string;
  readonly lines: readonly PartLine[];
  readonly open: readonly OpenPoint[];
}

/** The cross bar of an insert, whether or not it is decided how it is held. */
function countCrossBar(panel: string, { castIn, item, assembly }: SetOutItem): Omit<PanelParts, 'mark'> {
  if (item === null) return { lines: [], open: [] };
  const { bar, findings } = findCrossBar({ castIn, item });
  const lines = bar === null ? [] : [{ kind: crossBarKind(bar.diameter, bar.length), count: 1 }];
  // Of an insert with an assembly the set-out tells it.
  if (assembly !== null) return { lines, open: [] };
  return {
    lines,
    open: findings.map(({ text }) => ({ kind: 'cross bar', panel, text: `insert ${castIn.id}: ${text}` })),
  };
}

/** What one insert of an assembly takes for itself: plate, nails, cap, chair. */
function countOwnParts({ parts }: Assembly): readonly PartLine[] {
  return parts.filter(({ per }) => per === 'insert').map(({ part, count }) => ({ kind: holdingKind(part), count }));
}

/** What a group shares, a template board for one: once for each connection and way of holding, however many letters it has. */
function countGroupParts(items: readonly SetOutItem[], assemblies: ReadonlyMap<string, Assembly>): readonly PartLine[] {
  const groups = new Map<string, { readonly assembly: Assembly; readonly items: SetOutItem[] }>();
  for (const item of items) {
    const { assembly: letter, connection, castIn } = item;
    const assembly = letter === null ? undefined : assemblies.get(letter);
    if (assembly === undefined) continue;
    // An insert without a connection is a group of its own.
    const group = JSON.stringify([connection, connection === null ? castIn.id : null, assembly.way.id]);
    const known = groups.get(group) ?? { assembly, items: [] };
    groups.set(group, known);
    known.items.push(item);
  }
  return [...groups.values()].flatMap(({ assembly: { parts }, items: held }) =>
    parts
      .filter(({ per }) => per === 'group')
      .map(({ part, count }) => ({
        kind: part.kind === 'template board' ? boardKind(part, held) : holdingKind(part),
        count,
      })),
  );
}

function listUndecided(panel: string, items: readonly SetOutItem[]): readonly OpenPoint[] {
  const undecided = items.filter(({ item, assembly }) => item !== null && assembly === null);
  if (undecided.length === 0) return [];
  const { compare } = new Intl.Collator('en', { numeric: true });
  const names = undecided
    .map(({ castIn }) => castIn.id)
    .sort(compare)
    .join(', ');
  const text = `holding not decided of insert ${names}: counted without what holds them; choose a way of holding for each`;
  return [{ kind: 'holding', panel, text }];
}

/**
 * Counts the parts of one casting of a panel: each cast-in item, and what holds it. Bolts for the site are counted by connection
 * (`findSiteKit`), not here. What has no way of holding is counted and told, never dropped.
 */
export function takeOffPanel({
  panel,
  items,
  assemblies,
}: Pick<PanelSetOut, 'panel' | 'items' | 'assemblies'>): PanelParts {
  const byLetter = new Map(assemblies.map((assembly) => [assembly.letter, assembly]));
  const bars = items.map((item) => countCrossBar(panel.mark, item));
  const lines = [
    ...items.map(({ castIn, item }) => ({ kind: item === null ? otherKind(castIn) : insertKind(item), count: 1 })),
    ...bars.flatMap((bar) => bar.lines),
    ...items.flatMap(({ assembly }) => (assembly === null ? [] : countOwnParts(byLetter.get(assembly)!))),
    ...countGroupParts(items, byLetter),
  ];
  return {
    mark: panel.mark,
    lines: addLines([{ lines, times: 1 }]),
    open: [...listUndecided(panel.mark, items), ...bars.flatMap(({ open }) => open)],
  };
}
