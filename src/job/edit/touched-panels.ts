import type { JobFile } from '../documents/job-file.ts';

/** What differs between a job file and the same after an edit: entries that are the same object did not change. */
export type Touched =
  /** The library, mixes, pours, names of panels: anything may follow from it. */
  { readonly kind: 'whole' } | { readonly kind: 'panels'; readonly marks: ReadonlySet<string> };

/** Entries of either list that the other has not. */
function findOdd<T>(before: readonly T[], after: readonly T[]): readonly T[] {
  if (before === after) return [];
  const old = new Set(before);
  const now = new Set(after);
  return [...after.filter((entry) => !old.has(entry)), ...before.filter((entry) => !now.has(entry))];
}

/** Finds the panels that an edit touched; linear in the size of the job, and nothing is compared in depth. */
export function findTouched(before: JobFile, after: JobFile): Touched {
  if (before === after) return { kind: 'panels', marks: new Set() };
  const { panels, castIns, connections, ...rest } = after.job;
  const old = before.job;
  const isRestSame = (Object.keys(rest) as (keyof typeof rest)[]).every((key) => rest[key] === old[key]);
  const hasSameMarks =
    panels === old.panels ||
    (panels.length === old.panels.length && panels.every(({ mark }, i) => mark === old.panels[i]!.mark));
  if (before.library !== after.library || !isRestSame || !hasSameMarks) return { kind: 'whole' };
  const known = new Set(panels.map(({ mark }) => mark));
  const marks = new Set([
    ...findOdd(old.panels, panels).map(({ mark }) => mark),
    ...findOdd(old.castIns, castIns).map(({ panel }) => panel),
    ...findOdd(old.connections, connections).map(({ panel }) => panel),
  ]);
  for (const mark of marks) if (!known.has(mark)) return { kind: 'whole' };
  return { kind: 'panels', marks };
}
