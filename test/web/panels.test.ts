import { describe, expect, it } from 'vitest';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

async function openDemo(options: Parameters<typeof office.open>[1] = {}): Promise<Screen> {
  const screen = await office.open('/', options);
  await screen.page.getByRole('link', { name: /Boat store/ }).click();
  // What a test before this one added is there where it came to be saved.
  await screen.page.getByText(/^Of \d+ panels/).waitFor();
  await screen.page.getByLabel('Connections computed').waitFor({ state: 'detached' });
  return screen;
}

const marksOf = ({ page }: Screen) =>
  page.locator('a[data-panel]').evaluateAll((links) => links.map((link) => link.textContent));

describe('the list of panels', () => {
  it('begins with what fails, says by what, and leads there', async () => {
    const screen = await openDemo();
    const { page } = screen;
    const first = page.locator('li[aria-posinset="1"]');
    await first.getByText('1 fails', { exact: true }).waitFor();
    expect(await first.getByRole('link').nth(1).textContent()).toMatch(/^C\d+ fails by .+, 1\d\d %: .+/);
    expect(await page.getByText(/^Of 14 panels/).textContent()).toMatch(
      /^Of 14 panels, 6 have connections that fail, 2 have some that are not covered, 1 has strength not checked\. Begin with P\d+: /,
    );
    await first.getByRole('link').nth(1).click();
    await page.waitForURL(/\/connection\/C\d+$/);
  });

  it('is searched, chosen by state and ordered; the choice stays', async () => {
    const screen = await openDemo();
    const { page } = screen;
    await page.keyboard.press('/');
    await page.keyboard.type('c12');
    await expect.poll(() => marksOf(screen)).toEqual(['P04']);
    await page.getByRole('link', { name: 'P04', exact: true }).click();
    await page.waitForURL(/\/panel\/P04$/);
    await page.goBack();
    await expect.poll(() => marksOf(screen)).toEqual(['P04']);
    await page.getByRole('searchbox').fill('');
    await page.getByRole('button', { name: 'strength not checked' }).click();
    await expect.poll(() => marksOf(screen)).toEqual(['P02']);
    await page.getByRole('button', { name: 'strength not checked' }).click();
    await page.getByLabel('Order').selectOption('mark');
    await expect.poll(async () => (await marksOf(screen)).slice(0, 3)).toEqual(['P01', 'P02', 'P03']);
    await page.getByRole('searchbox').fill('nothing like it');
    await page.getByRole('button', { name: 'Show all' }).click();
    await expect.poll(async () => (await marksOf(screen)).length).toBeGreaterThan(8);
  });

  it('adds, copies and removes panels, each with the way back', async () => {
    const screen = await openDemo();
    const { page } = screen;
    const undo = () => page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await page.getByLabel('Order').selectOption('job');

    await page.getByRole('button', { name: 'More about P04' }).click();
    await page.getByLabel('Mark of the copy').fill('P04 east');
    await page.getByRole('button', { name: 'Copy', exact: true }).click();
    await page.getByText('15 panels', { exact: true }).waitFor();
    await undo();
    await page.getByText('14 panels', { exact: true }).waitFor();

    await page.getByRole('button', { name: 'More about P04' }).click();
    await page.getByRole('button', { name: 'Remove P04' }).click();
    await page.getByText('13 panels', { exact: true }).waitFor();
    await undo();
    await page.getByText('14 panels', { exact: true }).waitFor();

    await page.getByRole('button', { name: 'Add a panel' }).click();
    await page.getByLabel('Mark', { exact: true }).fill('P04');
    await page.getByRole('button', { name: 'Add and open it' }).click();
    await page.getByRole('alert').waitFor();
    await page.getByLabel('Mark', { exact: true }).fill('P20');
    await page.getByRole('button', { name: 'Add and open it' }).click();
    await page.waitForURL(/\/panel\/P20$/);
  });

  it('makes a handed partner, which is edited in its source', async () => {
    const { page } = await openDemo();
    await page.getByLabel('Order').selectOption('mark');
    await page.getByRole('button', { name: 'More about P05' }).click();
    await page.getByRole('button', { name: 'Make it' }).click();
    await page.getByText(/see whether it is the same mirrored/).waitFor();
    await page.getByRole('button', { name: 'Seen' }).click();
    await page.getByRole('button', { name: 'More about P05-H' }).click();
    await page.getByRole('button', { name: 'Edit P05' }).click();
    await page.waitForURL(/\/panel\/P05$/);
  });

  it('gives the job, its schedules and its results as files', async () => {
    const screen = await openDemo();
    const { page } = screen;
    await page.keyboard.press('Shift+E');
    const job = await screen.readDownload(() => page.getByRole('button', { name: /^SQ-17.*\.json$/ }).click());
    expect(JSON.parse(new TextDecoder().decode(job.bytes)).format).toBe('onepour-job');
    await page.getByRole('button', { name: 'Write the schedules' }).click();
    const panels = await screen.readDownload(() => page.getByRole('button', { name: 'panels.csv' }).click());
    expect(new TextDecoder().decode(panels.bytes)).toMatch(/^mark,key,concrete,/);
    const results = await screen.readDownload(() => page.getByRole('button', { name: /results\.csv$/ }).click());
    const rows = new TextDecoder().decode(results.bytes).trim().split('\r\n');
    expect(rows[0]).toMatch(/^connection,panel,face,inserts,state,ratio,governing/);
    expect(rows.some((row) => /^C08,P02,.*,strength not checked,/.test(row))).toBe(true);
  });

  it('is readable aloud and by contrast, and needs no sideways scroll on a phone', async () => {
    for (const [theme, viewport] of [
      ['light', 'desk'],
      ['dark', 'phone'],
    ] as const) {
      const screen = await openDemo({ theme, viewport });
      await screen.checkAccess();
      await screen.shoot(`panels-${viewport}-${theme}`);
      const wide = await screen.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(wide).toBeLessThanOrEqual(0);
      expect(await screen.page.evaluate(() => innerWidth)).toBe(viewport === 'phone' ? 390 : 1440);
    }
  });
});
