import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Database } from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DiskFullError } from '../../src/store/record-store.ts';
import { makeSqliteStore, openSqliteFile, openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import type { Store } from '../../src/store/store.ts';
import { makeDevice, writeMany } from './devices.ts';
import { numberEdits, sampleFile } from './edits.ts';
import { done } from './job-store.ts';
import { expectSoundLog, readWholeLog } from './record-store.ts';

describe('a disk that is full', () => {
  let folder: string;
  let path: string;
  let file: Database;
  let store: Store;
  let job: string;
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'onepour-full-'));
    path = join(folder, 'office.db');
    file = await openSqliteFile(path);
    store = await makeSqliteStore(file, path);
    job = (await store.createJob(sampleFile())).id;
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const readPages = () => (file.pragma('page_count') as [{ page_count: number }])[0].page_count;
  /** SQLite then says what it says of a full disk. @param pages more than there are */
  const leaveRoom = (pages: number) => file.pragma(`max_page_count = ${readPages() + pages}`);

  it('refuses records in words, keeps nothing of the call and all from before, and goes on when there is room', async () => {
    leaveRoom(12);
    const device = makeDevice('a');
    const acknowledged: string[] = [];
    let refused: string[] = [];
    for (let call = 0; refused.length === 0 && call < 50; call += 1) {
      const texts = writeMany(device, job, 20);
      await store.takeRecords(job, texts).then(
        () => acknowledged.push(...texts),
        (error: unknown) => {
          expect(error).toBeInstanceOf(DiskFullError);
          expect(String(error)).toMatch(/no room on the disk of the store: nothing of this call was stored/);
          refused = texts;
        },
      );
    }
    expect(acknowledged.length).toBeGreaterThan(0);
    expect(refused).toHaveLength(20);
    const texts = async () => (await readWholeLog(store)).map(({ text }) => text);
    expect(await texts()).toEqual(acknowledged);
    await expect(store.takeRecords(job, refused)).rejects.toThrow(DiskFullError);
    // What needs no room is still answered.
    expect(await done(store.takeRecords(job, acknowledged.slice(0, 3)))).toMatchObject({ took: { length: 3 } });
    expect(await texts()).toEqual(acknowledged);

    leaveRoom(10_000);
    await done(store.takeRecords(job, refused));
    expect(await texts()).toEqual([...acknowledged, ...refused]);
    expectSoundLog(await readWholeLog(store));
    await store.close();
    const again = await openSqliteStore(path);
    expectSoundLog(await readWholeLog(again));
    await again.close();
    const closed = await openSqliteFile(path);
    expect(closed.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    closed.close();
  });

  it('refuses edits, jobs, people and texts kept aside in the same way', async () => {
    const name = 'N'.repeat(60);
    leaveRoom(0);
    const fill = async (write: (round: number) => Promise<unknown>) => {
      for (let round = 0; round < 2000; round += 1) await write(round);
    };
    await expect(fill(() => store.createJob(sampleFile()))).rejects.toThrow(DiskFullError);
    await expect(fill((round) => store.takeRecords(job, [`no record ${round} ${name}`]))).rejects.toThrow(
      DiskFullError,
    );
    const person = (round: number) => ({ id: `p${round}`.padEnd(12, 'x'), name, roles: [], registration: name });
    await expect(fill((round) => store.savePerson(person(round)))).rejects.toThrow(DiskFullError);
    let { file: now } = { file: sampleFile() };
    const edit = async (round: number) => {
      const { edits, file: after } = numberEdits(now, [`${round}`]);
      await done(store.saveEdits(job, { base: round, editor: 'tab', edits }));
      now = after;
    };
    await expect(fill(edit)).rejects.toThrow(DiskFullError);
    expect(await done(store.openJob(job))).toMatchObject({ file: now });
    await store.close();
  });
});
