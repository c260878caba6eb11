import { expect, test } from 'vitest';
import { useOffice } from '../harness.ts';
import { CHECKER, findJob, foldStored, listStored, pieceOf, QA, Tablet } from './tablet.ts';

const office = useOffice();
const RECORDS = '**/api/jobs/*/records*';

async function open(person = CHECKER): Promise<{ readonly job: string; readonly tablet: Tablet }> {
  const job = await findJob(office.server);
  return { job, tablet: await (await Tablet.open(office.browser, office.server)).start(job, person) };
}

/** Ids of the server's records of a piece, in its order. */
async function storedOf(job: string, piece: string): Promise<readonly string[]> {
  return (await listStored(office.server, job)).filter(({ record }) => record.piece === piece).map((x) => x.record.id);
}

test('a server that is killed in the middle of sending has each record once in the end', async () => {
  const { job, tablet } = await open();
  const pieces = Array.from({ length: 10 }, (_, k) => pieceOf(job, `killed ${k}`));
  const storedAll = async () =>
    (await listStored(office.server, job)).flatMap(({ record }) => (pieces.includes(record.piece) ? [record.id] : []));
  await tablet.context.setOffline(true);
  const ids = await tablet.run(async (at, of) => {
    const written: string[] = [];
    for (const piece of of) written.push(...(await at.measureMany(piece, 100)));
    return written;
  }, pieces);
  await tablet.syncNow();
  let calls = 0;
  await tablet.context.route(RECORDS, async (route) => {
    if (route.request().method() === 'POST') calls += 1;
    await route.continue();
    if (calls === 4) await office.server.kill();
  });
  await tablet.context.setOffline(false);
  await tablet.syncNow();
  const { unsent } = await tablet.sync();
  expect(unsent).toBeLessThan(1000);
  expect(unsent).toBeGreaterThan(0);
  await tablet.context.unroute(RECORDS);
  await office.server.restart();
  const before = await storedAll();
  // Whatever the tablet counts as sent is there.
  expect(before.length).toBeGreaterThanOrEqual(1000 - unsent);
  await tablet.syncNow();
  expect(await storedAll()).toEqual(ids);
  expect(await tablet.sync()).toMatchObject({ unsent: 0, problem: null });
  expect(await tablet.states(pieces)).toBe(await foldStored(office.server, job, pieces));
  await tablet.context.close();
});

test('an answer that is lost on its way makes nothing twice', async () => {
  const { job, tablet } = await open();
  const piece = pieceOf(job, 'lost answer');
  await tablet.context.route(RECORDS, async (route) => {
    if (route.request().method() === 'POST') await route.fetch();
    await route.abort();
  });
  const ids = await tablet.run((at, of) => at.measureMany(of, 5), piece);
  await tablet.syncNow();
  expect(await storedOf(job, piece)).toEqual(ids);
  expect(await tablet.sync()).toMatchObject({ unsent: 5, isServerThere: false });
  await tablet.context.unroute(RECORDS);
  await tablet.syncNow();
  expect(await storedOf(job, piece)).toEqual(ids);
  expect(await tablet.sync()).toMatchObject({ unsent: 0, isServerThere: true, problem: null });
  await tablet.context.close();
});

test('a line that breaks under a hundred records carries them ten by ten', async () => {
  const { job, tablet } = await open();
  const piece = pieceOf(job, 'weak line');
  const sizes: number[] = [];
  await tablet.context.route(RECORDS, async (route) => {
    if (route.request().method() !== 'POST') return route.continue();
    const { texts } = route.request().postDataJSON() as { texts: unknown[] };
    sizes.push(texts.length);
    await (texts.length > 10 ? route.abort() : route.continue());
  });
  const ids = await tablet.run((at, of) => at.measureMany(of, 35), piece);
  await tablet.syncNow();
  expect(sizes).toEqual([35, 10, 10, 10, 5]);
  expect(await storedOf(job, piece)).toEqual(ids);
  expect(await tablet.sync()).toMatchObject({ unsent: 0, isServerThere: true, problem: null });
  await tablet.context.close();
});

test('fetching that is broken off goes on where it was', async () => {
  const { job, tablet } = await open();
  const piece = pieceOf(job, 'many');
  for (let k = 0; k < 12; k += 1)
    await tablet.run((at, of) => at.measureMany(of, 100), k === 0 ? piece : pieceOf(job, `many ${k}`));
  await tablet.syncNow();
  const other = await Tablet.open(office.browser, office.server);
  const asked: string[] = [];
  await other.context.route(RECORDS, async (route) => {
    asked.push(new URL(route.request().url()).search);
    await (asked.length === 2 ? route.abort() : route.continue());
  });
  await other.start(job, QA);
  await expect.poll(async () => (await other.sync()).state).toBe('idle');
  await other.syncNow();
  const afters = asked.map((search) => Number(new URLSearchParams(search).get('after')));
  expect(afters[0]).toBe(0);
  // The page that was broken off is asked for again, none before it.
  expect(afters.slice(2)[0]).toBe(afters[1]);
  expect(afters.slice(1).every((after) => after >= 500)).toBe(true);
  expect(await other.states([piece])).toBe(await tablet.states([piece]));
  await tablet.context.close();
  await other.context.close();
});

test('a photo is sent after its record, once, and opens on another tablet', async () => {
  const { job, tablet } = await open();
  const other = await (await Tablet.open(office.browser, office.server)).start(job, QA);
  await office.server.stop();
  await tablet.context.setOffline(true);
  const keep = () =>
    tablet.run(async ({ device }) => {
      const canvas = new OffscreenCanvas(40, 30);
      canvas.getContext('2d')!.fillRect(0, 0, 20, 10);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
      return device.keepPhoto({ blob, width: 40, height: 30 });
    }, null);
  const hash = await keep();
  expect(await keep()).toBe(hash);
  expect(await tablet.sync()).toMatchObject({ unsentPhotos: 1 });
  await office.server.restart();
  await tablet.context.setOffline(false);
  const puts: string[] = [];
  tablet.page.on('request', (request) => request.method() === 'PUT' && puts.push(request.url()));
  await tablet.syncNow();
  await tablet.syncNow();
  expect(puts.length).toBe(1);
  expect(await tablet.sync()).toMatchObject({ unsentPhotos: 0, problem: null });
  const sizes = await Promise.all(
    [tablet, other].map((one) => one.run(async ({ device }, of) => (await device.openPhoto(of))?.size ?? null, hash)),
  );
  expect(sizes[0]).toBeGreaterThan(100);
  expect(sizes[1]).toBe(sizes[0]);
  expect(await other.run(({ device }) => device.openPhoto('0'.repeat(64)), null)).toBe(null);
  await tablet.context.close();
  await other.context.close();
});
