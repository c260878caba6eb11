import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { ReadFile } from '../../../worker/read-files.ts';

/** A file that is being read or put right. */
export interface WorkFile extends ReadFile {
  /** Something was typed in it since it was given. */
  readonly isTyped: boolean;
}

interface ImportSchema extends DBSchema {
  /** Files by the job that they are for, or `new`. */
  files: { key: string; value: readonly WorkFile[] };
}

function open(): Promise<IDBPDatabase<ImportSchema>> {
  return openDB<ImportSchema>('onepour-import', 1, {
    upgrade(db) {
      db.createObjectStore('files');
    },
  });
}

/** Files that are being put right, kept on this device, so that a reload loses nothing that was typed. */
export class ImportStore {
  readonly #db = open();

  async get(place: string): Promise<readonly WorkFile[]> {
    return (await (await this.#db).get('files', place)) ?? [];
  }

  async put(place: string, files: readonly WorkFile[]): Promise<void> {
    const db = await this.#db;
    if (files.length === 0) await db.delete('files', place);
    else await db.put('files', files, place);
  }
}
