import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Edit } from '../../../job/edit/edit.ts';

/** An edit that the server has not acknowledged. */
export interface WaitingEdit {
  readonly id: string;
  readonly job: string;
  readonly editor: string;
  /** Of the earliest edit of an editor: the version of the job that it was made on. The others follow it. */
  readonly base: number;
  /** Rising: the order in which they were made. */
  readonly order: number;
  readonly edit: Edit;
}

interface OutboxSchema extends DBSchema {
  edits: { key: string; value: WaitingEdit; indexes: { job: string } };
}

/** Edits kept on this device until the server has them, so that closing or reloading the page loses nothing. */
export class Outbox {
  #db: Promise<IDBPDatabase<OutboxSchema>> | null = null;

  /** Resolves once they are on this device; rejects where the browser keeps nothing. */
  put(waiting: readonly WaitingEdit[]): Promise<void> {
    return this.replace([], waiting);
  }

  remove(ids: readonly string[]): Promise<void> {
    return this.replace(ids, []);
  }

  /** Takes some out and puts others in, both or neither. */
  async replace(ids: readonly string[], waiting: readonly WaitingEdit[]): Promise<void> {
    if (ids.length + waiting.length === 0) return;
    // Strict: on the disk, should the power fail.
    const transaction = (await this.#open()).transaction('edits', 'readwrite', { durability: 'strict' });
    const { store } = transaction;
    const asked = [...ids.map((id) => store.delete(id)), ...waiting.map((one) => store.put(one))];
    // Not left to the page, which may be gone before it hears of the last request.
    transaction.commit();
    await Promise.all([...asked, transaction.done]);
  }

  /** Of one job, in the order in which they were made. */
  async list(job: string): Promise<readonly WaitingEdit[]> {
    const found = await (await this.#open()).getAllFromIndex('edits', 'job', job);
    return found.sort((a, b) => a.order - b.order);
  }

  /** Opened anew after a failure. */
  #open(): Promise<IDBPDatabase<OutboxSchema>> {
    const forget = () => {
      if (this.#db === opened) this.#db = null;
    };
    const open = async () =>
      openDB<OutboxSchema>('onepour-office', 1, {
        upgrade: (db) => {
          db.createObjectStore('edits', { keyPath: 'id' }).createIndex('job', 'job');
        },
        terminated: () => forget(),
      });
    if (this.#db !== null) return this.#db;
    const opened = open();
    this.#db = opened;
    opened.catch(forget);
    return opened;
  }
}
