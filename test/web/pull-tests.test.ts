import { expect, it } from 'vitest';
import type { RecordOf } from '../../src/records/record.ts';
import { openDemo } from './harness/open-demo.ts';
import { serveSurveyedPiece } from './harness/surveyed-piece.ts';
import { checkTargets, checkWidth, openYard, readServerRecords } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 15_000 };

it('plans pull tests by somebody who may, asks the tablet for each, and says at once what it comes to', async () => {
  const { id, plan } = await serveSurveyedPiece(office, 'P02', '1', {});
  const desk = await openDemo(office, `yard/${id}`);
  const { page } = desk;
  const part = page.getByRole('region', { name: 'Pull tests', exact: true }).first();
  await part.getByText(/^No pull test is planned/).waitFor(SOON);
  await page.getByLabel('Who decides here').selectOption('demochecker1');
  await part.getByRole('button', { name: 'Plan pull tests' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByText(/this is for QA or a design engineer/).waitFor();
  expect(await dialog.getByRole('button', { name: 'Write the plan down' }).isDisabled()).toBe(true);
  await dialog.getByLabel('Who decides here').selectOption('demoquality1');
  const [one, other] = plan.setOut.items.filter(({ connection }) => connection === 'C05');
  await dialog.getByText('Choose the inserts that are pulled.').waitFor();
  for (const { number } of [one!, other!]) await dialog.getByLabel(new RegExp(`^no. ${number} · `)).check();
  await dialog.getByText(/^Load \d+\.\d kN \(common practice\), held for 60 s/).waitFor();
  await dialog.getByLabel('Load').fill('5000');
  await dialog.getByLabel('Reason').fill('asked by the client');
  await dialog.getByText(/^at most .* 0\.9 of what the steel yields at$/).waitFor();
  await dialog.getByRole('button', { name: 'Write the plan down' }).click();
  await dialog.getByText('The load is more than the steel may see.').waitFor();
  await dialog.getByLabel('Load').fill('12');
  await dialog.getByLabel('Load').press('Enter');
  await desk.shoot('pull-plan');
  await desk.checkAccess();
  await dialog.getByRole('button', { name: 'Write the plan down' }).click();
  await part.getByText(/^0 of 2 planned inserts pulled/).waitFor(SOON);

  const tablet = await openYard(office, `/yard/piece/${id}/bolts`, { person: 'setter' });
  const yard = tablet.page;
  await yard.getByRole('link', { name: /^Pull tests/ }).tap();
  await yard.getByText(/^0 of 2 planned inserts pulled/).waitFor();
  await tablet.shoot('pull-list');
  await checkTargets(yard);
  await checkWidth(yard);
  const pull = async (number: number, feet: string) => {
    await yard.getByRole('button', { name: new RegExp(`^Insert ${number}\\b`) }).tap();
    await yard.getByLabel('Greatest load, kN').fill('12,5');
    await yard.getByLabel('Held, minutes').fill('1');
    await yard.getByLabel('Moved at the end, mm').fill('0.04');
    await yard.getByLabel('Nearest foot to the axis, mm').fill(feet);
    await yard.getByRole('button', { name: 'It held', exact: true }).tap();
  };
  await pull(one!.number, '900');
  await yard.getByLabel('Its number').fill('G 12');
  await yard.getByLabel(/^Calibrated until/).fill('2100-01-31');
  await tablet.shoot('pull-form');
  await checkTargets(yard);
  await checkWidth(yard);
  await tablet.checkAccess();
  await yard.getByRole('button', { name: /^Write it down/ }).tap();
  await yard.getByText(`Insert ${one!.number}: passes`, { exact: true }).waitFor();
  // Feet in the cone: the gauge is typed once, the cone is not tested.
  await pull(other!.number, '40');
  await yard.waitForTimeout(400);
  await yard.getByRole('button', { name: /^Write it down/ }).tap();
  await yard.getByText(`Insert ${other!.number}: not shown: something is missing`, { exact: true }).waitFor();
  await yard.getByText('The bridge held the concrete down: the cone is not tested.').first().waitFor();
  await tablet.shoot('pulled');
  await checkTargets(yard);

  await part.getByText(/^2 of 2 planned inserts pulled/).waitFor(SOON);
  await part.getByText('Together: not shown: something is missing.').waitFor();
  await part.getByText(/^No characteristic value: none gave way/).waitFor();
  await part.scrollIntoViewIfNeeded();
  await desk.shoot('pull-office');
  await desk.checkAccess();
  const pulled = (await readServerRecords(office)).filter(
    (record): record is RecordOf<'proof-loaded'> => record.kind === 'proof-loaded',
  );
  expect(pulled.map(({ item, body }) => [item, body.load_kN, body.support_mm, body.gauge?.serial])).toEqual([
    [one!.castIn.key, 12.5, 900, 'G 12'],
    [other!.castIn.key, 12.5, 40, 'G 12'],
  ]);
}, 60_000);
