import type { PieceReading } from '../../pieces/read-piece.ts';
import { useYard } from '../../pieces/yard.ts';

/** A piece with its plan and report; the screen follows what is written and what arrives. */
export function usePiece(id: string): PieceReading {
  return useYard().piece(id).value;
}
