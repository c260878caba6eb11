import { useMemo } from 'preact/hooks';
import { callPerson, mayDo } from '../../../../assess/yard/rights.ts';
import type { SlotState } from '../../../../records/fold/piece-state.ts';
import type { FactRecord } from '../../../../records/record.ts';
import { FactWriter } from '../../../pieces/facts.ts';
import { places } from '../../../pieces/places.ts';
import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { chooseRecord, isDecidedElsewhere } from '../../../pieces/settle.ts';
import { useYard } from '../../../pieces/yard.ts';
import { Answer } from '../../parts/answer.tsx';
import { BigLink } from '../../parts/big-key.tsx';
import { NotWritten } from '../../parts/not-written.tsx';
import { TwoTaps } from '../../parts/two-taps.tsx';
import { UndoLast } from '../../parts/undo-last.tsx';
import { WithPiece } from '../../shell/with-piece.tsx';
import { headOfPiece, YardFrame } from '../../shell/yard-frame.tsx';
import { sayMoment } from '../../state/say-moment.ts';
import styles from './conflict.module.css';
import { compareSaid, listConflicts, nameSlot } from './conflict-words.ts';

/** Where people who did not know of each other said different things: both sides, and what settles it. */
export function ConflictScreen({ piece }: { readonly piece: string }) {
  return <WithPiece id={piece}>{(open) => <Conflicts piece={open} />}</WithPiece>;
}

function Conflicts({ piece }: { readonly piece: OpenPiece }) {
  const { device } = useYard();
  const writer = useMemo(() => new FactWriter(device), [device]);
  const found = listConflicts(piece.state.slots.values(), piece.plan.keys);
  return (
    <YardFrame
      {...headOfPiece(piece)}
      stage={`${found.length} ${found.length === 1 ? 'conflict' : 'conflicts'}`}
      back={places.piece(piece.id)}
      keys={
        <>
          <BigLink kind={found.length === 0 ? 'main' : 'plain'} to={places.piece(piece.id)}>
            To the piece
          </BigLink>
          <UndoLast piece={piece} writer={writer} />
        </>
      }
    >
      <NotWritten fault={writer.fault.value} />
      {found.length === 0 && <Answer kind="good" words="Nobody says different things about this piece" />}
      {found.map(({ slot, latest }) => (
        <Conflict key={`${slot.item} ${slot.slot}`} piece={piece} slot={slot} latest={latest} writer={writer} />
      ))}
    </YardFrame>
  );
}

/** Where the question is answered anew. */
function findScreen({ id }: OpenPiece, slot: string): string {
  if (slot === 'form') return places.form(id);
  if (slot.endsWith(' 1')) return places.walk(id, 1);
  if (slot.endsWith(' 2')) return places.walk(id, 2);
  if (slot === 'screed') return places.screed(id);
  return ['stripped', 'uncovered', 'cap', 'location'].includes(slot) ? places.after(id) : places.clearance(id);
}

interface ConflictProps {
  readonly piece: OpenPiece;
  readonly slot: SlotState;
  readonly latest: readonly FactRecord[];
  readonly writer: FactWriter;
}

function Conflict({ piece, slot, latest, writer }: ConflictProps) {
  const { device } = useYard();
  const item = piece.plan.setOut.items.find(({ castIn }) => castIn.key === slot.item) ?? null;
  const permission = mayDo(device.person.value, 'settle a conflict');
  const isElsewhere = isDecidedElsewhere(latest);
  const name = `${item === null ? 'The piece' : `Insert ${item.number}`}: ${nameSlot(slot.slot)}`;
  const people = piece.context.people;
  return (
    <section class={styles.conflict} aria-label={name}>
      <Answer kind="wrong" words={name}>
        <p>They did not know of each other. Until somebody settles it the worse one counts.</p>
      </Answer>
      <table class={styles.sides}>
        <thead>
          <tr>
            <td />
            {latest.map((record) => (
              <th key={record.id} scope="col">
                {callPerson(people, record.measuredBy ?? record.person)}
                <small>
                  measured {sayMoment(record.measuredAt)} · device {record.device.slice(0, 4)}
                </small>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {compareSaid(latest).map((line) => (
            <tr key={line.name} class={line.differs ? styles.differs : ''}>
              <th scope="row">
                {line.differs && <span aria-hidden="true">≠ </span>}
                {line.name === '' ? 'what' : line.name}
              </th>
              {line.values.map((value, k) => (
                <td key={latest[k]?.id}>{value ?? '–'}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <div class={styles.keys}>
        {!isElsewhere &&
          latest.map((record) => (
            <TwoTaps
              key={record.id}
              isDisabled={!permission.may}
              more={permission.may ? sayMoment(record.measuredAt) : permission.why}
              question={`${name}: is ${callPerson(people, record.measuredBy ?? record.person)} right?`}
              yes="Yes, that one counts"
              says={
                <p>The other stays in the history. Measuring once more is better where it can still be measured.</p>
              }
              onYes={() => void writer.write([chooseRecord(piece, item, record)])}
            >
              {callPerson(people, record.measuredBy ?? record.person)} is right
            </TwoTaps>
          ))}
        <BigLink
          kind="main"
          to={findScreen(piece, slot.slot)}
          more={isElsewhere ? 'it sees both' : 'that settles it too'}
        >
          {isElsewhere ? 'Decide it anew' : 'Look or measure again'}
        </BigLink>
      </div>
    </section>
  );
}
