import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { LogHead } from '../../wire/records.ts';
import type { DeviceJob } from './record-device.ts';

/** A record of this device or of another, as its text came. Read with its schema before it was put here. */
export interface KeptRecord {
  readonly id: string;
  readonly job: string;
  readonly piece: string;
  readonly text: string;
  /** Written on this device, under whatever id it had then. */
  readonly mine?: 1;
}

/** A text that the server has not acknowledged; the key is the order in which it is sent. */
export interface UnsentText {
  readonly id: string | null;
  readonly job: string;
  readonly text: string;
  readonly mine?: 1;
}

/** A text of the server that this program cannot read: a newer one wrote it. */
export interface UnreadText {
  readonly job: string;
  /** In the server's log. */
  readonly number: number;
  readonly text: string;
}

/** A text that does not count, because its id stands for other bytes or the server could not read it. Never deleted. */
export interface AsideText {
  /** SHA-256 of the text: it is kept once. */
  readonly hash: string;
  readonly id: string | null;
  readonly job: string;
  readonly text: string;
  readonly why: string;
  readonly at: string;
  /** A person has read of it. */
  readonly isHeeded: boolean;
}

export interface KeptPhoto {
  readonly hash: string;
  readonly type: string;
  readonly bytes: ArrayBuffer;
  readonly unsent?: 1;
}

export interface KeptJob extends Omit<DeviceJob, 'inForce'> {
  /** Its file lies apart, by its fingerprint. */
  readonly inForce: { readonly letter: string; readonly fingerprint: string } | null;
}

export interface KeptFile {
  readonly fingerprint: string;
  readonly job: string;
  readonly file: JobFile;
}

/** What this device is. One entry, under the key `device`. */
export interface DeviceMeta {
  readonly id: string;
  /** Number and hash of the last record written here; null: none under this id. */
  readonly chain: { readonly number: number; readonly hash: string } | null;
  readonly person: string | null;
  readonly job: string | null;
  readonly clock_s: number | null;
  /** The end of the server's log as last heard. */
  readonly head: LogHead | null;
  /** The server's log no longer went through that end: it was put back, and what it may have lost is not on the list yet. */
  readonly isLogOther?: true;
  readonly lastSyncAt: string | null;
  /** Its id was given up for a new one, and nobody has read of it yet. */
  readonly isForkUnheeded: boolean;
}

export interface RecordSchema extends DBSchema {
  records: { key: string; value: KeptRecord; indexes: { piece: string; mine: number } };
  /** Pieces that records name. */
  pieces: { key: string; value: { readonly piece: string; readonly job: string }; indexes: { job: string } };
  unsent: { key: number; value: UnsentText; indexes: { job: string; mine: number } };
  unread: { key: [string, number]; value: UnreadText };
  asides: { key: string; value: AsideText };
  photos: { key: string; value: KeptPhoto; indexes: { unsent: number } };
  jobs: { key: string; value: KeptJob };
  files: { key: string; value: KeptFile };
  /** Up to which number of the server's log a job has been fetched. */
  cursors: { key: string; value: number };
  meta: { key: string; value: DeviceMeta };
}

export type RecordDatabase = IDBPDatabase<RecordSchema>;
type Upgrade = IDBPTransaction<RecordSchema, StoreNames<RecordSchema>[], 'versionchange'>;

/** One step from a shape of the stores to the next. A step that was shipped is never edited. */
export type DatabaseStep = (db: RecordDatabase, transaction: Upgrade) => void;

/** The stores as they came to be. Texts that wait to be sent go through every step as they stand. */
export const databaseSteps: readonly DatabaseStep[] = [
  (db) => {
    const records = db.createObjectStore('records', { keyPath: 'id' });
    records.createIndex('piece', 'piece');
    records.createIndex('mine', 'mine');
    db.createObjectStore('pieces', { keyPath: 'piece' }).createIndex('job', 'job');
    const unsent = db.createObjectStore('unsent', { autoIncrement: true });
    unsent.createIndex('job', 'job');
    unsent.createIndex('mine', 'mine');
    db.createObjectStore('unread', { keyPath: ['job', 'number'] });
    db.createObjectStore('asides', { keyPath: 'hash' });
    db.createObjectStore('photos', { keyPath: 'hash' }).createIndex('unsent', 'unsent');
    db.createObjectStore('jobs', { keyPath: 'id' });
    db.createObjectStore('files', { keyPath: 'fingerprint' });
    db.createObjectStore('cursors');
    db.createObjectStore('meta');
  },
];

/** The database of this origin, opened when it is asked for and anew after the browser let go of it. */
export class RecordDb {
  readonly #steps: readonly DatabaseStep[];
  readonly #onNewer: () => void;
  #db: Promise<RecordDatabase> | null = null;

  /** @param onNewer another page needs the stores in a newer shape: this one can write no more and must be loaded anew */
  constructor(onNewer: () => void, steps: readonly DatabaseStep[]) {
    this.#onNewer = onNewer;
    this.#steps = steps;
  }

  /** @throws DOMException where the browser keeps nothing, or another page has the stores in a newer shape */
  open(): Promise<RecordDatabase> {
    if (this.#db !== null) return this.#db;
    const steps = this.#steps;
    const forget = () => {
      if (this.#db === opened) this.#db = null;
    };
    const open = async () =>
      openDB<RecordSchema>('onepour-yard', steps.length, {
        upgrade: (db, from, _to, transaction) => {
          for (const step of steps.slice(from)) step(db, transaction);
        },
        blocking: (_from, _to, event) => {
          // The types of the library leave open what the standard says: the event comes from the database.
          (event.target as IDBDatabase).close();
          forget();
          this.#onNewer();
        },
        terminated: () => forget(),
      });
    const opened = open();
    this.#db = opened;
    opened.catch(forget);
    return opened;
  }
}
