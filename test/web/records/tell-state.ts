import type { PieceState } from '../../../src/records/fold/piece-state.ts';

/** A state as plain values, so that two can be held against each other wherever they were folded. */
export function tellState({ piece, slots, beside, withdrawn, history, heads }: PieceState): unknown {
  const list = <T>(map: ReadonlyMap<string, T>) => [...map].sort(([a], [b]) => (a < b ? -1 : 1));
  return { piece, slots: list(slots), beside: list(beside), withdrawn: list(withdrawn), history, heads: list(heads) };
}
