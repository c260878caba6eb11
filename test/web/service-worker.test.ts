import { afterEach, expect, it } from 'vitest';
import { drawText } from '../../src/drawing/marks.ts';
import { readPdf } from '../files/read-pdf.ts';
import { bringIn } from './harness/bring-in.ts';
import { readPrecache, waitUntilKept, withChanged } from './harness/kept-pages.ts';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const DOWN = /ERR_CONNECTION_REFUSED|ERR_FAILED|ERR_INTERNET_DISCONNECTED|Failed to fetch|answer: .*\/api\//;

/** Opens a page and waits until everything on the list is kept. */
async function openKept(path: string): Promise<Screen> {
  const screen = await office.open(path);
  await waitUntilKept(screen.page, office.server);
  return screen;
}

afterEach(async () => {
  await office.server.stop();
  await office.server.restart();
});

it('opens the answer and writes its sheet while the server is down', async () => {
  const screen = await openKept('/answer');
  const title = await screen.page.title();
  await office.server.stop();
  await screen.context.setOffline(true);
  await screen.page.reload();
  expect(await screen.page.title()).toBe(title);
  await bringIn(screen.page, 'src/web/parts/pdf-client.ts', 'pdf');
  const bytes = await screen.page.evaluate(
    async (order) => {
      // Put there by `bringIn`.
      const { pdf } = globalThis as unknown as { pdf: typeof import('../../src/web/parts/pdf-client.ts') };
      return [...(await pdf.writePdfInWorker(order))];
    },
    {
      pages: [{ drawing: { width: 210, height: 297, marks: [drawText([20, 20], 'no line', 3)] }, bookmark: null }],
      details: { title: 'One', author: 'Yard', subject: 'Insert', date: new Date(0), language: 'en' },
    },
  );
  expect((await readPdf(new Uint8Array(bytes))).texts.map(({ text }) => text)).toEqual(['no line']);
  screen.faults.allow(DOWN);
});

it('opens the office at any of its paths while the server is down', async () => {
  const screen = await openKept('/');
  await office.server.stop();
  await screen.goto('/jobs/none/panels');
  await expect.poll(() => screen.page.title()).toBe('Nothing is here – Onepour');
  screen.faults.allow(DOWN);
});

it('shows the page of the server while it answers, not the kept one', async () => {
  const screen = await openKept('/answer');
  const rename = (html: string) => html.replace(/<title>[^<]*/, '<title>Newer');
  await withChanged(office.server, 'answer.html', rename, async () => {
    await screen.page.reload();
    expect(await screen.page.title()).toBe('Newer');
  });
});

it('keeps nothing of a job', async () => {
  const screen = await openKept('/');
  await screen.page.evaluate(async () => (await fetch('/api/jobs')).json());
  const kept = await screen.page.evaluate(async () => {
    const names = await caches.keys();
    const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
    return requests.flat().map(({ url }) => new URL(url).pathname);
  });
  expect(kept.length).toBeGreaterThanOrEqual(readPrecache(office.server).first.length);
  expect(kept.filter((path) => path.startsWith('/api'))).toEqual([]);
  await office.server.stop();
  const again = screen.page.evaluate(async () => (await fetch('/api/jobs')).json());
  await expect(again).rejects.toThrow(/fetch/);
  screen.faults.allow(DOWN);
});

it('forgets what an older build kept once the newer one takes over', async () => {
  const screen = await openKept('/');
  const { version } = readPrecache(office.server);
  const listCaches = () => screen.page.evaluate(() => caches.keys());
  await withChanged(
    office.server,
    'sw.js',
    (script) => script.replace(version, 'newer'),
    async () => {
      await screen.page.evaluate(async () => {
        const registration = await navigator.serviceWorker.ready;
        await registration.update();
        while (registration.waiting === null) await new Promise((resolve) => setTimeout(resolve, 20));
      });
      // The older one serves its open pages to the end.
      expect(await listCaches()).toContain(`onepour-${version}`);
      await screen.page.goto('about:blank');
      // The newer one takes over once the last page of the older is gone; a page asked for in between may be left waiting.
      await screen.page.waitForTimeout(1000);
      await screen.goto('/');
      await expect.poll(listCaches, { timeout: 10_000 }).toEqual(['onepour-newer']);
      // The server is changed back after this: nothing of the page is on its way then.
      await screen.page.waitForLoadState('networkidle');
    },
  );
});
