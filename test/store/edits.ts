import type { JobFile } from '../../src/job/documents/job-file.ts';
import type { Edit } from '../../src/job/edit/edit.ts';
import { editJob, type Recipe } from '../../src/job/edit/edit-job.ts';
import { readJobDocument } from '../../src/job/read-job-document.ts';
import { sampleJob } from '../job/sample-job.ts';

const AT = '2026-11-30T08:00:00.000Z';

/** The sample job as a store takes it. */
export function sampleFile(): JobFile {
  const read = readJobDocument(sampleJob());
  if (!read.ok) throw new Error(`the sample job is wrong: ${read.faults[0]?.text}`);
  return read.file;
}

/** An edit and the file after it; a recipe that changes nothing is a mistake of the test. */
export function change(file: JobFile, id: string, recipe: Recipe): { readonly file: JobFile; readonly edit: Edit } {
  const made = editJob(file, `Edit ${id}`, recipe, { id, at: AT });
  if (made === null) throw new Error(`edit ${id} changes nothing`);
  return made;
}

/** Edits that each give the project another number: `N1`, `N2`, … */
export function numberEdits(file: JobFile, ids: readonly string[]): { readonly file: JobFile; readonly edits: Edit[] } {
  const edits: Edit[] = [];
  let now = file;
  for (const id of ids) {
    const made = change(now, id, ({ job }) => {
      job.project.number = `N${id}`;
    });
    now = made.file;
    edits.push(made.edit);
  }
  return { file: now, edits };
}
