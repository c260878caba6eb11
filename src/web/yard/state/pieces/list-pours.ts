import type { PieceHead } from '../../../../assess/yard/piece-head.ts';
import { slotKey } from '../../../../records/fold/fold-piece.ts';
import type { Yard } from '../../../pieces/yard.ts';
import { listHeads } from './list-heads.ts';

/** A pour as the list shows it; `id` null: pieces that no pour plans. */
export interface ListedPour {
  readonly id: string | null;
  readonly date: string | null;
  readonly bedName: string;
  readonly pieces: readonly PieceHead[];
  /** Pieces that have any record, and those that were poured. */
  readonly begun: number;
  readonly poured: number;
}

/** Pours by day and bed, the earliest first; pieces without one last. What a piece has is told from its records alone: nothing is planned for it. */
export function listPours(yard: Yard): readonly ListedPour[] {
  const context = yard.context.value;
  if (context === null) return [];
  const { job, library } = context.index.file;
  const heads = listHeads(yard);
  const list = (pieces: readonly PieceHead[]) => {
    const states = pieces.map(({ piece }) => yard.device.piece(piece).value);
    return {
      pieces,
      begun: states.filter(({ history }) => history.length > 0).length,
      poured: states.filter(({ slots }) => slots.has(slotKey(null, 'poured'))).length,
    };
  };
  const planned = job.pours
    .map(({ id, date, bed }): ListedPour => {
      const name = library.yard.beds.find((one) => one.id === bed)?.name ?? bed;
      return { id, date, bedName: name, ...list(heads.filter(({ pour }) => pour === id)) };
    })
    .sort((a, b) => (a.date ?? '').localeCompare(b.date ?? '') || a.bedName.localeCompare(b.bedName));
  const ids = new Set<string | null>(job.pours.map(({ id }) => id));
  const others = heads.filter(({ pour }) => !ids.has(pour));
  return others.length === 0 ? planned : [...planned, { id: null, date: null, bedName: 'no bed', ...list(others) }];
}
