import type { PieceReport } from '../../../../assess/yard/piece-report.ts';
import { nameSubject, type RecordNames, tellRecord } from '../../../../say/record-words.ts';
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

/** Null: nobody has decided. */
export function tellClearance(
  { clearance: { is, record, inputs } }: PieceReport,
  names: RecordNames,
): ClearanceFacts | null {
  if (record === null) return null;
  const fact = (name: string, value: string) => ({ name, value });
  const who = [
    fact('by', nameSubject(record, names)),
    fact('given', writeStamp(record.measuredAt)),
    fact('record', `${record.id}, no. ${record.chain.number} of device ${record.device}`),
  ];
  const stands = is === 'none' ? ' It does not stand any more.' : '';
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
