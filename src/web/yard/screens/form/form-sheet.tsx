import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { Answer } from '../../parts/answer.tsx';
import type { FormSession } from '../../state/form/form-session.ts';
import styles from './form-screen.module.css';

const WORDS = {
  open: 'Not checked yet',
  'open again': 'Open again: the form was changed by the revision',
  good: 'The form is good',
  out: 'The form is out',
  accepted: 'The form is out, and accepted as it is',
  conflict: 'Two checks that differ',
} as const;

const KINDS = {
  open: 'plain',
  'open again': 'unsure',
  good: 'good',
  out: 'wrong',
  accepted: 'ask',
  conflict: 'wrong',
} as const;

/** What was typed, and what it comes to once all of it is there. What each length should be is not shown before. */
export function FormSheet({ form, piece }: { readonly form: FormSession; readonly piece: OpenPiece }) {
  const { state, findings } = piece.report.form;
  const values = form.values.value;
  const fault = form.fault.value;
  const isTyping = values.length > 0;
  const { next } = form;
  return (
    <div class={styles.sheet}>
      {fault !== null && (
        <Answer kind="wrong" words="Not written down">
          <p>{fault} What you typed is still here.</p>
        </Answer>
      )}
      {!isTyping && (
        <Answer kind={KINDS[state]} words={WORDS[state]}>
          {findings.map((line) => (
            <p key={line}>{line}</p>
          ))}
          {state === 'open' && <p>Measure the form before anything is measured from it. Type what the tape shows.</p>}
        </Answer>
      )}
      {(isTyping || state === 'open') && (
        <ol class={styles.values}>
          {form.measures.map(({ what }, k) => (
            <li key={what} class={what === next?.what ? styles.next : ''}>
              <span>{what}</span>
              <strong>{values[k] === undefined ? '–' : `${values[k]} mm`}</strong>
            </li>
          ))}
        </ol>
      )}
      {!isTyping && state !== 'open' && <Measured piece={piece} form={form} />}
    </div>
  );
}

/** The lengths of the latest check beside what they should be. */
function Measured({ piece, form }: { readonly form: FormSession; readonly piece: OpenPiece }) {
  const latest = piece.report.form.slot?.latest ?? [];
  const nominal = new Map(form.measures.map((one) => [one.what, one.nominal]));
  return (
    <>
      {latest.map(
        (record) =>
          record.kind === 'form-checked' && (
            <ol key={record.id} class={styles.values}>
              {record.body.measures.map(({ what, measured_mm }) => (
                <li key={what}>
                  <span>{what}</span>
                  <span>
                    <strong>{measured_mm} mm</strong>, should be {nominal.get(what) ?? '–'}
                  </span>
                </li>
              ))}
            </ol>
          ),
      )}
    </>
  );
}
