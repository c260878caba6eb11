import type { JobFile } from '../../../job/documents/job-file.ts';
import { checkEdit } from '../../../job/edit/check-edit.ts';
import type { Edit } from '../../../job/edit/edit.ts';
import { editJob, type Recipe } from '../../../job/edit/edit-job.ts';
import { FollowError, withFollowing } from '../../../job/edit/follow.ts';
import { ReplacementError } from '../../../job/edit/replace-values.ts';
import { nextLetter } from '../../../job/revision-letter.ts';
import { tellRefusal } from '../../../say/refusal-words.ts';
import { drawUuid } from '../../parts/draw-uuid.ts';

/** An edit that may stand, nothing where nothing would change, or why it may not. */
export type TakenEdit =
  | { readonly kind: 'taken'; readonly file: JobFile; readonly edit: Edit }
  | { readonly kind: 'same' }
  | { readonly kind: 'refused'; readonly text: string };

/**
 * A letter stands for one content: what is changed after it was issued goes on under the next letter, as preliminary.
 * Null: the letter of the file was not issued.
 */
function leaveIssued(
  { job: { revision } }: JobFile,
  issued: readonly { readonly letter: string }[],
  today: string,
): Recipe | null {
  const letters = issued.map(({ letter }) => letter);
  if (revision === null || !letters.includes(revision.letter)) return null;
  return ({ job }) => {
    job.revision = { letter: nextLetter(letters), status: 'preliminary', date: today };
  };
}

/** Two edits, one made on the other, as one: the way back is walked from its end. */
function joinEdits(first: Edit, second: Edit): Edit {
  return { ...first, changes: [...first.changes, ...second.changes], back: [...second.back, ...first.back] };
}

/**
 * Makes an edit, with what must follow it, if the job stays sound by it. A draft is a sound job at all times, so that everything that is computed of
 * it can be: what would break it is told at once, where it was typed.
 */
export function takeEdit(
  file: JobFile,
  label: string,
  recipe: Recipe,
  issued: readonly { readonly letter: string }[],
): TakenEdit {
  const stamp = { id: drawUuid(), at: new Date().toISOString() };
  try {
    const made = editJob(file, label, withFollowing(recipe), stamp);
    if (made === null) return { kind: 'same' };
    const faults = checkEdit(file, made.file);
    if (faults.length > 0) return { kind: 'refused', text: tellRefusal(faults.map(({ text }) => text)) };
    const leave = leaveIssued(made.file, issued, stamp.at.slice(0, 10));
    if (leave === null) return { kind: 'taken', ...made };
    const left = editJob(made.file, label, leave, stamp);
    return { kind: 'taken', ...(left === null ? made : { file: left.file, edit: joinEdits(made.edit, left.edit) }) };
  } catch (error) {
    if (error instanceof FollowError || error instanceof ReplacementError)
      return { kind: 'refused', text: error.message };
    throw error;
  }
}
