import { Link } from 'wouter-preact';
import { countOf } from '../../../../say/part-words.ts';
import { Section } from '../../../parts/page.tsx';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { previewSurvey } from '../../../pieces/survey/preview-survey.ts';
import { EMPTY_SURVEY, readSurveyDraft } from '../../../pieces/survey/survey-draft.ts';
import { addresses } from '../../state/addresses.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './survey.module.css';

const BASIS = { instrument: 'by instrument', tape: 'by tape', scaffold: 'by tape from a scaffold' } as const;

/** On the piece's page: which surveys stand, and the way to the next. */
export function SurveyPart({ job, piece }: { readonly job: string; readonly piece: OpenPiece }) {
  const { plan, state } = piece;
  const surveys = (state.beside.get('surveyed') ?? []).flatMap((record) =>
    record.kind === 'surveyed' && !state.withdrawn.has(record.id) ? [record] : [],
  );
  const isBegun = readSurveyDraft(localStorage, piece.id) !== EMPTY_SURVEY;
  const isPoured = piece.report.poured !== null;
  return (
    <Section
      title="Survey"
      lead={
        surveys.length === 0
          ? isPoured
            ? 'Nobody has surveyed this piece yet. Read the file of an instrument here, or tape it on the tablet.'
            : 'After the pour, where the inserts of the hard panel are: from an instrument’s file here, or by tape on the tablet.'
          : undefined
      }
      actions={
        <Link href={addresses.survey(job, piece.id)}>{isBegun ? 'Go on with the survey' : 'Read a survey'}</Link>
      }
    >
      {surveys.length > 0 && (
        <ul class={styles.points}>
          {surveys.map((record) => {
            const { inserts, rms } = previewSurvey(piece.context, plan, record.body);
            const off = inserts.filter(({ why }) => why.length > 0).length;
            const { tool } = record.body;
            return (
              <li key={record.id}>
                {[
                  `${writeMoment(record.typedAt)}: ${countOf(inserts.length, 'insert')} ${BASIS[record.body.basis]}`,
                  off === 0 ? 'none beyond its tolerance' : `${off} beyond tolerance`,
                  ...(rms === null ? [] : [`known points agree to ${rms.toFixed(1)} mm`]),
                  tool?.calibratedUntil == null
                    ? 'NO calibration date of the tool'
                    : `tool calibrated until ${tool.calibratedUntil}`,
                ].join('; ')}
              </li>
            );
          })}
        </ul>
      )}
    </Section>
  );
}
