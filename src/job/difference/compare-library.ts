import type { JobFile } from '../documents/job-file.ts';
import { compareDocuments } from './aspects.ts';
import type { GeneralDifference, LibraryDifference } from './job-difference.ts';

type Named = { readonly id: string };

/** Adds a panel to those that use something. */
function note(uses: Map<string, Set<string>>, id: string | null, panel: string): void {
  if (id !== null) uses.set(id, (uses.get(id) ?? new Set()).add(panel));
}

/** Which panels of a job use each item, way, part and concrete. */
function findUses({ job, library }: JobFile): Readonly<Record<LibraryDifference['kind'], Map<string, Set<string>>>> {
  const items = new Map<string, Set<string>>();
  const ways = new Map<string, Set<string>>();
  const parts = new Map<string, Set<string>>();
  const concretes = new Map<string, Set<string>>();
  for (const { panel, item, holding } of job.castIns) {
    note(items, item, panel);
    note(ways, holding, panel);
  }
  for (const way of library.holding.ways) {
    const needed = [...way.parts.map(({ part }) => part), ...way.chairs];
    for (const panel of ways.get(way.id) ?? []) for (const part of needed) note(parts, part, panel);
  }
  for (const { mark, concrete } of job.panels) note(concretes, concrete, mark);
  return { 'catalogue item': items, 'way of holding': ways, 'holding part': parts, concrete: concretes };
}

/** What panels use and what is another under the same name. What is used under another name is a change of the panel. */
export function compareLibrary(before: JobFile, after: JobFile): LibraryDifference[] {
  const uses = findUses(after);
  const compare = (kind: LibraryDifference['kind'], earlier: readonly Named[], later: readonly Named[]) => {
    const known = new Map(earlier.map((entry) => [entry.id, entry]));
    return later.flatMap((entry): LibraryDifference[] => {
      const old = known.get(entry.id);
      const panels = [...(uses[kind].get(entry.id) ?? [])];
      if (old === undefined || panels.length === 0) return [];
      const changes = compareDocuments(old, entry);
      return changes.length === 0 ? [] : [{ kind, id: entry.id, changes, panels }];
    });
  };
  return [
    ...compare('catalogue item', before.library.catalogue.items, after.library.catalogue.items),
    ...compare('way of holding', before.library.holding.ways, after.library.holding.ways),
    ...compare('holding part', before.library.holding.parts, after.library.holding.parts),
    ...compare('concrete', before.job.concretes, after.job.concretes),
  ];
}

/** Lists by the names of their entries, so that one that is put in between changes no other. */
function byId(list: readonly Named[]): Readonly<Record<string, unknown>> {
  return Object.fromEntries(list.map((entry) => [entry.id, entry]));
}

/** Pours by their names, their pieces by mark and number, so that one that is taken out changes no other. */
function comparePours({ job: { pours: before } }: JobFile, { job: { pours: after } }: JobFile) {
  const named = (pours: JobFile['job']['pours']) =>
    byId(
      pours.map(({ pieces, ...pour }) => ({
        ...pour,
        pieces: Object.fromEntries(pieces.map((piece) => [`${piece.panel} no. ${piece.serial}`, piece])),
      })),
    );
  const changes = compareDocuments(named(before), named(after));
  // Another order alone is a change, too.
  return changes.length > 0 ? changes : compareDocuments(byId(before), byId(after));
}

/** What holds for the whole job and is another. */
export function compareGeneral(before: JobFile, after: JobFile): GeneralDifference[] {
  const yardOf = ({ library: { yard } }: JobFile) => ({ ...yard, beds: byId(yard.beds) });
  const all: readonly GeneralDifference[] = [
    { of: 'rules', changes: compareDocuments(before.library.rules, after.library.rules) },
    { of: 'yard', changes: compareDocuments(yardOf(before), yardOf(after)) },
    { of: 'pours', changes: comparePours(before, after) },
    { of: 'project', changes: compareDocuments(before.job.project, after.job.project) },
  ];
  return all.filter(({ changes }) => changes.length > 0);
}
