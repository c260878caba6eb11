import { expect, it } from 'vitest';
import { serveSurveyedPiece } from './harness/surveyed-piece.ts';
import {
  checkTargets,
  checkWidth,
  findYardPiece,
  openYard,
  readServerRecords,
  setLight,
  TABLET,
} from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 15_000 };

it('says first whether a bracket goes on, and what its finder may do himself', async () => {
  const { id } = await serveSurveyedPiece(office, 'P01', '1', {
    3: { dx: 7, dy: 3 },
    4: { dx: 7, dy: 3 },
    5: { dx: 6.5, dy: 3 },
    6: { dx: 7, dy: 2 },
    13: { dx: 12, dy: 5 },
  });
  const screen = await openYard(office, `/yard/piece/${id}/fit`, { person: 'checker' });
  const { page } = screen;
  await page.getByRole('heading', { name: /^5 of 14 off, 1 plate does not go on/ }).waitFor(SOON);
  await screen.shoot('fit-list');
  await checkTargets(page);
  await checkWidth(page);
  await screen.checkAccess();

  // A strength that is no pass is said beside the plate that goes on.
  await page.getByRole('link', { name: /C02 Goes on as drawn As designed its strength .*: that is no pass/ }).waitFor();
  await page.getByRole('link', { name: /^Bolt up only those that may be/ }).tap();

  // What waits for a decision leads there, and nothing invites to tighten it.
  await page.getByRole('button', { name: /^C03/ }).tap();
  const tightened = page.getByRole('button', { name: /^Tightened/ });
  await tightened.waitFor();
  expect((await tightened.boundingBox())!.height).toBeLessThan(100);
  await checkTargets(page);
  await page.getByRole('link', { name: /^What may be done/ }).tap();
  await page.getByRole('link', { name: /^All brackets/ }).tap();

  await page.getByRole('link', { name: /C03 Does not go on: hole \d lacks 4.8 mm/ }).tap();
  await page.getByText(/^Do not slot, drill or burn a hole/).waitFor();
  await page.getByRole('img', { name: /before the inside face, top up: bracket of C03/ }).waitFor();
  expect(await page.getByRole('button', { name: /^Decide it so/ }).count()).toBe(0);
  await screen.shoot('fit-blocked');
  await page.getByRole('link', { name: /^All brackets/ }).tap();

  // The inside face is the other side of the drawing: what is more x lies to the left of who stands before it.
  await page.getByRole('link', { name: /C01 Shift the plate .* to the left and .* up/ }).tap();
  const decide = page.getByRole('button', { name: /^Decide it so/ });
  await decide.waitFor();
  // A checker may not.
  expect(await decide.isDisabled()).toBe(true);
  await screen.shoot('fit-shift');
  await checkTargets(page);
  await screen.checkAccess();
  await page.setViewportSize(TABLET.portrait);
  await screen.shoot('fit-shift-portrait');
  await checkTargets(page);
  await checkWidth(page);
  for (const light of ['sun', 'night'] as const) {
    await setLight(page, light);
    await screen.shoot(`fit-shift-${light}`);
    await screen.checkAccess();
  }
});

it('lets a foreman decide with two taps what needs no change of the design, and take it back', async () => {
  const { id } = await findYardPiece(office, 'P01');
  const { page } = await openYard(office, `/yard/piece/${id}/fit`, { person: 'foreman' });
  await page.getByRole('link', { name: /C01 Shift the plate/ }).tap(SOON);
  await page.getByRole('button', { name: /^Decide it so as foreman/ }).tap();
  await page.getByRole('button', { name: 'Yes, so it is done' }).tap();
  await page.getByText('Decided; do it so.').waitFor();
  const decided = async () => (await readServerRecords(office)).filter(({ kind }) => kind === 'remedy-decided');
  await expect.poll(async () => (await decided()).length, SOON).toBe(1);
  expect((await decided())[0]).toMatchObject({
    piece: id,
    body: {
      connectionMark: 'C01',
      remedy: 'plate moved',
      role: 'foreman',
      registration: null,
      computed: { state: 'works' },
    },
  });
  await page.getByRole('button', { name: /^Undo decision about a connection|^Undo/ }).tap();
  await page.getByRole('button', { name: /^Decide it so as foreman/ }).waitFor();
});
