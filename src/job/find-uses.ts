import type { JobFile } from './documents/job-file.ts';

/** Where an insert of the catalogue is used. */
export interface ItemUse {
  readonly count: number;
  /** How many of it in which panel, in the order of the job. */
  readonly panels: readonly { readonly mark: string; readonly count: number }[];
  /** Standard details that name it. */
  readonly details: readonly string[];
}

/** How often each insert of the catalogue is used in a job, and where. */
export function findItemUses({ job, library }: JobFile): ReadonlyMap<string, ItemUse> {
  const counts = new Map<string, Map<string, number>>();
  for (const { item, panel } of job.castIns) {
    if (item === null) continue;
    const panels = counts.get(item) ?? new Map<string, number>();
    counts.set(item, panels.set(panel, (panels.get(panel) ?? 0) + 1));
  }
  return new Map(
    library.catalogue.items.map(({ id }) => {
      const panels = [...(counts.get(id) ?? [])].map(([mark, count]) => ({ mark, count }));
      const details = library.details.details.flatMap((detail) => (detail.item === id ? [detail.id] : []));
      return [id, { count: panels.reduce((sum, one) => sum + one.count, 0), panels, details }];
    }),
  );
}

/** Marks of the panels that are made of each mix. */
export function findConcreteUses({ job }: JobFile): ReadonlyMap<string, readonly string[]> {
  return new Map(
    job.concretes.map(({ id }) => [id, job.panels.filter((panel) => panel.concrete === id).map(({ mark }) => mark)]),
  );
}
