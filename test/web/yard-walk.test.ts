import { describe, expect, it } from 'vitest';
import { tellTape } from '../../src/web/yard/state/tape-words.ts';
import { checkForm, Finger, walk } from './harness/finger.ts';
import { checkTargets, checkWidth, findYardPiece, type Hold, openYard, readServerRecords } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

describe('the walk round the form', () => {
  it('checks a piece of twenty inserts, form and both stages, in fewer than 90 touches', async () => {
    const { id, plan } = await findYardPiece(office, 'P13');
    const screen = await openYard(office, `/yard/piece/${id}`);
    const { page } = screen;
    const finger = new Finger(page);
    expect(plan.setOut.items.length).toBe(20);
    await screen.shoot('piece-open');
    await finger.tap(/^The form/);
    await screen.shoot('form-open');
    await checkTargets(page);
    await checkForm(finger, plan);
    await page.getByText('The form is good').waitFor();
    await screen.shoot('form-good');
    await finger.tap(/^Before the cage/);
    await screen.shoot('walk-look');
    await checkTargets(page);
    await checkWidth(page);
    await walk(finger, plan, 1);
    await page.getByText('All good before the cage').waitFor();
    await screen.shoot('walk-end');
    await finger.tap(/^The cage goes in now/);
    await screen.shoot('walk-cage');
    await finger.tap(/^The cage goes in$/);
    await walk(finger, plan, 2);
    await page.getByText('All good before the pour').waitFor();
    // The check is done: what follows only looks at it.
    expect(finger.touches).toBeLessThan(90);
    await finger.tap(/^To the piece/);
    await page.getByRole('link', { name: /Before the pour.*all 13 done/ }).waitFor();
    await screen.shoot('piece-done');
    await expect
      .poll(async () => (await readServerRecords(office)).filter(({ kind }) => kind === 'placed').length)
      .toBe(20);
  }, 180_000);
});

/** What the yard sees of an insert when it tapes the first length that is asked for. */
async function openFirstAsk(mark: string, hold: Hold) {
  const { id, plan } = await findYardPiece(office, mark);
  const stop =
    plan.stops.find(({ stage, asks }) => stage === 1 && asks.length > 0) ??
    plan.stops.find(({ asks }) => asks.length > 0)!;
  const [ask] = stop.asks;
  const item = plan.setOut.items.find(({ number }) => number === ask!.number)!;
  const screen = await openYard(office, `/yard/piece/${id}/walk/${stop.stage}`, { hold });
  const finger = new Finger(screen.page);
  return { screen, finger, plan, stop, ask: ask!, item };
}

/** Goes to a stop by the numbers as keys. */
async function goTo(finger: Finger, number: number): Promise<void> {
  await finger.tap(/^Go to/);
  await finger.tap(String(number));
}

