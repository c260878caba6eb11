import { placesOf } from '../../../say/number-runs.ts';
import { nameKind } from '../../../say/record-words.ts';
import { type FactWriter, takeBack } from '../../pieces/facts.ts';
import { findUndo } from '../state/find-undo.ts';
import type { OpenPiece } from '../../pieces/read-piece.ts';
import { useYard } from '../../pieces/yard.ts';
import { BigKey } from './big-key.tsx';

/** Takes back what was written last on this device for this piece, and says what that is. It stays in the history, struck through. */
export function UndoLast({
  piece,
  writer,
  onUndone,
}: {
  readonly piece: OpenPiece;
  readonly writer: Pick<FactWriter, 'write'>;
  readonly onUndone?: () => void;
}) {
  const { device } = useYard();
  const records = findUndo(piece.state, device.id.value);
  const [first] = records;
  const numbers = piece.plan.setOut.items
    .filter(({ castIn }) => records.some(({ item }) => item === castIn.key))
    .map(({ number }) => number);
  const what =
    first === undefined
      ? 'nothing to take back'
      : [...(numbers.length === 0 ? [] : [placesOf(numbers)]), nameKind(first.kind)].join(' ');
  const undo = async () => {
    if (await writer.write(takeBack(piece, records, 'taken back at once'))) onUndone?.();
  };
  return (
    <BigKey kind="quiet" isDisabled={first === undefined} more={what} onPress={() => void undo()}>
      Undo
    </BigKey>
  );
}
