import { placesOf } from '../../../../say/number-runs.ts';
import { BigKey } from '../../parts/big-key.tsx';
import type { OpenPiece } from '../../state/read-piece.ts';
import type { WalkSession } from '../../state/walk/walk-session.ts';

const DONE_WORDS: Readonly<Record<string, string>> = {
  placed: 'seen',
  measured: 'measured',
  'form-checked': 'form checked',
};

/** Takes the last entry back, and says which that is. */
export function UndoKey({ walk, piece }: { readonly walk: WalkSession; readonly piece: OpenPiece }) {
  const records = walk.listUndo();
  const [first] = records;
  const numbers = piece.plan.setOut.items
    .filter(({ castIn }) => records.some(({ item }) => item === castIn.key))
    .map(({ number }) => number);
  const what =
    first === undefined
      ? 'nothing to take back'
      : `${numbers.length === 0 ? '' : `${placesOf(numbers)} `}${DONE_WORDS[first.kind] ?? first.kind}`;
  return (
    <BigKey kind="quiet" isDisabled={first === undefined} more={what} onPress={() => void walk.undo()}>
      Undo
    </BigKey>
  );
}
