import { Link } from 'wouter-preact';
import type { OpenPoint, PieceReport, YardContext } from '../../../../assess/yard/piece-report.ts';
import { LIFTER_WORDS } from '../../../../say/piece-words.ts';
import { places } from '../../../pieces/places.ts';
import { PhaseMark } from '../../parts/phase-mark.tsx';
import { FORM_WORDS } from '../../state/form/form-words.ts';
import { sortPoints } from '../../state/pieces/sort-points.ts';
import { usePiece } from '../../state/use-piece.ts';
import styles from './pour-screen.module.css';

/** One piece of a pour in a row: how it stands, and what holds it. */
export function PieceRow({ id }: { readonly id: string }) {
  const reading = usePiece(id);
  if (reading.kind === 'reading') return <li aria-busy="true">Reading …</li>;
  if (reading.kind === 'absent') return <li>{reading.why}</li>;
  const { report, head, context } = reading.piece;
  return (
    <li>
      <Link href={places.piece(id)} class={styles.piece} data-main="">
        <span class={styles.mark}>
          {head.mark} <small>no. {head.serial}</small>
        </span>
        <PhaseMark phase={report.phase} />
        <StageCounts report={report} />
        <span class={styles.holds}>{tellHolding(report, context)}</span>
        {report.flags.map((flag) => (
          <strong key={flag.kind + flag.words} class={styles.flag}>
            {flag.words}
          </strong>
        ))}
      </Link>
    </li>
  );
}

function StageCounts({ report }: { readonly report: PieceReport }) {
  return (
    <span class={styles.stages}>
      <span>form {FORM_WORDS[report.form.state]}</span>
      {([1, 2] as const).map((stage) => {
        const { done, left, out } = report.counts[stage];
        const total = done + left + out;
        return (
          <span key={stage} class={out > 0 ? styles.isOut : ''}>
            {stage === 1 ? 'before cage' : 'before pour'} {done}/{total}
            {out > 0 ? `, ${out} out` : ''}
          </span>
        );
      })}
    </span>
  );
}

/** Who can lift a point, by name where the people list has one. */
export function nameLifter(point: Pick<OpenPoint, 'liftedBy'>, { people }: Pick<YardContext, 'people'>): string {
  if (point.liftedBy === 'checking it') return 'checking it lifts it';
  const names = people.flatMap(({ name, roles }) =>
    name !== null && roles.includes(point.liftedBy as (typeof roles)[number]) ? [name] : [],
  );
  const role = LIFTER_WORDS[point.liftedBy];
  return names.length === 0 ? role : `${role}: ${names.join(', ')}`;
}

/** What holds a piece, in one line. */
function tellHolding(report: PieceReport, context: YardContext): string {
  const { wrong, unchecked } = sortPoints(report);
  const [first] = wrong;
  const waiting = unchecked === null ? '' : `to be checked: ${unchecked}`;
  if (first !== undefined) {
    const more = [...(wrong.length > 1 ? [`${wrong.length - 1} more`] : []), ...(waiting === '' ? [] : [waiting])];
    return [`${first.words} – ${nameLifter(first, context)}`, ...more].join('; ');
  }
  if (waiting !== '') return waiting;
  return report.phase === 'not started' || report.phase === 'in the form' ? 'nothing is open: ready to be cleared' : '';
}
