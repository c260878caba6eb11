import { expect, test } from 'vitest';
import { waitUntilKept, withChanged } from './harness/kept-pages.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const describe = (html: string) =>
  html.replace(/name="description" content="[^"]*/, 'name="description" content="Newer');
const renumber = (script: string) => script.replace(/version:"\w+"/, 'version:"newer"');

test('a newer page of the yard waits until a person takes it, so that no check is broken off', async () => {
  const screen = await office.open('/yard/device', { viewport: 'tablet' });
  const { page } = screen;
  await waitUntilKept(page, office.server);
  await page.reload();
  const readMark = () => page.locator('meta[name="description"]').getAttribute('content');
  const before = await readMark();
  const key = page.getByRole('button', { name: 'Take the newer version' });
  await page.getByRole('heading', { name: 'This device', level: 1 }).waitFor();
  expect(await key.count()).toBe(0);
  await withChanged(office.server, 'yard.html', describe, () =>
    withChanged(office.server, 'sw.js', renumber, async () => {
      await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
      await key.waitFor();
      // Loaded anew it is still the page of its build.
      await page.reload();
      await key.waitFor();
      expect(await readMark()).toBe(before);
      await screen.shoot('yard-newer-page');
      await Promise.all([page.waitForEvent('load'), key.click()]);
      expect(await readMark()).toBe('Newer');
      await expect.poll(() => page.evaluate(() => caches.keys())).toEqual(['onepour-newer']);
      await page.waitForLoadState('networkidle');
    }),
  );
});
