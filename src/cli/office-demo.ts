import type { JobFile } from '../job/documents/job-file.ts';
import type { Revision } from '../job/documents/pour.ts';
import { editJob } from '../job/edit/edit-job.ts';
import type { Person } from '../records/person.ts';
import type { Store } from '../store/store.ts';

const EDITOR = 'demo';
const RECIPIENTS = [
  { name: 'A. Nobody (invented)', firm: 'Yard of the invented firm', how: 'by e-mail' },
  { name: 'B. Nobody (invented)', firm: 'Invented consulting engineers', how: '2 prints A3' },
];

/** Who places, checks and decides in the demo. */
const PEOPLE: readonly Person[] = [
  { id: 'demosetter01', name: 'C. Nobody (invented setter)', roles: ['setter'], registration: null },
  { id: 'demochecker1', name: 'D. Nobody (invented checker)', roles: ['checker'], registration: null },
  { id: 'demoforeman1', name: 'E. Nobody (invented foreman)', roles: ['foreman', 'checker'], registration: null },
  { id: 'demoquality1', name: 'F. Nobody (invented QA)', roles: ['qa'], registration: null },
  {
    id: 'demoengineer',
    name: 'G. Nobody (invented design engineer)',
    roles: ['design engineer'],
    registration: 'invented no. 1',
  },
  { id: 'demoinstall1', name: 'K. Nobody (invented installer)', roles: ['installer'], registration: null },
];

function revisionOf({ job }: JobFile): Revision {
  if (job.revision === null) throw new Error('the demo job has no revision');
  return job.revision;
}

async function issue(store: Store, id: string, base: number, file: JobFile, note: string): Promise<void> {
  const answer = await store.issueRevision(id, { base, ...revisionOf(file), note, recipients: RECIPIENTS });
  if (answer.kind !== 'done') throw new Error(`the demo job is not issued: ${answer.kind}`);
}

/**
 * Puts the demo job into a store that has no job, as a job comes about: an earlier state that was issued, an edit, the later state
 * issued too; and the people of its yard. A store with jobs, removed ones counted, is left as it is.
 */
export async function addDemo(store: Store, earlier: JobFile, later: JobFile, now: Date): Promise<void> {
  for (const removed of [false, true]) if ((await store.listJobs({ removed })).length > 0) return;
  for (const person of PEOPLE) await store.savePerson(person);
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
