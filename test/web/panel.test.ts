import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import type { Screen, ScreenOptions } from './harness/screen.ts';
import { useOffice } from './harness.ts';

/** The panel of the demo with a connection that fails at its sloping edge. */
const PANEL = 'P03';
const FAILING = 'C09';

describe('the panel screen', () => {
  const office = useOffice();
  const job = { id: '' };

  beforeAll(async () => {
    const listed = (await (await fetch(`${office.server.address}/api/jobs`)).json()) as { jobs: { id: string }[] };
    job.id = listed.jobs[0]!.id;
  });

  async function openPanel(mark = PANEL, options: ScreenOptions = {}): Promise<Screen> {
    const screen = await office.open(`/job/${job.id}/panel/${mark}`, options);
    screen.page.setDefaultTimeout(8_000);
    await screen.page.waitForSelector('svg[role=application] [data-insert]');
    return screen;
  }

  async function readJob(): Promise<JobFile> {
    const opened = (await (await fetch(`${office.server.address}/api/jobs/${job.id}`)).json()) as { file: JobFile };
    return opened.file;
  }

  const side = (page: Page) => page.getByRole('complementary');
  const take = (page: Page, mark: string) => side(page).getByRole('button', { name: mark }).click();
  const figure = async (page: Page) =>
    Number.parseFloat((await side(page).locator('strong').first().textContent()) ?? '');
  const undo = (page: Page) => page.keyboard.press('Control+z');

  /** The middle of an insert's symbol on the screen. */
  async function findInsert(page: Page, id: string): Promise<readonly [number, number]> {
    const box = (await page.locator(`[data-insert="${id}"] > g`).first().boundingBox())!;
    return [box.x + box.width / 2, box.y + box.height / 2];
  }

  it('drags the failing connection from the edge until it passes, sees ratio and area follow, and undoes', async () => {
    const { page } = await openPanel();
    await take(page, FAILING);
    await expect.poll(() => side(page).textContent()).toContain('fails');
    const before = { figure: await figure(page), text: await side(page).getByRole('definition').first().textContent() };
    expect(before.figure).toBeGreaterThan(100);
    const [x, y] = await findInsert(page, '1');
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 5, y + 20, { steps: 4 });
    await page.mouse.move(x - 10, y + 60, { steps: 4 });
    // It follows while it is still held.
    await expect.poll(() => figure(page)).toBeLessThan(100);
    expect(await side(page).textContent()).toContain('passes');
    expect(await side(page).getByRole('definition').first().textContent()).not.toBe(before.text);
    await page.mouse.up();
    await expect.poll(async () => (await findInsert(page, '1'))[1]).toBeGreaterThan(y + 40);
    await page.waitForFunction(() =>
      /C09 \d+ %/.test(document.querySelector('svg[role=application]')?.textContent ?? ''),
    );
    await undo(page);
    await expect.poll(() => figure(page)).toBe(before.figure);
    expect((await findInsert(page, '1'))[1]).toBeCloseTo(y, 0);
  });

  it('gives a drag up with Escape, and puts back what cannot stay with the reason', async () => {
    const { page } = await openPanel();
    const [x, y] = await findInsert(page, '1');
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y + 50, { steps: 3 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(async () => (await findInsert(page, '1'))[1]).toBeCloseTo(y, 0);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y - 120, { steps: 5 });
    const alert = page.getByRole('alert');
    await expect.poll(() => alert.textContent()).toContain('outside the outline');
    await page.mouse.up();
    await expect.poll(() => alert.textContent()).toContain('It went back');
    await expect.poll(async () => (await findInsert(page, '1'))[1]).toBeCloseTo(y, 0);
  });

  it('is worked by keyboard alone: walk, move, remove, undo', async () => {
    const { page } = await openPanel('P01');
    await page.locator('svg[role=application]').focus();
    await page.keyboard.press('ArrowRight');
    const heading = side(page).locator('h2').first();
    const first = await heading.textContent();
    await page.keyboard.press('Tab');
    await expect.poll(() => heading.textContent()).not.toBe(first);
    await page.keyboard.press('Escape');
    await take(page, 'C02');
    const xField = side(page).getByRole('textbox', { name: 'x as drawn' });
    const x = Number(await xField.inputValue());
    await page.locator('svg[role=application]').focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(async () => Number(await xField.inputValue())).toBe(x + 5);
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(async () => Number(await xField.inputValue())).toBe(x + 55);
    await page.keyboard.press('Alt+ArrowLeft');
    await expect.poll(async () => Number(await xField.inputValue())).toBe(x + 54);
    await page.keyboard.press('Delete');
    await expect.poll(() => page.locator('[data-plate="C02"]').count()).toBe(0);
    for (let k = 0; k < 4; k += 1) await undo(page);
    await expect.poll(() => page.locator('[data-plate="C02"]').count()).toBe(1);
    await page.waitForFunction(() => (document.body.textContent ?? '').includes('Saved'));
    const { job: restored } = await readJob();
    expect(restored.connections.find(({ mark }) => mark === 'C02')?.inserts).toHaveLength(4);
  });

  it('refuses a typed place outside the panel where it was typed, and takes one from the datum', async () => {
    const { page } = await openPanel('P02');
    await take(page, 'C05');
    const x = side(page).getByRole('textbox', { name: 'x as drawn' });
    const was = await x.inputValue();
    await x.fill('-400');
    await x.press('Enter');
    await expect.poll(() => side(page).getByRole('alert').first().textContent()).toContain('outside the outline');
    expect(await x.inputValue()).toBe('-400');
    await x.press('Escape');
    await expect.poll(() => x.inputValue()).toBe(was);
    await page.locator('svg[role=application]').focus();
    await page.keyboard.press('v');
    await expect.poll(() => page.locator('header p').first().textContent()).toContain('seen from above');
    // Its datum corner is at the right: the same insert, another number.
    const fromDatum = side(page).getByRole('textbox', { name: 'x from the datum' });
    const read = Number(await fromDatum.inputValue());
    await fromDatum.fill(String(read + 20));
    await fromDatum.press('Enter');
    await expect.poll(() => fromDatum.inputValue()).toBe(String(read + 20));
    await page.keyboard.press('Escape');
    await undo(page);
  });

  it('places a connection from a pattern, whose strength is not checked until a load is given', async () => {
    const { page } = await openPanel();
    await page.getByRole('button', { name: 'Place …' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('textbox', { name: 'Rows', exact: true }).fill('1');
    await dialog.getByRole('textbox', { name: 'Rows', exact: true }).press('Enter');
    await dialog.getByRole('button', { name: 'Point at the place' }).click();
    await page.getByRole('status').filter({ hasText: 'Point at its middle' }).waitFor();
    const box = (await page.locator('svg[role=application]').boundingBox())!;
    await page.mouse.click(box.x + box.width * 0.45, box.y + box.height * 0.65);
    await expect.poll(() => side(page).textContent()).toContain('strength not checked');
    await page.waitForFunction(() => (document.body.textContent ?? '').includes('Saved'));
    const { job: now } = await readJob();
    const placed = now.connections.at(-1)!;
    expect(placed).toMatchObject({ panel: PANEL, actions: { kind: 'none' } });
    expect(placed.inserts).toHaveLength(2);
    await undo(page);
    await expect.poll(() => page.locator(`[data-plate="${placed.mark}"]`).count()).toBe(0);
  });

  it('shows a handed partner and says which panel to edit', async () => {
    const { page } = await openPanel('P13-H');
    expect(await side(page).textContent()).toContain('edit P13');
    const [x, y] = await findInsert(page, '1');
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 30, y + 10, { steps: 3 });
    await page.mouse.up();
    await expect.poll(() => page.getByRole('alert').first().textContent()).toContain('edit P13');
    expect((await findInsert(page, '1'))[0]).toBeCloseTo(x, 0);
  });

  it('lists what stands against the panel in its form, and takes the insert that is meant', async () => {
    const { page } = await openPanel();
    await page.getByRole('tab', { name: 'In the form' }).click();
    await page
      .getByRole('button', { name: /insert 2\)/ })
      .first()
      .click();
    await expect.poll(() => side(page).locator('h2').first().textContent()).toBe('Insert 2');
  });

  it('moves a connection by touch, and enlarges with two fingers', async () => {
    const screen = await openPanel(PANEL, { viewport: 'phone' });
    const { page } = screen;
    await page.locator('svg[role=application]').scrollIntoViewIfNeeded();
    const touch = await screen.context.newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: readonly (readonly [number, number])[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y]) => ({ x, y })) });
    const [x, y] = await findInsert(page, '6');
    await send('touchStart', [[x, y]]);
    for (let k = 1; k <= 6; k += 1) await send('touchMove', [[x + 6 * k, y + 3 * k]]);
    await send('touchEnd', []);
    await expect.poll(async () => (await findInsert(page, '6'))[0]).toBeGreaterThan(x + 20);
    await undo(page);
    await expect.poll(async () => (await findInsert(page, '6'))[0]).toBeCloseTo(x, 0);
    const apart = async () => (await findInsert(page, '9'))[0] - (await findInsert(page, '6'))[0];
    const was = await apart();
    await send('touchStart', [
      [150, y],
      [220, y],
    ]);
    for (let k = 1; k <= 5; k += 1)
      await send('touchMove', [
        [150 - 8 * k, y],
        [220 + 8 * k, y],
      ]);
    await send('touchEnd', []);
    await expect.poll(apart).toBeGreaterThan(was * 1.3);
  });

  it.each(['light', 'dark'] as const)('has no serious fault of access in the %s theme', async (theme) => {
    const screen = await openPanel(PANEL, { theme });
    await take(screen.page, FAILING);
    await screen.checkAccess();
    await screen.page.getByRole('button', { name: 'Place …' }).click();
    await screen.checkAccess();
  });
});
