import type { PieceState } from '../../../records/fold/piece-state.ts';
import type { FactRecord, RecordKind } from '../../../records/record.ts';

/** What can be taken back by the key for it. Clearing, pouring and scrapping are decided otherwise. */
const UNDOABLE: ReadonlySet<RecordKind> = new Set<RecordKind>([
  'placed',
  'measured',
  'form-checked',
  'comment',
  'photo',
  'screed-checked',
  'uncovered',
  'cap',
  'docket',
  'strength-result',
  'remedy-decided',
  'surveyed',
  'delivered',
  'offered',
  'tightened',
  'sealed',
  'proof-loaded',
]);

/** Records of one tap are written within this time [ms]. */
const ONE_TAP = 1500;

/**
 * What was done last on this device for a piece and still counts: one record, or all that one tap wrote of inserts seen together. Empty: nothing to
 * take back. It comes from the records, so that it is known after a reload too.
 */
export function findUndo({ history, withdrawn }: PieceState, device: string): readonly FactRecord[] {
  const own = history
    .filter((record) => record.device === device && record.kind !== 'correction' && !withdrawn.has(record.id))
    .sort((a, b) => b.chain.number - a.chain.number);
  const [last] = own;
  if (last === undefined || !UNDOABLE.has(last.kind)) return [];
  const together: FactRecord[] = [last];
  for (const record of own.slice(1)) {
    const before = together.at(-1)!;
    const isSameTap =
      record.chain.number === before.chain.number - 1 &&
      Date.parse(before.typedAt) - Date.parse(record.typedAt) < ONE_TAP &&
      tapOf(record) !== null &&
      tapOf(record) === tapOf(last);
    if (!isSameTap) break;
    together.push(record);
  }
  return together;
}

/** Which tap says that all at a stop is as it must be; null: what differs is written by itself. */
function tapOf({ kind, body }: FactRecord): string | null {
  if (kind === 'placed') return body.type && body.face && body.firm ? `placed ${body.stage}` : null;
  if (kind === 'screed-checked') return body.level && body.plumb && body.cap ? kind : null;
  return null;
}
