import { cpSync, existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { useOffice } from '../harness.ts';
import { CHECKER, checkChains, findJob, foldStored, listStored, pieceOf, QA, Tablet } from './tablet.ts';

const office = useOffice();

const take = async (person = CHECKER, script?: () => void) => {
  const job = await findJob(office.server);
  return { job, tablet: await (await Tablet.open(office.browser, office.server, script)).start(job, person) };
};

const close = async (...tablets: readonly Tablet[]) => {
  for (const { context } of tablets) await context.close();
};

test('two tabs of one browser never write under one number, and each sees what the other wrote without a server', async () => {
  const { job, tablet } = await take();
  const beside = await (await tablet.openBeside()).start();
  const piece = pieceOf(job, 'two tabs');
  await tablet.states([piece]);
  await beside.states([piece]);
  await office.server.stop();
  const write = (tab: Tablet) =>
    tab.run(
      async (at, of) => Promise.all(Array.from({ length: 30 }, (_, k) => at.look(of, `item${k % 7}`, k % 2 === 0))),
      piece,
    );
  await Promise.all([write(tablet), write(beside)]);
  await expect.poll(async () => (await tablet.states([piece])) === (await beside.states([piece]))).toBe(true);
  await office.server.restart();
  await tablet.syncNow();
  const own = (await listStored(office.server, job)).filter(({ record }) => record.piece === piece);
  expect(own.length).toBe(60);
  expect(own.map(({ record }) => record.chain.number).sort((a, b) => a - b)).toEqual(own.map((_, k) => k + 1));
  expect(checkChains(own)).toEqual([]);
  expect(await tablet.states([piece])).toBe(await foldStored(office.server, job, [piece]));
  await expect.poll(async () => (await beside.sync()).unsent).toBe(0);
  await close(tablet);
});

test('the same id with other bytes is kept aside, told, and changes nothing', async () => {
  const { job, tablet } = await take();
  const { tablet: other } = await take(QA);
  const piece = pieceOf(job, 'other bytes');
  const id = await tablet.look(piece, 'x', true);
  const file = JSON.parse(await tablet.run(async ({ device }) => (await device.exportUnsent())[0]!.text, null)) as {
    texts: string[];
  };
  await tablet.syncNow();
  const state = await foldStored(office.server, job, [piece]);
  const forged = file.texts.map((text) => text.replace('"type":true', '"type":false'));
  expect(forged).not.toEqual(file.texts);
  const taken = await other.run(
    async ({ device }, text) => device.takeIn(text),
    JSON.stringify({ ...file, texts: [...forged, ...file.texts] }),
  );
  // The other tablet knew of neither: it shows what came first until it has heard of the server.
  expect(taken).toEqual({ taken: 1, had: 0, unreadable: 1 });
  await other.syncNow();
  expect((await other.sync()).problem).toMatch(/^1 text was put aside/);
  expect((await other.sync()).unsent).toBe(0);
  expect(await foldStored(office.server, job, [piece])).toBe(state);
  await other.load();
  await other.start();
  expect(await other.states([piece])).toBe(state);
  const asides = await other.run(({ device }) => device.job.value?.asides.map((one) => one.id), null);
  expect(asides).toContain(id);
  await other.run(({ device }) => device.heedProblem(), null);
  expect((await other.sync()).problem).toBe(null);
  await close(tablet, other);
});

test('a text that was changed on the tablet is found when the server has it otherwise', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'changed on disk');
  await tablet.look(piece, 'x', true);
  await tablet.syncNow();
  const contents = await tablet.copyOut();
  const change = (text: string) => text.replace('"type":true', '"type":false');
  contents.records = contents.records!.map(([key, value]) => {
    const record = value as { readonly piece: string; readonly text: string };
    return [key, record.piece === piece ? { ...record, text: change(record.text) } : record];
  });
  contents.cursors = [];
  await tablet.load();
  await tablet.copyIn(contents);
  await tablet.start();
  await tablet.syncNow();
  expect((await tablet.sync()).problem).toMatch(/^1 text was put aside/);
  expect(await tablet.states([piece])).toBe(await foldStored(office.server, job, [piece]));
  await close(tablet);
});

