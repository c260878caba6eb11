import { type Draft, enablePatches, Immer, type Patch as ImmerPatch } from 'immer';
import type { JobFile } from '../documents/job-file.ts';
import type { Edit, Patch } from './edit.ts';
import { shortenPatches } from './list-patches.ts';

enablePatches();

/** Copies are not frozen: a job has thousands of inserts, and its types are read-only already. */
const immer = new Immer({ autoFreeze: false });

/** When an edit was made, and its name for ever; given from outside, so that the same call gives the same edit. */
export interface EditStamp {
  readonly id: string;
  readonly at: string;
}

/** A change to a job file, written as if the file could be changed in place. */
export type Recipe = (draft: Draft<JobFile>) => void;

function toPatch({ op, path, value }: ImmerPatch): Patch {
  return op === 'remove' ? { op, path } : { op, path, value };
}

/** A job file with a change, what is untouched shared with the one before; null where nothing changed. */
export function editJob(
  file: JobFile,
  label: string,
  recipe: Recipe,
  stamp: EditStamp,
): { readonly file: JobFile; readonly edit: Edit } | null {
  const [next, changes, back] = immer.produceWithPatches(file, (draft: Draft<JobFile>) => {
    recipe(draft);
  });
  if (changes.length === 0) return null;
  const short = shortenPatches(file, next, changes.map(toPatch), back.map(toPatch));
  // A list written anew with what it had: nothing changed.
  return short.changes.length === 0 ? null : { file: next, edit: { ...stamp, label, ...short } };
}

/** The file alone, for a change that is only looked at (a drag that is not let go yet). */
export function previewEdit(file: JobFile, recipe: Recipe): JobFile {
  return immer.produce(file, (draft: Draft<JobFile>) => {
    recipe(draft);
  });
}

/**
 * Makes an edit on the file that it was made on, or on a later one that still has what it touches.
 * @throws Error when a path leads nowhere
 */
export function applyEdit(file: JobFile, { changes }: Edit): JobFile {
  return immer.applyPatches(file, changes as ImmerPatch[]);
}

/** The edit that takes another back: the same list read backwards. */
export function turnBack(edit: Edit, label: string, stamp: EditStamp): Edit {
  return { ...stamp, label, changes: edit.back, back: edit.changes };
}
