import type { ReadonlySignal } from '@preact/signals';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { Person } from '../../records/person.ts';
import type { FactRecord, KindAndBody, RecordDraft } from '../../records/record.ts';
import type { AsideRecord, LogHead, YardJob } from '../../wire/records.ts';

/** What this device has of a job beside its records; `file` is that of the revision in force. */
export interface DeviceJob extends Omit<YardJob, 'inForce' | 'isKnown' | 'now'> {
  readonly inForce: { readonly letter: string; readonly fingerprint: string; readonly file: JobFile } | null;
  /** When it was fetched, by this device's clock. */
  readonly fetchedAt: string;
  readonly asides: readonly AsideRecord[];
}

/** Where the records stand: what only this device has, what the server has. Counts of records. */
export interface SyncState {
  /** On this device only. */
  readonly unsent: number;
  /** Of this device, acknowledged by the server. */
  readonly sent: number;
  /** On this device in all, others' too. */
  readonly held: number;
  readonly unsentPhotos: number;
  readonly state: 'idle' | 'sending' | 'fetching';
  /** The last call reached the server. */
  readonly isServerThere: boolean;
  readonly lastSyncAt: string | null;
  /** The head of the server's log as last heard. */
  readonly head: LogHead | null;
  /** Server's clock less this device's [s]; null: never heard. */
  readonly clock_s: number | null;
  /** What a person must know; null: nothing. */
  readonly problem: string | null;
}

/** Room for records and photos on this device. */
export interface DeviceRoom {
  readonly used_bytes: number | null;
  readonly quota_bytes: number | null;
  /** The browser has promised not to clear it away. */
  readonly isKept: boolean;
  /** More than 80 % is used. */
  readonly isNearlyFull: boolean;
}

/** What a screen says of a record; the device fills in the rest. `revision` left out: the one in force on this device. */
export type WriteDraft = KindAndBody &
  Pick<RecordDraft, 'piece' | 'item' | 'checkKey' | 'measuredAt' | 'measuredBy'> & {
    readonly revision?: RecordDraft['revision'];
  };

export interface PhotoDraft {
  readonly blob: Blob;
  readonly width: number;
  readonly height: number;
}

/**
 * Records on this device: written to disk first, sent when the server is there. One for a page; several pages of one browser share the chain.
 */
export interface RecordDevice {
  readonly id: ReadonlySignal<string>;
  readonly job: ReadonlySignal<DeviceJob | null>;
  readonly person: ReadonlySignal<Person | null>;
  readonly sync: ReadonlySignal<SyncState>;
  readonly room: ReadonlySignal<DeviceRoom>;
  /** Takes a job onto this device: its revision in force, people, records. False where the server does not answer and it was never here. */
  takeJob(job: string): Promise<boolean>;
  /** Jobs that are on this device. */
  listJobs(): Promise<readonly { readonly id: string; readonly name: string }[]>;
  choosePerson(id: string | null): Promise<void>;
  /** What is known of a piece: follows what is written and what arrives. */
  piece(id: string): ReadonlySignal<PieceState>;
  /** The pieces of these ids at once, each as `piece` gives it; resolves when all are read. */
  openPieces(ids: readonly string[]): Promise<void>;
  /** Every piece that any record of the job names. */
  readonly knownPieces: ReadonlySignal<readonly string[]>;
  /**
   * Writes a record down; on disk when it resolves. `seen` is taken from what this device knows at that moment.
   * @throws Error where nobody is named, no job is taken, or there is no room
   */
  write(draft: WriteDraft): Promise<FactRecord>;
  /** Several in one transaction, in their order. */
  writeAll(drafts: readonly WriteDraft[]): Promise<readonly FactRecord[]>;
  /** Keeps a photo; gives its hash. Sent after the records. */
  keepPhoto(photo: PhotoDraft): Promise<string>;
  openPhoto(hash: string): Promise<Blob | null>;
  /** Sends and fetches now; several calls at once are one. */
  syncNow(): Promise<void>;
  /** Asks the browser to keep the data. */
  askToKeep(): Promise<boolean>;
  /** Takes what `sync.problem` says once (a text kept aside, a new name of this device) off it: a person has read it. What still holds stays. */
  heedProblem(): Promise<void>;
  /** Unsent records as files, one a job, of every job; they stay unsent. Photos are not in them. */
  exportUnsent(): Promise<readonly { readonly job: string; readonly name: string; readonly text: string }[]>;
  /** Takes in what another device exported: its texts are sent with ours. Gives how many were new. Throws where it is no such file. */
  takeIn(text: string): Promise<{ readonly taken: number; readonly had: number; readonly unreadable: number }>;
}
