import type { JobFile } from '../job/documents/job-file.ts';
import type { DocumentFault } from '../job/fault.ts';
import type { EditList, NewEdits } from '../wire/edits.ts';
import type { JobAt, JobHead, OpenJob } from '../wire/jobs.ts';
import type { KeptHead, KeptVersion } from '../wire/kept.ts';
import type { Issued, IssuedRevision, NewRevision } from '../wire/revisions.ts';

/** No job of this id, or one that was removed. */
export interface Absent {
  readonly kind: 'absent';
  readonly isRemoved: boolean;
}

/** What was asked for is not there, though the job is. */
export interface Unknown {
  readonly kind: 'unknown';
}

/** The call is made on a version that is not the last, or gives an id a second meaning; nothing was stored. */
export interface Conflicting {
  readonly kind: 'conflict';
  readonly cause: 'behind' | 'ahead' | 'same-id';
  /** Where the job stands. */
  readonly version: number;
  readonly savedAt: string;
}

/** What would come of the call is no sound job; nothing was stored. */
export interface Faulty {
  readonly kind: 'faults';
  readonly faults: readonly DocumentFault[];
}

export interface Done<T> {
  readonly kind: 'done';
  readonly value: T;
}

/** An edit as the store has it; `version` is what the job became by it. */
export interface SavedState {
  readonly version: number;
  readonly savedAt: string;
}

/** A version to keep beside a job; the file was read by `readJobDocument`. */
export interface KeptInput {
  readonly base: number;
  readonly editor: string;
  readonly reason: string;
  readonly file: JobFile;
}

/**
 * Jobs and what became of them. A draft is kept as edits with a full copy from time to time; every call is one transaction, and what it
 * gives is on disk when it gives it. Nothing is ever deleted.
 */
export interface JobStore {
  /** Jobs of the list, or the removed ones; saved last first. */
  listJobs(which: { readonly removed: boolean }): Promise<readonly JobHead[]>;
  /** @param file as `readJobDocument` gives it */
  createJob(file: JobFile): Promise<JobHead>;
  /** What the list shows of a job, without its file. */
  readJobHead(id: string): Promise<Done<JobHead> | Absent>;
  openJob(id: string): Promise<Done<OpenJob> | Absent>;
  removeJob(id: string): Promise<Done<{ readonly removedAt: string }> | Absent>;
  /** Puts a removed job back; one that is there stays as it is. */
  restoreJob(id: string): Promise<Done<JobHead> | Absent>;
  /**
   * Stores edits made on version `base`. Those stored already right after `base`, in the same order, are not stored again, and the state
   * given is that after the last edit of the call, not after what others stored since.
   */
  saveEdits(id: string, edits: NewEdits): Promise<Done<SavedState> | Absent | Conflicting | Faulty>;
  /** Edits after a version, the earliest first, at most MOST_EDITS. */
  listEdits(id: string, after: number): Promise<Done<EditList> | Absent>;
  /** Any earlier state; faults where the edits of one call only together made a sound job. */
  jobAt(id: string, version: number): Promise<Done<JobAt> | Absent | Unknown | Faulty>;
  keepVersion(id: string, kept: KeptInput): Promise<Done<KeptHead> | Absent>;
  listKept(id: string): Promise<Done<readonly KeptHead[]> | Absent>;
  openKept(id: string, kept: string): Promise<Done<KeptVersion> | Absent | Unknown>;
  /** Freezes version `base` under a letter; the letter is set by an edit where the file has another. */
  issueRevision(
    id: string,
    revision: NewRevision,
  ): Promise<
    Done<Issued> | Absent | Conflicting | Faulty | { readonly kind: 'issued-before'; readonly issuedAt: string }
  >;
  listRevisions(id: string): Promise<Done<readonly Issued[]> | Absent>;
  openRevision(id: string, letter: string): Promise<Done<IssuedRevision> | Absent | Unknown>;
  /** Ends all use; another process may then take the data. */
  close(): Promise<void>;
}

/** The data cannot be used: the text is one clear line for people. */
export class StoreError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'StoreError';
  }
}
