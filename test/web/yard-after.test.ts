import { describe, expect, it } from 'vitest';
import type { RecordKind, RecordOf } from '../../src/records/record.ts';
import { serveCheckedPiece } from './harness/checked-piece.ts';
import { checkTargets, checkWidth, openYard, readServerRecords, setLight, TABLET } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 15_000 };

async function served<Kind extends RecordKind>(piece: string, kind: Kind): Promise<readonly RecordOf<Kind>[]> {
  const all = await readServerRecords(office);
  return all.filter((record): record is RecordOf<Kind> => record.piece === piece && record.kind === kind);
}

/** As many of a kind as there must be, once the server has them. */
async function wait<Kind extends RecordKind>(piece: string, kind: Kind, count: number) {
  await expect.poll(async () => (await served(piece, kind)).length, SOON).toBe(count);
  return served(piece, kind);
}

describe('after screeding', () => {
  it('takes a tap a stop, says what is off, and opens again only what moved', async () => {
    const { id, plan, tablet, checker } = await serveCheckedPiece(office, 'P13', '1');
    tablet.write(checker, { kind: 'poured', body: { reason: 'test' } });
    await tablet.send(office.server.address);
    const screen = await openYard(office, `/yard/piece/${id}/screed`);
    const { page } = screen;
    await page.getByText(/^Poured \d min ago. Still movable for about 30–60 min at 20 °C/).waitFor();
    await screen.shoot('screed-look');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    const right = page.getByRole('button', { name: /^All right level · plumb · cap/ });
    // The first stop: one is low and has lost its cap.
    await page.getByRole('button', { name: 'Something is off' }).tap();
    const [first] = plan.afterScreed;
    const pick = page.getByRole('group', { name: 'Which one is off' });
    if ((await pick.count()) > 0) await pick.getByRole('button', { name: String(first!.number), exact: true }).tap();
    await page.getByRole('button', { name: 'Not level' }).tap();
    await page.getByRole('button', { name: 'No cap' }).tap();
    await screen.shoot('screed-off');
    await checkTargets(page);
    await page.getByRole('button', { name: 'Write it down' }).tap();
    for (const digit of '14') await page.getByRole('button', { name: digit, exact: true }).tap();
    await page.getByRole('button', { name: 'Next' }).tap();
    await page.getByText('14 mm below the face').first().waitFor();
    await screen.shoot('screed-answer');
    const [off] = await wait(id, 'screed-checked', 1);
    expect(off).toMatchObject({
      item: first!.castIn.key,
      checkKey: plan.keys.get(first!.castIn.key),
      body: { level: false, plumb: true, cap: false, level_mm: 14 },
    });
    // Put right, then the rest with a tap each.
    await page.getByRole('button', { name: 'Go on' }).tap();
    let touches = 0;
    while ((await right.count()) > 0) {
      await right.tap();
      touches += 1;
      await page.waitForTimeout(60);
    }
    const all = await wait(id, 'screed-checked', plan.afterScreed.length);
    expect(new Set(all.map(({ item }) => item)).size).toBe(plan.afterScreed.length);
    expect(touches).toBeLessThan(plan.afterScreed.length);
    await page.getByText(`All looked at. Off: insert ${first!.number}`).waitFor();
    await screen.shoot('screed-end');
    // One moved along the face: it alone is taped again.
    await page.goto(new URL(`/yard/piece/${id}/screed`, page.url()).href);
    const last = plan.afterScreed.at(-1)!;
    const before = (await served(id, 'measured')).length;
    await page.getByText('All looked at').waitFor();
    await page.getByRole('button', { name: 'Look at one again' }).tap();
    await page.getByRole('button', { name: String(last.number), exact: true }).tap();
    await page.getByRole('button', { name: /^Moved along the face/ }).tap();
    for (const axis of [0, 1] as const) {
      const value = String(Math.round(last.taped[axis]) + (axis === 0 ? 9 : 0));
      for (const digit of value) await page.getByRole('button', { name: digit, exact: true }).tap();
      const next = page.getByRole('button', { name: 'Next' });
      if ((await next.count()) > 0 && (await next.isEnabled({ timeout: 300 }).catch(() => false))) await next.tap();
    }
    await page.getByText(new RegExp(`^${last.number}: `)).waitFor();
    await screen.shoot('screed-moved');
    const measured = await wait(id, 'measured', before + 1);
    expect(measured.at(-1)).toMatchObject({ item: last.castIn.key, body: { stage: 2, basis: 'tape' } });
    await page.goto(new URL(`/yard/piece/${id}/clearance`, page.url()).href);
    await page.getByText(new RegExp(`^no. ${last.number}: `)).waitFor();
  }, 120_000);
});

