import { placesOf } from '../../../say/number-runs.ts';
import { nameKind } from '../../../say/record-words.ts';
import type { OpenPiece } from '../../pieces/read-piece.ts';
import { useYard } from '../../pieces/yard.ts';
import { findUndo } from '../state/find-undo.ts';
import { BigKey } from './big-key.tsx';
import styles from './undo-key.module.css';

/** Says what was written last on this device for a piece, and has it taken back. */
export function UndoKey({ piece, onUndo }: { readonly piece: OpenPiece; readonly onUndo: () => void }) {
  const records = findUndo(piece.state, useYard().device.id.value);
  const [first] = records;
  const numbers = piece.plan.setOut.items
    .filter(({ castIn }) => records.some(({ item }) => item === castIn.key))
    .map(({ number }) => number);
  const what =
    first === undefined
      ? 'nothing to take back'
      : [...(numbers.length === 0 ? [] : [placesOf(numbers)]), nameKind(first.kind)].join(' ');
  return (
    <div class={styles.undo}>
      <BigKey
        kind="quiet"
        isDisabled={first === undefined}
        more={what}
        meaning={records.map(({ id }) => id).join()}
        onPress={onUndo}
      >
        Undo
      </BigKey>
    </div>
  );
}
