import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { listFormMeasures } from '../../src/assess/yard/form-measures.ts';
import { findPersonId } from './harness/checked-piece.ts';
import { checkTargets, checkWidth, findYardPiece, openYard, readServerRecords, TABLET } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

/** A hand at the keyboard that counts its keys. */
class Typist {
  readonly #page: Page;
  keys = 0;

  constructor(page: Page) {
    this.#page = page;
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      await this.#page.keyboard.press(key);
      this.keys += 1;
    }
  }

  async type(text: string): Promise<void> {
    await this.press(...text);
  }

  /** Where the hand is: the name of the field or box. */
  at(): Promise<string | null> {
    return this.#page.evaluate(() => document.activeElement?.getAttribute('data-cell') ?? null);
  }
}

/** So many keys a second are slow typing, with reading in between. */
const KEYS_A_SECOND = 3;

it('takes a sheet of twenty inserts by keyboard alone in less than five minutes, and keeps each key', async () => {
  const { id, plan } = await findYardPiece(office, 'P13');
  const setter = await findPersonId(office, 'setter');
  const screen = await openYard(office, `/yard/piece/${id}/sheet`, { person: 'checker' });
  const { page } = screen;
  await page.getByLabel('Revision on the sheet').waitFor();
  const hand = new Typist(page);
  // From the top of the page to the first field, without a pointer.
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  while ((await hand.at()) !== 'letter') await hand.press('Tab');
  await hand.type('B');
  await hand.press('Tab');
  const day = new Date(Date.now() - 86_400_000);
  const [year, month, date] = day.toISOString().slice(0, 10).split('-') as [string, string, string];
  // Year and month stand there, if it is this month's.
  if (new Date().toISOString().startsWith(`${year}-${month}`)) await hand.press('End');
  else await hand.press('Control+A', ...`${year}-${month}-`);
  await hand.type(date);
  while ((await hand.at()) !== 'stage 1 time') await hand.press('Tab');
  await hand.type('0940');
  while ((await hand.at()) !== 'stage 1 by') await hand.press('Tab');
  await hand.type('C');
  await hand.press('Tab');
  for (const { what, nominal } of listFormMeasures(plan.setOut.form)) {
    expect(await hand.at()).toBe(`form ${what}`);
    await hand.type(String(nominal));
    await hand.press('Enter');
  }
  // What should be there is not on the screen.
  const nominal = plan.setOut.items.map(({ taped }) => Math.round(taped[0])).filter((value) => value > 999);
  const shown = (await page.locator('main').textContent()) ?? '';
  for (const value of nominal) expect(shown).not.toContain(String(value));
  for (const stage of [1, 2] as const) {
    const items = plan.setOut.items.filter((item) => item.stage === stage);
    for (const [i, item] of items.entries()) {
      const key = item.castIn.key;
      if (stage === 2 && i === 0) while ((await hand.at()) !== `stage 2 ${key} x`) await hand.press('Tab');
      expect(await hand.at()).toBe(`stage ${stage} ${key} x`);
      await hand.type(String(Math.round(item.taped[0])));
      await hand.press('Enter');
      await hand.type(String(Math.round(item.taped[1])));
      await hand.press('Enter');
      await hand.type('2');
      await hand.press('Enter');
      // One of the first stage is not firm on the sheet.
      if (stage === 1 && i === 1) await hand.press('y', 'y', 'n');
      else await hand.press('a');
    }
  }
  await screen.shoot('sheet-typed');
  await checkTargets(page);
  await checkWidth(page);
  await screen.checkAccess();
  // A reload in the middle: nothing is lost.
  await page.reload();
  await page.getByLabel('Revision on the sheet').waitFor();
  const first = plan.setOut.items[0]!;
  const box = page.getByLabel(`insert ${first.number}, x`, { exact: true });
  expect(await box.inputValue()).toBe(String(Math.round(first.taped[0])));
  // After screeding nothing was looked at: the boxes stay empty. To the key that writes it down, by keyboard.
  const atKey = () => page.evaluate(() => document.activeElement?.textContent?.startsWith('Write it down') === true);
  while (!(await atKey())) await hand.press('Shift+Tab');
  await hand.press('Enter');
  await page.waitForURL(new RegExp(`/yard/piece/${id}$`));
  const seconds = hand.keys / KEYS_A_SECOND;
  console.log(`20 inserts: ${hand.keys} keys, ${Math.round(seconds)} s at ${KEYS_A_SECOND} keys a second`);
  expect(seconds).toBeLessThan(300);
  const ofPiece = async () => (await readServerRecords(office)).filter(({ piece }) => piece === id);
  await expect.poll(async () => (await ofPiece()).length, { timeout: 15_000 }).toBe(41);
  const records = await ofPiece();
  const placed = records.filter((record) => record.kind === 'placed');
  expect(placed).toHaveLength(20);
  expect(placed.filter(({ body }) => !body.firm)).toHaveLength(1);
  const time = `${day.toISOString().slice(0, 10)}T09:40:00.000Z`;
  for (const { measuredAt, typedAt, measuredBy, person } of records) {
    expect(measuredAt).toBe(time);
    expect(Date.parse(typedAt) - Date.parse(measuredAt)).toBeGreaterThan(3_600_000);
    expect([measuredBy, person === setter]).toEqual([setter, false]);
  }
  await page.goto(new URL(`/yard/piece/${id}/sheet`, page.url()).href);
  await page.getByLabel('Revision on the sheet').waitFor();
  expect(await box.inputValue()).toBe('');
}, 180_000);

it('names everything that stands against it at once, goes there, and says what an old revision means', async () => {
  const { id, plan } = await findYardPiece(office, 'P11');
  const screen = await openYard(office, `/yard/piece/${id}/sheet`, { person: 'checker' });
  const { page } = screen;
  const { castIn, number, stage } = plan.setOut.items[0]!;
  await page.getByLabel(`insert ${number}, type`, { exact: true }).press('y');
  await page.getByRole('button', { name: 'Write it down' }).tap();
  await page.getByText(`insert ${number}: "face" is left out; y or n as on the sheet`).waitFor();
  await page.getByText('which revision letter is printed on the sheet?').tap();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-cell'))).toBe('letter');
  await page.keyboard.type('A');
  await page.getByText('Revision A is not in force, B is').waitFor();
  await page.setViewportSize(TABLET.portrait);
  await screen.shoot('sheet-portrait');
  await checkTargets(page);
  await checkWidth(page);
  expect(castIn.key).not.toBe('');
  expect(stage).toBeGreaterThan(0);
});