describe('after stripping', () => {
  it('counts plates back, opens up with one tap, and takes exceptions with turns by hand', async () => {
    const { id, plan, tablet, checker } = await serveCheckedPiece(office, 'P11', '1');
    tablet.write(checker, { kind: 'poured', body: { reason: 'test' } });
    await tablet.send(office.server.address);
    const screen = await openYard(office, `/yard/piece/${id}/after`, { person: 'setter' });
    const { page } = screen;
    await page.getByText(/^NO LIFTING, NO LOADING/).waitFor();
    await screen.shoot('after-poured');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    await page.getByRole('button', { name: /^It is stripped/ }).tap();
    const done = page.getByRole('button', { name: /^It is stripped/ });
    const parts = page.getByRole('button', { name: /^All \d+ of / });
    const count = await parts.count();
    expect(count).toBeGreaterThan(0);
    expect(await done.isDisabled()).toBe(true);
    for (let i = 0; i < count; i += 1) await parts.nth(i).tap();
    await page
      .getByRole('button', { name: /^One less of/ })
      .first()
      .tap();
    await screen.shoot('after-strip');
    await checkTargets(page);
    await done.tap();
    await page.getByText('Stripped; not everything is back').waitFor();
    const [stripped] = await wait(id, 'stripped', 1);
    expect(stripped!.body.plates[0]!.back).toBe(stripped!.body.plates[0]!.out - 1);
    await page.getByRole('button', { name: /^All as it must be/ }).tap();
    await wait(id, 'uncovered', 1);
    const item = plan.setOut.items.find((one) => one.item?.thread === 'M16') ?? plan.setOut.items[0]!;
    await page.getByRole('button', { name: /^Something is wrong/ }).tap();
    await page.getByRole('button', { name: String(item.number), exact: true }).tap();
    await page.getByRole('button', { name: /^Mortar in it/ }).tap();
    await page.getByRole('button', { name: /^Count the turns/ }).tap();
    await page.getByRole('button', { name: '3', exact: true }).tap();
    await page.getByRole('button', { name: 'Take it' }).tap();
    await page.getByText(/^3 turns of .* needed$/).waitFor();
    await screen.shoot('after-exception');
    await checkTargets(page);
    await page.getByRole('button', { name: 'Write it down' }).tap();
    await page.getByText(/^Opened up; 1 of/).waitFor();
    await screen.shoot('after-opened');
    const uncovered = await wait(id, 'uncovered', 2);
    expect(uncovered.find((record) => record.item === item.castIn.key)?.body).toMatchObject({
      mortarOut: false,
      turns: 3,
      thread: true,
    });
    for (const light of ['sun', 'night'] as const) {
      await setLight(page, light);
      await screen.shoot(`after-${light}`);
    }
    await setLight(page, 'shed');
    await page.setViewportSize(TABLET.portrait);
    await screen.shoot('after-portrait');
    await checkTargets(page);
    await checkWidth(page);
    await page.setViewportSize(TABLET.landscape);
    // Cylinders show less than what is asked.
    await page.getByRole('button', { name: 'Strength result' }).tap();
    await page.getByRole('button', { name: 'Cylinders' }).tap();
    await page.getByLabel(/^Age at the test/).fill('0,2');
    await page.getByLabel(/^Strengths in MPa/).fill('3.1 2,9');
    await screen.shoot('after-strength');
    await checkTargets(page);
    await page.getByRole('button', { name: 'Write it down' }).tap();
    const [result] = await wait(id, 'strength-result', 1);
    expect(result!.body).toEqual({ specimen: 'cylinder', age_hours: 0.2, values_MPa: [3.1, 2.9], report: null });
  }, 120_000);

  it('takes the last entry back; the history keeps it, struck through', async () => {
    const { id } = await serveCheckedPiece(office, 'P12', '1');
    const screen = await openYard(office, `/yard/piece/${id}/after`, { person: 'setter' });
    const { page } = screen;
    await page.getByRole('button', { name: 'Comment' }).tap();
    await page.getByLabel('What is to be said about this piece?').fill('corner chipped');
    await page.getByRole('button', { name: 'Write it down' }).tap();
    await page.getByRole('button', { name: /^Undo/ }).and(page.locator(':enabled')).tap();
    await wait(id, 'correction', 1);
    await page.goto(new URL(`/yard/piece/${id}/history`, page.url()).href);
    await page.locator('s', { hasText: 'corner chipped' }).waitFor();
    expect(await page.getByText(/^Does not count: withdrawn by C. Nobody/).isVisible()).toBe(true);
    await screen.shoot('history');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    const top = () =>
      page
        .locator('main > div')
        .first()
        .evaluate((content) => content.scrollTop);
    const start = await top();
    await page.getByRole('button', { name: 'Further' }).tap();
    await expect.poll(top).toBeGreaterThan(start);
  });
});
