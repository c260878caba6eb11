import type { PieceHead } from '../../../../assess/yard/piece-head.ts';
import { slotKey } from '../../../../records/fold/fold-piece.ts';
import type { PieceState } from '../../../../records/fold/piece-state.ts';
import type { WriteDraft } from '../../../records/record-device.ts';

/** The record that begins a casting. */
export function draftStart({ piece, panelKey, mark, serial, pour, bed, recastOf }: PieceHead): WriteDraft {
  return {
    kind: 'piece-started',
    body: { panelKey, mark, serial, pour, bed, recastOf },
    piece,
    item: null,
    checkKey: null,
    measuredAt: null,
    measuredBy: null,
  };
}

/** What goes before the first record of a piece: that it is begun, so that its mark is known wherever its records are. Empty where it is. */
export function listStartDrafts(state: Pick<PieceState, 'slots'>, head: PieceHead): readonly WriteDraft[] {
  return state.slots.has(slotKey(null, 'started')) ? [] : [draftStart(head)];
}
