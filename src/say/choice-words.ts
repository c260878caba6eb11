import type { Changes, PassingInsert, RejectedInsert } from '../assess/choose/choice.ts';
import type { Move } from '../assess/choose/find-move.ts';
import { type Sight, tellMove } from './move-words.ts';
import type { QuantityWriter } from './quantities.ts';
import { nameMode } from './words.ts';

/** How moves and lengths are said. */
export interface ChangeWords {
  readonly move: (move: Move) => string;
  readonly length: (mm: number) => string;
}

/** As the documents of a job give positions: mm along their axes. */
export function asInDocuments(face: string): ChangeWords {
  const axes = face.startsWith('edge') ? ['along the edge', 'from the outside face'] : ['in x', 'in y'];
  const sign = (length: number) => `${length > 0 ? '+' : '−'}${Math.abs(length)} mm`;
  return {
    move: ({ dx, dy }) =>
      [dx, dy].flatMap((length, i) => (length === 0 ? [] : [`${sign(length)} ${axes[i]}`])).join(', '),
    length: (mm) => `${Number(mm.toFixed(1))} mm`,
  };
}

/** As a person sees them who stands in front of the face, in his units. */
export function asSeen(sight: Sight, { length }: Pick<QuantityWriter, 'length'>): ChangeWords {
  return { move: (move) => tellMove(move, sight, { length }), length };
}

/** How far a move goes on beyond the least that passes. */
function describeBeyond(move: NonNullable<Changes['move']>, { length }: ChangeWords): string {
  return move.beyond === 0
    ? ' (the least: no room beyond it for the tolerance)'
    : ` (${length(move.beyond)} beyond the least)`;
}

/** What changes besides the insert, in words. */
export function describeChanges(
  { changes: { move, holes, boltThread, boltClass }, consequences }: Pick<PassingInsert, 'changes' | 'consequences'>,
  words: ChangeWords,
): readonly string[] {
  const { length } = words;
  return [
    ...(move === null ? [] : [`move ${words.move(move)}${describeBeyond(move, words)}`]),
    ...(holes === null
      ? []
      : [`holes drilled to ${length(holes.to)} (now ${[...new Set(holes.from)].map(length).join(', ')})`]),
    ...(boltThread === null ? [] : [`bolts ${boltThread.to} (now ${boltThread.from})`]),
    ...(boltClass === null ? [] : [`bolts ${boltClass.to} (now ${boltClass.from})`]),
    ...consequences,
  ];
}

/** Where an insert is in use already, in a word or two. */
export function describeUse({ inPanel, inJob, isAsDesigned }: PassingInsert): string {
  if (isAsDesigned) return 'as it is';
  if (inPanel > 0) return `panel ${inPanel}`;
  return inJob > 0 ? `job ${inJob}` : 'new';
}

/** How many others of its kind there are already, in a few words. */
export function tellUse({ inPanel, inJob, isAsDesigned }: PassingInsert): string {
  if (isAsDesigned) return 'stands here';
  if (inPanel > 0) return `${inPanel} more in this panel`;
  return inJob > 0 ? `${inJob} more in the job` : 'new in the job';
}

/** When it can be had, where that was asked. */
export function describeDelivery({ delivery }: PassingInsert): string {
  switch (delivery.kind) {
    case 'not asked':
      return '';
    case 'in time':
      return `${delivery.leadTime_days} days`;
    case 'late':
      return `${delivery.leadTime_days} days: LATE`;
    case 'not known':
      return 'not known';
  }
}

/** What all inserts of the connection cost. */
export function describeCost({ cost }: PassingInsert): string {
  return cost === null ? 'no price' : `${cost.amount.toFixed(2)} ${cost.currency}`;
}

/** Names that share a text, in the order in which texts come. */
export function groupByText(
  entries: readonly (readonly [name: string, text: string])[],
): readonly (readonly [names: string, text: string])[] {
  const names = new Map<string, string[]>();
  for (const [name, text] of entries) names.set(text, [...(names.get(text) ?? []), name]);
  return [...names].map(([text, of]) => [of.join(', '), text]);
}

/** The reason without the insert's own name and length in front, so that inserts with the same reason stand together. */
function shortenReason({ item, reasons }: RejectedInsert): string {
  const named = [`${item.id}, ${item.length_mm} mm long, `, `${item.id}, `];
  return reasons.map((reason) => named.reduce((text, name) => text.replace(name, ''), reason)).join('; ');
}

/** Why an insert is not among the ranked, in words. */
export function describeReason(insert: RejectedInsert): string {
  const { why, governing, tried } = insert;
  const others = tried.length === 0 ? '' : `; nor ${tried.join(', nor ')}`;
  const reason = shortenReason(insert);
  if (why !== 'fails' || governing === null) return `${reason}${others}`;
  const uncovered = reason === '' ? '' : `; not covered either: ${reason}`;
  return `${nameMode(governing.mode)} (${governing.combination})${others}${uncovered}`;
}

/** What lies in the insert and its bolts rather than in the loads: the same for many connections of a job. */
export function isByItself({ why }: RejectedInsert): boolean {
  return why === 'does not fit' || why === 'other role';
}
