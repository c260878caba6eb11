import { expect, test } from 'vitest';
import { bringIn } from './harness/bring-in.ts';
import { waitUntilKept, withChanged } from './harness/kept-pages.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const describe = (html: string) =>
  html.replace(/name="description" content="[^"]*/, 'name="description" content="Newer');
const renumber = (script: string) => script.replace(/version:"\w+"/, 'version:"newer"');

/** Put on the page by `bringIn`. */
interface Brought {
  readonly keeping: typeof import('../../src/web/parts/register-service-worker.ts');
}

test('a newer page of the yard waits until a person takes it, so that no check is broken off', async () => {
  const screen = await office.open('/yard/');
  const { page } = screen;
  await waitUntilKept(page, office.server);
  const readMark = () => page.locator('meta[name="description"]').getAttribute('content');
  const isNewerThere = () => page.evaluate(() => (globalThis as unknown as Brought).keeping.newVersion.value !== null);
  const before = await readMark();
  expect(await isNewerThere()).toBe(false);
  await withChanged(office.server, 'yard.html', describe, () =>
    withChanged(office.server, 'sw.js', renumber, async () => {
      await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
      await expect.poll(isNewerThere).toBe(true);
      // Loaded anew it is still the page of its build.
      await page.reload();
      expect(await readMark()).toBe(before);
      await bringIn(page, 'src/web/parts/register-service-worker.ts', 'keeping');
      await page.evaluate(() => (globalThis as unknown as Brought).keeping.registerServiceWorker());
      await expect.poll(isNewerThere).toBe(true);
      await Promise.all([
        page.waitForEvent('load'),
        page.evaluate(() => (globalThis as unknown as Brought).keeping.takeNewVersion()),
      ]);
      expect(await readMark()).toBe('Newer');
      await expect.poll(() => page.evaluate(() => caches.keys())).toEqual(['onepour-newer']);
      await page.waitForLoadState('networkidle');
    }),
  );
});
