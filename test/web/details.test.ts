import { expect, it } from 'vitest';
import { openDemo, readServed } from './harness/open-demo.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

const insertsOf = async (detail: string) => {
  const { job } = await readServed(office);
  return job.connections
    .filter((one) => one.detail === detail)
    .flatMap(({ panel, inserts }) =>
      inserts.flatMap(({ insert }) => job.castIns.find((one) => one.panel === panel && one.id === insert)?.item ?? []),
    );
};

it('tells what follows a change before it is made; then all connections follow, and undo takes all back', async () => {
  const { page } = await openDemo(office, 'details');
  await page.getByLabel('Insert of its connections').selectOption('F16-75');
  const bar = page.getByRole('region', { name: 'A change that is not made yet' });
  await bar.getByText('5 connections on 3 panels follow.').waitFor();
  expect(new Set(await insertsOf('T1'))).toEqual(new Set(['F16-103']));
  await bar.getByRole('button', { name: 'Make the change everywhere' }).click();
  await expect.poll(async () => [...new Set(await insertsOf('T1'))]).toEqual(['F16-75']);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect.poll(async () => [...new Set(await insertsOf('T1'))]).toEqual(['F16-103']);
});

it('says which connections would no longer pass, and gives a change up', async () => {
  const { page } = await openDemo(office, 'details');
  const thickness = page.getByLabel('Thickness');
  await thickness.fill('4');
  await thickness.press('Enter');
  const bar = page.getByRole('region', { name: 'A change that is not made yet' });
  await bar.getByText(/now “passes” would be “fails”: .*C41/).waitFor();
  await bar.getByRole('button', { name: 'Give it up' }).click();
  await bar.waitFor({ state: 'detached' });
  expect(await thickness.inputValue()).toBe('20');
});

it('refuses a plate without room for its holes', async () => {
  const { page } = await openDemo(office, 'details');
  const width = page.getByLabel('Width of the plate');
  await width.fill('150');
  await width.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'hole 1 at (-100, 100) lies outside the plate' }).waitFor();
});

it('makes, copies, renames and removes a detail, but none that is placed', async () => {
  const { page } = await openDemo(office, 'details');
  await page.getByRole('button', { name: 'Remove T1' }).click();
  await page.getByText(/Detail T1 is in use: .*C41 on P13/).waitFor();
  await page.getByRole('button', { name: 'Copy T1' }).click();
  const name = page.getByLabel('Short name');
  await expect.poll(() => name.inputValue()).toBe('T3');
  await name.fill('T9');
  await name.press('Enter');
  await page.getByRole('button', { name: 'Remove T9' }).click();
  await expect
    .poll(async () => (await readServed(office)).library.details.details.map(({ id }) => id))
    .toEqual(['T1', 'T2']);
});

it.each(['light', 'dark'] as const)('can be used by everybody (%s)', async (theme) => {
  const screen = await openDemo(office, 'details', { theme });
  await screen.page.getByRole('table', { name: 'Where it is placed' }).waitFor();
  await screen.checkAccess();
});
