import { expect } from 'vitest';
import type { Office } from '../harness.ts';
import { checkChains, listStored } from '../records/tablet.ts';
import { MARK, OTHER_MARK } from './eight.ts';
import { Hand } from './hand.ts';
import { BOTH_TAPED, type CutOff } from './story.ts';
import { readScreens, readTablet, reportAll, tellServer, tellStates } from './told.ts';

interface Stand {
  readonly phase: string;
  readonly flags: readonly string[];
}

/** How far each piece is once everything has arrived, and what must be flagged on it, whatever came first. */
const ARRIVED: Readonly<Record<string, Stand>> = {
  1: { phase: 'poured', flags: [] },
  2: { phase: 'in the form', flags: [] },
  3: { phase: 'in the form', flags: ['conflict'] },
  4: { phase: 'poured', flags: ['poured on an override'] },
  5: { phase: 'held', flags: [] },
  6: { phase: 'poured', flags: ['poured without clearance', 'cleared too late'] },
  8: { phase: 'scrapped', flags: [] },
};

/** The same once the conflict is settled, and what was checked by both is cleared and poured. */
const FINISHED: Readonly<Record<string, Stand>> = {
  ...ARRIVED,
  2: { phase: 'poured', flags: [] },
  3: { phase: 'poured', flags: [] },
};

/**
 * Everything that can be known is the same everywhere: what is stored, what it comes to, and what the screens show.
 * @param count of the records that were ever written
 */
async function checkSame(
  office: Office,
  { eight }: CutOff,
  hands: readonly Hand[],
  count: number,
  stands: Readonly<Record<string, Stand>>,
): Promise<void> {
  const stored = await listStored(office.server, eight.id);
  expect(stored).toHaveLength(count);
  expect(checkChains(stored)).toEqual([]);
  const states = await tellServer(office.server, eight);
  const screens = await Promise.all(
    hands.map(async (hand) => {
      const records = await readTablet(hand.page);
      expect(records).toHaveLength(count);
      expect(tellStates(eight, records)).toBe(states);
      return readScreens(hand, eight);
    }),
  );
  for (const shown of screens) expect(shown).toEqual(screens[0]);
  const reports = await reportAll(office.server, eight);
  expect(
    Object.fromEntries(
      [...reports].map(([serial, { phase, flags }]) => [serial, { phase, flags: flags.map(({ kind }) => kind) }]),
    ),
  ).toEqual(stands);
  const { rows } = screens[0]!;
  for (const [serial, { flags }] of reports) {
    const row = rows.find((text) => text.startsWith(`${MARK} no. ${serial}`));
    for (const { words } of flags) expect(row).toContain(words);
  }
  expect(rows.some((text) => text.startsWith(`${OTHER_MARK} no. 1`))).toBe(true);
}

/** Both see that two taped the same insert differently; one is found right, and then neither sees a conflict any more. */
async function settle(one: Hand, two: Hand): Promise<void> {
  for (const hand of [one, two]) {
    await hand.open('3');
    await hand.tap(/^Conflicts/);
    await hand.page.getByRole('region', { name: new RegExp(`^Insert ${BOTH_TAPED}: taped`) }).waitFor();
  }
  await two.screen.shoot('whole-conflict');
  await one.tap(/checker.* is right/);
  await one.tap(/^Yes, that one counts/);
  await one.page.getByText('Nobody says different things about this piece').waitFor();
  await one.sendNow();
  await two.sendNow();
  await two.open('3');
  expect(await two.page.getByRole('link', { name: /^Conflicts/ }).count()).toBe(0);
  expect(await two.page.getByText(/who did not know of each other/).count()).toBe(0);
}

/**
 * Brings both back into the network, one before the other, holds everything that they and a third one know against what the server has, and has the
 * pour finished with what is now known.
 * @param first which of them comes back first
 */
export async function bringTogether(office: Office, cut: CutOff, first: 'one' | 'two'): Promise<void> {
  const { server } = office;
  const { eight } = cut;
  const written = [...cut.one.written, ...cut.two.written];
  const count = written.length;
  expect(new Set(written.map(({ id }) => id)).size).toBe(count);
  // The server is there again, the tablets are not: nothing has arrived.
  await server.restart();
  expect(await listStored(server, eight.id)).toEqual([]);

  const second = first === 'one' ? 'two' : 'one';
  const early = await cut[first].comeBack();
  await early.sendNow();
  expect(await listStored(server, eight.id)).toHaveLength(cut[first].written.length);
  expect(await readTablet(early.page)).toHaveLength(cut[first].written.length);
  const late = await cut[second].comeBack();
  await late.sendNow();
  await early.sendNow();
  const [one, two] = first === 'one' ? [early, late] : [late, early];
  for (const hand of [one, two]) hand.allowCut();
  const third = await Hand.leave(office, 'checker', true);
  await checkSame(office, cut, [one, two, third], count, ARRIVED);
  const ids = new Set((await listStored(server, eight.id)).map(({ record }) => record.id));
  expect(written.filter(({ id }) => !ids.has(id))).toEqual([]);
  for (const hand of [one, two, third]) await hand.toPour();
  await one.screen.shoot(`whole-pour-${first}`);
  await settle(one, two);
  // What neither had seen whole before is cleared by the one, and looked at by the other after screeding.
  for (const serial of ['2', '3']) {
    await one.clear(serial);
    await one.pour();
  }
  await one.sendNow();
  await two.sendNow();
  for (const serial of ['2', '3']) await two.checkScreed(serial);
  await two.sendNow();
  // Loaded anew, from a server that was started anew.
  await server.stop();
  await server.restart();
  await Promise.all(
    [one, two, third].map(async (hand) => {
      hand.allowCut();
      await hand.page.reload();
      await hand.toPour();
      await hand.sendNow();
    }),
  );
  const screed = eight.plan('2').afterScreed.length;
  // One choice, two clearances, two pours, and what was looked at after screeding.
  await checkSame(office, cut, [one, two, third], count + 1 + 2 + 2 + 2 * screed, FINISHED);
  for (const hand of [one, two, third]) await hand.putAway();
}
