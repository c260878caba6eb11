import { expect, it } from 'vitest';
import { openDemo, readServed } from './harness/open-demo.ts';
import { useOffice } from './harness.ts';

/** Edits are saved, and read again, within that, on a busy machine too. */
const SOON = { timeout: 10_000 };

const office = useOffice();

const rules = async () => (await readServed(office)).library.rules;

it('shows what another standard would do to every connection before it is taken', async () => {
  const { page } = await openDemo(office, 'rules');
  await page.getByLabel('Standard', { exact: true }).selectOption('ACI 318-19');
  await page.getByText(/\d+ connections would come to another state, \d+ would not/).waitFor();
  expect(await page.getByText('ACI 318-19 takes none of the partial factors').isVisible()).toBe(true);
  expect(await page.getByLabel('γ of concrete').count()).toBe(0);
  expect(await page.getByRole('row', { name: /^C02 / }).textContent()).toMatch(/fails.*not covered/);
  expect((await rules()).standard).toBe('EN 1992-4');
  await page.getByRole('button', { name: 'Leave it as it is' }).click();
  expect(await page.getByLabel('Standard', { exact: true }).inputValue()).toBe('EN 1992-4');
  await page.getByLabel('Standard', { exact: true }).selectOption('AS 5216');
  await page.getByRole('button', { name: 'Take it for this job' }).click();
  await expect.poll(async () => (await rules()).standard, SOON).toBe('AS 5216');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(async () => (await rules()).standard, SOON).toBe('EN 1992-4');
});

it('refuses a factor below 1 and an aim below what is allowed', async () => {
  const { page } = await openDemo(office, 'rules');
  const factor = page.getByLabel('γ of concrete');
  await factor.fill('0.9');
  await factor.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'expected 1 or more' }).waitFor();
  await factor.press('Escape');
  const aim = page.getByLabel('Below a trowelled face, aimed');
  await aim.fill('12');
  await aim.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'deeper than the 8 mm that are allowed' }).waitFor();
  await aim.fill('4');
  await aim.press('Enter');
  await expect.poll(async () => (await rules()).belowFace.aim_mm, SOON).toBe(4);
});

it('gives a bed another name with its pours, and takes a new concrete', async () => {
  const { page } = await openDemo(office, 'rules');
  const bed = page.getByLabel('Short name').first();
  await bed.fill('B9');
  await bed.press('Enter');
  await expect
    .poll(async () => (await readServed(office)).job.pours.map((pour) => pour.bed), SOON)
    .toEqual(['B9', 'B2', 'B9']);
  await page.getByRole('button', { name: 'Add a concrete' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name on drawings').fill('C60');
  await dialog.getByLabel('Strength f_ck at 28 days').fill('60');
  await dialog.getByRole('button', { name: 'Add it' }).click();
  await expect
    .poll(async () => (await readServed(office)).job.concretes.map(({ id }) => id), SOON)
    .toEqual(['C40', 'C50', 'C60']);
});

it('says what is not covered', async () => {
  const { page } = await openDemo(office, 'rules');
  await page.getByRole('link', { name: 'Not covered' }).click();
  expect(await page.getByText('Earthquake, fire and fatigue.').isVisible()).toBe(true);
});

it.each(['light', 'dark'] as const)('is open to everybody in the %s theme', async (theme) => {
  const screen = await openDemo(office, 'rules', { theme });
  await screen.page.getByLabel('Concrete where nothing is said').selectOption('no');
  await screen.page.getByText('Tried, not taken').waitFor();
  await screen.page.getByText(/would come to another state/).waitFor();
  await screen.checkAccess();
});
