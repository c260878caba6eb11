import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { Link, useLocation } from 'wouter-preact';
import { hashBytes } from '../../../../job/fingerprint.ts';
import { Page } from '../../../parts/page.tsx';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { namePlace } from '../../../pieces/name-place.ts';
import { makeSurvey } from '../../../pieces/survey/make-survey.ts';
import { previewSurvey } from '../../../pieces/survey/preview-survey.ts';
import { unpackBytes } from '../../../pieces/survey/survey-draft.ts';
import { addresses } from '../../state/addresses.ts';
import { tell } from '../../state/messages.ts';
import { DeskPiece, type DeskPieceProps } from '../yard/desk-piece.tsx';
import { ControlsPart } from './controls-part.tsx';
import { FilePart } from './file-part.tsx';
import { PointsPart } from './points-part.tsx';
import { PreviewPart } from './preview-part.tsx';
import { RecordPart } from './record-part.tsx';
import { SurveyDesk } from './survey-desk.ts';

/** A file of surveyed points brought onto a piece, step by step, and recorded. */
export function SurveyScreen({ piece }: { readonly piece: string }) {
  return (
    <DeskPiece id={piece}>{(open) => <SurveyOpen key={open.piece.context.revision.fingerprint} {...open} />}</DeskPiece>
  );
}

function SurveyOpen({ job, yard, piece }: DeskPieceProps) {
  const [, go] = useLocation();
  const lit = useSignal<number | null>(null);
  const { panel, items } = piece.plan.setOut;
  // Another revision is another panel: see the key above.
  const desk = useMemo(
    () =>
      new SurveyDesk({
        piece: piece.id,
        panel,
        items,
        storage: localStorage,
        ask: (name, bytes, choices, design) =>
          askJobWorker((worker) => worker.matchSurvey(name, bytes, choices, design)),
      }),
    [piece.id],
  );
  const draft = desk.draft.value;
  const matched = desk.matched.value;
  const packed = draft.file?.bytes ?? null;
  const hash = useMemo(() => (packed === null ? '' : hashBytes(unpackBytes(packed))), [packed]);
  const body = useMemo(
    () => (matched === null ? null : makeSurvey(panel, draft, matched.file, hash, null)),
    [panel, draft, matched, hash],
  );
  const preview = useMemo(
    () => (body === null ? null : previewSurvey(piece.context, piece.plan, body)),
    [piece.context, piece.plan, body],
  );
  const { mark, serial } = piece.head;
  const place = addresses.yardPiece(job, piece.id);
  return (
    <Page
      title={`${mark} no. ${serial}: survey`}
      lead={`Where the inserts of the hard panel are, from a file of points; ${namePlace(piece).join(', ')}`}
      actions={<Link href={place}>Back to the piece</Link>}
    >
      <FilePart desk={desk} />
      {body !== null && preview !== null && (
        <>
          <PointsPart desk={desk} piece={piece} lit={lit} />
          <ControlsPart desk={desk} piece={piece} body={body} preview={preview} />
          <PreviewPart preview={preview} />
          <RecordPart
            desk={desk}
            yard={yard}
            piece={piece}
            body={body}
            onRecorded={() => {
              tell('note', `The survey of ${mark} no. ${serial} is recorded.`);
              go(place);
            }}
          />
        </>
      )}
    </Page>
  );
}
