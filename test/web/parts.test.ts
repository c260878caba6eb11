import { expect, it } from 'vitest';
import { openDemo } from './harness/open-demo.ts';
import { useOffice } from './harness.ts';

/** Edits are saved, and read again, within that, on a busy machine too. */
const SOON = { timeout: 10_000 };

const office = useOffice();

const given = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

it('counts the whole job, and gives the list as CSV', async () => {
  const screen = await openDemo(office, 'parts');
  const row = screen.page.getByRole('row', { name: /^F16-103 Ferrule/ });
  await row.waitFor();
  const { bytes } = await screen.readDownload(() => screen.page.getByRole('button', { name: 'Parts as CSV' }).click());
  const [head, ...rows] = new TextDecoder().decode(bytes).trim().split('\r\n');
  expect(head).toMatch(/^scope,pour,date,panel/);
  const own =
    rows
      .find((line) => line.startsWith('job,') && line.includes(',F16-103,'))
      ?.replace(/"[^"]*"/g, 'x')
      .split(',') ?? [];
  // What the table says is what the list says.
  const count = own[head!.split(',').indexOf('count')];
  expect(await row.getByRole('cell').nth(1).textContent()).toBe(count);
});

it('tells what is wrong in a stock list row by row, then counts against a sound one and keeps it on this device', async () => {
  const { page } = await openDemo(office, 'parts');
  await page.getByRole('row', { name: /^F16-103 Ferrule/ }).waitFor();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Choose a stock list' }).click(),
  ]);
  await chooser.setFiles(given('shelf.csv', 'id,in_stock,on_order,arrives\nF16-103,many,,\nF12-70,4,2,soon\n'));
  await page.getByText('shelf.csv: 2 faults, nothing was read').waitFor();
  const faults = page.getByRole('table', { name: 'What is wrong in shelf.csv' });
  expect(await faults.getByRole('row').allInnerTexts()).toEqual([
    expect.stringContaining('row'),
    expect.stringMatching(/^2\s+in_stock/),
    expect.stringMatching(/^3\s+arrives/),
  ]);
  const [again] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Choose a stock list' }).click(),
  ]);
  await again.setFiles(given('shelf.csv', 'id,in_stock,on_order,arrives\nF16-103,10,,\n'));
  await page.getByText(/short of \d+ kinds/).waitFor();
  const short = page.getByRole('table', { name: 'What is short' });
  expect(
    await short
      .getByRole('row', { name: /^F16-103 / })
      .first()
      .textContent(),
  ).toMatch(/T12/);
  await page.reload();
  await page.getByText(/short of \d+ kinds/).waitFor();
  await page.getByRole('button', { name: 'Count without it' }).click();
  await expect.poll(() => page.getByText(/short of/).count(), SOON).toBe(0);
});

it('lays out the bench of a pour and the labels of its bags', async () => {
  const screen = await openDemo(office, 'parts');
  const { page } = screen;
  await page.getByLabel('Of', { exact: true }).selectOption('pour:T14');
  await page.getByRole('table', { name: 'Bench of pour T14' }).waitFor();
  expect(await page.getByRole('article').count()).toBe(5);
  expect(await page.getByRole('article', { name: 'Bag of P12 no. 2' }).textContent()).toContain('revision');
  const { bytes } = await screen.readDownload(() => page.getByRole('button', { name: 'Labels as CSV' }).click());
  const lines = new TextDecoder().decode(bytes).trim().split('\r\n').slice(1);
  expect(new Set(lines.map((line) => line.split(',')[0]))).toEqual(new Set(['T14']));
});

it.each(['light', 'dark'] as const)('is open to everybody in the %s theme', async (theme) => {
  const screen = await openDemo(office, 'parts', { theme });
  await screen.page.getByRole('row', { name: /^F16-103 Ferrule/ }).waitFor();
  await screen.checkAccess();
  await screen.page.getByLabel('Of', { exact: true }).selectOption('pour:T12');
  await screen.page.getByRole('table', { name: 'Bench of pour T12' }).waitFor();
  await screen.checkAccess();
});
