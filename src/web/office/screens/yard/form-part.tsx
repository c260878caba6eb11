import { useSignal } from '@preact/signals';
import type { FormReport } from '../../../../assess/yard/piece-report.ts';
import { Button } from '../../../parts/button.tsx';
import { Section } from '../../../parts/page.tsx';
import { isDecidable } from '../../../pieces/decide.ts';
import { factOf } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { DecideDialog } from './decide-dialog.tsx';
import styles from './yard.module.css';

const STANDS: Readonly<Record<FormReport['state'], string>> = {
  open: 'not checked',
  'open again': 'to be checked again',
  good: 'good',
  out: 'OUT',
  accepted: 'out, and accepted as it is',
  conflict: 'checked twice, with different answers',
};

/** The form itself: how it stands, and whether a design engineer takes it as it is. */
export function FormPart({ yard, piece }: { readonly yard: Yard; readonly piece: OpenPiece }) {
  const isDeciding = useSignal(false);
  const { report, head, plan } = piece;
  const { form } = report;
  return (
    <Section title="The form">
      <p>{`Stands: ${STANDS[form.state]}.`}</p>
      <ul class={styles.points}>
        {form.findings.map((words) => (
          <li key={words}>{words}</li>
        ))}
        {form.decision !== null && (
          <li>{`${form.decision.body.verdict} as ${form.decision.body.role}: ${form.decision.body.reason}`}</li>
        )}
      </ul>
      {isDecidable(form) && (
        <Button
          onPress={() => {
            isDeciding.value = true;
          }}
        >
          Decide about the form
        </Button>
      )}
      {isDeciding.value && (
        <DecideDialog
          yard={yard}
          undecided={{
            title: `The form of ${head.mark} no. ${head.serial}`,
            why: form.findings,
            what: { ...form, answer: null },
            insert: null,
            fact: { ...factOf(piece, null), checkKey: plan.formKey },
            verdicts: ['accepted', 'rejected'],
          }}
          onClose={() => {
            isDeciding.value = false;
          }}
        />
      )}
    </Section>
  );
}
