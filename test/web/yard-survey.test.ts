import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { RecordOf } from '../../src/records/record.ts';
import { serveCheckedPiece } from './harness/checked-piece.ts';
import { checkTargets, checkWidth, openYard, readServerRecords, setLight, TABLET } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 10_000 };

async function served(piece: string): Promise<readonly RecordOf<'surveyed'>[]> {
  const all = await readServerRecords(office);
  return all.filter((record): record is RecordOf<'surveyed'> => record.piece === piece && record.kind === 'surveyed');
}

/** Types a number once the pad asks for what it should. */
async function type(page: Page, asks: RegExp, value: number): Promise<void> {
  await page.getByRole('region', { name: asks }).waitFor();
  // A tap that brings the pad may bounce: it rests for a moment.
  await page.waitForTimeout(400);
  await page.keyboard.type(`${value < 0 ? '-' : ''}${Math.abs(value)}`);
  await page.keyboard.press('Enter');
}

/** How far an insert is from the sides of a rectangular panel, as drawn. */
function sidesOf(panel: { readonly outline_mm: readonly (readonly number[])[] }, at: readonly [number, number]) {
  const xs = panel.outline_mm.map(([x]) => x!);
  const ys = panel.outline_mm.map(([, y]) => y!);
  return {
    low: [at[0] - Math.min(...xs), at[1] - Math.min(...ys)] as const,
    high: [Math.max(...xs) - at[0], Math.max(...ys) - at[1]] as const,
  };
}

it('tapes two inserts from two sides without a line, says what is off as one stands, and sends it when the line is back', async () => {
  const { id, plan } = await serveCheckedPiece(office, 'P11', '1');
  const screen = await openYard(office, `/yard/piece/${id}/survey`, { person: 'setter' });
  const { page, context } = screen;
  const { panel, items } = plan.setOut;
  await page.getByText(/^You look at the/).waitFor();
  await screen.shoot('start');
  await checkTargets(page);
  await checkWidth(page);
  await screen.checkAccess();
  const face = (await page.getByText(/^You look at the/).textContent())!.includes('outside') ? 'outside' : 'inside';
  const seen = items.filter(({ castIn }) => castIn.face === face);
  const isMirrored = face !== panel.drawnFace;
  await context.setOffline(true);
  await page.getByRole('button', { name: /^Tape the inserts/ }).tap();
  for (const [k, { number, castIn }] of seen.slice(0, 2).entries()) {
    const { low, high } = sidesOf(panel, [castIn.x_mm, castIn.y_mm]);
    // The first lies 9 mm off to the right as one stands.
    const right = k === 0 ? 9 : 0;
    const [toLeft, toRight] = isMirrored ? [high[0], low[0]] : [low[0], high[0]];
    const asked = new RegExp(`^${number} · from the (left side|right side|top|bottom)$`);
    for (let side = 0; side < 2; side += 1) {
      const pad = page.getByRole('region', { name: asked });
      await pad.waitFor();
      const name = (await pad.getAttribute('aria-label'))!;
      const value = name.endsWith('left side')
        ? toLeft + right
        : name.endsWith('right side')
          ? toRight - right
          : name.endsWith('top')
            ? high[1]
            : low[1];
      // Where it should be is not said before it is typed.
      if (k === 0 && side === 0) {
        await screen.shoot('tape');
        await checkTargets(page);
        expect(await page.getByText(`${Math.round(value - right)} mm`).count()).toBe(0);
      }
      await type(page, new RegExp(name.replace('·', '.')), Math.round(value));
    }
    await type(page, new RegExp(`^${number} · how deep`), k === 0 ? -3 : 2);
    if (k > 0) continue;
    await page.getByText(`${number}: OFF: 9 mm to the right; 3 mm proud (may be`).waitFor();
    await screen.shoot('off');
    await checkTargets(page);
    await page.getByRole('button', { name: /^How it leans/ }).tap();
    for (const [asks, value] of [
      [/length out of the face/, 95],
      [/aside to the right/, -3],
      [/aside upward/, 0],
    ] as const)
      await type(page, asks, value);
  }
  // What was begun survives that the page is left.
  await page.reload();
  await page.getByText(new RegExp(`^${seen[2]!.number} . from the`)).waitFor();
  await page.getByRole('button', { name: 'Enough' }).tap();
  await page.getByLabel('Tape or rod').fill('tape 5 m');
  await page.getByLabel('Its number').fill('TP 12');
  await page.getByLabel(/^Calibrated until/).fill('2027-02-30');
  const write = page.getByRole('button', { name: 'Write the survey down' });
  expect(await write.isDisabled()).toBe(true);
  await page.getByText('“2027-02-30” is no day').waitFor();
  await page.getByLabel(/^Calibrated until/).fill('2027-02-28');
  await screen.shoot('end');
  await checkTargets(page);
  await write.tap();
  await page.getByText('The survey is written down').waitFor();
  await screen.shoot('written');
  await checkTargets(page);
  expect(await served(id)).toHaveLength(0);
  await context.setOffline(false);
  screen.faults.allow(/ERR_INTERNET_DISCONNECTED/);
  await expect.poll(async () => (await served(id)).length, SOON).toBe(1);
  const [record] = await served(id);
  const first = seen[0]!.castIn.key;
  expect(record!.body).toMatchObject({
    basis: 'tape',
    controls: [],
    points: [],
    tool: { name: 'tape 5 m', serial: 'TP 12' },
  });
  expect(record!.body.tapes.map(({ item }) => item)).toEqual([first, first, seen[1]!.castIn.key, seen[1]!.castIn.key]);
  expect(record!.body.stances[0]).toEqual({
    item: first,
    depth_mm: -3,
    tilt: { x_mm: isMirrored ? 3 : -3, y_mm: 0, over_mm: 95 },
  });
  // Taken back, it stays in the history and counts no more.
  await page.getByRole('button', { name: /^Undo/ }).tap();
  await expect
    .poll(
      async () => (await readServerRecords(office)).some(({ kind, piece }) => piece === id && kind === 'correction'),
      SOON,
    )
    .toBe(true);
}, 60_000);

