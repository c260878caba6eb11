import { expect, test } from 'vitest';
import { VIEWPORTS } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

/** How often it is measured; the best counts, since other work on the machine only ever makes it slower. */
const RUNS = 3;
const BUDGET_MS = 1000;

/** From the start of the navigation to the first drawing, and to the panels of the job in sight, at a quarter of the processor's speed [ms]. */
async function measure(path: string): Promise<{ readonly first: number; readonly list: number }> {
  const context = await office.browser.newContext({ viewport: VIEWPORTS.desk });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.goto(`${office.server.address}${path}`, { waitUntil: 'commit' });
  await page.getByText('P01').first().waitFor();
  const measured = await page.evaluate(() => ({
    first: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.POSITIVE_INFINITY,
    list: performance.now(),
  }));
  await context.close();
  return measured;
}

test('the first drawing of a job comes within a second at a quarter of the speed', async () => {
  const { jobs } = await (await fetch(`${office.server.address}/api/jobs`)).json();
  const runs: Awaited<ReturnType<typeof measure>>[] = [];
  for (let run = 0; run < RUNS; run++) runs.push(await measure(`/job/${jobs[0].id}/panels`));
  const best = (what: 'first' | 'list') => Math.min(...runs.map((one) => one[what]));
  console.info(
    `first drawing at 4x slow-down: ${best('first').toFixed(0)} ms; panels in sight: ${best('list').toFixed(0)} ms`,
  );
  expect(best('first')).toBeLessThan(BUDGET_MS);
  // The list itself may take another half second on such a machine.
  expect(best('list')).toBeLessThan(BUDGET_MS * 1.5);
});
