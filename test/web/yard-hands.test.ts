import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { serveCheckedPiece } from './harness/checked-piece.ts';
import { checkForm, Finger } from './harness/finger.ts';
import { findYardPiece, type Hold, openYard, readServerRecords, setLight } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 15_000 };

/** A wet glove on a key: two touches in the same place, a moment apart. */
async function bounce(page: Page, key: Locator, apart = 120): Promise<void> {
  const { x, y, width, height } = (await key.boundingBox())!;
  const at = [x + width / 2, y + height / 2] as const;
  await page.touchscreen.tap(...at);
  await page.waitForTimeout(apart);
  await page.touchscreen.tap(...at);
}

async function countServed(piece: string, kind: string): Promise<number> {
  return (await readServerRecords(office)).filter((record) => record.piece === piece && record.kind === kind).length;
}

describe('a tap that bounces', () => {
  it('says nothing of the next stop, and takes back one entry', async () => {
    const { id, plan } = await findYardPiece(office, 'P13');
    const { page } = await openYard(office, `/yard/piece/${id}/form`);
    const finger = new Finger(page);
    await checkForm(finger, plan);
    await finger.tap(/^Before the cage/);
    const stops = plan.stops.filter(({ stage }) => stage === 1);
    expect(stops.length).toBeGreaterThan(1);
    const key = page.getByRole('button', { name: /^All as shown/ });
    await key.and(page.locator(':not([aria-disabled])')).waitFor();
    await bounce(page, key);
    await expect.poll(() => countServed(id, 'placed'), SOON).toBe(stops[0]!.members.length);
    // Longer than a round of sending: what the second touch had written would be there too.
    await page.waitForTimeout(1500);
    expect(await countServed(id, 'placed')).toBe(stops[0]!.members.length);
    const undo = page.getByRole('button', { name: /^Undo/ });
    await undo.and(page.locator(':not([aria-disabled])')).waitFor();
    await bounce(page, undo);
    await expect.poll(() => countServed(id, 'correction'), SOON).toBe(stops[0]!.members.length);
    await page.waitForTimeout(1500);
    expect(await countServed(id, 'correction')).toBe(stops[0]!.members.length);
  }, 120_000);
});

/** Asks by a key, and fails where a finger on that key could touch one of the answers. */
async function ask(page: Page, key: Locator): Promise<void> {
  const from = (await key.boundingBox())!;
  await key.tap();
  const question = page.getByRole('dialog');
  await question.waitFor();
  const answers = await question.getByRole('button').all();
  expect(answers).toHaveLength(2);
  for (const answer of answers) {
    const to = (await answer.boundingBox())!;
    const isApart =
      to.x > from.x + from.width ||
      from.x > to.x + to.width ||
      to.y > from.y + from.height ||
      from.y > to.y + to.height;
    expect(isApart, (await answer.textContent()) ?? '').toBe(true);
  }
}

describe('what takes two taps', () => {
  it.each<Hold>(['landscape', 'portrait'])(
    'takes them in two places, the tablet held %s',
    async (hold) => {
      const { id } = await serveCheckedPiece(office, hold === 'landscape' ? 'P08' : 'P11', '1');
      const screen = await openYard(office, `/yard/piece/${id}`, { hold, person: 'qa' });
      const { page } = screen;
      const no = page.getByRole('button', { name: 'No, back' });
      await page.getByRole('button', { name: /^More/ }).tap();
      await ask(page, page.getByRole('button', { name: /^Another casting/ }));
      await screen.shoot(`asks-in-the-page-${hold}`);
      await no.tap();
      await page.goto(new URL(`/yard/piece/${id}/clearance`, page.url()).href);
      const clear = page.getByRole('button', { name: 'Clear nothing is open' });
      for (const light of ['shed', 'sun', 'night'] as const) {
        await setLight(page, light);
        await ask(page, clear);
        await screen.shoot(`asks-${light}-${hold}`);
        await no.tap();
      }
    },
    90_000,
  );
});
