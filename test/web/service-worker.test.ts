import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, expect, it } from 'vitest';
import { drawText } from '../../src/drawing/marks.ts';
import { readPdf } from '../files/read-pdf.ts';
import { bringIn } from './harness/bring-in.ts';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const DOWN = /ERR_CONNECTION_REFUSED|ERR_FAILED|ERR_INTERNET_DISCONNECTED|Failed to fetch|answer: .*\/api\//;

interface Precache {
  readonly version: string;
  readonly first: readonly string[];
  readonly later: readonly string[];
}

/** The list in the service worker as it is served. */
function readPrecache(): Precache {
  const script = readFileSync(join(office.server.web, 'sw.js'), 'utf8');
  const found = /\{version:"(\w+)",first:(\[[^\]]*\]),later:(\[[^\]]*\])\}/.exec(script);
  if (found === null) throw new Error('sw.js has no list of what it keeps');
  const [, version, first, later] = found;
  return { version: version!, first: JSON.parse(first!), later: JSON.parse(later!) };
}

/** Opens a page and waits until everything on the list is kept. */
async function openKept(path: string): Promise<Screen> {
  const screen = await office.open(path);
  await bringIn(screen.page, 'src/web/parts/register-service-worker.ts', 'keeping');
  const { version, first, later } = readPrecache();
  await screen.page.evaluate(
    async ({ name, addresses }) => {
      // Put there by `bringIn`.
      const { keeping } = globalThis as unknown as {
        keeping: typeof import('../../src/web/parts/register-service-worker.ts');
      };
      if (!(await keeping.registerServiceWorker())) throw new Error('this browser has no service worker');
      const cache = await caches.open(name);
      const isKept = async () => (await Promise.all(addresses.map((one) => cache.match(one)))).every((one) => one);
      while (!(await isKept())) await new Promise((resolve) => setTimeout(resolve, 20));
    },
    { name: `onepour-${version}`, addresses: [...first, ...later] },
  );
  return screen;
}

/** Has the server give another text for a file of the build while `act` runs. */
async function withChanged(name: string, change: (text: string) => string, act: () => Promise<void>): Promise<void> {
  const file = join(office.server.web, name);
  const text = readFileSync(file, 'utf8');
  const write = (content: string) => {
    writeFileSync(file, content);
    writeFileSync(`${file}.gz`, gzipSync(content));
  };
  try {
    write(change(text));
    await act();
  } finally {
    write(text);
  }
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
  await withChanged('answer.html', rename, async () => {
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
  expect(kept.length).toBeGreaterThanOrEqual(readPrecache().first.length);
  expect(kept.filter((path) => path.startsWith('/api'))).toEqual([]);
  await office.server.stop();
  const again = screen.page.evaluate(async () => (await fetch('/api/jobs')).json());
  await expect(again).rejects.toThrow(/fetch/);
  screen.faults.allow(DOWN);
});

it('forgets what an older build kept once the newer one takes over', async () => {
  const screen = await openKept('/');
  const { version } = readPrecache();
  const listCaches = () => screen.page.evaluate(() => caches.keys());
  await withChanged(
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
