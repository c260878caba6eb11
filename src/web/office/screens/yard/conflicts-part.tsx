import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { mayDo } from '../../../../assess/yard/rights.ts';
import type { SlotState } from '../../../../records/fold/piece-state.ts';
import type { FactRecord } from '../../../../records/record.ts';
import type { RecordNames } from '../../../../say/record-tellers.ts';
import { nameItems, nameSubject, tellRecord } from '../../../../say/record-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { FactWriter } from '../../../pieces/facts.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { chooseRecord, isDecidedElsewhere } from '../../../pieces/settle.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './yard.module.css';

function Sides({
  slot,
  names,
  onChoose,
}: {
  readonly slot: SlotState;
  readonly names: RecordNames;
  readonly onChoose: (record: FactRecord) => void;
}) {
  const isElsewhere = isDecidedElsewhere(slot.latest);
  return (
    <ul class={styles.sides} aria-label={nameItems([slot.item], names.number)}>
      {slot.latest.map((record) => (
        <li key={record.id} class={styles.side}>
          <span class={styles.line}>
            <span>{tellRecord(record, names)}</span>
            <span class={styles.when}>measured {writeMoment(record.measuredAt)}</span>
          </span>
          {!isElsewhere && (
            <Button
              name={`This one is right: ${nameSubject(record, names)}, ${nameItems([slot.item], names.number)}`}
              onPress={() => onChoose(record)}
            >
              This one is right
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}

/** What two people said differently, neither knowing of the other. Until somebody chooses, the worse one counts. */
export function ConflictsPart({
  yard,
  piece,
  names,
}: {
  readonly yard: Yard;
  readonly piece: OpenPiece;
  readonly names: RecordNames;
}) {
  const failed = useSignal<string | null>(null);
  const writer = useMemo(() => new FactWriter(yard.device), [yard]);
  const slots = [...piece.state.slots.values()].filter(({ isConflict }) => isConflict);
  if (slots.length === 0) return null;
  const person = yard.device.person.value;
  const choose = async (record: FactRecord) => {
    const permission = mayDo(person, 'settle a conflict');
    if (!permission.may) {
      failed.value = person === null ? 'Say first who decides, at the top of the screen.' : `${permission.why}.`;
      return;
    }
    const item = piece.plan.setOut.items.find(({ castIn }) => castIn.key === record.item) ?? null;
    await writer.write([{ ...chooseRecord(piece, item, record), item: record.item }]);
    failed.value = writer.fault.value;
  };
  return (
    <Section
      title="Said differently by two"
      lead="Neither knew of the other. Until somebody chooses, or measures again, the worse one counts. Of two decisions none is chosen: whoever may decides anew."
    >
      {slots.map((slot) => (
        <Sides key={`${slot.slot} ${slot.item}`} slot={slot} names={names} onChoose={(record) => void choose(record)} />
      ))}
      {failed.value !== null && (
        <Notice kind="fault" title="Not chosen">
          {failed.value}
        </Notice>
      )}
    </Section>
  );
}
