import type { JobFile } from '../../../job/documents/job-file.ts';
import type { Edit } from '../../../job/edit/edit.ts';
import { editJob, type Recipe } from '../../../job/edit/edit-job.ts';
import { readJobDocument } from '../../../job/read-job-document.ts';
import { nextLetter } from '../../../job/revision-letter.ts';

/** An edit that may stand, nothing where nothing would change, or why it may not. */
export type TakenEdit =
  | { readonly kind: 'taken'; readonly file: JobFile; readonly edit: Edit }
  | { readonly kind: 'same' }
  | { readonly kind: 'refused'; readonly text: string };

/** A letter stands for one content: what is changed after it was issued goes on under the next letter, as preliminary. */
function leaveIssued(issued: readonly { readonly letter: string }[], today: string): Recipe {
  return ({ job }) => {
    const letter = job.revision?.letter;
    if (letter === undefined || !issued.some((one) => one.letter === letter)) return;
    job.revision = { letter: nextLetter(issued.map((one) => one.letter)), status: 'preliminary', date: today };
  };
}

/**
 * Makes an edit if the job stays sound by it. A draft is a sound job at all times, so that everything that is computed of it can be: what would
 * break it is told at once, where it was typed.
 */
export function takeEdit(
  file: JobFile,
  label: string,
  recipe: Recipe,
  issued: readonly { readonly letter: string }[],
): TakenEdit {
  const stamp = { id: crypto.randomUUID(), at: new Date().toISOString() };
  const bare = editJob(file, label, recipe, stamp);
  if (bare === null) return { kind: 'same' };
  const made = editJob(
    file,
    label,
    (draft) => {
      recipe(draft);
      leaveIssued(issued, stamp.at.slice(0, 10))(draft);
    },
    stamp,
  );
  const taken = made ?? bare;
  const read = readJobDocument(taken.file);
  if (read.ok) return { kind: 'taken', ...taken };
  return { kind: 'refused', text: read.faults.map(({ text }) => text).join(' · ') };
}
