import { expect, it } from 'vitest';
import { openDemo, readServed } from './harness/open-demo.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

const actionsOf = async (mark: string) =>
  (await readServed(office)).job.connections.find((one) => one.mark === mark)?.actions;

it('gives the answer first: the governing way to fail, with its steps', async () => {
  const { page } = await openDemo(office, 'connection/C02');
  await page.getByRole('heading', { name: 'C02' }).waitFor();
  await page.getByText('concrete cone governs, in “wind out”').waitFor();
  const results = page.getByRole('table', { name: 'Ways to fail' });
  const first = results.getByRole('row').nth(1);
  expect(await first.textContent()).toMatch(/concrete cone.*90 kN.*83\.8 kN.*107 %/);
  await page.getByRole('button', { name: 'Steps: concrete cone' }).click();
  await results.getByText('90000 / 83752.67').waitFor();
  expect(await results.textContent()).toContain('EN 1992-4:2018 7.2.1.4 (4)');
  await page.getByRole('button', { name: 'Open all steps' }).click();
  expect(await results.getByText('the fixture stays elastic').count()).toBe(1);
  expect(await page.getByRole('img', { name: /C02 to scale/ }).isVisible()).toBe(true);
  expect(await page.getByRole('img', { name: /Section of insert/ }).isVisible()).toBe(true);
});

it('recomputes as a load is typed, and goes back by undo', async () => {
  const { page } = await openDemo(office, 'connection/C02');
  const load = page.getByRole('textbox', { name: 'N of wind out' });
  await load.fill('45');
  await load.press('Enter');
  await page.getByText('passes', { exact: true }).first().waitFor();
  await page.getByText('bending of the plate governs').or(page.getByText('concrete cone governs')).waitFor();
  await expect.poll(async () => JSON.stringify(await actionsOf('C02'))).toContain('"N_kN":45');
  await load.fill('much');
  await load.press('Enter');
  await page.getByRole('alert').filter({ hasText: '“much” is no value here; expected a number in kN' }).waitFor();
  await load.press('Escape');
  await page.getByRole('button', { name: 'Undo: C02: N of wind out' }).click();
  await page.getByText('concrete cone governs, in “wind out”').waitFor();
  await expect.poll(async () => JSON.stringify(await actionsOf('C02'))).toContain('"N_kN":90');
});

it('suggests what would make it pass; one press makes it so, undo takes it back', async () => {
  const { page } = await openDemo(office, 'connection/C02');
  const take = page.getByRole('button', { name: /^Take it: take F16-140/ });
  await take.click();
  await page.getByText(/It was 107 %, it is 98 %/).waitFor();
  await page.getByText('passes', { exact: true }).first().waitFor();
  expect(await page.getByRole('heading', { name: 'What would make it pass' }).count()).toBe(0);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await take.waitFor();
  await page.getByText(/^Saved/).waitFor();
});

it('never calls a connection without an action passed', async () => {
  const { page } = await openDemo(office, 'connection/C01');
  await page.getByLabel('Given as').selectOption('no action is given');
  await page.getByText('Nothing governs').waitFor();
  const head = page.locator('header').filter({ hasText: 'C01' });
  expect(await head.textContent()).toContain('strength not checked');
  expect(await head.textContent()).not.toContain('passes');
  await page.getByRole('button', { name: 'Undo: C01: no action is given' }).click();
  await page.getByText('passes', { exact: true }).first().waitFor();
  await page.getByText(/^Saved/).waitFor();
});

it('takes rows of a spreadsheet, whole or not at all', async () => {
  const { page } = await openDemo(office, 'connection/C03');
  await page.getByRole('button', { name: 'Paste from a spreadsheet' }).click();
  const box = page.getByLabel(/^Columns: name/);
  await box.fill('name\tN\tVx\nwind\t4\tnone');
  await page.getByText('row 2, Vx: “none” is no value here').waitFor();
  expect(await page.getByRole('button', { name: 'Replace all loads' }).isDisabled()).toBe(true);
  await box.fill('name\tN\tVx\nwind\t4\t1,5\nsnow\t2');
  await page.getByRole('button', { name: 'Replace all loads' }).click();
  await expect
    .poll(async () => JSON.stringify(await actionsOf('C03')))
    .toMatch(/"name":"wind","N_kN":4,"Vx_kN":1.5.*"name":"snow","N_kN":2/);
});

it('moves the inserts with their plate and its holes, and refuses a hole outside', async () => {
  const { page } = await openDemo(office, 'connection/C05');
  const before = await readServed(office);
  const at = (file: typeof before, id: string) =>
    file.job.castIns.find((one) => one.panel === 'P02' && one.id === id)?.x_mm ?? 0;
  await page.getByRole('button', { name: 'Plate and holes' }).click();
  const hole = page.getByLabel('x of hole 1');
  const shown = Number((await hole.inputValue()).replace('−', '-'));
  await hole.fill('9999');
  await hole.press('Enter');
  await page.getByRole('alert').filter({ hasText: 'lies outside the plate' }).waitFor();
  await hole.fill(String(shown + 10));
  await hole.press('Enter');
  await expect.poll(async () => Math.abs(at(await readServed(office), '1') - at(before, '1'))).toBeCloseTo(10, 6);
  expect(at(await readServed(office), '2')).toBe(at(before, '2'));
});

it('shows what it carries at most and what other editions say', async () => {
  const { page } = await openDemo(office, 'connection/C02');
  await page.getByRole('button', { name: 'Carries at most' }).click();
  const carries = page.getByRole('table', { name: 'Largest loads' });
  expect(await carries.getByRole('row', { name: /^tension/ }).textContent()).toContain('83.7 kN');
  await page.getByRole('button', { name: 'By other editions' }).click();
  const row = page.getByRole('table', { name: 'The answer by each edition' }).getByRole('row', { name: /^ACI 318-19/ });
  expect(await row.textContent()).toContain('not covered');
});

it.each(['light', 'dark'] as const)('can be used by everybody (%s)', async (theme) => {
  const screen = await openDemo(office, 'connection/C02', { theme });
  const { page } = screen;
  await page
    .getByRole('button', { name: /^Take it/ })
    .first()
    .waitFor();
  await page.getByRole('button', { name: 'Open all steps' }).click();
  await page.getByRole('button', { name: 'Plate and holes' }).click();
  await screen.checkAccess();
});
