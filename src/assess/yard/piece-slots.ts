import { slotKey } from '../../records/fold/fold-piece.ts';
import type { PieceState, SlotState } from '../../records/fold/piece-state.ts';
import type { FactRecord, RecordKind, RecordOf } from '../../records/record.ts';

/** What was answered about a piece, by the question. */
export interface PieceSlots {
  /** @param item key of the insert; null: of the piece */
  of(item: string | null, slot: string): SlotState | null;
}

export function readSlots({ slots }: Pick<PieceState, 'slots'>): PieceSlots {
  return { of: (item, slot) => slots.get(slotKey(item, slot)) ?? null };
}

/** Everything that was ever answered to some questions and not taken back, earlier answers first. */
export function recordsOf(...slots: readonly (SlotState | null)[]): readonly FactRecord[] {
  return slots.flatMap((slot) => (slot === null ? [] : [...slot.earlier, ...slot.latest]));
}

/** Those of one kind. */
export function ofKind<Kind extends RecordKind>(records: readonly FactRecord[], kind: Kind): readonly RecordOf<Kind>[] {
  return records.filter((record): record is RecordOf<Kind> => record.kind === kind);
}
