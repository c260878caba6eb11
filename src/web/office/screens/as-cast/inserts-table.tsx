import type { AsCastInsert, AsCastReport } from '../../../../assess/as-cast/as-cast-report.ts';
import { describeFace, describeType } from '../../../../drawing/sheets/words.ts';
import { Section } from '../../../parts/page.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import styles from './as-cast.module.css';
import { AsCastMark } from './as-cast-marks.tsx';

/** A length with its sign: found less designed. */
function signed(mm: number): string {
  const sign = mm > 0 ? '+' : mm < 0 ? '−' : '±';
  return `${sign}${writeQuantity('length', Math.abs(mm))}`;
}

const NONE = '–';
/** Less than that [mm] nobody tells from flush. */
const FLUSH = 0.5;

function tellDepth({ place }: AsCastInsert): string {
  if (place === null || place.depth === null) return NONE;
  const off = place.depthOff === null ? '' : ` (${signed(place.depthOff)})`;
  if (Math.abs(place.depth) < FLUSH) return `flush${off}`;
  return place.depth < 0
    ? `${writeQuantity('length', -place.depth)} proud${off}`
    : `${writeQuantity('length', place.depth)} below${off}`;
}

const COLUMNS: readonly Column<AsCastInsert>[] = [
  { head: 'no.', kind: 'number', isName: true, cell: ({ item }) => item.number },
  { head: 'insert', cell: ({ item }) => `${describeType(item)}; ${describeFace(item)}` },
  { head: 'stands', kind: 'short', cell: ({ state }) => <AsCastMark state={state} /> },
  { head: 'x off', kind: 'number', cell: ({ place }) => (place === null ? NONE : signed(place.dx)) },
  { head: 'y off', kind: 'number', cell: ({ place }) => (place === null ? NONE : signed(place.dy)) },
  { head: 'may be', kind: 'number', cell: ({ item }) => `± ${writeQuantity('length', item.tolerance)}` },
  { head: 'depth (off)', kind: 'short', cell: tellDepth },
  {
    head: 'tilt',
    kind: 'number',
    cell: ({ place }) => (place === null || place.tilt === null ? NONE : writeQuantity('degrees', place.tilt.total)),
  },
  {
    head: 'known to',
    kind: 'short',
    cell: ({ place }) =>
      place === null ? NONE : `± ${writeQuantity('length', Math.max(...place.sigma))} ${place.basis}`,
  },
  {
    head: 'what',
    kind: 'wide',
    cell: ({ why }) => (
      <span class={styles.lines}>
        {why.map((words) => (
          <span key={words}>{words}</span>
        ))}
      </span>
    ),
  },
];

/** Every insert with what it is off, its depth and its tilt; those that are off first. */
export function InsertsTable({ report }: { readonly report: AsCastReport }) {
  const order: Readonly<Record<AsCastInsert['state'], number>> = { conflict: 0, off: 0, 'not surveyed': 1, within: 2 };
  const rows = [...report.inserts].sort((a, b) => order[a.state] - order[b.state] || a.item.number - b.item.number);
  return (
    <Section
      title="Inserts as cast"
      lead="Found less designed, along x and y as the panel is drawn, in an edge along it and from the outside face. Depth below the face. Known to: one standard deviation. A fixing insert is not for lifting unless its maker rates it so."
    >
      <Table caption="Inserts as cast" columns={COLUMNS} rows={rows} keyOf={({ item }) => item.castIn.key} />
    </Section>
  );
}
