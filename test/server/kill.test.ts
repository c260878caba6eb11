import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Libsql from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/job/edit/edit-job.ts';
import { openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import type { StoredEdit } from '../../src/wire/edits.ts';
import { tries } from '../long.ts';
import { sampleFile } from '../store/edits.ts';
import { type OfficeProcess, startOffice } from './office-process.ts';
import { createJob, readNotes, startWriter, waitForNotes } from './start-writer.ts';

const KILLS = tries(20, 6);

/** Acknowledged edits: [version, id], in the order in which they were acknowledged. */
function readAcknowledged(notes: string): readonly (readonly [version: number, id: string])[] {
  return readNotes(notes).map(([version, id]) => [Number(version), id!]);
}

describe('a server that is killed while it saves', () => {
  let folder: string;
  let store: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'onepour-kill-'));
    store = join(folder, 'office.db');
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it(`loses no acknowledged edit in ${KILLS} kills, and its file stays sound`, async () => {
    let office: OfficeProcess = await startOffice(['--store', store, '--port', '0']);
    const { port } = new URL(office.address);
    const id = await createJob(office);
    const writers = ['one', 'two'].map((name) =>
      startWriter('writer.mjs', `${office.address}api/jobs/${id}/edits`, name, folder),
    );

    for (let kill = 0; kill < KILLS; kill += 1) {
      // Not before it saves again; then at any moment of a save.
      await waitForNotes(writers, office);
      await wait(20 + Math.random() * 180);
      expect(await office.end('SIGKILL')).toBeNull();
      office = await startOffice(['--store', store, '--port', port]);
    }
    const counts = await Promise.all(writers.map(({ end }) => end()));
    expect(await office.end('SIGKILL')).toBeNull();

    // The kills hit calls under way; else the test would prove nothing.
    expect(counts.reduce((cut, count) => cut + count.cut, 0)).toBeGreaterThanOrEqual(KILLS);

    const again = await openSqliteStore(store);
    const stored: StoredEdit[] = [];
    for (;;) {
      const page = await again.listEdits(id, stored.length);
      if (page.kind !== 'done') throw new Error(page.kind);
      if (page.value.edits.length === 0) break;
      stored.push(...page.value.edits);
    }
    expect(stored.map(({ version }) => version)).toEqual(stored.map((_, index) => index + 1));
    for (const { notes } of writers) {
      const acknowledged = readAcknowledged(notes);
      expect(acknowledged.length).toBeGreaterThan(KILLS);
      expect(acknowledged.map(([version, name]) => [version, name])).toEqual(
        acknowledged.map(([version]) => [version, stored[version - 1]?.edit.id]),
      );
    }
    expect(new Set(stored.map(({ edit }) => edit.id)).size).toBe(stored.length);

    const opened = await again.openJob(id);
    const rebuilt = stored.reduce((before, { edit }) => applyEdit(before, edit), sampleFile());
    expect(opened).toMatchObject({ kind: 'done', value: { version: stored.length, file: rebuilt } });
    await again.close();

    const file = new Libsql(store);
    expect(file.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    expect(file.pragma('foreign_key_check')).toEqual([]);
    file.close();
  }, 120_000);

  it('ends what is under way when it is asked to stop, and leaves one file', async () => {
    const office = await startOffice(['--store', store, '--port', '0']);
    const id = await createJob(office);
    const writer = startWriter('writer.mjs', `${office.address}api/jobs/${id}/edits`, 'one', folder);
    await waitForNotes([writer], office);
    expect(await office.end('SIGTERM')).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(['office.db', 'one.txt']);
    // The writer takes it for a server that is away, and tries again.
    await wait(200);
    expect(writer.isRunning()).toBe(true);
    writer.drop();
    const again = await openSqliteStore(store);
    const opened = await again.openJob(id);
    const [version] = readAcknowledged(writer.notes).at(-1)!;
    // The answer to the last call may have gone under with the connection; what was answered is there.
    expect(opened.kind === 'done' && opened.value.version).toBeGreaterThanOrEqual(version);
    await again.close();
  }, 60_000);
});
