import { useSignal } from '@preact/signals';
import type { InsertReport } from '../../../../assess/yard/piece-report.ts';
import { mayDo } from '../../../../assess/yard/rights.ts';
import { ENGINE_VERSION } from '../../../../engine/version.ts';
import type { BodyOf } from '../../../../records/record.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { ChoiceField, TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { factOf } from '../../../yard/state/facts.ts';
import type { OpenPiece } from '../../../yard/state/read-piece.ts';
import type { Yard } from '../../../yard/state/yard.ts';
import { tellError } from '../../state/use-asked.ts';
import { WhoDecides } from './who-works.tsx';
import styles from './yard.module.css';

type Verdict = BodyOf<'decision'>['verdict'];

const VERDICTS: readonly { readonly value: Verdict; readonly text: string }[] = [
  { value: 'accepted', text: 'Accepted as placed' },
  { value: 'to be moved', text: 'To be moved' },
  { value: 'rejected', text: 'Rejected: it may not stay so' },
];

/** As many records as a decision can name. */
const MOST_RECORDS = 20;

/** Records that say how the insert is: what a decision is about. */
function listAbout({ sight, place, screed }: InsertReport): readonly string[] {
  return [sight, place, screed].flatMap((slot) => slot?.latest.map(({ id }) => id) ?? []).slice(0, MOST_RECORDS);
}

function freezeComputed({ answer }: InsertReport): BodyOf<'decision'>['computed'] {
  return {
    state: answer === null ? 'not known' : answer.verdict,
    ratio: finiteOf(answer?.asPlaced?.after.ratio ?? null),
    engine: ENGINE_VERSION,
  };
}

/** A ratio without limit is no number that a record can hold. */
function finiteOf(ratio: number | null): number | null {
  return ratio !== null && Number.isFinite(ratio) ? ratio : null;
}

/** What becomes of an insert that is off: who decides, in which role, and why. The record keeps what was computed. */
export function DecideDialog({
  yard,
  piece,
  insert,
  onClose,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly insert: InsertReport;
  readonly onClose: () => void;
}) {
  const verdict = useSignal<Verdict>('accepted');
  const reason = useSignal('');
  const failed = useSignal<string | null>(null);
  const person = yard.device.person.value;
  const about = listAbout(insert);
  const act = verdict.value === 'accepted' ? 'accept' : 'ask to move or reject';
  // What was rejected once can only be accepted by whoever may accept that.
  const extent = insert.decision?.body.verdict === 'rejected' ? 'rejected' : (insert.extent ?? 'inside the limits');
  const permission = mayDo(person, act, extent);
  const role = permission.may ? (permission.as ?? person?.roles[0] ?? null) : null;
  const stop =
    about.length === 0
      ? 'Nothing is recorded of this insert yet: there is nothing to decide on.'
      : person === null
        ? 'Say first who decides.'
        : !permission.may
          ? `${person.name}: ${permission.why}.`
          : role === null
            ? `${person.name} has no role on the people list: a decision names one.`
            : null;
  const decide = async () => {
    if (stop !== null || role === null || person === null) return;
    if (reason.value === '') {
      failed.value = 'The reason is missing: whoever reads it in years has nothing else.';
      return;
    }
    try {
      await yard.device.write({
        ...factOf(piece, insert.item),
        kind: 'decision',
        body: {
          about,
          verdict: verdict.value,
          role,
          registration: role === 'design engineer' ? person.registration : null,
          reason: reason.value,
          computed: freezeComputed(insert),
        },
      });
      onClose();
    } catch (error) {
      failed.value = tellError(error);
    }
  };
  return (
    <Dialog
      title={`Insert ${insert.item.number} of ${piece.head.mark} no. ${piece.head.serial}`}
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
        {insert.why.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <WhoDecides yard={yard} />
      <ChoiceField
        label="Decision"
        value={verdict.value}
        options={VERDICTS}
        onChange={(value) => {
          verdict.value = value;
          return null;
        }}
      />
      <TextField
        label="Reason"
        value={reason.value}
        placeholder="what it rests on"
        onChange={(text) => {
          if (text.length > 2000) return 'expected at most 2000 signs';
          reason.value = text;
          return null;
        }}
      />
      {stop !== null ? (
        <Notice kind="note" title="Not possible so">
          {stop}
        </Notice>
      ) : (
        <p>
          {`Decided by ${person?.name} as ${role}${role === 'design engineer' ? `, registration ${person?.registration}` : ''}. What is computed now is kept with it.`}
        </p>
      )}
      {failed.value !== null && (
        <Notice kind="fault" title="Not written">
          {failed.value}
        </Notice>
      )}
    </Dialog>
  );
}
