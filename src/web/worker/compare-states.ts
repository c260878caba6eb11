import { compareJobs } from '../../job/difference/compare-jobs.ts';
import { type DifferenceOutline, outlineDifference } from '../../job/difference/outline-difference.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { calls } from '../office/state/office-calls.ts';
import { tellCall } from '../parts/call.ts';

/** A state of a job: the draft as it is held, something frozen on the server, or a file that is given. */
export type StateOfJob =
  | { readonly kind: 'draft' }
  | { readonly kind: 'revision'; readonly letter: string }
  | { readonly kind: 'kept'; readonly id: string }
  | { readonly kind: 'file'; readonly file: JobFile };

/** Frozen states do not change: each is asked for once. */
export class FrozenStates {
  readonly #files = new Map<string, Promise<JobFile>>();

  /** Rejects with words for the person where the server does not give it. */
  get(job: string, state: StateOfJob & { readonly kind: 'revision' | 'kept' }): Promise<JobFile> {
    const name = `${job} ${state.kind} ${state.kind === 'revision' ? state.letter : state.id}`;
    const known = this.#files.get(name);
    if (known !== undefined) return known;
    const asked = fetchState(job, state);
    this.#files.set(name, asked);
    // What failed is asked for anew.
    asked.catch(() => this.#files.delete(name));
    return asked;
  }
}

async function fetchState(job: string, state: StateOfJob & { readonly kind: 'revision' | 'kept' }): Promise<JobFile> {
  const called =
    state.kind === 'revision' ? await calls.openRevision(job, state.letter) : await calls.openKept(job, state.id);
  if (called.kind === 'answered') return called.value.file;
  throw new Error(tellCall(called) ?? '');
}

/** What a revision did to the panels. */
export interface RevisionPanels {
  readonly letter: string;
  readonly marks: readonly string[];
  /** New, or another than in the revision before. */
  readonly touched: readonly string[];
}

/** The panels of issued revisions, in the order of the letters, each against the one before. */
export async function listRevisionPanels(
  job: string,
  letters: readonly string[],
  frozen: FrozenStates,
): Promise<readonly RevisionPanels[]> {
  const files = await Promise.all(letters.map((letter) => frozen.get(job, { kind: 'revision', letter })));
  return files.map((file, k) => {
    const before = files[k - 1];
    const marks = file.job.panels.map(({ mark }) => mark);
    const touched = before === undefined ? marks : outlineDifference(compareJobs(before, file)).touched;
    return { letter: letters[k] ?? '', marks, touched };
  });
}

/** The difference between two states of a job, in words. */
export async function compareStates(
  job: string,
  before: StateOfJob,
  after: StateOfJob,
  held: () => JobFile,
  frozen: FrozenStates,
): Promise<DifferenceOutline> {
  const take = (state: StateOfJob) => {
    if (state.kind === 'draft') return held();
    return state.kind === 'file' ? state.file : frozen.get(job, state);
  };
  const [one, other] = await Promise.all([take(before), take(after)]);
  return outlineDifference(compareJobs(one, other));
}
