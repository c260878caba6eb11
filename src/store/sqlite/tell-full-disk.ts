import type { SqliteDatabase, SqliteStatement } from 'kysely';
import type { Database } from 'libsql';
import { DiskFullError } from '../record-store.ts';

/** No room, or the system takes no more of this file (a quota, a longest file): SQLite tells the second as a write that failed. */
const FULL = new Set(['SQLITE_FULL', 'SQLITE_IOERR_WRITE']);

/** Whether SQLite failed because there is no room. */
export function isFull(error: unknown): boolean {
  return error instanceof Error && 'code' in error && FULL.has(String(error.code));
}

function tell<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw isFull(error) ? new DiskFullError({ cause: error }) : error;
  }
}

const NOTHING: SqliteStatement = {
  reader: false,
  all: () => [],
  run: () => ({ changes: 0, lastInsertRowid: 0 }),
  iterate: () => [][Symbol.iterator](),
};

/** A file of SQLite that says DiskFullError where there is no room. SQLite then has ended the transaction: rolling it back once more does nothing. */
export function tellFullDisk(file: Database): SqliteDatabase {
  return {
    close: () => file.close(),
    prepare: (sql) => {
      if (sql === 'rollback' && !file.inTransaction) return NOTHING;
      const statement = tell(() => file.prepare(sql));
      return {
        reader: statement.reader,
        all: (values) => tell(() => statement.all(values)),
        run: (values) => tell(() => statement.run(values)),
        iterate: (values) => statement.iterate(values) as IterableIterator<unknown>,
      };
    },
  };
}