test('a copied tablet is found: both go on under new names, and nothing of either is lost', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'copied');
  await tablet.look(piece, 'before', true);
  await tablet.syncNow();
  const copy = await Tablet.open(office.browser, office.server);
  await copy.copyIn(await tablet.copyOut());
  await copy.start();
  const old = await tablet.run(({ device }) => device.id.value, null);
  expect(await copy.run(({ device }) => device.id.value, null)).toBe(old);
  await office.server.stop();
  await tablet.look(piece, 'one', true);
  await copy.look(piece, 'two', true);
  await copy.look(piece, 'three', true);
  await office.server.restart();
  await tablet.syncNow();
  await copy.syncNow();
  expect((await copy.sync()).problem).toMatch(/^Another device wrote under the name of this one/);
  await tablet.syncNow();
  expect((await tablet.sync()).problem).toMatch(/^Another device wrote/);
  const names = await Promise.all([tablet, copy].map((one) => one.run(({ device }) => device.id.value, null)));
  expect(new Set([old, ...names]).size).toBe(3);
  await tablet.look(piece, 'four', true);
  await copy.look(piece, 'five', true);
  for (const one of [tablet, copy, tablet]) await one.syncNow();
  const own = (await listStored(office.server, job)).filter(({ record }) => record.piece === piece);
  expect(own.map(({ record }) => record.item).sort()).toEqual(['before', 'five', 'four', 'one', 'three', 'two']);
  expect(own.filter(({ record }) => names.includes(record.device)).map(({ record }) => record.chain)).toEqual([
    { number: 1, previous: null },
    { number: 1, previous: null },
  ]);
  const findings = checkChains(await listStored(office.server, job));
  expect(findings.map(({ kind }) => kind)).toEqual(['fork']);
  const state = await foldStored(office.server, job, [piece]);
  expect(await tablet.states([piece])).toBe(state);
  expect(await copy.states([piece])).toBe(state);
  await copy.run(({ device }) => device.heedProblem(), null);
  expect((await copy.sync()).problem).toBe(null);
  await close(tablet, copy);
});

test('a clock that is a day ahead is told, stands in the records, and orders nothing', async () => {
  const { job, tablet } = await take();
  const { tablet: ahead } = await take(QA, () => {
    const RealDate = Date;
    const off = 86_400_000;
    globalThis.Date = class extends RealDate {
      constructor(given: number | string = RealDate.now() + off) {
        super(given);
      }
      static override now = () => RealDate.now() + off;
    } as DateConstructor;
  });
  const piece = pieceOf(job, 'clock');
  await ahead.look(piece, 'x', false);
  await ahead.syncNow();
  expect((await ahead.sync()).problem).toMatch(/clock is 1 day ahead/);
  await tablet.syncNow();
  const last = await tablet.look(piece, 'x', true);
  await tablet.syncNow();
  await ahead.syncNow();
  const [wrong, right] = (await listStored(office.server, job)).filter(({ record }) => record.piece === piece);
  expect(wrong!.record.clock_s).toBeCloseTo(-86_400, -1);
  expect(Math.abs(right!.record.clock_s!)).toBeLessThan(5);
  expect(Date.parse(wrong!.record.typedAt)).toBeGreaterThan(Date.parse(right!.record.typedAt));
  for (const one of [tablet, ahead]) {
    const latest = await one.run(async ({ device }, of) => {
      await device.openPieces([of]);
      return [...device.piece(of).value.slots.values()].map((slot) => slot.latest.map(({ id }) => id));
    }, piece);
    expect(latest).toEqual([[last]]);
  }
  await close(tablet, ahead);
});

test('a tablet that is back after a month gets the revision in force and all that was written meanwhile; what it wrote says by which it was done', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'month');
  const before = await tablet.run(({ device }) => device.job.value!.inForce?.letter, null);
  await tablet.page.close();
  const { tablet: other } = await take(QA);
  for (let k = 0; k < 7; k += 1)
    await other.run((at, of) => at.measureMany(of, 100), k === 0 ? piece : pieceOf(job, `month ${k}`));
  await other.syncNow();
  const { version } = await (await fetch(`${office.server.address}/api/jobs/${job}`)).json();
  const issued = await fetch(`${office.server.address}/api/jobs/${job}/revisions`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      ...{ base: version, letter: 'M', status: 'for construction', date: '2026-12-30', note: null, recipients: [] },
    }),
  });
  expect(issued.status).toBe(201);
  const back = await tablet.openBeside();
  await back.context.setOffline(true);
  await back.start();
  const id = await back.look(piece, 'late', true);
  await back.context.setOffline(false);
  await back.syncNow();
  expect(await back.run(({ device }) => device.job.value!.inForce?.letter, null)).toBe('M');
  const late = (await listStored(office.server, job)).find(({ record }) => record.id === id);
  expect(late!.record.revision?.letter).toBe(before);
  expect(late!.record.seen).toEqual([]);
  await other.syncNow();
  const state = await foldStored(office.server, job, [piece]);
  expect(await back.states([piece])).toBe(state);
  expect(await other.states([piece])).toBe(state);
  await close(back, other);
});

