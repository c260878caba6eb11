import type { SetOutItem } from '../../assess/set-out/set-out.ts';
import type { FactRecord, KindAndBody } from '../../records/record.ts';
import type { WriteDraft } from '../records/record-device.ts';
import { factOf } from './facts.ts';
import type { OpenPiece } from './read-piece.ts';

/** Decisions of their own: they are made anew on their own screen, by those who may, not chosen here. */
const DECIDED_ELSEWHERE: ReadonlySet<FactRecord['kind']> = new Set(['cleared', 'held', 'override', 'decision']);

export function isDecidedElsewhere(records: readonly FactRecord[]): boolean {
  return records.some(({ kind }) => DECIDED_ELSEWHERE.has(kind));
}

/** The same said once more by somebody who has seen all of it: measured when and by whom it was. A place is marked as chosen, not as taped again. */
export function chooseRecord(
  piece: Pick<OpenPiece, 'id' | 'plan'>,
  item: SetOutItem | null,
  record: FactRecord,
): WriteDraft {
  const { kind, body } = record as KindAndBody;
  const said = kind === 'measured' ? ({ kind, body: { ...body, basis: 'chosen' } } as const) : { kind, body };
  return {
    ...factOf(piece, item),
    checkKey: record.checkKey,
    measuredAt: record.measuredAt,
    measuredBy: record.measuredBy ?? record.person,
    // Kind and body are those of one record.
    ...(said as KindAndBody),
  };
}
