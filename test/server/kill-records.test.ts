import type { ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Libsql from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import { tries } from '../long.ts';
import { expectSoundLog, readWholeLog } from '../store/record-store.ts';
import { type OfficeProcess, startOffice } from './office-process.ts';
import { createJob, readNotes, startWriter, waitForNotes } from './start-writer.ts';

const KILLS = tries(100, 6);

describe('a server that is killed while tablets send', () => {
  let folder: string;
  let path: string;
  let running: { readonly child: ChildProcess }[];
  beforeEach(() => {
    running = [];
    folder = mkdtempSync(join(tmpdir(), 'onepour-kill-'));
    path = join(folder, 'office.db');
  });
  afterEach(() => {
    for (const { child } of running) child.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });
  const start = async (port: string): Promise<OfficeProcess> => {
    const office = await startOffice(['--store', path, '--port', port]);
    running.push(office);
    return office;
  };

  it(`loses no acknowledged record or photo in ${KILLS} kills, and its log stays sound`, async () => {
    let office = await start('0');
    const { port } = new URL(office.address);
    const id = await createJob(office);
    const writers = ['one', 'two', 'three'].map((name) =>
      startWriter('record-writer.mjs', `${office.address}?job=${id}`, name, folder),
    );
    running.push(...writers);
    for (let kill = 0; kill < KILLS; kill += 1) {
      // Not before it takes records again; then at any moment of a call.
      await waitForNotes(writers, office);
      await wait(20 + Math.random() * 180);
      expect(await office.end('SIGKILL')).toBeNull();
      office = await start(port);
    }
    const counts = await Promise.all(writers.map(({ end }) => end()));
    expect(await office.end('SIGKILL')).toBeNull();
    // The kills hit calls under way; else the test would prove nothing.
    const cut = counts.reduce((sum, count) => sum + count.cut, 0);
    expect(cut).toBeGreaterThanOrEqual(KILLS);

    const store = await openSqliteStore(path);
    const lines = await readWholeLog(store);
    expectSoundLog(lines);
    expect(new Set(lines.map(({ id: record }) => record)).size).toBe(lines.length);
    const acknowledged = writers.flatMap(({ notes }) => readNotes(notes));
    const records = acknowledged.filter(([first]) => first !== 'photo');
    expect(records.length).toBeGreaterThan(KILLS * 20);
    expect(records).toEqual(
      records.map(([number]) => {
        const line = lines[Number(number) - 1];
        return [number, line?.id, line?.hash];
      }),
    );
    // A tablet goes on only when it was answered, so that its records are there without a gap.
    const byDevice = new Map<string, number[]>();
    for (const { device, deviceNumber } of lines) byDevice.set(device, [...(byDevice.get(device) ?? []), deviceNumber]);
    expect(byDevice.size).toBe(9);
    for (const numbers of byDevice.values()) expect(numbers).toEqual(numbers.map((_, index) => index + 1));
    expect(await store.listForks(id)).toEqual([]);
    expect(await store.listAsides(id)).toEqual([]);

    const photos = acknowledged.filter(([first]) => first === 'photo').map(([, hash]) => hash!);
    expect(photos.length).toBeGreaterThan(0);
    expect(await store.heldPhotos(photos)).toEqual(photos);
    await store.close();
    // Whatever has a photo's name is whole.
    const files = readdirSync(`${path}.photos`, { recursive: true }).map(String);
    const whole = files.filter((file) => file.includes('.'));
    expect(whole.filter((file) => !file.endsWith('.jpg'))).toEqual([]);
    for (const file of whole) {
      const bytes = readFileSync(join(`${path}.photos`, file));
      expect(file).toContain(createHash('sha256').update(bytes).digest('hex'));
    }

    const file = new Libsql(path);
    expect(file.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    expect(file.pragma('foreign_key_check')).toEqual([]);
    file.close();
    console.info(
      `${KILLS} kills: ${records.length} acknowledgements of ${lines.length} records and ${photos.length} photos found again, ${cut} calls cut off`,
    );
  }, 1_800_000);
});
