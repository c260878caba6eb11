import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { InsertReport } from '../../../../assess/yard/piece-report.ts';
import { ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { ChoiceField } from '../../../parts/field.tsx';
import { makeDecision, mayDecide, type Verdict } from '../../../pieces/decide.ts';
import { FactWriter, type factOf } from '../../../pieces/facts.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { Computed } from './computed.tsx';
import { ReasonPart, useReasoning } from './reason-part.tsx';
import { WhoDecides } from './who-works.tsx';
import styles from './yard.module.css';

const VERDICTS: readonly { readonly value: Verdict; readonly text: string }[] = [
  { value: 'accepted', text: 'Accepted as it is' },
  { value: 'to be moved', text: 'To be moved' },
  { value: 'rejected', text: 'Rejected: it may not stay so' },
];

/** What is decided about: an insert, or the form, of which nothing is computed. */
export interface Undecided {
  readonly title: string;
  /** What is wrong with it. */
  readonly why: readonly string[];
  readonly what: Parameters<typeof makeDecision>[0];
  /** Null: the form. */
  readonly insert: InsertReport | null;
  readonly fact: ReturnType<typeof factOf>;
  /** A form is moved by nobody's decision: it is put right, or taken as it is. */
  readonly verdicts: readonly Verdict[];
}

/** What becomes of what is off: who decides, in which role, and why. The record keeps what was computed. */
export function DecideDialog({
  yard,
  undecided: { title, why, what, insert, fact, verdicts },
  onClose,
}: {
  readonly yard: Yard;
  readonly undecided: Undecided;
  readonly onClose: () => void;
}) {
  const verdict = useSignal<Verdict>('accepted');
  const reasoning = useReasoning();
  const { reason, failed } = reasoning;
  const writer = useMemo(() => new FactWriter(yard.device), [yard]);
  const person = yard.device.person.value;
  const permission = mayDecide(person, what, verdict.value);
  const body = person === null ? null : makeDecision(what, person, verdict.value, reason.value);
  const stop =
    person === null ? 'Say first who decides.' : permission.may ? null : `${person.name}: ${permission.why}.`;
  const decide = async () => {
    if (body === null) return;
    if (reason.value === '') {
      failed.value = 'The reason is missing: whoever reads it in years has nothing else.';
      return;
    }
    if (await writer.write([{ ...fact, kind: 'decision', body }])) onClose();
    else failed.value = writer.fault.value;
  };
  return (
    <Dialog
      title={title}
      onClose={onClose}
      foot={
        <>
          <Button onPress={onClose}>Leave it</Button>
          <Button kind="main" isDisabled={stop !== null} onPress={() => void decide()}>
            Write the decision down
          </Button>
        </>
      }
    >
      <ul class={styles.points}>
        {why.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {insert !== null && <Computed of={insert} />}
      <WhoDecides yard={yard} />
      <ChoiceField
        label="Decision"
        value={verdict.value}
        options={VERDICTS.filter(({ value }) => verdicts.includes(value))}
        onChange={(value) => {
          verdict.value = value;
          return null;
        }}
      />
      <ReasonPart of={reasoning} placeholder="what it rests on" stop={stop}>
        {body !== null && (
          <p>
            {`Decided by ${person?.name} as ${ROLE_WORDS[body.role]}${body.registration === null ? '' : `, registration ${body.registration}`}. What is computed now is kept with it.`}
          </p>
        )}
      </ReasonPart>
    </Dialog>
  );
}