it('takes four numbers of one connection from a scaffold, with the panel turned as it is seen', async () => {
  const { id, plan } = await serveCheckedPiece(office, 'P13', '1');
  const screen = await openYard(office, `/yard/piece/${id}/survey`, { hold: 'portrait', person: 'foreman' });
  const { page } = screen;
  await page.getByRole('button', { name: 'Turn it' }).tap();
  await page.getByText(/turned by 90°$/).waitFor();
  await screen.shoot('turned-portrait');
  await checkTargets(page);
  await checkWidth(page);
  await page.getByRole('button', { name: /^From a scaffold/ }).tap();
  await page.getByRole('heading', { name: 'Which connection?' }).waitFor();
  await screen.shoot('connections-portrait');
  await checkTargets(page);
  await page
    .getByRole('button', { name: /^C\d+ .*(outside|inside)$/ })
    .first()
    .tap();
  const lengths = new Map(plan.setOut.items.map(({ number, castIn }) => [number, castIn]));
  let between: number | null = null;
  for (;;) {
    const pad = page.locator('section[aria-label*=" to "], section[aria-label*=" from the "]');
    if ((await pad.count()) === 0) break;
    const name = (await pad.getAttribute('aria-label'))!;
    const pair = /^(\d+) to (\d+)$/.exec(name);
    if (pair !== null) {
      const [a, b] = [lengths.get(Number(pair[1]))!, lengths.get(Number(pair[2]))!];
      between = Math.round(Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm));
      await screen.shoot('between-portrait');
      await checkTargets(page);
      await type(page, new RegExp(name), between);
    } else await page.getByRole('button', { name: 'Out of reach' }).tap();
  }
  expect(between).not.toBeNull();
  await page.getByRole('button', { name: 'Write the survey down' }).waitFor();
  await screen.shoot('scaffold-end');
  for (const light of ['sun', 'night'] as const) {
    await setLight(page, light);
    await screen.shoot(`scaffold-${light}`);
  }
  await page.setViewportSize(TABLET.landscape);
  await screen.checkAccess();
  await page.getByRole('button', { name: 'Write the survey down' }).tap();
  await page.getByRole('link', { name: /^Does it go on/ }).waitFor();
  await expect.poll(async () => (await served(id)).length, SOON).toBe(1);
  const [record] = await served(id);
  expect(record!.body.basis).toBe('scaffold');
  expect(record!.body.tapes.every(({ to }) => to.kind === 'insert')).toBe(true);
}, 60_000);
