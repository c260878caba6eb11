import type { BoltUpCard } from '../assess/bolt-up/bolt-up-report.ts';
import type { KitBag, PickList } from '../assess/bolt-up/pick-list.ts';
import { plainLength, sayRange, sayTightening } from './bolt-up-words.ts';

/** Lengths for other packers than those stated: `packers 0–10: bolts of 55`. */
function sayOtherLengths(card: BoltUpCard): readonly string[] {
  return card.packers.slice(1).flatMap((one, k) => {
    const lengths = [...new Set(card.bolts.map(({ lengths: all }) => all[k + 1]?.choice?.length ?? null))];
    if (lengths.length === 0) return [];
    const words = lengths.map((length) => (length === null ? 'none fits' : plainLength(length))).join(' and ');
    const ask = one.state === 'passes' ? '' : ' – ask before it is packed so';
    return [`${sayRange(one)}: bolts of ${words}${ask}`];
  });
}

/** What the label of a bag says beside its parts. */
export function sayKitNotes({ card }: Pick<KitBag, 'card'>): readonly string[] {
  const [tighten] = sayTightening(card);
  return [
    ...sayOtherLengths(card),
    ...(tighten === undefined ? [] : [tighten]),
    ...(card.tightening.isStainless ? ['Stainless: grease, by hand, slowly.'] : []),
  ];
}

/** What a reader of a pick list must know before he fetches. */
export function sayPickNotes({ bags, lookAlikes }: PickList): readonly string[] {
  const waiting = bags.filter(({ open }) => open.length > 0).map(({ card }) => card.connection.mark);
  const assumed = bags.filter(({ card }) => card.bolts.some(({ recessFrom }) => recessFrom === 'as designed'));
  return [
    'Bolts for the packers that are stated; lengths for others are on the labels.',
    ...(waiting.length === 0 ? [] : [`Nothing is fetched yet for ${waiting.join(', ')}.`]),
    ...(assumed.length === 0
      ? []
      : [
          `Depth not surveyed at ${assumed.map(({ card }) => card.connection.mark).join(', ')}: measure it before the bolts are fetched.`,
        ]),
    ...lookAlikes.map((words) => `Look: ${words}.`),
  ];
}
