import { expect, it } from 'vitest';
import { openDemo, readServed } from './harness/open-demo.ts';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

/** Edits are saved, and read again, within that, on a busy machine too. */
const SOON = { timeout: 10_000 };

const office = useOffice();

const itemOf = async (id: string) => (await readServed(office)).library.catalogue.items.find((item) => item.id === id);

/** The catalogue as the page writes it. */
async function saveCsv(screen: Screen): Promise<string> {
  const { bytes } = await screen.readDownload(() => screen.page.getByRole('button', { name: 'Save as CSV' }).click());
  return new TextDecoder().decode(bytes);
}

async function give({ page }: Screen, text: string): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Take in a CSV' }).click(),
  ]);
  await chooser.setFiles({ name: 'inserts.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
}

it('says at the field why a value cannot be, and takes one that can', async () => {
  const { page } = await openDemo(office, 'catalogue/F16-103');
  const embedment = page.getByLabel('Embedment', { exact: true });
  await embedment.fill('120');
  await embedment.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'does not fit in an insert of 103 mm' }).waitFor();
  await embedment.fill('95');
  await embedment.press('Enter');
  await expect.poll(async () => (await itemOf('F16-103'))?.embedment_mm, SOON).toBe(95);
  await page.keyboard.press('Escape');
  await page.getByRole('heading', { name: 'F16-103' }).click();
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await itemOf('F16-103'))?.embedment_mm, SOON).toBe(96);
  expect(await page.getByRole('button', { name: 'Remove it' }).isDisabled()).toBe(true);
});

it('gives an insert another name, and all that use it follow', async () => {
  const { page } = await openDemo(office, 'catalogue/F24-170');
  const name = page.getByLabel('Type', { exact: true });
  await name.fill('F24-170-X');
  await name.press('Enter');
  await page.getByRole('heading', { name: 'F24-170-X' }).waitFor();
  await expect.poll(() => itemOf('F24-170'), SOON).toBeUndefined();
  const { castIns } = (await readServed(office)).job;
  expect(castIns.filter(({ item }) => item === 'F24-170-X').length).toBeGreaterThan(0);
});

it('adds a test with its report, and a rated load beside its caution', async () => {
  const { page } = await openDemo(office, 'catalogue/F16-75');
  await page.getByRole('button', { name: 'Add a test' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Add the test' }).click();
  await expect
    .poll(() => dialog.getByRole('alert').textContent(), SOON)
    .toContain('Still to fill in: Characteristic resistance');
  await dialog.getByLabel('Characteristic resistance').fill('41');
  await dialog.getByLabel('From concrete strength f_ck').fill('30');
  await dialog.getByLabel('Report', { exact: true }).fill('Invented report 9');
  await dialog.getByLabel('Standard', { exact: true }).fill('EN 1992-4');
  await dialog.getByLabel('Conditions').fill('cracked');
  await dialog.getByRole('button', { name: 'Add the test' }).click();
  await expect
    .poll(async () => (await itemOf('F16-75'))?.tested[0], SOON)
    .toMatchObject({
      mode: 'pull-out',
      characteristic_kN: 41,
      fromStrength_MPa: 30,
      report: 'Invented report 9',
    });
  expect(await page.getByText('A fixing insert is not a lifting insert, and not a brace insert').count()).toBe(1);
});

it('shows the faults of a CSV by row and column, then what a sound one would change, and takes it', async () => {
  const screen = await openDemo(office, 'catalogue');
  await screen.page.getByRole('link', { name: 'F16-120' }).waitFor();
  const own = await saveCsv(screen);
  const [head = '', ...rows] = own.trim().split('\r\n');
  const at = (name: string) => head.split(',').indexOf(name);
  const row = rows
    .find((line) => line.startsWith('F12-70,'))!
    .replace(/"[^"]*"/g, 'x')
    .split(',');
  const wrong = row.with(at('type'), 'F12-71').with(at('length_mm'), 'long').with(at('finish'), 'gold');
  await give(screen, [head, wrong.join(','), row.with(at('embedment_mm'), '300').join(',')].join('\r\n'));
  const dialog = screen.page.getByRole('dialog');
  await dialog.getByText('3 faults, nothing is taken').waitFor();
  const faults = await dialog.getByRole('row').allInnerTexts();
  expect(faults.slice(1)).toEqual([
    expect.stringMatching(/^2\s+length_mm/),
    expect.stringMatching(/^2\s+finish/),
    expect.stringMatching(/^3\s+embedment_mm/),
  ]);
  expect(await dialog.getByRole('button', { name: 'Take it in' }).isDisabled()).toBe(true);
  await dialog.getByRole('button', { name: 'Leave the catalogue as it is' }).click();

  // Without its document nothing that uses it passes.
  const bare = row
    .with(at('qualification_document'), '')
    .with(at('qualification_standard'), '')
    .with(at('name'), 'Bare');
  await give(screen, [head, bare.join(',')].join('\r\n'));
  await dialog.getByText('1 insert read: 0 new, 1 replace').waitFor();
  await dialog.getByText(/would come to another state/).waitFor();
  expect(await dialog.getByRole('table').textContent()).toContain('not covered');
  await dialog.getByRole('button', { name: 'Take it in' }).click();
  await expect.poll(async () => (await itemOf('F12-70'))?.qualification, SOON).toBeNull();
  expect((await itemOf('F16-120'))?.name).toContain('Ferrule');
});

it.each(['light', 'dark'] as const)('is open to everybody in the %s theme', async (theme) => {
  const screen = await openDemo(office, 'catalogue', { theme });
  await screen.page.getByRole('link', { name: 'F16-120' }).waitFor();
  await screen.checkAccess();
  await screen.page.getByRole('link', { name: 'F20-138-T' }).click();
  await screen.page.getByRole('heading', { name: 'Tested resistances' }).waitFor();
  await screen.checkAccess();
  await screen.page.getByRole('button', { name: 'Add a test' }).click();
  await screen.checkAccess();
});
