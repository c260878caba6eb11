import type { PiecePlan } from '../../assess/yard/piece-plan.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { Person } from '../../records/person.ts';
import type { RecordNames } from '../../say/record-tellers.ts';

/** What names for the records of a piece are taken from. */
export interface NameSources {
  readonly people: readonly Person[];
  readonly plan: Pick<PiecePlan, 'setOut'>;
  readonly state: Pick<PieceState, 'history'>;
  /** Another piece by id, as its mark and serial; null: not known here. */
  readonly pieceOf: (id: string) => { readonly mark: string; readonly serial: string } | null;
  readonly write: RecordNames['write'];
}

/** Names for what the records of a piece know by id or key only. */
export function nameRecords({ people, plan, state, pieceOf, write }: NameSources): RecordNames {
  const persons = new Map(people.map(({ id, name }) => [id, name]));
  const numbers = new Map(plan.setOut.items.map(({ castIn, number }) => [castIn.key, number]));
  const records = new Map(state.history.map((record) => [record.id, record]));
  return {
    person: (id) => persons.get(id) ?? null,
    number: (item) => numbers.get(item) ?? null,
    piece: (id) => {
      const head = pieceOf(id);
      return head === null ? null : `${head.mark} no. ${head.serial}`;
    },
    record: (id) => records.get(id) ?? null,
    write,
  };
}
