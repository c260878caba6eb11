import type { Person } from '../records/person.ts';
import type { AsideLine } from '../records/verify/check-asides.ts';
import type { LogLine } from '../records/verify/examine-line.ts';
import type { AsideRecord, LogHead, RecordList, TookRecords, YardJob } from '../wire/records.ts';
import type { Absent, Done } from './job-store.ts';

/** A photo as a file: the name is the SHA-256 of its bytes. */
export interface StoredPhoto {
  readonly hash: string;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** A line of the log as it lies in the store, and when it came. */
export interface LogRow extends LogLine {
  readonly receivedAt: string;
}

/** There is no room on the disk; nothing of the call was stored. */
export class DiskFullError extends Error {
  constructor(options?: ErrorOptions) {
    super(
      'there is no room on the disk of the store: nothing of this call was stored, what was stored before is whole; make room there and send it again',
      options,
    );
    this.name = 'DiskFullError';
  }
}

/**
 * Records, only ever added, in one log with a chain of its own. Every call is one transaction; what it gives is on disk when it gives it.
 * Calls that write throw DiskFullError where there is no room.
 */
export interface RecordStore {
  /**
   * Takes texts of records. One that is there byte for byte is had; one whose id stands for other bytes, or that is no record of this program or job,
   * is kept aside with the reason. Facts are never refused for their content, their order or a gap in a device's chain; nor because the job was
   * removed from the list since.
   */
  takeRecords(
    job: string,
    texts: readonly string[],
  ): Promise<Done<Pick<TookRecords, 'took' | 'forks' | 'head'>> | Absent>;
  /** After a number of the log, at most MOST_RECORDS. @param pieces null: all of the job */
  listRecords(
    job: string,
    after: number,
    pieces: readonly string[] | null,
  ): Promise<Done<Pick<RecordList, 'records' | 'isAll' | 'head'>> | Absent>;
  listAsides(job: string): Promise<readonly AsideRecord[]>;
  /** As they lie in the store, of every job, removed ones too. */
  readAsides(): Promise<readonly AsideLine[]>;
  listForks(job: string): Promise<YardJob['forks']>;
  readHead(): Promise<LogHead>;
  /** Whether the log goes through a line that somebody knew. Lines are only added: false, and the file is an earlier one than that person's. */
  hasLine(line: { readonly number: number; readonly hash: string }): Promise<boolean>;
  /** Lines of the log after a number, all jobs, the earliest first, at most MOST_RECORDS; none: that was the last. */
  readLog(after: number): Promise<readonly LogRow[]>;
  listPeople(): Promise<readonly Person[]>;
  savePerson(person: Person): Promise<readonly Person[]>;
  /** @throws Error where the bytes do not have that hash */
  keepPhoto(photo: StoredPhoto): Promise<{ readonly isNew: boolean }>;
  openPhoto(hash: string): Promise<StoredPhoto | null>;
  heldPhotos(hashes: readonly string[]): Promise<readonly string[]>;
}
