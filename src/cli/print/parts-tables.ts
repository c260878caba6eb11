import type { PourParts } from '../../assess/parts/job-parts.ts';
import type { KindNeed, PourNeed } from '../../assess/parts/needs.ts';
import type { PartsAnswer, Shortage } from '../../assess/parts/parts-answer.ts';
import type { CountRow } from '../../assess/parts/reconcile.ts';
import { countOf, describeKind } from '../../say/part-words.ts';
import { type FilledColumn, layFilled } from './parts-words.ts';

/** The pours in the order of their days. */
export function printPours({ parts: { pours }, shortages, today }: PartsAnswer, width: number): string {
  const inserts = ({ lines }: PourParts) =>
    lines.reduce((sum, { kind, count }) => (kind.group === 'inserts' ? sum + count : sum), 0);
  const tell = ({ plan: { pour } }: PourParts) => {
    if (pour.date < today) return 'before today: counted as cast';
    const short = shortages.filter(({ need }) => need.pour === pour.id);
    return short.length === 0 ? '' : `SHORT of ${short.map(({ kind }) => kind.id).join(', ')}`;
  };
  const columns: readonly FilledColumn<PourParts>[] = [
    { head: 'pour', cell: ({ plan }) => plan.pour.id },
    { head: 'date', cell: ({ plan }) => plan.pour.date },
    { head: 'bed', least: 8, cell: ({ plan }) => plan.bed.name },
    {
      head: 'panels',
      least: 12,
      cell: ({ panels }) => panels.map(({ parts, serials }) => `${serials.length} x ${parts.mark}`).join(', '),
    },
    { head: 'inserts', align: 'right', cell: (pour) => String(inserts(pour)) },
    { head: 'what to look at', least: 12, cell: tell },
  ];
  return layFilled(columns, pours, width);
}

/** By when the first pour asks for an order, where no stock says what is there already. */
function tellFirstOrder({ byPour }: KindNeed, today: string): string {
  const [first] = byPour;
  if (first === undefined) return '';
  if (first.orderBy === null) return 'lead time not known';
  return first.orderBy < today ? `PAST: ${first.orderBy}` : first.orderBy;
}

/** Needs of the whole job, kind by kind: against stock where it is given, else with the day by which to order. */
export function printNeeds({ needs, today }: PartsAnswer, width: number): string {
  const hasStock = needs.some(({ stock }) => stock !== null);
  const against: readonly FilledColumn<KindNeed>[] = [
    { head: 'stock', align: 'right', cell: (need) => String(need.stock?.inStock ?? '') },
    { head: 'on order', align: 'right', cell: (need) => String(need.stock?.onOrder ?? '') },
    { head: 'to order', align: 'right', cell: ({ toOrder }) => String(toOrder) },
  ];
  const columns: readonly FilledColumn<KindNeed>[] = [
    { head: 'id', least: 28, cell: ({ kind }) => kind.id },
    { head: 'what', least: 20, cell: ({ kind }) => describeKind(kind) },
    { head: 'count', align: 'right', cell: ({ count }) => String(count) },
    { head: 'spares', align: 'right', cell: ({ kind, spares }) => (kind.hasSpares ? String(spares) : '-') },
    { head: 'needed', align: 'right', cell: ({ needed }) => String(needed) },
    ...(hasStock ? against : []),
    {
      head: 'packs',
      align: 'right',
      cell: ({ kind, packs }) => (kind.packSize === 1 || packs === 0 ? '' : `${packs} of ${kind.packSize}`),
    },
    ...(hasStock ? [] : [{ head: 'order by', least: 10, cell: (need: KindNeed) => tellFirstOrder(need, today) }]),
  ];
  return layFilled(columns, needs, width);
}

/** How the need of reusable parts comes about. */
export function listReuse(needs: readonly KindNeed[]): readonly string[] {
  return needs.flatMap(({ kind, reuse, count }) => {
    if (reuse === null || kind.reuse === null) return [];
    const { turnRound, lossPerUse } = kind.reuse;
    const percent = Number((100 * lossPerUse).toFixed(2));
    return [
      `${kind.id} comes back: ${countOf(count, 'use')}, at most ${reuse.atOnce} at once (back after ${countOf(turnRound, 'day')}), ${reuse.lost} lost (${percent} % of the uses)`,
    ];
  });
}

function tellOrderBy({ orderBy, isTooLate }: PourNeed): string {
  if (orderBy === null) return 'lead time not known';
  return isTooLate ? `TOO LATE: was ${orderBy}` : orderBy;
}

/** What is short, pour by pour. */
export function printShortages(shortages: readonly Shortage[], width: number): string {
  const columns: readonly FilledColumn<Shortage>[] = [
    { head: 'id', least: 28, cell: ({ kind }) => kind.id },
    { head: 'pour', cell: ({ need }) => need.pour },
    { head: 'date', cell: ({ need }) => need.date },
    { head: 'needed up to it', align: 'right', least: 9, cell: ({ need }) => String(need.needed) },
    { head: 'at hand', align: 'right', cell: ({ need }) => String(need.atHand ?? '') },
    { head: 'short', align: 'right', cell: ({ need }) => String(need.short) },
    { head: 'order by', least: 10, cell: ({ need }) => tellOrderBy(need) },
  ];
  return shortages.length === 0 ? '' : layFilled(columns, shortages, width);
}

/** Counts of drawing, schedule and order side by side. */
export function printCountRows(rows: readonly CountRow[], width: number): string {
  const show = (count: number | null) => (count === null ? '-' : String(count));
  const tell = ({ differences, outstanding }: CountRow) =>
    [...differences, ...(outstanding === 0 ? [] : [`${outstanding} to come`])].join('; ');
  const columns: readonly FilledColumn<CountRow>[] = [
    { head: 'id', least: 28, cell: ({ kind }) => kind.id },
    { head: 'drawing', align: 'right', cell: ({ drawing }) => show(drawing) },
    { head: 'schedule', align: 'right', cell: ({ schedule }) => show(schedule) },
    { head: 'needed', align: 'right', cell: ({ needed }) => show(needed) },
    { head: 'ordered', align: 'right', cell: ({ ordered }) => show(ordered) },
    { head: 'delivered', align: 'right', cell: ({ delivered }) => show(delivered) },
    { head: 'what differs', least: 20, cell: tell },
  ];
  return layFilled(columns, rows, width);
}
