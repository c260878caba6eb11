import type { JobFile } from '../../../job/documents/job-file.ts';
import { applyEdit } from '../../../job/edit/edit-job.ts';
import type { OpenJob } from '../../../wire/jobs.ts';
import { calls } from './office-calls.ts';
import type { Outbox, WaitingEdit } from './outbox.ts';

/** What this device still has of a job that the server does not. */
export type Waiting =
  | { readonly kind: 'nothing' }
  /** They stand on the server's version. */
  | { readonly kind: 'goes on'; readonly file: JobFile; readonly edits: readonly WaitingEdit[] }
  /** Somebody else has edited since: `mine` is the job as this device had it. */
  | { readonly kind: 'conflict'; readonly mine: JobFile; readonly edits: readonly WaitingEdit[] };

/**
 * Finds edits that a page of this browser left behind when it was closed, and whether they still stand on what the server has. Edits of
 * pages that are open are theirs.
 */
export async function readWaiting(
  opened: OpenJob,
  outbox: Outbox,
  editor: string,
  openEditors: ReadonlySet<string>,
): Promise<Waiting> {
  const left = (await outbox.list(opened.id)).filter((one) => one.editor === editor || !openEditors.has(one.editor));
  // One page's at a time: its own first. Those of others come when the job is opened again.
  const whose = left.find((one) => one.editor === editor) ?? left[0];
  if (whose === undefined) return { kind: 'nothing' };
  const edits = left.filter((one) => one.editor === whose.editor);
  const called = await calls.listEdits(opened.id, whose.base);
  if (called.kind !== 'answered') return { kind: 'nothing' };
  // The answer to the last call may have been lost: what is there of this page's own came before what waits.
  const stored = called.value.edits;
  const foreign = stored.findIndex((one) => one.editor !== whose.editor);
  const ownStored = foreign < 0 ? stored : stored.slice(0, foreign);
  const known = new Set(ownStored.map(({ edit }) => edit.id));
  await outbox.remove([...known]);
  const waiting = edits.filter(({ id }) => !known.has(id));
  if (waiting.length === 0) return { kind: 'nothing' };
  if (foreign < 0) return { kind: 'goes on', file: applyAll(opened.file, waiting), edits: waiting };
  const at = await calls.jobAt(opened.id, whose.base + ownStored.length);
  if (at.kind !== 'answered') return { kind: 'nothing' };
  return { kind: 'conflict', mine: applyAll(at.value.file, waiting), edits: waiting };
}

function applyAll(file: JobFile, waiting: readonly WaitingEdit[]): JobFile {
  return waiting.reduce((sofar, { edit }) => applyEdit(sofar, edit), file);
}
