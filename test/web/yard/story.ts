import { expect } from 'vitest';
import type { FactRecord } from '../../../src/records/record.ts';
import { tellTape } from '../../../src/web/yard/state/tape-words.ts';
import type { Office } from '../harness.ts';
import { Eight, OTHER_MARK } from './eight.ts';
import { Hand, inPlace, type Tape } from './hand.ts';
import { readTablet } from './told.ts';

/** By how much the two who taped the same insert differ [mm]. */
const APART = 30;
/** The insert that both taped. */
export const BOTH_TAPED = 5;

/** The insert that is found loose. */
const LOOSE = 2;

/** A tablet with the network still cut: what it wrote, and how it comes back into the network. */
interface Away {
  readonly written: readonly FactRecord[];
  comeBack(): Promise<Hand>;
}

/** What two tablets are left with, the server down. */
export interface CutOff {
  readonly eight: Eight;
  readonly one: Away;
  readonly two: Away;
}

/** The same moment, once more: to be had after what came of it has been told. */
interface Twice {
  readonly cut: CutOff;
  /** Puts the server's store back to that moment; the tablets come with what lay on their disks then. */
  again(): Promise<CutOff>;
}

/** As if the whole set had been set from the other end: each along x from there. */
function fromOtherEnd(eight: Eight): Tape {
  const { length } = eight.plan('5').setOut;
  return (item, axis) => (axis === 'x' ? Math.round(length) - inPlace(item, 'x') : inPlace(item, 'y'));
}

/** What the checker, and then QA, do with the first tablet. */
async function workWithOne(one: Hand, eight: Eight): Promise<void> {
  await one.checkAll('1', eight.plan('1'));
  // Of piece 2 the form and the first stage; the other tablet goes on with it.
  await one.checkForm('2', eight.plan('2'));
  await one.walk(eight.plan('2'), 1);
  await one.putCageIn();
  await one.checkAll('3', eight.plan('3'));
  await one.checkForm('5', eight.plan('5'));
  await one.walk(eight.plan('5'), 1, fromOtherEnd(eight));
  await one.page.getByText('MIRRORED', { exact: true }).first().waitFor();
  await one.screen.shoot('whole-mirrored');
  await one.putCageIn();
  await one.walk(eight.plan('5'), 2, fromOtherEnd(eight));
  await one.checkAll('6', eight.plan('6'));

  await one.toPour();
  await one.handTo('qa');
  // Refused: no key of QA clears a set that lies the wrong way round.
  await one.open('5');
  await one.tap(/^Clearance, pour/);
  const clear = one.page.getByRole('button', { name: /^Clear/ });
  await clear.first().waitFor();
  for (const key of await clear.all()) expect(await key.isDisabled(), (await key.textContent()) ?? '').toBe(true);
  await one.screen.shoot('whole-refused');
  await one.tap(/^Hold this piece/);
  await one.tap(/^Insert missing or wrong/);
  await one.tap(/^Hold this piece/);
  await one.page.getByText('HELD', { exact: true }).waitFor();
  await one.clear('1');
  await one.pour();
  await one.checkScreed('1');
  // The other tablet has written that it is poured; nobody here can know.
  await one.clear('6');
}

