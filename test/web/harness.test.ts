import { expect, it } from 'vitest';
import { useOffice } from './harness.ts';

const office = useOffice();

/** Runs in the page: a piece of work as one task, five times over; how long the shortest took [ms]. */
async function work(): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < 5; round++) {
    await new Promise<void>((resolve) =>
      setTimeout(() => {
        const start = performance.now();
        const roots = Array.from({ length: 5e5 }, (_, k) => Math.sqrt(k));
        times.push(performance.now() - start + 0 * roots.length);
        resolve();
      }),
    );
  }
  return Math.min(...times);
}

it('has every fault of a page on record', async () => {
  const { page, faults } = await office.open('/');
  faults.checkNone();
  await page.evaluate(() => {
    console.error('planted on the console');
    setTimeout(() => {
      throw new Error('planted and not caught');
    });
    const script = document.createElement('script');
    script.textContent = 'document.title = "planted in line"';
    document.body.append(script);
    return fetch('/assets/planted.js');
  });
  expect(await page.title()).not.toBe('planted in line');
  expect(() => faults.checkNone()).toThrow();
  for (const planted of [/planted on the console/, /planted and not caught/, /Content Security Policy/])
    await expect.poll(() => faults.expect(planted)).toBeUndefined();
  faults.expect(/answer: GET \S+planted\.js: 404/);
  faults.allow(/planted\.js/);
  faults.allow(/404/);
  expect(() => faults.expect(/planted/)).toThrow('no fault like /planted/');
});

it('finds a button that says nothing', async () => {
  const screen = await office.open('/');
  await screen.page.evaluate(() => document.body.append(document.createElement('button')));
  await expect(screen.checkAccess()).rejects.toThrow(/button-name/);
});

it('finds tasks that hold the page up, and slows it down', async () => {
  const screen = await office.open('/');
  await screen.takeLongTasks();
  const before = await screen.page.evaluate(work);
  await screen.slowDown(20);
  const slow = await screen.page.evaluate(work);
  await screen.slowDown(1);
  // Far less than 20, and the quicker of two: other programs may slow the quick one too.
  const quick = Math.min(before, await screen.page.evaluate(work));
  expect(slow / quick).toBeGreaterThan(3);
  await expect.poll(async () => Math.max(0, ...(await screen.takeLongTasks()))).toBeGreaterThan(50);
});

it('reads the file that a page gives', async () => {
  const screen = await office.open('/');
  const { name, bytes } = await screen.readDownload(() =>
    screen.page.evaluate(() => {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob(['seven inserts']));
      link.download = 'given.txt';
      link.click();
    }),
  );
  expect([name, new TextDecoder().decode(bytes)]).toEqual(['given.txt', 'seven inserts']);
});

it('shows the same person a second tab, and another person none of it', async () => {
  const first = await office.open('/');
  await first.page.evaluate(() => localStorage.setItem('planted', 'here'));
  const read = () => localStorage.getItem('planted');
  const second = await office.openBeside(first, '/');
  expect(await second.page.evaluate(read)).toBe('here');
  const other = await office.open('/', { viewport: 'phone', theme: 'dark' });
  expect(await other.page.evaluate(read)).toBeNull();
  expect(await other.page.evaluate(() => [innerWidth, matchMedia('(prefers-color-scheme: dark)').matches])).toEqual([
    390,
    true,
  ]);
});

it('ends the server at once and starts it again at the same address', async () => {
  const { server } = office;
  const { address } = server;
  const ask = () => fetch(`${address}/api/jobs`).then((answer) => answer.json());
  const before = await ask();
  await server.kill();
  await expect(ask()).rejects.toThrow();
  await server.restart();
  expect(server.address).toBe(address);
  expect(await ask()).toEqual(before);
});
