import type { PieceReport } from '../../../../assess/yard/piece-report.ts';
import { slotKey } from '../../../../records/fold/fold-piece.ts';
import type { FactRecord } from '../../../../records/record.ts';
import type { RecordNames } from '../../../../say/record-tellers.ts';
import { nameSubject, tellRecord } from '../../../../say/record-words.ts';
import { writeStamp } from '../../state/write-moment.ts';

/** What was decided about pouring a piece, and on what: for the screen and for paper. */
export interface ClearanceFacts {
  readonly words: string;
  readonly facts: readonly { readonly name: string; readonly value: string }[];
  /** What was open at that moment. */
  readonly open: readonly string[];
}

/** The head of a log as it is written down: `412:3f…`. */
export function writeHead(head: { readonly number: number; readonly hash: string | null } | null): string | null {
  return head === null || head.hash === null ? null : `${head.number}:${head.hash}`;
}

type Given = NonNullable<PieceReport['clearance']['record']>;

function isGiven(record: FactRecord): record is Given {
  return record.kind === 'cleared' || record.kind === 'held' || record.kind === 'override';
}

/** What stands; where nothing does, what was given last and stands no more. Null: nobody has decided. */
export function tellClearance(
  { clearance: { is, record: standing, inputs }, state }: PieceReport,
  names: RecordNames,
): ClearanceFacts | null {
  const record = standing ?? state.slots.get(slotKey(null, 'clearance'))?.latest.find(isGiven) ?? null;
  if (record === null) return null;
  const fact = (name: string, value: string) => ({ name, value });
  const who = [
    fact('by', nameSubject(record, names)),
    fact('given', writeStamp(record.measuredAt)),
    fact('record', `${record.id}, no. ${record.chain.number} of device ${record.device}`),
  ];
  const stands = is === 'none' ? ' IT DOES NOT STAND: see what must not be overlooked, and what is open.' : '';
  const words = `${tellRecord(record, names)}${stands}`;
  if (record.kind === 'held') return { words, facts: who, open: [] };
  const { revision, engine, inputs: frozen, open, head } = record.body.frozen;
  return {
    words,
    facts: [
      ...who,
      fact('revision', `${revision.letter}, fingerprint ${revision.fingerprint}`),
      fact('version of the engine', engine),
      fact('hash of the inputs', `${frozen}${frozen === inputs ? ', the same as now' : ', another than now'}`),
      fact('head of the server’s log, as the device knew it', writeHead(head) ?? 'not known to it'),
    ],
    open,
  };
}
