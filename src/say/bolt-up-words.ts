import type {
  BoltUpCard,
  BoltUpReport,
  CardBolt,
  CardPackers,
  TemporaryInsert,
} from '../assess/bolt-up/bolt-up-report.ts';
import { STATE_WORDS } from './words.ts';

const N_MM_PER_N_M = 1000;

/** A length in whole or tenths of mm. */
export function plainLength(mm: number): string {
  return String(Number(mm.toFixed(1)));
}

/** The same with its sign: `+4.5`, `−3`, `0`. */
export function signedLength(mm: number): string {
  const text = plainLength(Math.abs(mm));
  return text === '0' ? text : `${mm > 0 ? '+' : '−'}${text}`;
}

/** What becomes of a card, in a few words. */
export const CARD_STATES: Readonly<Record<BoltUpCard['state'], string>> = {
  ready: 'may be bolted up',
  'decide first': 'DO NOT BOLT UP: a decision is missing',
  'survey first': 'DO NOT BOLT UP: survey first',
  'no bolts': 'DO NOT BOLT UP: it does not go together like this',
  'not usable': 'NOT USABLE: do not bolt, do not load',
  tightened: 'tightened',
};

/** Packers of a range: `no packers`, `packers 0–10`. */
export function sayRange({ range: [least, greatest] }: Pick<CardPackers, 'range'>): string {
  if (greatest === 0) return 'no packers';
  return least === greatest
    ? `packers ${plainLength(least)}`
    : `packers ${plainLength(least)}–${plainLength(greatest)}`;
}

/** What the strength is with the most packers of each range. Only what passes may be packed so without asking. */
export function sayPackers(all: readonly CardPackers[]): readonly string[] {
  const passing = all.filter(({ state }) => state === 'passes');
  const others = all.filter(({ state }) => state !== 'passes');
  return [
    ...(passing.length === 0 ? [] : [`Strength passes with ${passing.map(sayRange).join('; ')}.`]),
    ...others.map(
      (one) =>
        `${sayRange(one)}: ${STATE_WORDS[one.state]}${one.isStated ? '' : ` with ${plainLength(one.range[1])} mm: ask before it is packed so`}.`,
    ),
  ];
}

/** Bolts of a card in a line: `Bolts M16, class 8.8, galvanised`. */
export function sayBoltKind({ thread, propertyClass, finish }: BoltUpCard): string {
  return ['Bolts', thread?.name ?? '', `class ${propertyClass}`, finish === 'plain' ? 'plain steel' : finish]
    .filter((part) => part !== '')
    .join(', ')
    .replace('Bolts, ', 'Bolts ');
}

/** Washers from the head to the concrete: `head – washer 30 × 3 (ISO 7089) – plate 20 – concrete`. */
export function sayStack({ washers }: Pick<CardBolt, 'washers'>, card: BoltUpCard): string {
  const parts = washers.map(({ kind, outside, thickness }) =>
    kind === 'plate'
      ? `plate washer ${plainLength(outside)} × ${plainLength(outside)} × ${plainLength(thickness)}`
      : `washer ${plainLength(outside)} × ${plainLength(thickness)} (${kind})`,
  );
  const plate = card.plate === null ? [] : [`plate ${plainLength(card.plate.thickness_mm)}`];
  return ['head', ...parts, ...plate, 'packers if any', 'concrete'].join(' – ');
}

/** A torque [N mm] in whole N m, cut off: a limit is never rounded up. */
export function sayTorque(torque: number): string {
  return `${Math.floor(torque / N_MM_PER_N_M + 1e-9)} N m`;
}

/** What governs the most that may be put on, as people say it. */
const LIMIT_WORDS: Readonly<Record<string, string>> = {
  "maker's maximum": "the insert maker's maximum",
  'body around the thread': "the insert's body around its thread",
  'body at the cross hole': "the insert's body at its cross hole",
  "bolt's thread": "the bolt's thread",
  "insert's thread": "the insert's thread",
  concrete: 'the concrete as it is today',
};

