import { worseOf } from '../../records/fold/worse-of.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import { ofKind, type PieceSlots } from '../yard/piece-slots.ts';
import type { BoltUpCard, TemporaryInsert } from './bolt-up-report.ts';

/** How far the piece is. */
export interface Progress {
  /** Where it stands was recorded. */
  readonly isErected: boolean;
  /** Every permanent connection is tightened as it must be. */
  readonly isDone: boolean;
}

/** Whether it is still needed: a brace until the last permanent connection, a lifting insert until the piece stands. */
function isNeeded(why: TemporaryInsert['why'], { isErected, isDone }: Progress): boolean {
  if (why === 'no bolt') return false;
  return why === 'brace' ? !isDone : !isErected && !isDone;
}

/**
 * Inserts that are needed for a time only, and those that a decision left without a bolt: in use, to be filled and sealed, or sealed. Support stays until the permanent connections
 * are completed (29 CFR 1926.704).
 */
export function listTemporary(
  { setOut }: PiecePlan,
  cards: readonly BoltUpCard[],
  slots: PieceSlots,
  progress: Progress,
): readonly TemporaryInsert[] {
  const unused = new Set(cards.flatMap((card) => card.unused.map(({ item }) => item.castIn.key)));
  return setOut.items.flatMap((item): TemporaryInsert[] => {
    const { role, key } = item.castIn;
    const why = unused.has(key) ? 'no bolt' : role === 'brace' || role === 'lifting' ? role : null;
    if (why === null) return [];
    const sealed = ofKind(slots.of(key, 'sealed')?.latest ?? [], 'sealed');
    const record = sealed.length === 0 ? null : worseOf(sealed);
    const needed = isNeeded(why, progress);
    const state = record === null ? (needed ? 'in use' : 'fill and seal') : needed ? 'sealed too early' : 'sealed';
    return [{ item, why, state, record }];
  });
}
