import type { BrowserContext, Page } from 'playwright-core';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import { tellTape } from '../../../src/web/yard/state/tape-words.ts';
import { checkForm, Finger, lookedAt, tapSettled } from '../harness/finger.ts';
import { waitUntilKept } from '../harness/kept-pages.ts';
import type { Screen } from '../harness/screen.ts';
import { PEOPLE, TABLET } from '../harness/yard.ts';
import type { Office } from '../harness.ts';
import { MARK, POUR } from './eight.ts';

/** Where a person goes with the tablet: a pour, and the last piece of it as a mark and serial, for the job is there when it is. */
export interface Errand {
  readonly pour: string;
  readonly mark: string;
  readonly last: string;
}

/** What lies on the disk of a tablet. */
export type TabletDisk = Awaited<ReturnType<BrowserContext['storageState']>>;

const EIGHT: Errand = { pour: POUR, mark: MARK, last: '8' };

/** What a tape shows of an insert along an axis [mm]. */
export type Tape = (item: SetOutItem, axis: 'x' | 'y') => number;

/** That it is where it must be. */
export const inPlace: Tape = ({ taped }, axis) => Math.round(taped[axis === 'x' ? 0 : 1]);

/** Has a keyboard beside the tablet: lengths are typed on it, everything else is tapped. */
class KeyboardFinger extends Finger {
  override async type(label: string, value: number): Promise<void> {
    const pad = this.page.getByRole('region', { name: label, exact: true });
    await pad.waitFor();
    await this.page.keyboard.type(String(value));
    this.touches += String(value).length;
    const next = pad.getByRole('button', { name: 'Next' });
    if ((await pad.count()) === 0 || !(await next.isEnabled({ timeout: 300 }).catch(() => false))) return;
    await this.page.keyboard.press('Enter');
    this.touches += 1;
  }
}

/** A person with a tablet, who does everything by its keys. */
export class Hand {
  readonly screen: Screen;
  readonly finger: Finger;
  readonly #errand: Errand;

  private constructor(screen: Screen, hasKeyboard: boolean, errand: Errand) {
    this.screen = screen;
    this.#errand = errand;
    this.finger = new (hasKeyboard ? KeyboardFinger : Finger)(screen.page);
  }

  /** Takes the job along: everything is on the tablet before it leaves. It ends on the screen of the pour. */
  static async leave(
    office: Office,
    person: keyof typeof PEOPLE,
    hasKeyboard: boolean,
    errand: Errand = EIGHT,
  ): Promise<Hand> {
    const screen = await office.open('/yard/', { context: { viewport: TABLET.landscape, hasTouch: true } });
    const hand = new Hand(screen, hasKeyboard, errand);
    const { page } = screen;
    page.setDefaultTimeout(15_000);
    await waitUntilKept(page, office.server);
    // A page that was loaded before the worker was there is not its page yet.
    await page.reload();
    await hand.tap(/panels/);
    await hand.tap(new RegExp(`^${PEOPLE[person].replace(/[().]/g, '\\$&')}`));
    await hand.tap(/^Go to the pours/);
    await hand.tap(new RegExp(`^${errand.pour}`));
    await page.getByRole('link', { name: new RegExp(`^${errand.mark} no. ${errand.last}`) }).waitFor();
    return hand;
  }

  /** Opens the yard at the pour with what lay on the disk of a tablet: the same tablet, switched on again, in the network. */
  static async switchOn(office: Office, disk: TabletDisk, hasKeyboard: boolean): Promise<Hand> {
    const context = { viewport: TABLET.landscape, hasTouch: true, storageState: disk };
    const screen = await office.open(`/yard/pour/${EIGHT.pour}`, { context });
    screen.page.setDefaultTimeout(15_000);
    await screen.page.getByRole('link', { name: new RegExp(`^${EIGHT.mark} no. ${EIGHT.last}`) }).waitFor();
    return new Hand(screen, hasKeyboard, EIGHT);
  }

  /** Copies what lies on its disk, records and what is not sent yet too. */
  copyDisk(): Promise<TabletDisk> {
    return this.screen.context.storageState({ indexedDB: true });
  }

  /** Puts it away for good: it asks the server nothing any more. */
  async putAway(): Promise<void> {
    await this.screen.context.close();
  }

  get page(): Page {
    return this.screen.page;
  }

  tap(name: string | RegExp): Promise<void> {
    return this.finger.tap(name);
  }

  /** Walks out of the network, or back into it. */
  async setOffline(isOffline: boolean): Promise<void> {
    await this.screen.context.setOffline(isOffline);
  }

  /** What was asked for in vain while there was no line, or no server, is no fault. */
  allowCut(): void {
    this.screen.faults.allow(/net::ERR_(INTERNET_DISCONNECTED|CONNECTION_REFUSED|NETWORK_CHANGED|EMPTY_RESPONSE)/);
  }

  /** From any screen of a piece, or from the pour, to a piece of the pour. */
  async open(serial: string, mark = this.#errand.mark): Promise<void> {
    await this.toPour();
    await this.tap(new RegExp(`^${mark} no. ${serial}`));
    await this.page.getByRole('heading', { name: `${mark} no. ${serial}` }).waitFor();
  }

  async toPour(): Promise<void> {
    const heading = this.page.getByRole('heading', { level: 1 });
    const stage = this.page.getByRole('banner').getByRole('paragraph').first();
    const where = async () => [this.page.url(), await heading.textContent(), await stage.textContent()].join();
    while (!((await heading.textContent()) ?? '').includes(`Pour ${this.#errand.pour}`)) {
      const before = await where();
      await this.tap('Back');
      while ((await where()) === before) await this.page.waitForTimeout(20);
    }
  }