/** How to tighten, a sentence each. */
export function sayTightening({ tightening: { most, tension, isStainless } }: BoltUpCard): readonly string[] {
  const limit =
    most === null
      ? 'Snug, by hand with a short spanner. No limit of the torque is known: no torque wrench, no extension.'
      : `Snug, by hand with a short spanner; NEVER above ${sayTorque(most.torque)} (${LIMIT_WORDS[most.kind] ?? most.kind}).`;
  const pulled =
    tension === null
      ? []
      : [
          `At that torque each insert is pulled with ${(tension[0] / 1000).toFixed(1)} to ${(tension[1] / 1000).toFixed(1)} kN before any load comes.`,
        ];
  const stainless = isStainless
    ? [
        'Stainless: grease the thread with anti-seize, turn it slowly by hand; a bolt that turns hard is taken out at once.',
      ]
    : [];
  return [limit, ...pulled, ...stainless, 'No impact tool in a cast-in thread.'];
}

/** The order of work, as long as a brace may be there. */
export function saySequence(card: BoltUpCard): readonly string[] {
  return [
    'The brace stays, and nobody stands below, until every permanent connection of this panel is recorded as tightened and the temporary works design lets it go.',
    'Caps out only now, one insert at a time. Turn each bolt in by hand and count the turns: fewer than the least, STOP.',
    'Plate on, packers in, all bolts in by hand before one is tightened.',
    ...(card.connection.isFilled ? ['Fill behind the plate with mortar as designed, before it is loaded.'] : []),
    'Tighten from the middle outward, twice round.',
  ];
}

/** What an installer may do by himself, and what not. */
export function sayMayDo({ connection }: BoltUpCard): readonly string[] {
  const most = connection.packers_mm;
  return [
    `You may: shift and turn the plate in its holes; take packers ${most > 0 ? `of ${plainLength(most)} mm as stated` : 'only in a range that passes'}; take a bolt of this card for them.`,
    'You may not, without the design engineer: slot, enlarge or burn a hole, drill anew, leave out a bolt, bend a bolt or an insert, cut a bolt to suit, weld.',
  ];
}

/** What to do about caps and threads. */
export const THREAD_WORDS: readonly string[] = [
  'Cap missing: blow out water, ice and dirt; dry it; look to the bottom with a lamp.',
  'Thread dirty: brush and blow it out, then a bolt of the final finish by hand. NEVER tap a galvanised thread: it takes zinc and thread away.',
  'Mortar that does not come out by hand, or too few turns: stop, leave the cap in, call.',
];

/** What to do once it is tight. */
export const AFTER_WORDS: readonly string[] = [
  'Dot of paint on each bolt, one photo of the whole connection, one record on the phone.',
  'Seal or fill as the drawing says; fire and sound first.',
];

/** What to measure where a plate does not go on: three numbers that tell where its inserts are. */
export function sayMeasures({ bolts }: BoltUpCard): readonly string[] {
  const [first] = bolts;
  const one = first === undefined ? 'the insert' : `insert ${first.insert.item.number}`;
  const last = bolts.at(-1);
  const between =
    bolts.length < 2 || first === undefined || last === undefined
      ? 'depth: from the face to the top of the insert'
      : `${one} to insert ${last.insert.item.number}, middle to middle`;
  return [
    `${one} to the nearest side of the panel, level`,
    `${one} to the bottom or top of the panel, upright`,
    between,
  ];
}

const TEMPORARY: Readonly<Record<TemporaryInsert['state'], string>> = {
  'in use': 'in use: leave it',
  'fill and seal': 'no longer needed: FILL AND SEAL, photo before it is covered',
  sealed: 'filled and sealed',
  'sealed too early': 'SEALED TOO EARLY: it is still needed',
};

const WHY: Readonly<Record<TemporaryInsert['why'], string>> = {
  brace: 'brace insert',
  lifting: 'lifting insert',
  'no bolt': 'insert without a bolt',
};

/** An insert that was needed for a time only: `brace insert 7: in use: leave it`. */
export function sayTemporary({ item, why, state }: TemporaryInsert): string {
  return `${WHY[why]} ${item.number}: ${TEMPORARY[state]}`;
}

/** How far a piece is: `3 of 10 connections tightened, 5 may be bolted up, 2 wait`. */
export function sayBoltUp({ cards, counts: { tightened, ready, waiting } }: BoltUpReport): string {
  const parts = [
    `${tightened} of ${cards.length} connections tightened`,
    ...(ready > 0 ? [`${ready} may be bolted up`] : []),
    ...(waiting > 0 ? [`${waiting} wait${waiting === 1 ? 's' : ''}`] : []),
  ];
  return parts.join(', ');
}
