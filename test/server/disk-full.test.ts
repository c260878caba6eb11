import { createHash, randomBytes } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Libsql from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import { sampleJob } from '../job/sample-job.ts';
import { makeDevice, writeMany } from '../store/devices.ts';
import { expectSoundLog, readWholeLog } from '../store/record-store.ts';
import { type OfficeProcess, startOffice } from './office-process.ts';

/** No file of the server gets longer: 1 or 2 MB, as the shell counts. */
const LONGEST_FILE = 2048;

const FULL = {
  error: 'disk-full',
  message: expect.stringMatching(/^there is no room on the disk of the store: nothing of this call was stored/),
};

/** Bytes that begin as a photo does. */
function makePhoto(length: number): { readonly bytes: Buffer; readonly hash: string } {
  const bytes = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), randomBytes(length)]);
  return { bytes, hash: createHash('sha256').update(bytes).digest('hex') };
}

describe('a server whose disk takes no more', () => {
  let folder: string;
  let path: string;
  let running: OfficeProcess[];
  let office: OfficeProcess;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'onepour-full-'));
    path = join(folder, 'office.db');
    running = [];
  });
  afterEach(async () => {
    for (const { child, end } of running)
      if (child.exitCode === null && child.signalCode === null) await end('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });

  const start = async (longestFile?: number) => {
    office = await startOffice(['--store', path, '--port', '0'], longestFile);
    running.push(office);
  };
  const post = async (where: string, body: unknown) => {
    const headers = { 'content-type': 'application/json' };
    const answer = await fetch(`${office.address}${where}`, { method: 'POST', headers, body: JSON.stringify(body) });
    return { status: answer.status, body: (await answer.json()) as Record<string, unknown> };
  };
  const put = async ({ bytes, hash }: ReturnType<typeof makePhoto>) => {
    const headers = { 'content-type': 'image/jpeg' };
    const answer = await fetch(`${office.address}api/photos/${hash}`, { method: 'PUT', headers, body: bytes });
    return { status: answer.status, body: await answer.json() };
  };

  it('says so in words, keeps all that it acknowledged and takes the rest when there is room', async () => {
    await start(LONGEST_FILE);
    const { id } = (await post('api/jobs', { file: sampleJob() })).body as { id: string };
    const device = makeDevice('a');
    const acknowledged: string[] = [];
    let refused: string[] = [];
    while (refused.length === 0) {
      expect(acknowledged.length).toBeLessThan(10_000);
      const texts = writeMany(device, id, 100);
      const { status, body } = await post(`api/jobs/${id}/records`, { texts });
      if (status === 200) acknowledged.push(...texts);
      else {
        expect({ status, body }).toEqual({ status: 507, body: FULL });
        refused = texts;
      }
    }
    expect(acknowledged.length).toBeGreaterThan(200);
    expect(await post(`api/jobs/${id}/records`, { texts: refused })).toEqual({ status: 507, body: FULL });
    const small = makePhoto(200_000);
    const large = makePhoto(3_000_000);
    expect((await put(small)).status).toBe(201);
    expect(await put(large)).toEqual({ status: 507, body: FULL });
    expect((await post('api/photos/held', { photos: [small.hash, large.hash] })).body).toEqual({ held: [small.hash] });
    // Nothing half-written is left.
    const photos = readdirSync(`${path}.photos`, { recursive: true }).filter((name) => String(name).includes('.'));
    expect(photos).toEqual([join(small.hash.slice(0, 2), `${small.hash}.jpg`)]);
    expect(office.printed()).toContain('no room on the disk');
    expect(await office.end('SIGTERM')).toBe(0);

    await start();
    const again = await post(`api/jobs/${id}/records`, { texts: [...acknowledged.slice(-100), ...refused] });
    const took = again.body.took as readonly { readonly state: string }[];
    expect(took.map(({ state }) => state)).toEqual([...Array(100).fill('had'), ...Array(100).fill('stored')]);
    expect((await put(large)).status).toBe(201);
    expect(await office.end('SIGTERM')).toBe(0);

    const store = await openSqliteStore(path);
    const lines = await readWholeLog(store);
    expect(lines.map(({ text }) => text)).toEqual([...acknowledged, ...refused]);
    expectSoundLog(lines);
    await store.close();
    const file = new Libsql(path);
    expect(file.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }]);
    file.close();
  });
});
