import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { AsCastConnection } from '../../../../assess/as-cast/as-cast-report.ts';
import { callPerson, mayDo, ROLE_WORDS } from '../../../../assess/yard/rights.ts';
import type { RecordOf } from '../../../../records/record.ts';
import { showRatio } from '../../../../say/numbers.ts';
import { Button } from '../../../parts/button.tsx';
import { Dialog } from '../../../parts/dialog.tsx';
import { TextField } from '../../../parts/field.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { writeQuantity } from '../../../parts/units.ts';
import { FactWriter, takeBack } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { writeMoment } from '../../state/write-moment.ts';
import { WhoDecides } from '../yard/who-works.tsx';
import styles from './as-cast.module.css';

type Decision = RecordOf<'remedy-decided'>;

/** A decision in lines: what, by whom, on what. */
function tellDecision({ body, measuredAt, person }: Decision, piece: OpenPiece): readonly string[] {
  const { words, remedy, role, registration, reason, computed } = body;
  const room = computed.clearance_mm === null ? '' : `, clearance ${writeQuantity('length', computed.clearance_mm)}`;
  return [
    `${remedy}: ${words}`,
    `${callPerson(piece.context.people, person)} as ${ROLE_WORDS[role]}${registration === null ? '' : `, registration ${registration}`}, ${writeMoment(measuredAt)}: ${reason}`,
    `Computed then: ${computed.state}, ${showRatio(computed.ratio)}${room}, engine ${computed.engine}. It rests on ${body.about.length} records.`,
  ];
}

/** Takes a decision out of what counts; it stays in the history. */
function TakeBackDialog({
  yard,
  piece,
  decision,
  onClose,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly decision: Decision;
  readonly onClose: () => void;
}) {
  const reason = useSignal('');
  const failed = useSignal<string | null>(null);
  const writer = useMemo(() => new FactWriter(yard.device), [yard]);
  const permission = mayDo(yard.device.person.value, 'correct');
  const take = async () => {
    if (reason.value === '') {
      failed.value = 'The reason is missing.';
      return;
    }
    if (await writer.write(takeBack(piece, [decision], reason.value))) onClose();
    else failed.value = writer.fault.value;
  };
  return (
    <Dialog
      title={`Take back the decision about ${decision.body.connectionMark}`}
      onClose={onClose}
      foot={
        <>
          <Button onPress={onClose}>Leave it</Button>
          <Button kind="main" isDisabled={!permission.may} onPress={() => void take()}>
            Take it back
          </Button>
        </>
      }
    >
      <p>It no longer counts, and the connection is to be decided anew. In the history it stays, struck through.</p>
      <WhoDecides yard={yard} />
      <TextField
        label="Reason"
        value={reason.value}
        onChange={(text) => {
          reason.value = text;
          return null;
        }}
      />
      {failed.value !== null && (
        <Notice kind="fault" title="Not written">
          {failed.value}
        </Notice>
      )}
    </Dialog>
  );
}

/** What was decided about a connection and stands, and what was decided and does not, with why. */
export function DecisionPart({
  yard,
  piece,
  found,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly found: AsCastConnection;
}) {
  const isTaking = useSignal(false);
  const { decision, fallen } = found;
  return (
    <>
      {decision !== null && (
        <div class={styles.decision}>
          <ul class={styles.lines} aria-label={`Decision about ${found.connection.mark}`}>
            {tellDecision(decision, piece).map((words, k) => (
              <li key={words}>{k === 0 ? <strong>{words}</strong> : words}</li>
            ))}
          </ul>
          <span class="not-printed">
            <Button
              kind="quiet"
              name={`Take back the decision about ${found.connection.mark}`}
              onPress={() => {
                isTaking.value = true;
              }}
            >
              Take it back
            </Button>
          </span>
        </div>
      )}
      {fallen.map(({ record, why }) => (
        <Notice key={record.id} kind="caution" title={`A decision does not count: ${why}`}>
          {tellDecision(record, piece)[0]} {tellDecision(record, piece)[1]}
        </Notice>
      ))}
      {isTaking.value && decision !== null && (
        <TakeBackDialog
          yard={yard}
          piece={piece}
          decision={decision}
          onClose={() => {
            isTaking.value = false;
          }}
        />
      )}
    </>
  );
}
