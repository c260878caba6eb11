import type { KindNeed } from '../../../../assess/parts/needs.ts';
import type { PartLine } from '../../../../assess/parts/part-kind.ts';
import type { Shortage } from '../../../../assess/parts/parts-answer.ts';
import { describeKind } from '../../../../say/part-words.ts';
import { type Column, Table } from '../../../parts/table.tsx';
import type { PourPartsView } from '../../../worker/parts-view.ts';
import styles from './parts.module.css';

/** By when the first pour asks for an order; `isShort`: it is known that some is missing. */
function tellOrderBy(orderBy: string | null, today: string, isShort: boolean) {
  if (orderBy === null) return 'not known';
  if (orderBy >= today) return orderBy;
  return isShort ? <span class={styles.short}>too late: was {orderBy}</span> : `past: ${orderBy}`;
}

const kindKey = ({ kind }: { readonly kind: KindNeed['kind'] }) => `${kind.group} ${kind.id}`;

const KIND_COLUMNS = [
  { head: 'id', isName: true, cell: ({ kind }: PartLine) => kind.id },
  { head: 'what', kind: 'wide', cell: ({ kind }: PartLine) => describeKind(kind) },
] as const;

/** Needs of the whole job, kind by kind, against stock where it is given. */
export function NeedTable({ needs, today }: { readonly needs: readonly KindNeed[]; readonly today: string }) {
  const hasStock = needs.some(({ stock }) => stock !== null);
  const against: readonly Column<KindNeed>[] = [
    {
      head: 'in stock',
      kind: 'number',
      cell: ({ stock }) => (stock === null ? '–' : stock.isListed ? stock.inStock : '0, not listed'),
    },
    { head: 'on order', kind: 'number', cell: ({ stock }) => stock?.onOrder ?? '–' },
  ];
  const columns: readonly Column<KindNeed>[] = [
    ...KIND_COLUMNS,
    { head: 'count', kind: 'number', cell: ({ count }) => count },
    { head: 'spares', kind: 'number', cell: ({ kind, spares }) => (kind.hasSpares ? spares : '–') },
    { head: 'needed', kind: 'number', cell: ({ needed }) => <strong>{needed}</strong> },
    ...(hasStock ? against : []),
    {
      head: 'to order',
      kind: 'number',
      cell: ({ toOrder }) => (hasStock && toOrder > 0 ? <span class={styles.short}>{toOrder}</span> : toOrder),
    },
    {
      head: 'packs',
      kind: 'number',
      cell: ({ kind, packs }) => (kind.packSize === 1 || packs === 0 ? '' : `${packs} of ${kind.packSize}`),
    },
    {
      head: 'order by',
      kind: 'short',
      cell: ({ byPour: [first], toOrder }) =>
        first === undefined || toOrder === 0 ? '' : tellOrderBy(first.orderBy, today, hasStock && first.short > 0),
    },
    {
      head: 'how it comes back',
      kind: 'wide',
      cell: ({ kind, reuse, count }) =>
        reuse === null || kind.reuse === null
          ? ''
          : `after ${kind.reuse.turnRound} days: ${count} uses, ${reuse.atOnce} at once, ${reuse.lost} lost`,
    },
  ];
  return (
    <Table
      caption="Parts of the job"
      columns={columns}
      rows={needs}
      keyOf={kindKey}
      groupOf={({ kind }) => kind.group}
    />
  );
}

/** What is short, pour by pour. */
export function ShortTable({ shortages, today }: { readonly shortages: readonly Shortage[]; readonly today: string }) {
  const columns: readonly Column<Shortage>[] = [
    { head: 'id', isName: true, cell: ({ kind }) => kind.id },
    { head: 'what', kind: 'wide', cell: ({ kind }) => describeKind(kind) },
    { head: 'pour', cell: ({ need }) => need.pour },
    { head: 'day', kind: 'short', cell: ({ need }) => need.date },
    { head: 'needed up to it', kind: 'number', cell: ({ need }) => need.needed },
    { head: 'at hand', kind: 'number', cell: ({ need }) => need.atHand ?? '–' },
    { head: 'short', kind: 'number', cell: ({ need }) => <span class={styles.short}>{need.short}</span> },
    { head: 'order by', kind: 'short', cell: ({ need }) => tellOrderBy(need.orderBy, today, true) },
  ];
  return (
    <Table
      caption="What is short"
      columns={columns}
      rows={shortages}
      keyOf={({ kind, need }) => `${kind.group} ${kind.id} ${need.pour}`}
    />
  );
}

/** What is laid out for a pour the day before, bin by bin. */
export function BenchTable({ pour }: { readonly pour: PourPartsView }) {
  const columns: readonly Column<PourPartsView['bench'][number]>[] = [
    ...KIND_COLUMNS,
    { head: 'count', kind: 'number', cell: ({ count }) => <strong>{count}</strong> },
    { head: 'spares beside', kind: 'number', cell: ({ kind, spares }) => (kind.hasSpares ? spares : '–') },
    { head: 'for which panels', kind: 'wide', cell: ({ panels }) => panels },
  ];
  return (
    <Table
      caption={`Bench of pour ${pour.id}`}
      columns={columns}
      rows={pour.bench}
      keyOf={kindKey}
      groupOf={({ kind }) => kind.group}
    />
  );
}

/** So many of each kind. */
export function LineTable({ caption, lines }: { readonly caption: string; readonly lines: readonly PartLine[] }) {
  const columns: readonly Column<PartLine>[] = [
    ...KIND_COLUMNS,
    { head: 'count', kind: 'number', cell: ({ count }) => <strong>{count}</strong> },
  ];
  return <Table caption={caption} columns={columns} rows={lines} keyOf={kindKey} groupOf={({ kind }) => kind.group} />;
}
