import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Edit } from '../../../job/edit/edit.ts';

/** An edit that the server has not acknowledged. */
export interface WaitingEdit {
  readonly id: string;
  readonly job: string;
  readonly editor: string;
  /** The version of the job that the first of these edits was made on. */
  readonly base: number;
  /** Rising: the order in which they were made. */
  readonly order: number;
  readonly edit: Edit;
}

interface OutboxSchema extends DBSchema {
  edits: { key: string; value: WaitingEdit; indexes: { job: string } };
}

function open(): Promise<IDBPDatabase<OutboxSchema>> {
  return openDB<OutboxSchema>('onepour-office', 1, {
    upgrade(db) {
      db.createObjectStore('edits', { keyPath: 'id' }).createIndex('job', 'job');
    },
  });
}

/** Edits kept on this device until the server has them, so that closing or reloading the page loses nothing. */
export class Outbox {
  readonly #db = open();

  /** Resolves once it is on this device. */
  async put(waiting: WaitingEdit): Promise<void> {
    await (await this.#db).put('edits', waiting, undefined);
  }

  async remove(ids: readonly string[]): Promise<void> {
    const transaction = (await this.#db).transaction('edits', 'readwrite');
    await Promise.all([...ids.map((id) => transaction.store.delete(id)), transaction.done]);
  }

  /** Of one job, in the order in which they were made. */
  async list(job: string): Promise<readonly WaitingEdit[]> {
    const found = await (await this.#db).getAllFromIndex('edits', 'job', job);
    return found.sort((a, b) => a.order - b.order);
  }
}
