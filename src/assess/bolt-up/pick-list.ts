import { addLines } from '../parts/add-lines.ts';
import { boltKind, type PartKind, type PartLine, washerKind } from '../parts/part-kind.ts';
import type { BoltUpCard, BoltUpReport, CardBolt, CardWasher } from './bolt-up-report.ts';
import { warnOfAlikeLengths } from './card-lengths.ts';

/** What goes into the bag of one connection. */
export interface KitBag {
  readonly panel: string;
  readonly piece: string;
  readonly card: BoltUpCard;
  readonly lines: readonly PartLine[];
  /** What is not known, or must not be fetched yet. In words. */
  readonly open: readonly string[];
}

/** What is fetched for one panel at one place of the building. */
export interface PickList {
  /** As it was recorded: grid, level; null: not recorded. */
  readonly place: string | null;
  readonly panel: string;
  readonly pieces: readonly string[];
  readonly bags: readonly KitBag[];
  /** Sum over the bags. */
  readonly lines: readonly PartLine[];
  readonly lookAlikes: readonly string[];
}

const kit = {
  group: 'bolts and washers',
  thread: null,
  finish: null,
  reuse: null,
  hasSpares: true,
  packSize: 1,
  leadTime: null,
  neededAt: 'site',
  isBagged: true,
} as const;

function plateWasher({ outside, thickness }: CardWasher, card: BoltUpCard): PartKind {
  const size = `${outside} x ${outside} x ${thickness}`;
  const thread = card.thread?.name ?? null;
  const name = [size, ...(thread === null ? [] : [`hole for ${thread}`]), card.finish].join(', ');
  return { ...kit, id: `plate washer ${name}`, words: `plate washer ${name}`, thread, size: outside };
}

function packers(thickness: number): PartKind {
  const size = Number(thickness.toFixed(1));
  return { ...kit, id: `packers ${size}`, words: `packers, ${size} mm together`, size };
}

/** Bolt, washers and packers of one insert, for the packers that are stated. */
function listParts(card: BoltUpCard, bolt: CardBolt): readonly PartKind[] {
  const { item } = bolt.insert.item;
  const choice = bolt.lengths[0]?.choice ?? null;
  if (item === null) return [];
  const { propertyClass, finish } = card;
  return [
    boltKind({ thread: item.thread, length: choice?.length ?? null, propertyClass, finish }),
    ...bolt.washers.map((washer) =>
      washer.kind === 'plate' ? plateWasher(washer, card) : washerKind(item.thread, washer.kind, finish),
    ),
    ...(card.connection.packers_mm > 0 ? [packers(card.connection.packers_mm)] : []),
  ];
}

/** One line a kind; packers, which have no thread, behind what has one. */
function addKit(lists: readonly (readonly PartLine[])[]): readonly PartLine[] {
  const sums = addLines(lists.map((lines) => ({ lines, times: 1 })));
  const hasThread = ({ kind }: PartLine) => kind.thread !== null;
  return [...sums.filter(hasThread), ...sums.filter((line) => !hasThread(line))];
}

/** The bag of a connection: bolts for the packers that are stated. One that may not be bolted up yet is listed with why, and counts for nothing. */
function packBag({ panel, piece }: BoltUpReport, card: BoltUpCard): KitBag {
  const lines = card.bolts.flatMap((bolt) => listParts(card, bolt).map((kind): PartLine => ({ kind, count: 1 })));
  const isReady = card.state === 'ready' || card.state === 'tightened';
  return { panel, piece, card, lines: isReady ? addKit([lines]) : [], open: isReady ? [] : card.stops };
}

/** Lengths of one thread in several bags that are easily swapped. */
function findAlike(bags: readonly KitBag[]): readonly string[] {
  const bolts = bags
    .filter(({ lines }) => lines.length > 0)
    .flatMap(({ card }) => card.bolts)
    .flatMap(({ insert, lengths }) => {
      const choice = lengths[0]?.choice ?? null;
      return insert.item.item === null || choice === null
        ? []
        : [{ thread: insert.item.item.thread, length: choice.length }];
    });
  const threads = [...new Set(bolts.map(({ thread }) => thread))];
  return threads.flatMap((thread) =>
    warnOfAlikeLengths(
      thread,
      bolts.filter((bolt) => bolt.thread === thread).map(({ length }) => length),
    ),
  );
}

/**
 * Pick lists of several pieces: one for each panel at each place of the building, places in the order of their names, those without one last. What is tightened already is left out.
 */
export function listPicks(reports: readonly BoltUpReport[]): readonly PickList[] {
  const order = new Intl.Collator('en', { numeric: true });
  const groups = new Map<string, BoltUpReport[]>();
  for (const report of reports) {
    const name = JSON.stringify([report.place, report.panel]);
    groups.set(name, [...(groups.get(name) ?? []), report]);
  }
  const lists = [...groups.values()].map((members): PickList => {
    const { place, panel } = members[0]!; // a group has a member
    const bags = members.flatMap((report) =>
      report.cards.filter(({ state }) => state !== 'tightened').map((card) => packBag(report, card)),
    );
    const lines = addKit(bags.map((bag) => bag.lines));
    return { place, panel, pieces: members.map(({ piece }) => piece), bags, lines, lookAlikes: findAlike(bags) };
  });
  return lists.sort(
    (a, b) =>
      Number(a.place === null) - Number(b.place === null) ||
      order.compare(a.place ?? '', b.place ?? '') ||
      order.compare(a.panel, b.panel),
  );
}
