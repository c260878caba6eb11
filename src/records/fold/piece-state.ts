import type { FactRecord, RecordKind, RecordOf } from '../record.ts';

/** One question about a piece or one of its inserts, and what was answered. */
export interface SlotState {
  readonly slot: string;
  /** Key of the insert; null: of the piece. */
  readonly item: string | null;
  /** Records that no other of the slot has seen, in the order of their ids: one, or several that did not know of each other. Never empty. */
  readonly latest: readonly FactRecord[];
  /** Several latest ones that say different things: to be settled by a record that has seen both. Until then the worse one counts. */
  readonly isConflict: boolean;
  /** Those that were seen by a later one, earliest first as far as that is known. */
  readonly earlier: readonly FactRecord[];
}

/** Everything that records say about one piece: a function of the set of records, whatever the order in which they came. */
export interface PieceState {
  readonly piece: string;
  /** By `slotKey`. */
  readonly slots: ReadonlyMap<string, SlotState>;
  /** Photos, comments, dockets, strength results, lots that count, by kind, in the order of their ids. */
  readonly beside: ReadonlyMap<RecordKind, readonly FactRecord[]>;
  /** Records taken out of what counts: id → id of the correction. */
  readonly withdrawn: ReadonlyMap<string, string>;
  /** Every record of the piece, corrections and withdrawn ones too, so that each comes after those that it has seen. */
  readonly history: readonly FactRecord[];
  /** Ids of the latest records of each insert (`''`: of the piece itself), for the next record's `seen`. */
  readonly heads: ReadonlyMap<string, readonly string[]>;
}

/** How a poured record stands to clearance. `unknown to it`: given on another device, unseen; `late`: given after. Null: not poured. */
export interface PouredState {
  readonly poured: readonly RecordOf<'poured'>[];
  readonly clearance: 'cleared' | 'cleared with a condition' | 'on an override' | 'without clearance' | 'while held';
  /** A clearance that came too late to count for it. */
  readonly tooLate: 'unknown to it' | 'late' | null;
}
