import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { Kysely, SqliteDialect } from 'kysely';
import type { Database } from 'libsql';
import { StoreError } from '../job-store.ts';
import { makeStore } from '../make-store.ts';
import { openPhotoFiles } from '../photos/photo-files.ts';
import type { Store } from '../store.ts';
import type { Tables } from '../tables.ts';
import { isFull, tellFullDisk } from './tell-full-disk.ts';

/**
 * How the file is used. The lock is the operating system's: it ends with the process, however that ends, so that nothing has to be
 * cleared away after a crash. FULL: a commit is on disk before it is answered.
 */
const PRAGMAS = [
  'busy_timeout = 1000',
  'locking_mode = EXCLUSIVE',
  'journal_mode = WAL',
  'synchronous = FULL',
  'foreign_keys = ON',
  // A name that is erased is not left in the file.
  'secure_delete = ON',
] as const;

function isBusy(error: unknown): boolean {
  return error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY');
}

/**
 * Opens a file of SQLite for this process alone; it is made where there is none.
 * @throws StoreError when another process has it, or it is no such file
 */
export async function openSqliteFile(path: string): Promise<Database> {
  // Read when it is wanted: it brings a binary of some megabytes.
  const { default: Libsql } = await import('libsql');
  try {
    mkdirSync(dirname(path), { recursive: true });
    const file = new Libsql(path);
    for (const pragma of PRAGMAS) file.pragma(pragma);
    // The lock is taken by the first write.
    file.exec('BEGIN IMMEDIATE');
    file.exec('COMMIT');
    return file;
  } catch (error) {
    if (isBusy(error))
      throw new StoreError(
        `${path} is in use: another onepour office has it open. Use that one, stop it, or name another file`,
      );
    throw new StoreError(`${path} cannot be opened as a store: ${error instanceof Error ? error.message : error}`);
  }
}

/** Gives the file up. What is left is one file without a log beside it, that another process may open at once. */
function closeSqliteFile(file: Database): void {
  file.pragma('journal_mode = DELETE');
  file.pragma('locking_mode = NORMAL');
  // The lock is let go by the next read.
  file.prepare('SELECT count(*) AS tables FROM sqlite_schema').all();
}

/**
 * The store on a file that `openSqliteFile` opened; its photos lie in the folder `FILE.photos` beside it.
 * @throws StoreError when the file cannot be used; it is given up then
 */
export async function makeSqliteStore(file: Database, path: string, now?: () => Date): Promise<Store> {
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: tellFullDisk(file) }) });
  const close = async (): Promise<void> => {
    try {
      closeSqliteFile(file);
    } catch (error) {
      // The log stays beside the file and is read when it is opened again.
      if (!isFull(error)) throw error;
    } finally {
      await db.destroy();
    }
  };
  try {
    return await makeStore({ db, close }, await openPhotoFiles(`${path}.photos`), now);
  } catch (error) {
    await close();
    throw error;
  }
}

/**
 * The store in a file of SQLite.
 * @throws StoreError when the file cannot be used
 */
export async function openSqliteStore(path: string, now?: () => Date): Promise<Store> {
  return makeSqliteStore(await openSqliteFile(path), path, now);
}
