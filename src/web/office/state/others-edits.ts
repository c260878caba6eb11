import type { JobFile } from '../../../job/documents/job-file.ts';
import { applyEdit } from '../../../job/edit/edit-job.ts';
import type { StoredEdit } from '../../../wire/edits.ts';
import type { OpenJob } from '../../../wire/jobs.ts';
import { tell } from './messages.ts';

/** The job after edits of others; null where one does not fit: the page then has another state than it should. */
export function takeEdits(id: string, file: JobFile, edits: readonly StoredEdit[]): OpenJob | null {
  const last = edits.at(-1);
  if (last === undefined) return null;
  try {
    const after = edits.reduce((sofar, { edit }) => applyEdit(sofar, edit), file);
    return { id, version: last.version, savedAt: last.savedAt, file: after };
  } catch {
    return null;
  }
}

export function tellOfOthers(edits: readonly StoredEdit[]): void {
  const count = edits.length === 1 ? '1 edit' : `${edits.length} edits`;
  const labels = edits.slice(-3).map(({ edit }) => edit.label);
  tell('note', `${count} made elsewhere: ${labels.join('; ')}`);
}
