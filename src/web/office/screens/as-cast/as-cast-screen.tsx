import { Link } from 'wouter-preact';
import { tellAsCast } from '../../../../say/fit-words.ts';
import { Page } from '../../../parts/page.tsx';
import { useAsCast } from '../../../pieces/as-cast/use-as-cast.ts';
import { useRemedies } from '../../../pieces/as-cast/use-remedies.ts';
import { addresses } from '../../state/addresses.ts';
import { DeskPiece, type DeskPieceProps } from '../yard/desk-piece.tsx';
import { WhoWorks } from '../yard/who-works.tsx';
import { ConnectionsPart } from './connections-part.tsx';
import { DeviationsPart } from './deviations-part.tsx';
import { InsertsTable } from './inserts-table.tsx';
import { PrintKey } from './print-key.tsx';
import { ScatterPart } from './scatter-part.tsx';
import { SurveysPart } from './surveys-part.tsx';

function AsCast({ job, yard, piece }: DeskPieceProps) {
  const report = useAsCast(piece);
  const { done, of, isReady } = useRemedies(report);
  const { head, plan, context } = piece;
  return (
    <Page
      title={`${head.mark} no. ${head.serial} as cast`}
      lead={
        report === null || !isReady
          ? 'Computing every connection with its inserts where they are …'
          : tellAsCast(report)
      }
      actions={
        <>
          {report !== null && report.surveys.length > 0 && isReady && (
            <PrintKey
              words="As-cast sheet"
              onWrite={async () => (await import('./save-sheets.ts')).saveAsCast(yard, piece, report)}
            />
          )}
          <Link href={addresses.yardPiece(job, piece.id)}>Back to the piece</Link>
        </>
      }
    >
      <WhoWorks yard={yard} />
      {report === null ? (
        <p aria-busy="true">Computing as cast …</p>
      ) : (
        <>
          <DeviationsPart panel={plan.setOut.panel} report={report} surveyAt={addresses.survey(job, piece.id)} />
          {isReady ? (
            <ConnectionsPart yard={yard} piece={piece} report={report} />
          ) : (
            <p aria-busy="true">{`Computing what may be done: ${done} of ${of} connections …`}</p>
          )}
          {/* Without a survey there is only what was taped in the form: that is not how it came out. */}
          {report.surveys.length > 0 && <ScatterPart report={report} />}
          <InsertsTable report={report} />
          <SurveysPart report={report} people={context.people} />
        </>
      )}
    </Page>
  );
}

/** A piece as it came out of its form: what is off, what that does, what may be done about it, who decided what. */
export function AsCastScreen({ piece }: { readonly piece: string }) {
  return <DeskPiece id={piece}>{(open) => <AsCast {...open} />}</DeskPiece>;
}
