import type { KindAndBody, RecordDraft } from '../record.ts';
import { decidesPiece } from '../slots.ts';
import type { PieceState } from './piece-state.ts';

/** Records that a draft names: it has seen them, whatever else it has seen. */
function named(draft: KindAndBody): readonly string[] {
  if (draft.kind === 'correction') return [draft.body.of];
  return draft.kind === 'decision' || draft.kind === 'remedy-decided' ? draft.body.about : [];
}

/**
 * What the next record has seen, for its `seen`: the latest of its insert (or of the piece itself), the latest of the whole piece where it decides
 * about the piece, and what it names. All else that its writer knew follows from these.
 * @param state of the draft's piece, as the device knows it at that moment
 */
export function findSeen(state: PieceState, draft: Pick<RecordDraft, 'item'> & KindAndBody): readonly string[] {
  const seen = new Set(state.heads.get(draft.item ?? ''));
  if (decidesPiece(draft)) {
    const isSeen = new Set(state.history.flatMap((record) => record.seen));
    for (const { id } of state.history) if (!isSeen.has(id)) seen.add(id);
  }
  for (const id of named(draft)) seen.add(id);
  return [...seen].sort();
}
