import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { listFormMeasures } from '../../src/assess/yard/form-measures.ts';
import type { PiecePlan } from '../../src/assess/yard/piece-plan.ts';
import { tellTape } from '../../src/web/yard/state/tape-words.ts';
import { checkTargets, checkWidth, findYardPiece, openYard, readServerRecords } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

/** Taps keys and counts the touches. */
class Finger {
  readonly page: Page;
  touches = 0;

  constructor(page: Page) {
    this.page = page;
  }

  async tap(name: string | RegExp): Promise<void> {
    await this.page.getByRole('button', { name }).or(this.page.getByRole('link', { name })).first().tap();
    this.touches += 1;
  }

  /** Types a length; a value of the most digits has gone on by itself. */
  async type(label: string, value: number): Promise<void> {
    const pad = this.page.getByRole('region', { name: label, exact: true });
    await pad.waitFor();
    for (const digit of String(value)) {
      await pad.getByRole('button', { name: digit, exact: true }).tap();
      this.touches += 1;
    }
    const next = pad.getByRole('button', { name: 'Next' });
    if ((await pad.count()) > 0 && (await next.isEnabled().catch(() => false))) {
      await next.tap();
      this.touches += 1;
    }
  }

  heading(): Promise<string> {
    return this.page.locator('h1').innerText();
  }
}

async function checkForm(finger: Finger, plan: PiecePlan): Promise<void> {
  let depth: number | null = null;
  for (const { what, nominal, kind } of listFormMeasures(plan.setOut.form)) {
    if (kind === 'depth' && depth !== null) await finger.tap(/^As before/);
    else await finger.type(what, nominal);
    if (kind === 'depth') depth = nominal;
  }
}

/** Walks a stage with everything as it must be; `off` is added to what the tape shows of an insert. */
async function walk(finger: Finger, plan: PiecePlan, stage: 1 | 2): Promise<void> {
  for (const stop of plan.stops.filter((one) => one.stage === stage)) {
    await finger.tap(/^All as shown/);
    for (const { number, axis } of stop.asks) {
      const item = plan.setOut.items.find((one) => one.number === number)!;
      const value = Math.round(item.taped[axis === 'x' ? 0 : 1]);
      await finger.type(`${number} · ${tellTape(plan.setOut, item, axis)}`, value);
    }
  }
}

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
    await finger.tap(/^To the piece/);
    await page.getByRole('link', { name: /Before the pour.*all 13 done/ }).waitFor();
    await screen.shoot('piece-done');
    console.log(`P13: ${finger.touches} touches`);
    expect(finger.touches).toBeLessThan(90);
    await expect
      .poll(async () => (await readServerRecords(office)).filter(({ kind }) => kind === 'placed').length)
      .toBe(20);
  }, 180_000);
});
