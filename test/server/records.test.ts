import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'libsql';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeCanonical } from '../../src/job/canonical.ts';
import { hashText } from '../../src/job/fingerprint.ts';
import { makeSqliteStore, openSqliteFile } from '../../src/store/sqlite/open-sqlite.ts';
import { hashOf, idOf, makeDevice, pieceOf, writeMany } from '../store/devices.ts';
import { sampleFile } from '../store/edits.ts';
import { type Served, serve } from './serve.ts';

const MOMENT = expect.stringMatching(/^\d{4}-\d\d-\d\dT.*Z$/);
const NO_HEAD = { number: 0, hash: null };
const JPEG = Buffer.from([0xff, 0xd8, 0xff, 0xe0, ...Buffer.from('as a camera begins it')]);
const PNG = Buffer.from('\x89PNG\r\n\x1a\nand the rest', 'latin1');
const WEBP = Buffer.from('RIFF\x10\0\0\0WEBPVP8 and the rest', 'latin1');

/** A status of a revision; letters go on from A. */
type Status = 'preliminary' | 'for approval' | 'for construction' | 'void';

describe('records over HTTP', () => {
  let served: Served;
  let base: string;
  let id: string;
  beforeEach(async () => {
    served = await serve();
    base = await served.app.listen({ host: '127.0.0.1', port: 0 });
    ({ id } = await served.store.createJob(sampleFile()));
  });
  afterEach(() => served.end());

  const ask = async (method: string, path: string, body?: unknown) => {
    const init =
      body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
    const answer = await fetch(`${base}${path}`, { method, ...init });
    return { status: answer.status, body: (await answer.json()) as Record<string, unknown> };
  };
  const send = (texts: readonly string[], job = id) => ask('POST', `/api/jobs/${job}/records`, { texts });
  const issue = async (letter: string, status: Status) => {
    const { version } = (await ask('GET', `/api/jobs/${id}`)).body;
    const issued = await ask('POST', `/api/jobs/${id}/revisions`, {
      ...{ base: version, letter, status, date: '2026-11-30' },
      ...{ note: null, recipients: [] },
    });
    expect(issued.status).toBe(201);
    return issued.body.fingerprint as string;
  };
  const put = (name: string, bytes: Buffer, type = 'image/jpeg', headers: Record<string, string> = {}) =>
    fetch(`${base}/api/photos/${name}`, { method: 'PUT', body: bytes, headers: { 'content-type': type, ...headers } });

  it('takes texts and answers what became of each', async () => {
    const device = makeDevice('a');
    const [one, two] = writeMany(device, id, 2);
    const answer = await send([one!, 'no record', two!]);
    expect(answer).toEqual({
      status: 200,
      body: {
        took: [
          { id: idOf('a 1'), state: 'stored', number: 1, why: null },
          { id: null, state: 'aside', number: null, why: expect.stringContaining('no JSON') },
          { id: idOf('a 2'), state: 'stored', number: 2, why: null },
        ],
        forks: [],
        head: { number: 2, hash: expect.stringMatching(/^[0-9a-f]{64}$/) },
        isKnown: true,
        now: MOMENT,
      },
    });
    expect((await send([one!, 'no record'])).body).toMatchObject({
      took: [{ state: 'had', number: 1 }, { state: 'aside' }],
      head: answer.body.head,
    });
    expect(await ask('GET', `/api/jobs/${id}/records`)).toEqual({
      status: 200,
      body: {
        records: [
          { number: 1, text: one },
          { number: 2, text: two },
        ],
        isAll: true,
        head: answer.body.head,
        isKnown: true,
        now: MOMENT,
      },
    });
  });

  it('gives records after a number, and those of some pieces', async () => {
    const device = makeDevice('a');
    const pieces = ['one', 'two', 'three'].map(pieceOf);
    await send(pieces.map((piece) => device.write(id, { piece })));
    const numbers = async (question: string) => {
      const { body } = await ask('GET', `/api/jobs/${id}/records?${question}`);
      return (body.records as { number: number }[]).map(({ number }) => number);
    };
    expect(await numbers('after=1')).toEqual([2, 3]);
    expect(await numbers(`pieces=${pieces[0]},${pieces[2]}`)).toEqual([1, 3]);
    expect(await numbers(`after=1&pieces=${pieces[0]},${pieces[2]}`)).toEqual([3]);
    expect(await numbers(`pieces=${pieceOf('other')}`)).toEqual([]);
  });

  it('tells whether its log goes through the end that a caller knew', async () => {
    const device = makeDevice('a');
    const { body } = await send(writeMany(device, id, 2));
    const { number, hash } = body.head as { number: number; hash: string };
    await send([device.write(id)]);
    const other = hash.replace(/^./, (digit) => (digit === '0' ? '1' : '0'));
    const isKnown = async (path: string, known: string) => (await ask('GET', `${path}known=${known}`)).body.isKnown;
    for (const path of [`/api/jobs/${id}/records?`, `/api/jobs/${id}/records?after=2&`, `/api/jobs/${id}/yard?`]) {
      expect(await isKnown(path, `${number}:${hash}`)).toBe(true);
      expect(await isKnown(path, `${number}:${other}`)).toBe(false);
      expect(await isKnown(path, `${number + 1}:${hash}`)).toBe(false);
      // Its log has not come so far: the caller knew a later state of it.
      expect(await isKnown(path, `9:${hash}`)).toBe(false);
    }
    const asked = await ask('POST', `/api/jobs/${id}/records?known=${number}:${other}`, { texts: [device.write(id)] });
    expect(asked.body).toMatchObject({ took: [{ state: 'stored' }], isKnown: false });
    for (const wrong of ['2', `0:${hash}`, `2:${hash}:`, `2.5:${hash}`, `x:${hash}`])
      expect((await ask('GET', `/api/jobs/${id}/records?known=${wrong}`)).status).toBe(400);
  });

  it('tells the clock of the server', async () => {
    const before = Date.now();
    const { body } = await send([makeDevice('a').write(id)]);
    const now = Date.parse(body.now as string);
    expect(now).toBeGreaterThanOrEqual(before);
    expect(now).toBeLessThanOrEqual(Date.now());
  });

  it('gives a yard what it needs of a job', async () => {
    expect(await ask('GET', `/api/jobs/${id}/yard`)).toEqual({
      status: 200,
      body: {
        ...{ id, name: 'Sample', revisions: [], inForce: null, people: [], asides: [], forks: [] },
        ...{ head: NO_HEAD, isKnown: true, now: MOMENT },
      },
    });
    const person = { id: 'demosetter01', name: 'N. Nobody', roles: ['setter'], registration: null };
    expect(await ask('POST', '/api/people', person)).toEqual({ status: 200, body: { people: [person] } });
    expect(await ask('GET', '/api/people')).toEqual({ status: 200, body: { people: [person] } });
    const tablet = makeDevice('a');
    const copy = tablet.copy('b');
    expect((await send([tablet.write(id), copy.write(id), 'no record'])).body.forks).toEqual([tablet.id]);
    const fingerprint = await issue('A', 'for construction');
    const { body } = await ask('GET', `/api/jobs/${id}/yard`);
    expect(body).toMatchObject({
      revisions: [{ letter: 'A', status: 'for construction', fingerprint }],
      inForce: { letter: 'A', fingerprint, file: { job: { revision: { letter: 'A' } } } },
      people: [person],
      asides: [{ id: null, piece: null, text: 'no record' }],
      forks: [{ device: tablet.id, number: 1 }],
      head: { number: 2 },
    });
    const { file } = body.inForce as { file: unknown };
    expect(hashText(writeCanonical(file))).toBe(fingerprint);
  });

  it('gives the file of the revision in force only to those who do not have it', async () => {
    const inForce = async (have?: string) =>
      (await ask('GET', `/api/jobs/${id}/yard${have === undefined ? '' : `?have=${have}`}`)).body.inForce;
    await issue('A', 'for approval');
    expect(await inForce()).toBeNull();
    const b = await issue('B', 'for construction');
    const c = await issue('C', 'preliminary');
    expect(await inForce(c)).toMatchObject({
      letter: 'B',
      fingerprint: b,
      file: { job: { revision: { letter: 'B' } } },
    });
    expect(await inForce(b)).toEqual({ letter: 'B', fingerprint: b, file: null });
    await issue('D', 'void');
    expect(await inForce(b)).toBeNull();
    const e = await issue('E', 'for construction');
    expect(await inForce(b)).toMatchObject({ letter: 'E', fingerprint: e, file: { format: 'onepour-job' } });
  });

  it('knows no job of another id, and still takes what comes late for a removed one', async () => {
    for (const path of ['yard', 'records'])
      expect((await ask('GET', `/api/jobs/nnnnnnnnnnnn/${path}`)).status).toBe(404);
    const stray = await send([makeDevice('a').write('nnnnnnnnnnnn')], 'nnnnnnnnnnnn');
    expect(stray).toMatchObject({ status: 404, body: { error: 'not-found' } });
    await ask('DELETE', `/api/jobs/${id}`);
    expect((await send([makeDevice('b').write(id)])).body).toMatchObject({ took: [{ state: 'stored', number: 1 }] });
    const gone = await ask('GET', `/api/jobs/${id}/yard`);
    expect(gone).toMatchObject({ status: 404, body: { message: expect.stringContaining('restore') } });
  });

  it('says where a call is wrong', async () => {
    for (const [answer, says] of [
      [await send([]), 'body /texts'],
      [await send(Array.from({ length: 501 }, () => 'x')), 'body /texts'],
      [await send(['x'.repeat(65_537)]), 'body /texts/0'],
      [await ask('POST', `/api/jobs/${id}/records`, { texts: [{}] }), 'body /texts/0'],
      [await ask('GET', `/api/jobs/${id}/records?pieces=one`), 'question in the address /pieces/0: the id of a piece'],
      [await ask('GET', `/api/jobs/${id}/records?after=x`), 'question in the address /after'],
      [await ask('GET', `/api/jobs/${id}/yard?have=x`), 'question in the address /have'],
      [await ask('POST', '/api/people', { id: 'x' }), 'body /id'],
      [await ask('POST', '/api/photos/held', { photos: ['x'] }), 'body /photos/0'],
      [await ask('GET', '/api/photos/x'), 'address /hash'],
    ] as const) {
      expect(answer).toMatchObject({ status: 400, body: { error: 'bad-input' } });
      expect(answer.body.message).toContain(says);
    }
  });

  it('keeps photos as bytes under their hash, for ever', async () => {
    for (const [bytes, type] of [
      [JPEG, 'image/jpeg'],
      [PNG, 'image/png'],
      [WEBP, 'image/webp'],
    ] as const) {
      const name = hashOf(bytes);
      expect((await ask('GET', `/api/photos/${name}`)).status).toBe(404);
      const first = await put(name, bytes, type);
      expect([first.status, await first.json()]).toEqual([201, { photo: name, bytes: bytes.length }]);
      expect((await put(name, bytes, type)).status).toBe(200);
      const got = await fetch(`${base}/api/photos/${name}`);
      expect(Buffer.from(await got.arrayBuffer())).toEqual(bytes);
      expect(got.headers.get('content-type')).toBe(type);
      expect(got.headers.get('x-content-type-options')).toBe('nosniff');
      expect(got.headers.get('cache-control')).toBe('private, max-age=31536000, immutable');
    }
    const held = { photos: [hashOf(PNG), hashOf('other'), hashOf(JPEG)] };
    expect((await ask('POST', '/api/photos/held', held)).body).toEqual({ held: [hashOf(PNG), hashOf(JPEG)] });
    const folder = join(served.folder, 'office.db.photos', hashOf(JPEG).slice(0, 2));
    expect(readdirSync(folder)).toEqual([`${hashOf(JPEG)}.jpg`]);
  });

  it('gives a photo the type that its bytes have, whatever it was sent as', async () => {
    await put(hashOf(PNG), PNG, 'image/jpeg');
    expect((await fetch(`${base}/api/photos/${hashOf(PNG)}`)).headers.get('content-type')).toBe('image/png');
  });

  it('refuses what is no photo, was changed on the way, is too long or comes from another site', async () => {
    const page = Buffer.from('<!doctype html><script>1</script>');
    const long = Buffer.concat([JPEG, Buffer.alloc(8 * 1024 * 1024)]);
    for (const [answer, status, says] of [
      [await put(hashOf(JPEG), PNG), 422, `the bytes have the SHA-256 ${hashOf(PNG)}`],
      [await put(hashOf(page), page), 422, 'the bytes are no photo; expected image/jpeg, image/webp, image/png'],
      [await put(hashOf(''), Buffer.alloc(0)), 422, 'no bytes'],
      [await put(hashOf(JPEG), JPEG, 'text/html'), 415, 'expected as one of image/jpeg, image/webp, image/png'],
      [await put(hashOf(JPEG), JPEG, 'application/json'), 415, 'expected as one of image/jpeg'],
      [await put('x', JPEG), 400, 'a SHA-256'],
      [await put(hashOf(JPEG), JPEG, 'image/jpeg', { origin: 'http://office.example' }), 403, 'office.example'],
    ] as const) {
      expect(answer.status).toBe(status);
      expect(((await answer.json()) as { message: string }).message).toContain(says);
    }
    // Not over a connection: the server hangs up on so much.
    const headers = { 'content-type': 'image/jpeg' };
    const tooLong = await served.inject({ method: 'PUT', url: `/api/photos/${hashOf(long)}`, payload: long, headers });
    expect(tooLong.statusCode).toBe(413);
    expect(tooLong.json().message).toContain('longer than 8388608 bytes');
    const held = { photos: [JPEG, PNG, page, long].map(hashOf) };
    expect((await ask('POST', '/api/photos/held', held)).body).toEqual({ held: [] });
    // JSON calls still take JSON alone.
    const posted = await fetch(`${base}/api/people`, {
      method: 'POST',
      body: JPEG,
      headers: { 'content-type': 'image/jpeg' },
    });
    expect(posted.status).toBe(415);
  });
});