  /** Somebody else takes the tablet, or the same person goes by another role. */
  async handTo(person: keyof typeof PEOPLE): Promise<void> {
    await this.page
      .getByRole('banner')
      .getByRole('link', { name: /Nobody/ })
      .tap();
    await this.tap(/^Change person/);
    await this.page.getByRole('button', { name: PEOPLE[person] }).tap();
    await this.page.getByRole('banner').getByText(PEOPLE[person]).waitFor();
    await this.tap('Back');
    await this.tap(new RegExp(`^${this.#errand.pour}`));
  }

  /** The form and both stages, the cage between them. */
  async checkAll(serial: string, plan: PiecePlan, tape: Tape = inPlace): Promise<void> {
    await this.checkForm(serial, plan);
    await this.walk(plan, 1, tape);
    await this.putCageIn();
    await this.walk(plan, 2, tape);
  }

  /** The form, as it should be; it ends at the walk before the cage. */
  async checkForm(serial: string, plan: PiecePlan): Promise<void> {
    await this.open(serial);
    await this.tap(/^The form/);
    await checkForm(this.finger, plan);
    await this.page.getByText('The form is good').waitFor();
    await this.tap(/^Before the cage/);
  }

  /**
   * The stage of a walk that is open: all as shown, and taped where it is asked for.
   * @param seen numbers of those that were looked at before, and are not looked at again
   */
  async walk(plan: PiecePlan, stage: 1 | 2, tape: Tape = inPlace, seen: readonly number[] = []): Promise<void> {
    for (const stop of plan.stops.filter((one) => one.stage === stage)) {
      await this.tap(lookedAt({ ...stop, members: stop.members.filter(({ number }) => !seen.includes(number)) }));
      await this.tapeStop(plan, stop.asks, tape);
    }
    await this.page.getByText(/^(All good before|All looked at|Nothing is set)/).waitFor();
  }

  /** Types what is asked at a stop, one insert after another; what is off is left as it is. */
  async tapeStop(plan: PiecePlan, asks: PiecePlan['stops'][number]['asks'], tape: Tape): Promise<void> {
    for (const [k, { number, axis }] of asks.entries()) {
      const item = plan.setOut.items.find((one) => one.number === number)!;
      await this.finger.type(`${number} · ${tellTape(plan.setOut, item, axis)}`, tape(item, axis));
      const isLast = asks[k + 1]?.number !== number;
      const isOff = asks.some(
        (ask) => ask.number === number && Math.abs(tape(item, ask.axis) - inPlace(item, ask.axis)) > item.tolerance,
      );
      if (isLast && isOff) await this.tap(/^Leave it, go on/);
    }
  }

  async putCageIn(): Promise<void> {
    await this.tap(/^The cage goes in now/);
    await this.tap(/^The cage goes in$/);
    await this.page.waitForURL(/walk\/2$/);
  }

  /** After screeding, a tap a stop. */
  async checkScreed(serial: string): Promise<void> {
    await this.open(serial);
    await this.tap(/^After screeding/);
    const right = this.page.getByRole('button', { name: /^All right level · plumb · cap/ });
    const end = this.page.getByText('All level, plumb and capped');
    for (let done = 1; ; done += 1) {
      await right.or(end).first().waitFor();
      if ((await end.count()) > 0) return;
      await tapSettled(right);
      await this.page.getByText(new RegExp(`after screeding · ${done} of`)).waitFor();
    }
  }

  /** Clears a piece with nothing open, two taps. */
  async clear(serial: string): Promise<void> {
    await this.open(serial);
    await this.tap(/^Clearance, pour/);
    await this.page.getByRole('heading', { name: 'Nothing is open' }).waitFor();
    await this.tap(/^Clear nothing is open/);
    await this.page
      .getByRole('dialog')
      .getByRole('button', { name: /^Clear/ })
      .tap();
    await this.page.getByText('CLEARED', { exact: true }).waitFor();
  }

  /** That a cleared piece was poured; its clearance is open. */
  async pour(): Promise<void> {
    await this.tap(/^It was poured/);
    await this.tap(/^Yes, it is poured/);
    await this.page.getByText('Poured, cleared before').waitFor();
  }

  /** That it was poured though it was not cleared; its clearance is open. */
  async pourAnyway(flag: string): Promise<void> {
    await this.tap(/^It was poured/);
    await this.tap(/^Truck at the gate/);
    await this.tap(/^It was poured/);
    await this.page.getByText(flag, { exact: true }).waitFor();
  }

  /** Sends and fetches at once, by the key of the screen of the device; back at the pour. */
  async sendNow(): Promise<void> {
    await this.toPour();
    await this.page
      .getByRole('banner')
      .getByRole('link', { name: /server holds/ })
      .tap();
    const done = this.page.getByText('All is sent.');
    const key = this.page.getByRole('button', { name: /^Send now/ });
    // A key that was pressed as the tablet began by itself says that it sends, and does nothing: pressed once more.
    for (let tries = 0; tries < 4 && (await done.count()) === 0; tries += 1) {
      await key.tap();
      await done.waitFor({ timeout: 4_000 }).catch(() => {});
    }
    await done.waitFor();
    await this.tap('Back');
    await this.tap(new RegExp(`^${this.#errand.pour}`));
  }
}
