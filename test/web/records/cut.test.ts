import { expect, test } from 'vitest';
import { useOffice } from '../harness.ts';
import { CHECKER, findJob, foldStored, listStored, pieceOf, QA, Tablet } from './tablet.ts';

const office = useOffice();

/** Two tablets with the job on them, as they leave the office. */
async function leave() {
  const job = await findJob(office.server);
  const tablets = await Promise.all(
    [CHECKER, QA].map(async (person) => (await Tablet.open(office.browser, office.server)).start(job, person)),
  );
  return { job, one: tablets[0]!, two: tablets[1]! };
}

/** The network really cut: no server, and the browsers know of no line. */
async function cut(...tablets: readonly Tablet[]): Promise<void> {
  await office.server.stop();
  for (const { context } of tablets) await context.setOffline(true);
}

async function closeAll(...tablets: readonly Tablet[]): Promise<void> {
  for (const { context } of tablets) await context.close();
}

test.each(['one', 'two'] as const)(
  'what two tablets wrote without a line is the same everywhere when %s comes back first',
  async (first) => {
    const { job, one, two } = await leave();
    const pieces = ['a', 'b'].map((serial) => pieceOf(job, `${first} ${serial}`));
    const [piece, other] = pieces as [string, string];
    const before = await listStored(office.server, job);
    await cut(one, two);
    await one.look(piece, 'both', true);
    await two.look(piece, 'both', false);
    await one.look(piece, 'mine', true);
    await two.look(other, 'mine', true);
    // As when the tablet goes to sleep and the browser clears its page away.
    await one.load();
    await one.start();
    await one.look(other, 'both', true);
    expect(await one.sync()).toMatchObject({ unsent: 3, isServerThere: false });
    expect(await two.sync()).toMatchObject({ unsent: 2 });

    await office.server.restart();
    expect(await listStored(office.server, job)).toEqual(before);
    const order = first === 'one' ? [one, two] : [two, one];
    for (const tablet of order) {
      await tablet.context.setOffline(false);
      await tablet.syncNow();
    }
    await order[0]!.syncNow();
    const states = await foldStored(office.server, job, pieces);
    expect(await one.states(pieces)).toBe(states);
    expect(await two.states(pieces)).toBe(states);
    expect(states).toContain('"isConflict":true');
    for (const tablet of order) expect(await tablet.sync()).toMatchObject({ unsent: 0, problem: null });
    expect((await listStored(office.server, job)).length).toBe(before.length + 5);

    await office.server.stop();
    await office.server.restart();
    await one.load();
    await one.start();
    expect(await one.states(pieces)).toBe(states);
    expect(await foldStored(office.server, job, pieces)).toBe(states);
    await closeAll(one, two);
  },
);

test('a line that comes back is noticed, and what waits goes by itself', async () => {
  const { job, one, two } = await leave();
  const piece = pieceOf(job, 'comes back');
  await cut(one, two);
  const id = await one.look(piece, 'x');
  await office.server.restart();
  await one.context.setOffline(false);
  await expect
    .poll(async () => (await listStored(office.server, job)).map(({ record }) => record.id), { timeout: 10_000 })
    .toContain(id);
  await expect.poll(async () => (await one.sync()).unsent).toBe(0);
  await closeAll(one, two);
});
