import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { listPlanned } from '../../src/assess/yard/piece-head.ts';
import { planPiece } from '../../src/assess/yard/plan-piece.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { bringIn } from './harness/bring-in.ts';
import { waitUntilKept } from './harness/kept-pages.ts';
import { type Screen, VIEWPORTS } from './harness/screen.ts';
import { readYardJob } from './harness/yard.ts';
import { useOffice } from './harness.ts';
import { CHECKER } from './records/tablet.ts';
import type * as pageSide from './records/tablet-page.ts';

const office = useOffice();
const BUDGET_MS = 2000;
const RUNS = 3;
const DOWN = /ERR_|Failed to|Failed to fetch|answer: .*\/api\//;

/** Every piece that the demo plans with the keys of its inserts. */
async function listPieces(): Promise<readonly { readonly piece: string; readonly items: readonly string[] }[]> {
  const { job, file } = await readYardJob(office);
  const index = indexJob(file);
  return [...listPlanned(job, index).values()].map(({ piece, mark, bed }) => {
    const plan = planPiece(index, {
      id: piece,
      mark,
      bed: file.library.yard.beds.find(({ id }) => id === bed) ?? null,
    });
    return { piece, items: plan.setOut.items.map(({ castIn }) => castIn.key) };
  });
}

/** A tablet that has been in the office once, and then checked every piece in two stages: the page is kept, a job and a person are chosen. */
async function leaveOffice(): Promise<Screen> {
  const { job } = await readYardJob(office);
  const pieces = await listPieces();
  const screen = await office.open('/yard/', { viewport: 'tablet' });
  await waitUntilKept(screen.page, office.server);
  await bringIn(screen.page, 'test/web/records/tablet-page.ts', 'brought');
  const written = await screen.page.evaluate(
    async ([id, person, all]) => {
      // Put there by `bringIn`.
      const { brought } = globalThis as unknown as { brought: typeof pageSide };
      const { device } = await brought.startTablet(id, person, false);
      const draft = { checkKey: null, measuredAt: null, measuredBy: null };
      const drafts = all.flatMap(({ piece, items }) =>
        items.flatMap((item) =>
          ([1, 2] as const).flatMap((stage) => [
            {
              ...{ ...draft, piece, item },
              ...{ kind: 'placed' as const, body: { stage, type: true, face: true, firm: true, note: null } },
            },
            {
              ...{ ...draft, piece, item, kind: 'measured' as const },
              body: { stage, x_mm: 100, y_mm: 200, level_mm: null, basis: 'tape' as const },
            },
          ]),
        ),
      );
      return (await device.writeAll(drafts)).length;
    },
    [job, CHECKER, pieces] as const,
  );
  expect(written).toBeGreaterThan(100);
  console.info(`records on the tablet: ${written}, pieces: ${pieces.length}`);
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
  await screen.context.close();
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
  await screen.context.close();
  screen.faults.allow(DOWN);
});
