import { expect, test } from 'vitest';
import { useOffice } from '../harness.ts';
import { CHECKER, findJob, foldStored, listStored, pieceOf, Tablet } from './tablet.ts';

const office = useOffice();
const RECORDS = '**/api/jobs/*/records*';

async function take(): Promise<{ readonly job: string; readonly tablet: Tablet }> {
  const job = await findJob(office.server);
  return { job, tablet: await (await Tablet.open(office.browser, office.server)).start(job, CHECKER) };
}

test('of a job that was removed in the office the tablet is told nothing new, and what it writes is taken all the same', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'removed');
  const act = (method: string, path: string) => fetch(`${office.server.address}/api/jobs/${job}${path}`, { method });
  await act('DELETE', '');
  await tablet.look(piece, 'x', true);
  await tablet.syncNow();
  expect(await tablet.sync()).toMatchObject({
    unsent: 0,
    isServerThere: true,
    problem:
      'The server gives nothing new of this job: the job is not in its list any more; the office can put a removed one back. What is written here is kept; it is asked again.',
  });
  await act('POST', '/restore');
  await tablet.syncNow();
  expect((await tablet.sync()).problem).toBe(null);
  expect((await listStored(office.server, job)).filter(({ record }) => record.piece === piece)).toHaveLength(1);
  await tablet.context.close();
});

test('a text that the server would not even look at keeps no other from being sent, stays on the device, and is told', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'refused');
  await tablet.context.route(RECORDS, async (route) => {
    const body = route.request().postData() ?? '';
    if (body.includes('item13'))
      await route.fulfill({ status: 413, json: { error: 'too-large', message: 'too long' } });
    else await route.continue();
  });
  await tablet.run((at, of) => at.measureMany(of, 20), piece);
  await tablet.syncNow();
  const storedItems = async () =>
    (await listStored(office.server, job)).flatMap(({ record }) => (record.piece === piece ? [record.item] : []));
  expect((await storedItems()).length).toBe(19);
  expect(await storedItems()).not.toContain('item13');
  const { unsent, problem, isServerThere } = await tablet.sync();
  expect({ unsent, isServerThere }).toEqual({ unsent: 1, isServerThere: true });
  expect(problem).toMatch(/^The server did not take everything: too long\./);
  await tablet.context.unroute(RECORDS);
  await tablet.syncNow();
  expect(await tablet.sync()).toMatchObject({ unsent: 0, problem: null });
  expect(await tablet.states([piece])).toBe(await foldStored(office.server, job, [piece]));
  await tablet.context.close();
});

test('a server without room is told, and what waits goes when there is room again', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'server full');
  await tablet.context.route(RECORDS, async (route) => {
    if (route.request().method() === 'POST')
      await route.fulfill({ status: 507, json: { error: 'disk-full', message: 'there is no room on the disk' } });
    else await route.continue();
  });
  await tablet.look(piece, 'x');
  await tablet.syncNow();
  expect(await tablet.sync()).toMatchObject({
    unsent: 1,
    problem: expect.stringMatching(/^The server did not take everything: there is no room on the disk\./),
  });
  await tablet.context.unroute(RECORDS);
  // By itself, after growing waits.
  await expect.poll(async () => (await tablet.sync()).unsent, { timeout: 20_000 }).toBe(0);
  await expect.poll(async () => (await tablet.sync()).problem).toBe(null);
  await tablet.context.close();
});

test('a record that only a newer version can read is kept, told, and read after the update', async () => {
  const { job, tablet } = await take();
  const piece = pieceOf(job, 'newer');
  const id = await tablet.look(piece, 'x');
  await tablet.syncNow();
  const state = await foldStored(office.server, job, [piece]);
  const older = await Tablet.open(office.browser, office.server);
  const rename = (text: string) => text.replace(/\\"kind\\":\\"placed\\"/g, '\\"kind\\":\\"placed-by-a-newer-one\\"');
  await older.context.route(RECORDS, async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: rename(await response.text()) });
  });
  await older.start(job, CHECKER);
  expect((await older.sync()).problem).toMatch(/written by a newer version of this page: kept/);
  expect(await older.states([piece])).not.toContain(id);
  // As the update reads it.
  const contents = await older.copyOut();
  expect(contents.unread!.length).toBeGreaterThan(0);
  contents.unread = contents.unread!.map(([key, value]) => {
    const unread = value as { readonly text: string };
    return [key, { ...unread, text: unread.text.replace('placed-by-a-newer-one', 'placed') }];
  });
  await older.context.unroute(RECORDS);
  await older.context.setOffline(true);
  await older.load();
  await older.copyIn(contents);
  await older.start();
  expect(await older.states([piece])).toBe(state);
  await expect.poll(async () => (await older.sync()).problem).toBe(null);
  await tablet.context.close();
  await older.context.close();
});