/** What the foreman does with the second tablet. */
async function workWithTwo(two: Hand, eight: Eight): Promise<void> {
  await two.open('8');
  await two.tap(/^More …/);
  await two.tap(/^Scrap it/);
  await two.tap(/^Cracked/);
  await two.tap(/^Scrap it/);
  await two.tap(/^Yes, it is scrapped/);
  await two.page.getByText('SCRAPPED', { exact: true }).waitFor();
  await two.open('7');
  await two.tap(/^More …/);
  await two.tap(/^Mark anew/);
  // Signs, as long as they are not enough for one mark.
  while ((await two.page.getByRole('button', { name: OTHER_MARK, exact: true }).count()) === 0)
    await two.page
      .getByRole('button', { name: /^P\d*…/ })
      .filter({ hasText: OTHER_MARK.slice(0, 2) })
      .first()
      .tap();
  await two.tap(OTHER_MARK);
  await two.tap(/^The wrong form was set/);
  await two.tap(new RegExp(`^Mark it ${OTHER_MARK} no. 1`));
  await two.page.getByRole('heading', { name: `${OTHER_MARK} no. 1` }).waitFor();
  // Poured as it happened, before anybody had cleared it.
  await two.open('6');
  await two.tap(/^Clearance, pour/);
  await two.pourAnyway('POURED WITHOUT CLEARANCE');
  await two.screen.shoot('whole-without-clearance');
  await two.checkScreed('6');
  // One is not firm, and it is poured on an override.
  const plan = eight.plan('4');
  await two.checkForm('4', plan);
  await two.tap(/^Something differs/);
  await two.page
    .getByRole('group', { name: 'Which one differs' })
    .getByRole('button', { name: `${LOOSE}`, exact: true })
    .tap();
  await two.tap(/^Not firm/);
  await two.tap(/^Leave it, go on/);
  await two.walk(plan, 1, inPlace, [LOOSE]);
  await two.putCageIn();
  await two.walk(plan, 2);
  await two.open('4');
  await two.tap(/^Clearance, pour/);
  await two.tap(/^Pour on an override/);
  await two.tap(/^Truck at the gate/);
  await two.tap(/^Let it be poured/);
  await two.page.getByText('To be poured on an override').waitFor();
  await two.pourAnyway('POURED ON AN OVERRIDE');
  await two.checkScreed('4');
  // As when a tablet goes to sleep and the browser clears its page away: it opens again without a line.
  await two.page.reload();
  await two.page.getByRole('main').waitFor();
  // What is left of piece 2, and of piece 3 one insert that looks doubtful.
  await two.open('2');
  await two.tap(/^Before the pour/);
  await two.walk(eight.plan('2'), 2);
  await two.open('3');
  await two.tap(/^Before the pour/);
  await two.tap(/^Go to …/);
  await two.page
    .getByRole('group', { name: 'Go to' })
    .getByRole('button', { name: `${BOTH_TAPED}`, exact: true })
    .tap();
  await two.tap(/^Measure this one too/);
  await two.page
    .getByRole('group', { name: 'Measure' })
    .getByRole('button', { name: `${BOTH_TAPED}`, exact: true })
    .tap();
  const { setOut } = eight.plan('3');
  const item = setOut.items.find(({ number }) => number === BOTH_TAPED)!;
  for (const axis of ['x', 'y'] as const)
    await two.finger.type(
      `${BOTH_TAPED} · ${tellTape(setOut, item, axis)}`,
      inPlace(item, axis) - (axis === 'x' ? APART : 0),
    );
  await two.tap(/^Not taken/);
  await two.page.getByText(new RegExp(`^${BOTH_TAPED}: `)).waitFor();
}

/** A whole pour of eight castings of one mark, checked on two tablets while the server is down and no line is there. */
export async function checkPourOffline(office: Office): Promise<Twice> {
  const { server } = office;
  const eight = await Eight.serve(server);
  const [one, two] = await Promise.all([Hand.leave(office, 'checker', true), Hand.leave(office, 'foreman', false)]);
  await server.stop();
  for (const hand of [one, two]) await hand.setOffline(true);
  try {
    await Promise.all([workWithOne(one, eight), workWithTwo(two, eight)]);
  } finally {
    for (const hand of [one, two]) hand.allowCut();
  }
  const [writtenByOne, writtenByTwo] = [await readTablet(one.page), await readTablet(two.page)];
  const [diskOfOne, diskOfTwo] = [await one.copyDisk(), await two.copyDisk()];
  const putStoreBack = server.copyStore();
  const walkBack = async (hand: Hand) => {
    await hand.setOffline(false);
    return hand;
  };
  return {
    cut: {
      eight,
      one: { written: writtenByOne, comeBack: () => walkBack(one) },
      two: { written: writtenByTwo, comeBack: () => walkBack(two) },
    },
    again: async () => {
      await putStoreBack();
      return {
        eight,
        one: { written: writtenByOne, comeBack: () => Hand.switchOn(office, diskOfOne, true) },
        two: { written: writtenByTwo, comeBack: () => Hand.switchOn(office, diskOfTwo, false) },
      };
    },
  };
}
