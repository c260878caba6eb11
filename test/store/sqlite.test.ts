import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import Libsql from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { JOB_FILE_VERSION } from '../../src/job/documents/job-file-version.ts';
import { openSqliteFile, openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import { sampleJob } from '../job/sample-job.ts';
import { makeDevice, writeMany } from './devices.ts';
import { numberEdits, sampleFile } from './edits.ts';
import { describeJobStore, type StorePlace } from './job-store.ts';
import { describeRecordStore } from './record-store.ts';

function makeFolder(): string {
  return mkdtempSync(join(tmpdir(), 'onepour-store-'));
}

function makePlace(): StorePlace {
  const folder = makeFolder();
  return {
    open: (now) => openSqliteStore(join(folder, 'data', 'office.db'), now),
    clear: () => rmSync(folder, { recursive: true, force: true }),
  };
}

describeJobStore('SQLite', makePlace);
describeRecordStore('SQLite', makePlace);

describe('the file of SQLite', () => {
  let folder: string;
  let path: string;
  beforeEach(() => {
    folder = makeFolder();
    path = join(folder, 'office.db');
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('is written so that what is answered is on disk', async () => {
    const file = await openSqliteFile(path);
    const read = (name: string) => file.pragma(name, { simple: false });
    expect(read('synchronous')).toEqual([{ synchronous: 2 }]);
    expect(read('journal_mode')).toEqual([{ journal_mode: 'wal' }]);
    expect(read('locking_mode')).toEqual([{ locking_mode: 'exclusive' }]);
    expect(read('foreign_keys')).toEqual([{ foreign_keys: 1 }]);
    file.close();
  });

  it('belongs to one process at a time', async () => {
    const store = await openSqliteStore(path);
    await expect(openSqliteStore(path)).rejects.toThrow(/office\.db is in use: another onepour office has it open/);
    await store.close();
    const again = await openSqliteStore(path);
    await again.close();
  });

  it('is free again when its process was killed', async () => {
    // The other process opens the file in the same way and dies at once, without closing it.
    const script = `
      import Libsql from ${JSON.stringify(pathToFileURL(join(process.cwd(), 'node_modules/libsql/index.js')).href)};
      const file = new Libsql(${JSON.stringify(path)});
      for (const pragma of ['locking_mode = EXCLUSIVE', 'journal_mode = WAL']) file.pragma(pragma);
      file.exec('CREATE TABLE left_over (a)');
      process.kill(process.pid, 'SIGKILL');`;
    const { signal } = spawnSync(process.execPath, ['--input-type=module', '-e', script]);
    expect(signal).toBe('SIGKILL');
    expect(readdirSync(folder)).toContain('office.db-wal');
    const store = await openSqliteStore(path);
    expect(await store.listJobs({ removed: false })).toEqual([]);
    await store.close();
  });

  it('is one file without a log beside it once it is closed', async () => {
    const store = await openSqliteStore(path);
    await store.createJob(sampleFile());
    await store.close();
    expect(readdirSync(folder)).toEqual(['office.db']);
  });

  it('is not taken where something else lies there', async () => {
    writeFileSync(path, 'no file of SQLite, but long enough to be looked at as one. '.repeat(40));
    await expect(openSqliteStore(path)).rejects.toThrow(/office\.db cannot be opened as a store: /);
  });

  it('is not taken when a newer program made it', async () => {
    const store = await openSqliteStore(path);
    await store.close();
    const file = new Libsql(path);
    file.exec("INSERT INTO steps VALUES (99, '2030-01-01T00:00:00Z')");
    file.close();
    await expect(openSqliteStore(path)).rejects.toThrow(/made by a newer version of Onepour \(step 99/);
  });

  it('has full copies every 50 edits, and edits between', async () => {
    const store = await openSqliteStore(path);
    const { id } = await store.createJob(sampleFile());
    const { edits } = numberEdits(
      sampleFile(),
      Array.from({ length: 130 }, (_, index) => `${index}`),
    );
    for (let base = 0; base < edits.length; base += 10)
      await store.saveEdits(id, { base, editor: 'tab', edits: edits.slice(base, base + 10) });
    await store.close();
    const file = await openSqliteFile(path);
    expect(file.prepare('SELECT version FROM copies ORDER BY version').all()).toEqual(
      [0, 50, 100].map((version) => ({ version })),
    );
    expect(file.prepare('SELECT count(*) AS edits FROM edits').all()).toEqual([{ edits: 130 }]);
    expect(file.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    file.close();
  });

  it('keeps no half of a call that breaks off', async () => {
    const store = await openSqliteStore(path);
    const { id } = await store.createJob(sampleFile());
    await store.close();
    // A full disk, as far as a test can bring it about: the copies cannot be written.
    const file = new Libsql(path);
    file.exec("CREATE TRIGGER no_copies BEFORE INSERT ON copies BEGIN SELECT RAISE(ABORT, 'disk full'); END");
    file.close();
    const again = await openSqliteStore(path);
    const { edits } = numberEdits(
      sampleFile(),
      Array.from({ length: 60 }, (_, index) => `${index}`),
    );
    await expect(again.saveEdits(id, { base: 0, editor: 'tab', edits })).rejects.toThrow(/disk full/);
    expect(await again.openJob(id)).toMatchObject({ value: { version: 0, file: sampleFile() } });
    expect(await again.listEdits(id, 0)).toMatchObject({ value: { version: 0, edits: [] } });
    await again.close();
  });

  it('keeps no half of a call with records that breaks off', async () => {
    const store = await openSqliteStore(path);
    const { id } = await store.createJob(sampleFile());
    await store.close();
    const file = new Libsql(path);
    file.exec("CREATE TRIGGER no_asides BEFORE INSERT ON asides BEGIN SELECT RAISE(ABORT, 'broken off'); END");
    file.close();
    const again = await openSqliteStore(path);
    const texts = writeMany(makeDevice('a'), id, 3);
    await expect(again.takeRecords(id, [...texts, 'no record'])).rejects.toThrow(/broken off/);
    expect(await again.readLog(0)).toEqual([]);
    expect(await again.takeRecords(id, texts)).toMatchObject({ value: { head: { number: 3 } } });
    await again.close();
  });

  it('holds nothing of a name that was erased', async () => {
    const store = await openSqliteStore(path);
    const person = {
      id: 'demosetter01',
      name: 'Zacharias Nobody, a longer name than others',
      roles: [],
      registration: null,
    };
    // Long, and among others, so that nothing is written over the place of the name by chance.
    for (let number = 10; number < 40; number += 1)
      await store.savePerson(
        number === 20 ? person : { ...person, id: `anybodyanb${number}`, name: `N. Nobody ${number}` },
      );
    await store.savePerson({ ...person, name: null });
    await store.close();
    expect(readdirSync(folder)).toEqual(['office.db']);
    expect(readFileSync(path).includes('Zacharias')).toBe(false);
  });

  it('brings a job of an earlier shape up to date, and goes on with it', async () => {
    const store = await openSqliteStore(path);
    const { id } = await store.createJob(sampleFile());
    await store.close();
    // What version 1 of a job file was: the same without what version 2 brought.
    const file = new Libsql(path);
    file.prepare('UPDATE copies SET body = ?').run([JSON.stringify({ ...sampleJob(), version: 1 })]);
    file.exec('UPDATE jobs SET shape = 1');
    file.close();
    const again = await openSqliteStore(path);
    const opened = await again.openJob(id);
    if (opened.kind !== 'done') throw new Error(opened.kind);
    expect(opened.value.file.version).toBe(JOB_FILE_VERSION);
    const { edits, file: after } = numberEdits(opened.value.file, ['1']);
    expect((await again.saveEdits(id, { base: 0, editor: 'tab', edits })).kind).toBe('done');
    await again.close();
    const third = await openSqliteStore(path);
    expect(await third.openJob(id)).toMatchObject({ value: { version: 1, file: after } });
    await third.close();
  });
});