describe('a server without room', () => {
  it('says so in words, stores nothing of the call and goes on when there is room', async () => {
    const opened: Database[] = [];
    const served = await serve(async (path) => {
      const file = await openSqliteFile(path);
      opened.push(file);
      return makeSqliteStore(file, path);
    });
    const leaveRoom = (pages: number) => opened[0]!.pragma(`max_page_count = ${pages}`);
    const { id } = await served.store.createJob(sampleFile());
    // No more than there are: what is there is not cut off.
    leaveRoom(1);
    const device = makeDevice('a');
    const full = {
      status: 507,
      body: { error: 'disk-full', message: expect.stringMatching(/^there is no room on the disk of the store/) },
    };
    const send = (texts: readonly string[]) => served.call('POST', `/api/jobs/${id}/records`, { texts });
    const texts = writeMany(device, id, 400);
    expect(await send(texts)).toEqual(full);
    expect(served.told).toEqual([expect.stringContaining(`POST /api/jobs/${id}/records: there is no room`)]);
    expect(await served.call('GET', `/api/jobs/${id}/records`)).toMatchObject({ body: { records: [], head: NO_HEAD } });
    const jobs = await Promise.all(
      Array.from({ length: 20 }, () => served.call('POST', '/api/jobs', { file: sampleFile() })),
    );
    expect(jobs.at(-1)).toEqual(full);
    leaveRoom(100_000);
    expect(await send(texts)).toMatchObject({ status: 200, body: { head: { number: 400 } } });
    await served.end();
  });
});
