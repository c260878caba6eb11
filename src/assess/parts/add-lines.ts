import { type PartKind, type PartLine, partGroups } from './part-kind.ts';

/** A name that is one for equal kinds. */
export function nameKind({ group, id }: PartKind): string {
  return `${group}/${id}`;
}

/** What has no size stands behind what has one: a washer behind its bolts. */
function compareSizes(a: number | null, b: number | null): number {
  if (a === b) return 0;
  return a === null || (b !== null && a > b) ? 1 : -1;
}

/** By group, then by thread and size as a person sorts boxes, then by id. */
function compareKinds(a: PartKind, b: PartKind): number {
  const order = new Intl.Collator('en', { numeric: true });
  return (
    partGroups.indexOf(a.group) - partGroups.indexOf(b.group) ||
    order.compare(a.thread ?? '', b.thread ?? '') ||
    compareSizes(a.size, b.size) ||
    order.compare(a.id, b.id)
  );
}

/** Adds lists up, each taken so many times: one line a kind, in the order of the lists. Kinds of which there is none are left out. */
export function addLines(
  lists: readonly { readonly lines: readonly PartLine[]; readonly times: number }[],
): readonly PartLine[] {
  const sums = new Map<string, { kind: PartKind; count: number }>();
  for (const { lines, times } of lists) {
    for (const { kind, count } of lines) {
      const sum = sums.get(nameKind(kind));
      if (sum === undefined) sums.set(nameKind(kind), { kind, count: count * times });
      else sum.count += count * times;
    }
  }
  return [...sums.values()].filter(({ count }) => count > 0).sort((a, b) => compareKinds(a.kind, b.kind));
}