describe('an insert that is not as it must be', () => {
  it('is answered in words and on the plan, put right, and taken back', async () => {
    const { screen, finger, plan, stop, ask, item } = await openFirstAsk('P08', 'landscape');
    const { page } = screen;
    await goTo(finger, item.number);
    await finger.tap(/^All as shown/);
    const label = `${item.number} · ${tellTape(plan.setOut, item, ask.axis)}`;
    // What it should be is nowhere before it is typed.
    const should = Math.round(item.taped[ask.axis === 'x' ? 0 : 1]);
    expect(await page.locator('main').textContent()).not.toContain(`should be ${should}`);
    await screen.shoot('walk-tape');
    await checkTargets(page);
    for (const { axis, number } of stop.asks.filter((one) => one.number === item.number))
      await finger.type(
        `${number} · ${tellTape(plan.setOut, item, axis)}`,
        Math.round(item.taped[axis === 'x' ? 0 : 1]) + (axis === ask.axis ? 27 : 0),
      );
    await page.getByText(new RegExp(`^${item.number}: (Move it 27 mm|Leave it)`)).waitFor();
    await page.getByText(`should be ${should}`).waitFor();
    await screen.shoot('walk-off');
    await checkTargets(page);
    await screen.checkAccess();
    await finger.tap(/^Undo/);
    await page.getByText(/Taken back: 1 entry/).waitFor();
    await page.getByRole('region', { name: label, exact: true }).waitFor();
    // By keyboard too.
    for (const { axis } of stop.asks.filter((one) => one.number === item.number)) {
      await page.keyboard.type(String(Math.round(item.taped[axis === 'x' ? 0 : 1])));
      // Where the value has gone on by itself already, it means nothing.
      await page.keyboard.press('Enter');
    }
    await page.getByText(`${item.number}: Good`).waitFor();
  }, 90_000);

  it('differs by sight: which insert, which of the three, in two taps', async () => {
    const { screen, finger, item } = await openFirstAsk('P11', 'portrait');
    const { page } = screen;
    await goTo(finger, item.number);
    await screen.shoot('portrait-walk-look');
    await checkTargets(page);
    await checkWidth(page);
    await finger.tap(/^Something differs/);
    const which = page.getByRole('group', { name: 'Which one differs' });
    if ((await which.count()) > 0) await which.getByRole('button', { name: String(item.number), exact: true }).tap();
    await screen.shoot('portrait-walk-differs');
    await checkTargets(page);
    await finger.tap(/^Wrong type/);
    await page.getByText(new RegExp(`^${item.number}: `)).waitFor();
    await screen.shoot('portrait-walk-wrong');
    await screen.checkAccess();
    await finger.tap(/^Measure it|^Moved/);
    await screen.shoot('portrait-walk-tape');
    await checkTargets(page);
    await checkWidth(page);
    await expect
      .poll(async () => (await readServerRecords(office)).some(({ kind, body }) => kind === 'placed' && !body.type))
      .toBe(true);
  }, 90_000);
});

describe('a set that lies the wrong way round', () => {
  it('is named as soon as the values show it', async () => {
    const { id, plan } = await findYardPiece(office, 'P13-H');
    const screen = await openYard(office, `/yard/piece/${id}/walk/1`);
    const { page } = screen;
    const finger = new Finger(page);
    // As if the tape had been hooked at the other end.
    const mirrored = (item: (typeof plan.setOut.items)[number], axis: 'x' | 'y') => {
      const value = Math.round(item.taped[axis === 'x' ? 0 : 1]);
      if (axis === 'y' && item.place === 'edge') return value;
      const isAlongX =
        axis === 'x' &&
        !(item.place === 'edge' && (item.side === plan.setOut.words.start || item.side === plan.setOut.words.finish));
      return isAlongX ? Math.round(plan.setOut.length) - value : value;
    };
    const leave = page.getByRole('button', { name: /^Leave it, go on/ });
    const pad = page.getByRole('region', { name: /·/ });
    const look = page.getByRole('button', { name: /^All as shown/ });
    const end = page.getByRole('button', { name: /^The cage goes in now/ });
    const named = page.getByText(/^(MIRRORED|TURNED|FROM ANOTHER CORNER|HANDED PARTNER)$/).first();
    // Whatever is asked next is answered, until it is named.
    for (;;) {
      await leave.or(pad).or(look).or(end).first().waitFor();
      if ((await named.count()) > 0 || (await end.count()) > 0) break;
      if ((await leave.count()) > 0) {
        await leave.tap();
        await leave.waitFor({ state: 'detached' });
      } else if ((await look.count()) > 0) {
        const seen = page.getByRole('button', { name: (await look.getAttribute('aria-label'))!, exact: true });
        await seen.tap();
        await seen.waitFor({ state: 'detached' });
      } else {
        const label = (await pad.getAttribute('aria-label'))!;
        const item = plan.setOut.items.find(({ number }) => label.startsWith(`${number} ·`))!;
        const axis = label.endsWith(tellTape(plan.setOut, item, 'x')) ? 'x' : 'y';
        await finger.type(label, mirrored(item, axis));
        await page.getByRole('region', { name: label, exact: true }).waitFor({ state: 'detached' });
      }
    }
    await named.waitFor();
    await screen.shoot('walk-mirrored');
  }, 120_000);
});
