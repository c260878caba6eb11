import { expect, it } from 'vitest';
import type { RecordKind, RecordOf } from '../../src/records/record.ts';
import { serveSurveyedPiece } from './harness/surveyed-piece.ts';
import { checkTargets, checkWidth, openYard, readServerRecords } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 10_000 };

it('goes from delivery to a tightened bracket with a tap each, says what is not as it must be, and takes back', async () => {
  const { id, plan } = await serveSurveyedPiece(office, 'P02', '1', {});
  const served = async <Kind extends RecordKind>(kind: Kind): Promise<readonly RecordOf<Kind>[]> =>
    (await readServerRecords(office)).filter(
      (record): record is RecordOf<Kind> => record.piece === id && record.kind === kind,
    );
  const screen = await openYard(office, `/yard/piece/${id}`, { person: 'installer' });
  const { page } = screen;
  await page.getByRole('link', { name: /^Bolt up/ }).tap();
  await page.getByText(/^0 of 4 tightened/).waitFor();
  await screen.shoot('list');
  await checkTargets(page);
  await checkWidth(page);
  await screen.checkAccess();

  await page.getByRole('link', { name: /^On delivery/ }).tap();
  const [first] = plan.setOut.items;
  await page.getByRole('button', { name: /^All as it must be/ }).tap();
  await page.getByText(/caps in, threads clean$/).waitFor();
  await page.getByRole('button', { name: /^Something is wrong/ }).tap();
  await page.getByRole('button', { name: String(first!.number), exact: true }).tap();
  await page.getByRole('button', { name: /^No cap/ }).tap();
  await page.getByRole('button', { name: 'Write it down' }).tap();
  await page.getByText(/^1 of \d+ not as they must be/).waitFor();
  await screen.shoot('delivery');
  await checkTargets(page);
  await page.getByRole('button', { name: /^Where it stands/ }).tap();
  await page.getByRole('textbox').fill('grid C4, level 1');
  await page.getByRole('button', { name: 'It stands there' }).tap();
  await page.getByText(/grid C4, level 1/).waitFor();
  await page.goBack();

  await page.getByRole('button', { name: /^C05/ }).tap();
  await page.getByText('NOT FOR LIFTING', { exact: true }).first().waitFor();
  await screen.shoot('card');
  await checkTargets(page);
  await checkWidth(page);
  await screen.checkAccess();
  await page.getByRole('button', { name: /^It goes on as drawn/ }).tap();
  await page.getByText('Offered up: it went on, as designed').waitFor();
  await page.getByRole('button', { name: /^Tightened/ }).tap();
  await page
    .getByRole('button', { name: /^Turns not counted/ })
    .first()
    .tap();
  await page.getByRole('region', { name: /turns by hand$/ }).waitFor();
  await page.waitForTimeout(400);
  await page.keyboard.type('3');
  await page.keyboard.press('Enter');
  await page.getByText(/: 3 turns, \d+ needed. Stop.$/).waitFor();
  await screen.shoot('tighten');
  await checkTargets(page);
  await page.getByRole('button', { name: /^3 turns/ }).tap();
  await page.getByRole('region', { name: /turns by hand$/ }).waitFor();
  await page.waitForTimeout(400);
  await page.keyboard.type('9');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^It is tightened/ }).tap();
  await page.getByText('tightened', { exact: true }).first().waitFor();
  await screen.shoot('tightened');
  await expect.poll(async () => (await served('tightened')).length, SOON).toBe(1);
  const [tightened] = await served('tightened');
  expect(tightened!.body).toMatchObject({ connectionMark: 'C05', how: 'snug', torque_Nm: null });
  expect(tightened!.body.bolts).toHaveLength(4);
  expect(tightened!.body.bolts.map(({ turns }) => turns).sort()).toEqual([9, null, null, null]);
  expect((await served('offered')).map(({ body }) => body.wentOn)).toEqual(['as designed']);
  expect((await served('delivered')).map(({ item, body }) => [item, body.caps])).toEqual([
    [null, true],
    [first!.castIn.key, false],
  ]);

  // Taken back, it is as before, and the history keeps it.
  await page.getByRole('button', { name: /^Undo/ }).tap();
  await page.getByText('may be bolted up', { exact: true }).first().waitFor();
  await expect.poll(async () => (await served('correction')).length, SOON).toBe(1);
  await page.getByRole('button', { name: /^It does not go on/ }).tap();
  await page.getByText('C05 does not go on').waitFor();
  await screen.shoot('not-on');
  await checkTargets(page);
}, 60_000);
