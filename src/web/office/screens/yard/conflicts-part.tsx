import { useSignal } from '@preact/signals';
import { mayDo } from '../../../../assess/yard/rights.ts';
import type { SlotState } from '../../../../records/fold/piece-state.ts';
import type { FactRecord, KindAndBody } from '../../../../records/record.ts';
import { nameItems, nameSubject, type RecordNames, tellRecord } from '../../../../say/record-words.ts';
import { Button } from '../../../parts/button.tsx';
import { Notice } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import type { OpenPiece } from '../../../yard/state/read-piece.ts';
import type { Yard } from '../../../yard/state/yard.ts';
import { tellError } from '../../state/use-asked.ts';
import { writeMoment } from '../../state/write-moment.ts';
import styles from './yard.module.css';

/** The same said once more by one who has seen both: it settles the conflict. A place that was chosen says that nobody measured it anew. */
function sayAgain(record: FactRecord): KindAndBody {
  switch (record.kind) {
    case 'measured':
      return { kind: 'measured', body: { ...record.body, basis: 'chosen' } };
    case 'placed':
    case 'screed-checked':
    case 'uncovered': {
      const note = [record.body.note, 'the one found right of several'].filter((words) => words !== null).join('; ');
      return { kind: record.kind, body: { ...record.body, note } } as KindAndBody; // as below
    }
  }
  const { kind, body } = record;
  return { kind, body } as KindAndBody; // of one record: kind and body belong together
}

/** Decisions about pouring and about inserts name the person's own role: they are made anew, not repeated for another. */
function isChosenHere({ kind }: FactRecord): boolean {
  return kind !== 'decision' && kind !== 'cleared' && kind !== 'held' && kind !== 'override' && kind !== 'poured';
}

function Sides({
  slot,
  names,
  onChoose,
}: {
  readonly slot: SlotState;
  readonly names: RecordNames;
  readonly onChoose: (record: FactRecord) => void;
}) {
  return (
    <ul class={styles.sides} aria-label={nameItems([slot.item], names.number)}>
      {slot.latest.map((record) => (
        <li key={record.id} class={styles.side}>
          <span class={styles.line}>
            <span>{tellRecord(record, names)}</span>
            <span class={styles.when}>measured {writeMoment(record.measuredAt)}</span>
          </span>
          {isChosenHere(record) && (
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
  const slots = [...piece.state.slots.values()].filter(({ isConflict }) => isConflict);
  if (slots.length === 0) return null;
  const person = yard.device.person.value;
  const choose = async (record: FactRecord) => {
    const permission = mayDo(person, 'settle a conflict');
    if (!permission.may) {
      failed.value = person === null ? 'Say first who decides, at the top of the screen.' : `${permission.why}.`;
      return;
    }
    try {
      await yard.device.write({
        ...sayAgain(record),
        piece: piece.id,
        item: record.item,
        checkKey: record.checkKey,
        // When it was measured stays; who chose it, and when, stands beside.
        measuredAt: record.measuredAt,
        measuredBy: null,
      });
      failed.value = null;
    } catch (error) {
      failed.value = tellError(error);
    }
  };
  return (
    <Section
      title="Said differently by two"
      lead="Neither knew of the other. Until somebody chooses, or measures again, the worse one counts. Decisions about pouring are made anew on the tablet or below."
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