test('a newer version whose stores have another shape finds what was unsent, byte for byte, and sends it; the older page says so', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'update');
  await tablet.context.setOffline(true);
  await tablet.look(piece, 'x', true);
  const file = await tablet.run(async ({ device }) => (await device.exportUnsent())[0]!.text, null);
  const newer = await (await tablet.openBeside()).start(null, null, true);
  expect(await newer.run(async ({ device }) => (await device.exportUnsent())[0]!.text, null)).toBe(file);
  expect((await tablet.sync()).problem).toMatch(/^A newer version of this page is open/);
  await expect(tablet.look(piece, 'y', true)).rejects.toThrow(/newer version.*nothing was written down/);
  await tablet.context.setOffline(false);
  await newer.syncNow();
  const { texts } = JSON.parse(file) as { texts: string[] };
  const stored = (await listStored(office.server, job)).map(({ text }) => text);
  expect(texts.length).toBe(1);
  expect(stored).toContain(texts[0]);
  expect(await newer.sync()).toMatchObject({ unsent: 0, problem: null });
  await close(tablet);
});

test('a device without room says so, keeps nothing by half, and goes on when there is room', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'no room');
  await tablet.look(piece, 'a', true);
  const before = await tablet.states([piece]);
  // The last thing that a write puts down finds no room: all that came before it in the transaction must go too.
  await tablet.page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...given) {
      if (this.name === 'meta') throw new DOMException('full', 'QuotaExceededError');
      return put.apply(this, given);
    };
  });
  await expect(tablet.run((at, of) => at.measureMany(of, 50), piece)).rejects.toThrow(/no room left on this device/);
  await tablet.load();
  await tablet.start();
  expect(await tablet.states([piece])).toBe(before);
  await tablet.look(piece, 'b', true);
  await tablet.syncNow();
  const own = (await listStored(office.server, job)).filter(({ record }) => record.piece === piece);
  expect(own.map(({ record }) => record.chain.number)).toEqual([1, 2]);
  expect(checkChains(own)).toEqual([]);
  await close(tablet);
});

test('what waits can be saved to a file and sent from another tablet', async () => {
  const { job, tablet } = await take();
  const { tablet: other } = await take(QA);
  const piece = pieceOf(job, 'by file');
  await tablet.context.setOffline(true);
  const ids = await tablet.run((at, of) => at.measureMany(of, 130), piece);
  const file = await tablet.run(async ({ device }) => (await device.exportUnsent())[0]!.text, null);
  const takeIn = () => other.run(({ device }, text) => device.takeIn(text), file);
  expect(await takeIn()).toEqual({ taken: 130, had: 0, unreadable: 0 });
  expect(await takeIn()).toEqual({ taken: 0, had: 130, unreadable: 0 });
  await expect(other.run(({ device }) => device.takeIn('{}'), null)).rejects.toThrow(/cannot be taken in/);
  await other.syncNow();
  expect(await other.sync()).toMatchObject({ unsent: 0, problem: null });
  const stored = (await listStored(office.server, job)).filter(({ record }) => record.piece === piece);
  expect(stored.map(({ record }) => record.id)).toEqual(ids);
  expect(await tablet.sync()).toMatchObject({ unsent: 130 });
  await tablet.context.setOffline(false);
  await tablet.syncNow();
  expect(await tablet.sync()).toMatchObject({ unsent: 0, sent: 130, problem: null });
  await close(tablet, other);
});

