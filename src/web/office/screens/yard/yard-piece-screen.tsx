import { useSignal } from '@preact/signals';
import { Link } from 'wouter-preact';
import { listHistory } from '../../../../say/history-lines.ts';
import { writerOf } from '../../../../say/quantities.ts';
import { Button } from '../../../parts/button.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Page } from '../../../parts/page.tsx';
import { units } from '../../../parts/units.ts';
import { namePlace } from '../../../pieces/name-place.ts';
import { places } from '../../../pieces/places.ts';
import { nameRecords } from '../../../records/record-names.ts';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { tellError } from '../../state/use-asked.ts';
import { AsCastPart } from '../as-cast/as-cast-part.tsx';
import { BoltUpPart } from '../bolt-up/bolt-up-part.tsx';
import { PullPart } from '../bolt-up/pull-part.tsx';
import { SurveyPart } from '../survey/survey-part.tsx';
import { AfterPart } from './after-part.tsx';
import { tellClearance } from './clearance-facts.ts';
import { ClearancePart } from './clearance-part.tsx';
import { ConflictsPart } from './conflicts-part.tsx';
import { DeskPiece, type DeskPieceProps } from './desk-piece.tsx';
import { FormPart } from './form-part.tsx';
import { HistoryPart } from './history-part.tsx';
import { InsertsPart } from './inserts-part.tsx';
import { PhotosPart } from './photos-part.tsx';
import { PhaseMark } from './piece-marks.tsx';
import { saveHistory } from './print-history.ts';
import { tellFlag } from './tell-flag.ts';
import { WhoWorks } from './who-works.tsx';
import styles from './yard.module.css';

function PieceOpen({ job, yard, piece }: DeskPieceProps) {
  const isWriting = useSignal(false);
  const { head, report, state, context, plan } = piece;
  const pieceOf = (id: string) => {
    const reading = yard.piece(id).value;
    return reading.kind === 'open' ? reading.piece.head : (yard.planned.value.get(id) ?? null);
  };
  const names = nameRecords({ people: context.people, plan, state, pieceOf, write: writerOf(units.value) });
  const lines = listHistory(state, names);
  const save = async () => {
    isWriting.value = true;
    try {
      await saveHistory(yard, piece, names, lines);
    } catch (error) {
      tell('fault', `The history was not written: ${tellError(error)}`);
    }
    isWriting.value = false;
  };
  const where = [...namePlace(piece), `revision ${context.revision.letter} in force`];
  return (
    <Page
      title={`${head.mark} no. ${head.serial}`}
      lead={
        <span class={styles.tools}>
          <PhaseMark report={report} />
          {where.join(', ')}
        </span>
      }
      actions={
        <>
          <Button isDisabled={isWriting.value} onPress={() => void save()}>
            {isWriting.value ? 'Writing the PDF …' : 'History as PDF'}
          </Button>
          <span class={styles.links}>
            {/* Another page, made for the tablet. */}
            <a href={places.piece(piece.id)}>Open it as on the tablet</a>
            <Link href={addresses.yard(job)}>All pieces</Link>
          </span>
        </>
      }
    >
      <WhoWorks yard={yard} />
      {report.flags.length > 0 && (
        <Notice kind="fault" title="Not to be overlooked">
          <ul class={styles.points}>
            {report.flags.map((flag) => (
              <li key={tellFlag(flag)}>{tellFlag(flag)}</li>
            ))}
          </ul>
        </Notice>
      )}
      {report.recognised !== null && report.recognised.kind !== 'as designed' && (
        <Notice kind="caution" title="What the measured places look like">
          {report.recognised.words}
        </Notice>
      )}
      <ConflictsPart yard={yard} piece={piece} names={names} />
      <ClearancePart clearance={tellClearance(report, names)} openPoints={report.openPoints} />
      <FormPart yard={yard} piece={piece} />
      <InsertsPart yard={yard} piece={piece} />
      <AfterPart piece={piece} />
      <SurveyPart job={job} piece={piece} />
      <AsCastPart job={job} piece={piece} />
      <BoltUpPart yard={yard} piece={piece} />
      <PullPart yard={yard} piece={piece} />
      <PhotosPart yard={yard} photos={state.beside.get('photo') ?? []} names={names} />
      <HistoryPart lines={lines} />
    </Page>
  );
}

/** One piece as the office sees it: what stands, what was decided, and everything that was recorded. */
export function YardPieceScreen({ piece }: { readonly piece: string }) {
  return <DeskPiece id={piece}>{(open) => <PieceOpen {...open} />}</DeskPiece>;
}
