import type { Changes, PassingInsert, RejectedInsert } from '../assess/choose/choice.ts';
import { nameMode } from './words.ts';

/** How far a move goes on beyond the least that passes. */
function describeBeyond(move: Changes['move']): string {
  if (move === null) return '';
  return move.beyond === 0
    ? ' (the least: no room beyond it for the tolerance)'
    : ` (${Number(move.beyond.toFixed(1))} mm beyond the least)`;
}

/** What changes besides the insert, in words. */
export function describeChanges(
  { changes: { move, holes, boltThread, boltClass }, consequences }: Pick<PassingInsert, 'changes' | 'consequences'>,
  face: string,
): readonly string[] {
  const axes = face.startsWith('edge') ? ['along the edge', 'from the outside face'] : ['in x', 'in y'];
  const sign = (length: number) => `${length > 0 ? '+' : '−'}${Math.abs(length)} mm`;
  const steps = move === null ? [] : [move.dx, move.dy];
  const moves = steps.flatMap((length, i) => (length === 0 ? [] : [`${sign(length)} ${axes[i]}`]));
  return [
    ...(moves.length === 0 ? [] : [`move ${moves.join(', ')}${describeBeyond(move)}`]),
    ...(holes === null ? [] : [`holes drilled to ${holes.to} mm (now ${[...new Set(holes.from)].join(', ')})`]),
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