test('nobody named, no job: nothing is written', async () => {
  const job = await findJob(office.server);
  const tablet = await (await Tablet.open(office.browser, office.server)).start();
  const piece = pieceOf(job, 'nobody');
  await expect(tablet.look(piece, 'x', true)).rejects.toThrow('No job is on this device');
  expect(await tablet.run(({ device }) => device.takeJob('aaaaaaaaaaaa'), null)).toBe(false);
  expect(await tablet.run(({ device }, id) => device.takeJob(id), job)).toBe(true);
  await expect(tablet.look(piece, 'x', true)).rejects.toThrow('Nobody is named');
  expect((await tablet.sync()).held).toBeGreaterThan(0);
  await close(tablet);
});

/** Puts the server's data back to what they were before `act`. */
async function putBackAfter(act: () => Promise<void>): Promise<void> {
  const { folder } = office.server;
  const names = (start: string) => readdirSync(folder).filter((name) => name.startsWith(start));
  await office.server.stop();
  for (const name of names('office.db')) cpSync(join(folder, name), join(folder, `kept-${name}`), { recursive: true });
  await office.server.restart();
  await act();
  await office.server.stop();
  for (const name of names('office.db')) rmSync(join(folder, name), { recursive: true });
  for (const name of names('kept-'))
    cpSync(join(folder, name), join(folder, name.slice('kept-'.length)), { recursive: true });
  for (const name of names('kept-')) rmSync(join(folder, name), { recursive: true });
  expect(existsSync(join(folder, 'office.db'))).toBe(true);
  await office.server.restart();
}

test('a server that was put back and has gone on since gets again what it lost, of every job', async () => {
  const { job, tablet } = await take();
  const { tablet: other } = await take(QA);
  await other.syncNow();
  // Another job on the tablet, of which it fetches nothing any more.
  const file = (await (await fetch(`${office.server.address}/api/jobs/${job}`)).json()) as { file: unknown };
  const body = JSON.stringify({ file: file.file });
  const made = { method: 'POST', headers: { 'content-type': 'application/json' }, body };
  const { id: earlier } = (await (await fetch(`${office.server.address}/api/jobs`, made)).json()) as { id: string };
  const pieces = [pieceOf(job, 'gone on'), pieceOf(earlier, 'gone on')] as const;
  let state = '';
  await putBackAfter(async () => {
    await tablet.run(({ device }, id) => device.takeJob(id), earlier);
    await tablet.run((at, of) => at.measureMany(of, 20), pieces[1]);
    await tablet.run(({ device }, id) => device.takeJob(id), job);
    await tablet.run((at, of) => at.measureMany(of, 20), pieces[0]);
    await tablet.syncNow();
    state =
      (await foldStored(office.server, job, [pieces[0]])) + (await foldStored(office.server, earlier, [pieces[1]]));
  });
  // More than was lost: the log ends beyond the place up to which the tablet has fetched it.
  const more = pieceOf(job, 'gone on, others');
  await other.run((at, of) => at.measureMany(of, 90), more);
  await other.syncNow();
  await tablet.syncNow();
  await expect.poll(async () => (await tablet.sync()).unsent, { timeout: 20_000 }).toBe(0);
  expect((await tablet.sync()).problem).toMatch(/^The server was put back/);
  const found =
    (await foldStored(office.server, job, [pieces[0]])) + (await foldStored(office.server, earlier, [pieces[1]]));
  expect(found === state).toBe(true);
  // What was written there since is fetched from the beginning.
  const others = await foldStored(office.server, job, [more]);
  await expect.poll(async () => (await tablet.states([more])) === others, { timeout: 20_000 }).toBe(true);
  // Once only.
  await tablet.run(({ device }) => device.heedProblem(), null);
  await tablet.syncNow();
  expect(await tablet.sync()).toMatchObject({ unsent: 0, problem: null });
  await close(tablet, other);
});

test('a server that was put back to an earlier state gets again what it lost', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'put back');
  let ids: readonly string[] = [];
  let state = '';
  await putBackAfter(async () => {
    ids = await tablet.run((at, of) => at.measureMany(of, 40), piece);
    await tablet.syncNow();
    state = await foldStored(office.server, job, [piece]);
  });
  expect((await listStored(office.server, job)).filter(({ record }) => ids.includes(record.id))).toEqual([]);
  await tablet.syncNow();
  await tablet.syncNow();
  expect((await tablet.sync()).problem).toMatch(/^The server was put back/);
  expect(await foldStored(office.server, job, [piece])).toBe(state);
  expect((await tablet.sync()).unsent).toBe(0);
  await close(tablet);
});
