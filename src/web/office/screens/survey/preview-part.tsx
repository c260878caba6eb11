import { describeFace } from '../../../../drawing/sheets/words.ts';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import type { PreviewedInsert, SurveyPreview } from '../../../pieces/survey/preview-survey.ts';
import styles from './survey.module.css';

/** Less than that [mm] nobody tells from flush. */
const FLUSH = 0.5;

function signed(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return `${rounded > 0 ? '+' : rounded < 0 ? '−' : '±'}${writeQuantity('length', Math.abs(rounded))}`;
}

function tellDepth(depth: number | null): string {
  if (depth === null) return 'not taken';
  if (Math.abs(depth) < FLUSH) return 'flush';
  return depth < 0 ? `${writeQuantity('length', -depth)} proud` : `${writeQuantity('length', depth)} deep`;
}

const COLUMNS: readonly Column<PreviewedInsert>[] = [
  { head: 'no.', kind: 'number', isName: true, cell: ({ item }) => item.number },
  { head: 'face', cell: ({ item }) => describeFace(item) },
  {
    head: 'found less designed',
    kind: 'short',
    cell: ({ off }) => (off === null ? 'not known' : `x ${signed(off[0])}, y ${signed(off[1])}`),
  },
  {
    head: 'sure to ± (one σ)',
    kind: 'short',
    cell: ({ reading: { position } }) =>
      position === null
        ? '–'
        : `${writeQuantity('length', position.sigma[0])}, ${writeQuantity('length', position.sigma[1])}`,
  },
  { head: 'below its face', kind: 'short', cell: ({ reading: { depth } }) => tellDepth(depth) },
  {
    head: 'leans',
    kind: 'short',
    cell: ({ reading: { tilt } }) => (tilt === null ? 'not taken' : `${tilt.total.toFixed(1)}°`),
  },
  {
    head: 'tolerance',
    kind: 'wide',
    cell: ({ item, off, why }) => {
      if (why.length > 0) return <span class={styles.off}>{`OFF: ${why.join('; ')}`}</span>;
      return off === null ? '–' : `within ± ${writeQuantity('length', item.tolerance)}`;
    },
  },
];

/** What the survey comes to for each insert, before it is recorded. Strength is computed once it is. */
export function PreviewPart({ preview }: { readonly preview: SurveyPreview }) {
  if (preview.inserts.length === 0) return null;
  const hasSuspect = preview.controls.some(({ isSuspect, isUsed }) => isSuspect && isUsed);
  const off = preview.inserts.filter(({ why }) => why.length > 0).length;
  return (
    <Section
      title="4 · What came out"
      lead={`${off} of ${preview.inserts.length} inserts are beyond their tolerance. Whether a connection is strong enough so, and whether its plate goes on, is computed when the survey is recorded.`}
    >
      {hasSuspect && (
        <Notice kind="fault" title="Not to be believed yet">
          A known point does not agree with the others, and all places below follow from it too.
        </Notice>
      )}
      <Table
        caption="Inserts as surveyed"
        columns={COLUMNS}
        rows={preview.inserts}
        keyOf={({ item }) => item.castIn.key}
      />
    </Section>
  );
}
