import { findHead, type PieceHead } from '../../../../assess/yard/piece-head.ts';
import type { Yard } from '../../../pieces/yard.ts';

/** Every piece that a pour plans or a record names, by mark and serial. Those that are not read from the device yet are as they are planned. */
export function listHeads(yard: Yard): readonly PieceHead[] {
  const planned = yard.planned.value;
  const ids = new Set([...planned.keys(), ...yard.device.knownPieces.value]);
  return [...ids]
    .flatMap((id) => {
      const head = findHead(yard.device.piece(id).value, planned.get(id) ?? null);
      return head === null ? [] : [head];
    })
    .sort((a, b) => compareMarks(a.mark, b.mark) || compareMarks(a.serial, b.serial));
}

/** `P2` before `P10`. */
export function compareMarks(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}

/** The serial that the next casting of a mark gets: one more than the greatest number that is given. */
export function findNextSerial(heads: readonly Pick<PieceHead, 'mark' | 'serial'>[], mark: string): string {
  const numbers = heads.flatMap((head) =>
    head.mark === mark && /^\d+$/.test(head.serial) ? [Number(head.serial)] : [],
  );
  return String(Math.max(0, ...numbers) + 1);
}
