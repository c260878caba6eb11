import { Link } from 'wouter-preact';
import type { FormReport, PieceReport } from '../../../../assess/yard/piece-report.ts';
import { countOf } from '../../../../say/part-words.ts';
import { LIFTER_WORDS } from '../../../../say/piece-words.ts';
import { StateMark } from '../../../parts/state-mark.tsx';
import { type Column, Table } from '../../../parts/table.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { addresses } from '../../state/addresses.ts';
import { PhaseMark } from './piece-marks.tsx';
import styles from './yard.module.css';

const FORMS: Readonly<Record<FormReport['state'], 'passes' | 'fails' | 'strength not checked' | 'cannot be computed'>> =
  {
    good: 'passes',
    accepted: 'strength not checked',
    out: 'fails',
    conflict: 'fails',
    open: 'strength not checked',
    'open again': 'cannot be computed',
  };

function Counts({ of: { done, left, out } }: { readonly of: PieceReport['counts'][1] }) {
  if (done + left + out === 0) return <>–</>;
  return (
    <span class={styles.counts}>
      {`${done} done`}
      {left > 0 && <span>{`, ${left} left`}</span>}
      {out > 0 && <strong class={styles.bad}>{`, ${out} out`}</strong>}
    </span>
  );
}

/** What stands against pouring a piece that is not poured yet; the hardest first. */
function Holds({ report }: { readonly report: PieceReport }) {
  if (report.phase === 'scrapped') return <>–</>;
  if (report.poured !== null)
    return (
      <>{report.openPoints.length === 0 ? '–' : `poured with ${countOf(report.openPoints.length, 'open point')}`}</>
    );
  if (report.phase === 'not started' && report.state.history.length === 0) return <>nobody has begun</>;
  const points = [...report.openPoints].sort((a, b) => Number(b.isHard) - Number(a.isHard));
  const [first] = points;
  if (first === undefined) return <>{report.clearance.is === 'none' ? 'ready to be cleared' : '–'}</>;
  return (
    <>
      {`${first.words} (lifted by ${LIFTER_WORDS[first.liftedBy]})`}
      {points.length > 1 && <span class={styles.more}>{` and ${points.length - 1} more`}</span>}
    </>
  );
}

/** Pieces of a pour: where each is, what is done, what holds it and who lifts that. */
export function PourPieces({
  job,
  caption,
  pieces,
}: {
  readonly job: string;
  readonly caption: string;
  readonly pieces: readonly OpenPiece[];
}) {
  const columns: readonly Column<OpenPiece>[] = [
    {
      head: 'piece',
      kind: 'short',
      isName: true,
      cell: ({ id, head }) => (
        <Link href={addresses.yardPiece(job, id)}>
          {head.mark} no. {head.serial}
        </Link>
      ),
    },
    { head: 'stands', kind: 'short', cell: ({ report }) => <PhaseMark report={report} /> },
    {
      head: 'form',
      kind: 'short',
      cell: ({ report: { form } }) => <StateMark state={FORMS[form.state]} words={form.state} />,
    },
    { head: 'before the cage', kind: 'short', cell: ({ report }) => <Counts of={report.counts[1]} /> },
    { head: 'before the pour', kind: 'short', cell: ({ report }) => <Counts of={report.counts[2]} /> },
    { head: 'after screeding', kind: 'short', cell: ({ report }) => <Counts of={report.screed} /> },
    { head: 'clearance', cell: ({ report }) => report.clearance.is },
    { head: 'what holds it, and who lifts that', kind: 'wide', cell: ({ report }) => <Holds report={report} /> },
  ];
  return <Table caption={caption} columns={columns} rows={pieces} keyOf={({ id }) => id} />;
}
