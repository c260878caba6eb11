import type { Locator, Page } from 'playwright-core';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import { listFormMeasures } from '../../../src/assess/yard/form-measures.ts';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import { placesOf } from '../../../src/say/number-runs.ts';
import { tellTape } from '../../../src/web/yard/state/tape-words.ts';

/** A key whose meaning changed takes no tap for less than this [ms]. */
const REST = 1000;

/**
 * Taps a key as soon as it takes taps. That is looked at in every frame: the tries of the library come ever more rarely, up to half a second too late, and
 * most keys of a walk have just changed what they mean.
 */
export async function tapSettled(key: Locator): Promise<void> {
  await key.evaluate(async (element, rest) => {
    const end = performance.now() + rest;
    while (element.isConnected && element.getAttribute('aria-disabled') === 'true' && performance.now() < end)
      await new Promise(requestAnimationFrame);
  }, REST);
  await key.tap();
}

/** Taps keys and counts the touches. */
export class Finger {
  readonly page: Page;
  touches = 0;

  constructor(page: Page) {
    this.page = page;
  }

  async tap(name: string | RegExp): Promise<void> {
    // A word in full, or the start of it.
    const named = { name, exact: typeof name === 'string' };
    await tapSettled(this.page.getByRole('button', named).or(this.page.getByRole('link', named)).first());
    this.touches += 1;
  }

  /** Types a length; a value of the most digits has gone on by itself. */
  async type(label: string, value: number): Promise<void> {
    const pad = this.page.getByRole('region', { name: label, exact: true });
    await pad.waitFor();
    for (const digit of String(value)) {
      await tapSettled(pad.getByRole('button', { name: digit, exact: true }));
      this.touches += 1;
    }
    const next = pad.getByRole('button', { name: 'Next' });
    if ((await pad.count()) > 0 && (await next.isEnabled({ timeout: 300 }).catch(() => false))) {
      await tapSettled(next);
      this.touches += 1;
    }
  }
}

/** Types the form as it should be, or with other lengths for some. */
export async function checkForm(
  finger: Finger,
  plan: PiecePlan,
  other: Readonly<Record<string, number>> = {},
): Promise<void> {
  let depth: number | null = null;
  for (const { what, nominal, kind } of listFormMeasures(plan.setOut.form)) {
    if (kind === 'depth' && depth !== null) await finger.tap(/^As before/);
    else await finger.type(what, other[what] ?? nominal);
    if (kind === 'depth') depth = nominal;
  }
}

/** What the tape shows of an insert that is where it should be. */
function tapeOf(item: SetOutItem, axis: 'x' | 'y'): number {
  return Math.round(item.taped[axis === 'x' ? 0 : 1]);
}

/** The key of a stop by its inserts: that of the stop before is no longer it. */
export function lookedAt({ members }: PiecePlan['stops'][number]): RegExp {
  return new RegExp(`^All as shown: type, face, firm: ${placesOf(members.map(({ number }) => number))}$`);
}

/**
 * Walks a stage with everything seen as it must be.
 * @param tape what the tape shows of an insert; left out: that all are where they should be
 */
export async function walk(
  finger: Finger,
  plan: PiecePlan,
  stage: 1 | 2,
  tape: (item: SetOutItem, axis: 'x' | 'y') => number = tapeOf,
): Promise<void> {
  for (const stop of plan.stops.filter((one) => one.stage === stage)) {
    await finger.tap(lookedAt(stop));
    for (const { number, axis } of stop.asks) {
      const item = plan.setOut.items.find((one) => one.number === number)!;
      await finger.type(`${number} · ${tellTape(plan.setOut, item, axis)}`, tape(item, axis));
    }
  }
}
