import type { JobFile } from '../job/documents/job-file.ts';
import type { Revision } from '../job/documents/pour.ts';
import { editJob } from '../job/edit/edit-job.ts';
import type { JobStore } from '../store/job-store.ts';

const EDITOR = 'demo';
const RECIPIENTS = [
  { name: 'A. Nobody (invented)', firm: 'Yard of the invented firm', how: 'by e-mail' },
  { name: 'B. Nobody (invented)', firm: 'Invented consulting engineers', how: '2 prints A3' },
];

function revisionOf({ job }: JobFile): Revision {
  if (job.revision === null) throw new Error('the demo job has no revision');
  return job.revision;
}

async function issue(store: JobStore, id: string, base: number, file: JobFile, note: string): Promise<void> {
  const answer = await store.issueRevision(id, { base, ...revisionOf(file), note, recipients: RECIPIENTS });
  if (answer.kind !== 'done') throw new Error(`the demo job is not issued: ${answer.kind}`);
}

/**
 * Puts the demo job into a store that has no job, as a job comes about: an earlier state that was issued, an edit, the later state
 * issued too. A store with jobs, removed ones counted, is left as it is.
 */
export async function addDemo(store: JobStore, earlier: JobFile, later: JobFile, now: Date): Promise<void> {
  for (const removed of [false, true]) if ((await store.listJobs({ removed })).length > 0) return;
  const { id } = await store.createJob(earlier);
  await issue(store, id, 0, earlier, 'For approval (invented)');
  const drawn = editJob(
    earlier,
    `Revision ${revisionOf(later).letter} drawn`,
    (draft) => {
      Object.assign(draft.job, later.job);
      Object.assign(draft.library, later.library);
    },
    { id: `demo-${revisionOf(later).letter}`, at: now.toISOString() },
  );
  if (drawn === null) throw new Error('both revisions of the demo job are the same');
  const saved = await store.saveEdits(id, { base: 0, editor: EDITOR, edits: [drawn.edit] });
  if (saved.kind !== 'done') throw new Error(`the demo job is not saved: ${saved.kind}`);
  await issue(store, id, saved.value.version, later, 'Inserts moved, a type changed (invented)');
}
