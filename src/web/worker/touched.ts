import { findValueChanges } from '../../job/difference/value-changes.ts';
import type { JobFile } from '../../job/documents/job-file.ts';

/** Marks of the panels whose connections must be computed anew; null: all. */
export type Touched = ReadonlySet<string> | null;

type Entry = { readonly key: string };

/** The same entry, or one that says the same: a patch carries whole entries that only moved in their list. */
function isSame(a: unknown, b: unknown): boolean {
  return a === b || findValueChanges(a, b, { within: 0 }).length === 0;
}

/** Entries of a list that are new, gone or other than they were. */
function* findOther<T extends Entry>(before: readonly T[], after: readonly T[]): Generator<T> {
  if (before === after) return;
  const old = new Map(before.map((entry) => [entry.key, entry]));
  for (const entry of after) {
    const was = old.get(entry.key);
    old.delete(entry.key);
    if (was !== undefined && isSame(was, entry)) continue;
    if (was !== undefined) yield was;
    yield entry;
  }
  yield* old.values();
}

/**
 * Which panels' answers may differ between two states of a job. What is on one panel decides about that panel alone; the library and the concretes
 * decide about all.
 */
export function findTouched(before: JobFile, after: JobFile): Touched {
  if (!isSame(before.library, after.library) || !isSame(before.job.concretes, after.job.concretes)) return null;
  const touched = new Set<string>();
  for (const { mark } of findOther(before.job.panels, after.job.panels)) touched.add(mark);
  for (const { panel } of findOther(before.job.castIns, after.job.castIns)) touched.add(panel);
  for (const { panel } of findOther(before.job.connections, after.job.connections)) touched.add(panel);
  return touched;
}
