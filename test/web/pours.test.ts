import { expect, it } from 'vitest';
import { readPdf } from '../files/read-pdf.ts';
import { openDemo, readServed } from './harness/open-demo.ts';
import { useOffice } from './harness.ts';

/** Edits are saved, and read again, within that, on a busy machine too. */
const SOON = { timeout: 10_000 };

const office = useOffice();

const pourOf = async (id: string) => (await readServed(office)).job.pours.find((pour) => pour.id === id);

it('lists pours by day with what stands against each, first the stops', async () => {
  const { page } = await openDemo(office, 'pours');
  const first = page.getByRole('article').first();
  await expect.poll(() => first.textContent(), SOON).toMatch(/Pour T12.*not ready: \d+ stops?.*STOP.*2 fail: C02, C09/);
  expect(await page.getByText('In no pour yet: 2 panels').isVisible()).toBe(true);
});

it('moves a piece by dragging and by typing, and says why it may not lie on another', async () => {
  const { page } = await openDemo(office, 'pours/T12');
  const piece = page.getByRole('slider', { name: /^P10 no. 1/ });
  const box = (await piece.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 100, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => (await pourOf('T12'))?.pieces[3]?.along_mm, SOON).toBeGreaterThan(19_000);
  await piece.focus();
  await page.keyboard.press('ArrowLeft');
  const typed = page.getByLabel('Place of P10 no. 1 along the bed');
  await typed.fill('13000');
  await typed.press('Enter');
  const fault = page.getByRole('alert').filter({ hasText: 'lies from 13000' });
  await expect.poll(() => fault.textContent(), SOON).toContain('on piece 1 of panel P03');
  await typed.fill('18000');
  await typed.press('Enter');
  await expect.poll(async () => (await pourOf('T12'))?.pieces[3]?.along_mm, SOON).toBe(18_000);
  await expect.poll(() => page.getByRole('alert').count(), SOON).toBe(0);
});

it('adds a pour of the panels in no pour, and removes it again', async () => {
  const { page } = await openDemo(office, 'pours');
  await page.getByRole('button', { name: 'Plan them' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Day').fill('2027-02-03');
  await dialog.getByRole('button', { name: 'Add the pour' }).click();
  await page.getByRole('heading', { name: 'Pour T15' }).waitFor();
  await expect.poll(async () => (await pourOf('T15'))?.pieces.map(({ panel }) => panel), SOON).toEqual(['P05', 'P06']);
  const [one, two] = (await pourOf('T15'))!.pieces;
  expect(two!.along_mm).toBeGreaterThan(one!.along_mm!);
  await page.getByRole('button', { name: 'Remove the pour' }).click();
  await expect.poll(() => pourOf('T15'), SOON).toBeUndefined();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(async () => (await pourOf('T15'))?.date, SOON).toBe('2027-02-03');
});

it('shows the folder page by page and gives it as a PDF that says of what state it is', async () => {
  const screen = await openDemo(office, 'pours/T12?view=folder');
  const { page } = screen;
  await page.getByText(/^1 of \d+: T12/).waitFor();
  const shown = Number(/of (\d+):/.exec((await page.getByText(/^1 of \d+: T12/).textContent()) ?? '')?.[1]);
  expect(shown).toBeGreaterThan(10);
  await page.keyboard.press('PageDown');
  await page.getByText(/^2 of \d+:/).waitFor();
  const { name, bytes } = await screen.readDownload(() =>
    page.getByRole('button', { name: 'Download the PDF' }).click(),
  );
  const pdf = await readPdf(bytes);
  expect(pdf.pages).toHaveLength(shown);
  const texts = pdf.texts.map(({ text }) => text).join('\n');
  expect(texts).toContain('P03');
  const fingerprint = /[0-9a-f]{12}/.exec(name)?.[0] ?? 'none';
  expect(texts).toContain(fingerprint);
  await page.getByLabel('What changed since').selectOption('A');
  await page.getByLabel('Paper').selectOption('A4');
  await page.getByRole('button', { name: 'Download the PDF' }).and(page.locator(':enabled')).waitFor();
  const small = await screen.readDownload(() => page.getByRole('button', { name: 'Download the PDF' }).click());
  const since = await readPdf(small.bytes);
  expect(since.pages[0]![0]).toBeCloseTo(297, 0);
  expect(since.texts.some(({ text }) => text.includes('Whole job:'))).toBe(true);
});

it('gives the set-out of a panel as DXF', async () => {
  const screen = await openDemo(office, 'pours/T12');
  const { name, bytes } = await screen.readDownload(() =>
    screen.page.getByRole('button', { name: 'Set-out of P03 as DXF' }).click(),
  );
  expect(name).toBe('P03.dxf');
  expect(new TextDecoder().decode(bytes)).toContain('ONEPOUR-INSERT');
});

it.each(['light', 'dark'] as const)('is open to everybody in the %s theme', async (theme) => {
  const screen = await openDemo(office, 'pours', { theme });
  await screen.page
    .getByText(/not ready/)
    .first()
    .waitFor();
  await screen.checkAccess();
  await screen.shoot(`pours-${theme}`);
  await screen.page.getByRole('link', { name: 'Pour T12' }).click();
  await screen.page.getByRole('slider').first().waitFor();
  await screen.checkAccess();
  await screen.page.getByRole('button', { name: 'Folder' }).click();
  await screen.page.getByText(/^1 of \d+: T12/).waitFor();
  await screen.checkAccess();
});
