import { expect, it } from 'vitest';
import { openDemo, readServed } from './harness/open-demo.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

const typesOf = async (panel: string, ids: readonly string[]) =>
  (await readServed(office)).job.castIns
    .filter((one) => one.panel === panel && ids.includes(one.id))
    .map(({ item }) => item);

it('ranks the inserts with which it passes, says why not the others, and takes one as one edit', async () => {
  const { page } = await openDemo(office, 'connection/C02/insert');
  const ranked = page.getByRole('list', { name: 'Inserts with which it passes' });
  const first = ranked.getByRole('listitem').first();
  expect(await first.textContent()).toMatch(/F16-140.*98 %.*concrete cone \(wind out\)/);
  const others = page.getByRole('table', { name: 'Inserts with which it does not pass' });
  expect(await others.getByRole('row', { name: /F16-75/ }).textContent()).toContain('122 %');
  await page.getByRole('button', { name: 'Take this one: F16-140' }).click();
  await page.getByText('C02 has F16-140 now: it was 107 %, it is 98 %').waitFor();
  await expect.poll(() => typesOf('P01', ['5', '6', '7', '8'])).toEqual(Array(4).fill('F16-140'));
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(() => typesOf('P01', ['5', '6', '7', '8'])).toEqual(Array(4).fill('F16-103'));
  await page.getByRole('button', { name: 'Take this one: F16-140' }).waitFor();
});

it('tries more where more may be changed', async () => {
  const { page } = await openDemo(office, 'connection/C02/insert');
  const ranked = page.getByRole('list', { name: 'Inserts with which it passes' }).getByRole('listitem');
  await ranked.first().waitFor();
  const count = await ranked.count();
  const move = page.getByLabel('It may be moved up to');
  await move.fill('50');
  await move.press('Enter');
  await ranked.filter({ hasText: 'with it: move' }).first().waitFor();
  await expect.poll(() => ranked.count()).toBeGreaterThan(count);
});

it('says the next step where no action is given', async () => {
  const { page } = await openDemo(office, 'connection/C08/insert');
  await page.getByText('Give loads, or what each insert must resist, then choose again').waitFor();
});

it.each(['light', 'dark'] as const)('can be used by everybody (%s)', async (theme) => {
  const screen = await openDemo(office, 'connection/C40/insert', { theme });
  await screen.page.getByRole('list', { name: 'Inserts with which it passes' }).waitFor();
  await screen.checkAccess();
});
