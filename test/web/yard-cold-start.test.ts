import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { bringIn } from './harness/bring-in.ts';
import { waitUntilKept } from './harness/kept-pages.ts';
import { type Screen, VIEWPORTS } from './harness/screen.ts';
import { useOffice } from './harness.ts';
import { CHECKER, findJob } from './records/tablet.ts';
import type * as pageSide from './records/tablet-page.ts';

const office = useOffice();
const BUDGET_MS = 2000;
const RUNS = 3;
const DOWN = /ERR_|Failed to|Failed to fetch|answer: .*\/api\//;

/** A tablet that has been in the office once: the page is kept, the job and a person are chosen. */
async function leaveOffice(): Promise<Screen> {
  const job = await findJob(office.server);
  const screen = await office.open('/yard/', { viewport: 'tablet' });
  await waitUntilKept(screen.page, office.server);
  await bringIn(screen.page, 'test/web/records/tablet-page.ts', 'brought');
  await screen.page.evaluate(
    async ([id, person]) => {
      // Put there by `bringIn`.
      const { brought } = globalThis as unknown as { brought: typeof pageSide };
      await brought.startTablet(id, person, false);
    },
    [job, CHECKER] as const,
  );
  return screen;
}

/** From the start of the navigation until the pours are in sight, at a quarter of the processor's speed [ms]; the best of some. */
async function measure({ context }: Screen): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const page = await context.newPage();
    await page.setViewportSize(VIEWPORTS.tablet);
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    await page.goto(`${office.server.address}/yard/pours`, { waitUntil: 'commit' });
    times.push(await waitForPours(page));
    await page.close();
  }
  return Math.min(...times);
}

async function waitForPours(page: Page): Promise<number> {
  await page.locator('a[href^="/yard/pour/"]').first().waitFor();
  return page.evaluate(() => performance.now());
}

afterEach(async () => {
  await office.server.stop();
  await office.server.restart();
});

test('the yard opens within two seconds without a server and without a line', async () => {
  const screen = await leaveOffice();
  await office.server.stop();
  await screen.context.setOffline(true);
  const time = await measure(screen);
  console.info(`cold start of the yard without a line at 4x slow-down: ${time.toFixed(0)} ms`);
  expect(time).toBeLessThan(BUDGET_MS);
  screen.faults.allow(DOWN);
});

test('the yard opens within two seconds on a line that is there and carries nothing', async () => {
  const screen = await leaveOffice();
  const thaw = office.server.freeze();
  try {
    const time = await measure(screen);
    console.info(`cold start of the yard on a dead line at 4x slow-down: ${time.toFixed(0)} ms`);
    expect(time).toBeLessThan(BUDGET_MS);
  } finally {
    thaw();
  }
  screen.faults.allow(DOWN);
});
