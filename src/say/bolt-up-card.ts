import type { BoltUpCard, BoltUpReport, CardBolt } from '../assess/bolt-up/bolt-up-report.ts';
import type { Point } from '../engine/geometry/point.ts';
import type { Panel } from '../job/documents/panel.ts';
import { describeFrame, frameOf, panelSide } from '../job/face-frame.ts';
import {
  AFTER_WORDS,
  CARD_STATES,
  plainLength,
  sayBoltKind,
  sayMayDo,
  sayMeasures,
  sayPackers,
  sayRange,
  saySequence,
  sayStack,
  sayTemporary,
  sayTightening,
  THREAD_WORDS,
} from './bolt-up-words.ts';

/** Of which piece a card is, as it stands on paper. */
export interface CardHead {
  readonly panel: Panel;
  readonly serial: string;
  readonly revision: string;
  readonly project: string;
}

function middleOf(points: readonly Point[]): Point {
  const n = Math.max(points.length, 1);
  return [points.reduce((sum, [x]) => sum + x, 0) / n, points.reduce((sum, [, y]) => sum + y, 0) / n];
}

/** Where the connection is on its panel, as one stands before it: from the left and from below, found by tape. */
function sayPlace(card: BoltUpCard, panel: Panel): string {
  const { connection } = card;
  const frame = frameOf(panel, connection);
  const at = middleOf(
    card.asCast.members.map(
      ({ item: { castIn }, place }): Point => frame.toFace([place?.x ?? castIn.x_mm, place?.y ?? castIn.y_mm]),
    ),
  );
  if (connection.face === 'edge') {
    const { length } = panelSide(panel, connection.edge ?? 0);
    return `Middle of its inserts: ${plainLength(at[0])} from the left end of this side as you see it (${plainLength(length)} long), ${plainLength(at[1])} above its lower face.`;
  }
  const corners = panel.outline_mm.map(frame.toFace);
  const left = Math.min(...corners.map(([x]) => x));
  const below = Math.min(...corners.map(([, y]) => y));
  return `Middle of its inserts: ${Math.round(at[0] - left)} mm from the left end of the panel as you see it, ${Math.round(at[1] - below)} mm above its lowest edge.`;
}

function sayStand(card: BoltUpCard, panel: Panel): string {
  if (card.seenFrom === 'edge') return `Seen onto the edge: ${describeFrame(panel, card.connection).split(';')[0]}.`;
  return `Seen from ${card.seenFrom.toUpperCase()}, standing before it, top up.`;
}

function sayLengths({ lengths }: CardBolt): readonly string[] {
  return lengths.map(({ choice }) => (choice === null ? 'NONE FITS' : String(choice.length)));
}

/** Stacks of washers that differ, each with the inserts that have it. */
function sayStacks(card: BoltUpCard): readonly string[] {
  const stacks = new Map<string, number[]>();
  for (const bolt of card.bolts) {
    const words = sayStack(bolt, card);
    stacks.set(words, [...(stacks.get(words) ?? []), bolt.insert.item.number]);
  }
  return [...stacks].map(([words, numbers]) => (stacks.size === 1 ? words : `insert ${numbers.join(', ')}: ${words}`));
}

/** What was decided, and what the plate looks like: its hand is told by its first hole. */
function sayHand(card: BoltUpCard): readonly string[] {
  const { plate, asCast } = card;
  const decision = asCast.state === 'decided' ? asCast.decision : null;
  const [first] = plate?.holes ?? [];
  const box = plate?.holes ?? [];
  const middle = middleOf(box.map(({ at_mm }) => at_mm));
  const where =
    first === undefined || box.length < 2
      ? []
      : [
          `Hole ${first.id} of the bracket goes ${[
            Math.abs(first.at_mm[1] - middle[1]) < 1 ? '' : first.at_mm[1] > middle[1] ? 'top' : 'bottom',
            Math.abs(first.at_mm[0] - middle[0]) < 1 ? '' : first.at_mm[0] > middle[0] ? 'right' : 'left',
          ]
            .filter((part) => part !== '')
            .join(' ')} before it is turned as drawn; a bracket of the other hand does not belong here.`,
        ];
  return [...where, ...(decision === null ? [] : [`Decided: ${decision.body.words}`])];
}

/** How it is bolted, tightened and finished. */
function sayWork(card: BoltUpCard, report: BoltUpReport) {
  const boltNotes = [...new Set(card.bolts.flatMap(({ notes }) => notes))];
  const whys = card.bolts.flatMap(({ insert, lengths }) =>
    lengths.flatMap(({ why }, k) =>
      why === null || k === 0 ? [] : [`Insert ${insert.item.number}, ${sayRange(card.packers[k]!)}: ${why}.`],
    ),
  );
  return {
    bolts: sayBoltKind(card),
    ranges: card.packers.map(sayRange),
    rows: card.bolts.map((bolt) => ({
      insert: String(bolt.insert.item.number),
      hole: bolt.hole ?? '–',
      recess: `${plainLength(bolt.recess)}${bolt.recessFrom === 'surveyed' ? '' : ' ?'}`,
      turns: plainLength(Math.ceil(bolt.minTurns * 2) / 2),
      lengths: sayLengths(bolt),
    })),
    notes: [...sayStacks(card), ...sayPackers(card.packers), ...card.lookAlikes, ...card.notes, ...boltNotes, ...whys],
    tightening: sayTightening(card),
    lists: [
      { title: 'In this order', items: saySequence(card) },
      { title: 'What you may do', items: sayMayDo(card) },
      { title: 'Caps and threads', items: THREAD_WORDS },
      { title: 'After', items: AFTER_WORDS },
      { title: 'Inserts for a time only', items: report.temporary.map(sayTemporary) },
    ],
    measures: sayMeasures(card),
  };
}

/** Given up: nothing that could be read as how to bolt it. */
function sayNothingGoes(card: BoltUpCard, report: BoltUpReport): ReturnType<typeof sayWork> {
  return {
    bolts: sayBoltKind(card),
    ranges: [],
    rows: [],
    notes: [],
    tightening: [],
    lists: [{ title: 'Inserts for a time only', items: report.temporary.map(sayTemporary) }],
    measures: [],
  };
}

/** Everything that the card of a connection says, but for its picture. */
export function sayBoltUpCard(card: BoltUpCard, report: BoltUpReport, head: CardHead) {
  const { panel, serial, revision, project } = head;
  const { connection } = card;
  const isStop = card.state !== 'ready' && card.state !== 'tightened';
  const faults = card.bolts.flatMap(({ insert, faults: own }) =>
    own.map((words) => `Insert ${insert.item.number}: ${words}.`),
  );
  return {
    panel: panel.mark,
    connection: connection.mark,
    lines: [
      `piece no. ${serial} · ${report.place ?? 'place in the building not recorded'} · revision ${revision}`,
      project,
    ],
    stand: sayStand(card, panel),
    state: CARD_STATES[card.state],
    isStop: isStop || card.tightenedFaults.length > 0,
    stops: [...(card.state === 'tightened' ? card.tightenedFaults : card.stops), ...faults],
    where: [sayPlace(card, panel), ...sayHand(card)],
    ...(card.state === 'not usable' ? sayNothingGoes(card, report) : sayWork(card, report)),
    foot: 'An aid for a competent person: the design engineer decides.',
    writeLength: (mm: number) => `${plainLength(mm)} mm`,
  };
}
