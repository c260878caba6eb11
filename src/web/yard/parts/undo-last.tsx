import { type FactWriter, takeBack } from '../../pieces/facts.ts';
import type { OpenPiece } from '../../pieces/read-piece.ts';
import { useYard } from '../../pieces/yard.ts';
import { findUndo } from '../state/find-undo.ts';
import { UndoKey } from './undo-key.tsx';

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
  const undo = async () => {
    if (await writer.write(takeBack(piece, findUndo(piece.state, device.id.value), 'taken back at once'))) onUndone?.();
  };
  return <UndoKey piece={piece} onUndo={() => void undo()} />;
}
