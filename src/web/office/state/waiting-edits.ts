import type { JobFile } from '../../../job/documents/job-file.ts';
import { applyEdit } from '../../../job/edit/edit-job.ts';
import type { OpenJob } from '../../../wire/jobs.ts';
import { tellCall } from '../../parts/call.ts';
import { calls } from './office-calls.ts';
import type { Outbox, WaitingEdit } from './outbox.ts';

/** What this device still has of a job that the server does not. */
export type Waiting =
  | { readonly kind: 'nothing' }
  /** Edits stand on version `base`: the last one, or, in a conflict, one that somebody else has gone on from. `mine`: the job with them. */
  | {
      readonly kind: 'goes on' | 'conflict';
      readonly base: number;
      readonly mine: JobFile;
      readonly edits: readonly WaitingEdit[];
      /** Ids of those that turned out to be on the server. */
      readonly known: readonly string[];
    }
  /** What they were made on is not on the server any more: it was put back to an earlier state. */
  | { readonly kind: 'stranded'; readonly edits: readonly WaitingEdit[] }
  /** The job has gone on since it was opened: to be opened again. */
  | { readonly kind: 'moved' }
  /** The server did not say; without it nothing may be edited. */
  | { readonly kind: 'unknown'; readonly why: string };

/**
 * Finds edits that a page of this browser left behind when it was closed, and whether they still stand on what the server has. Edits of
 * pages that are open are theirs.
 *
 * @param left what this device has of the job, in the order in which it was made
 */
export async function readWaiting(
  opened: OpenJob,
  left: readonly WaitingEdit[],
  outbox: Outbox,
  editor: string,
  openEditors: ReadonlySet<string>,
): Promise<Waiting> {
  const free = left.filter((one) => one.editor === editor || !openEditors.has(one.editor));
  // One page's at a time: its own first. Those of others come when the job is opened again.
  const whose = free.find((one) => one.editor === editor) ?? free[0];
  if (whose === undefined) return { kind: 'nothing' };
  const edits = free.filter((one) => one.editor === whose.editor);
  const called = await calls.listEdits(opened.id, whose.base);
  if (called.kind !== 'answered') return { kind: 'unknown', why: tellCall(called) ?? '' };
  if (called.value.version !== opened.version) return { kind: 'moved' };
  if (whose.base > opened.version) return { kind: 'stranded', edits };
  // The answer to the last call may have been lost: what is there of these edits came before what still waits.
  const stored = called.value.edits;
  const ids = new Set(edits.map(({ id }) => id));
  const foreign = stored.findIndex(({ edit }) => !ids.has(edit.id));
  const known = new Set((foreign < 0 ? stored : stored.slice(0, foreign)).map(({ edit }) => edit.id));
  const waiting = edits.filter(({ id }) => !known.has(id));
  if (waiting.length === 0) {
    // What is not taken out now is found to be on the server once more when the job is opened again.
    await outbox.remove([...known]).catch(() => {});
    return { kind: 'nothing' };
  }
  const base = whose.base + known.size;
  const from = foreign < 0 ? opened.file : await readState(opened.id, base);
  if (typeof from === 'string') return { kind: 'unknown', why: from };
  const mine = from === null ? null : applyAll(from, waiting);
  if (mine === null) return { kind: 'stranded', edits: waiting };
  return { kind: foreign < 0 ? 'goes on' : 'conflict', base, mine, edits: waiting, known: [...known] };
}

/** Null where the server has it no more; a text where it does not answer. */
async function readState(job: string, version: number): Promise<JobFile | string | null> {
  const called = await calls.jobAt(job, version);
  if (called.kind === 'away') return tellCall(called) ?? '';
  return called.kind === 'answered' ? called.value.file : null;
}

/** Null where an edit does not fit: it was made on another state. */
function applyAll(file: JobFile, waiting: readonly WaitingEdit[]): JobFile | null {
  try {
    return waiting.reduce((sofar, { edit }) => applyEdit(sofar, edit), file);
  } catch {
    return null;
  }
}
