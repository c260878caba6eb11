import type { OpenPiece } from '../../../pieces/read-piece.ts';
import { nameSide, type Stand, tellAside } from '../../../pieces/survey/stand.ts';
import type { TapeAsk } from '../../../pieces/survey/tape-asks.ts';
import type { TapedAnswer } from '../../state/survey/tape-session.ts';

/** The number of an insert on its sheet, by its key. */
export function numberOf({ plan }: OpenPiece, key: string): number | null {
  return plan.setOut.items.find(({ castIn }) => castIn.key === key)?.number ?? null;
}

/** What the pad asks for, in a few words. */
export function tellAsk(piece: OpenPiece, stand: Stand, ask: TapeAsk): string {
  const number = numberOf(piece, ask.item);
  if (ask.kind === 'side') return `${number} · from the ${nameSide(piece.plan.setOut.panel, stand, ask.edge)}`;
  if (ask.kind === 'between') return `${number} to ${numberOf(piece, ask.other)}`;
  return `${number} · how deep it sits`;
}

/** How it is taped. */
export function tellHow(ask: TapeAsk): string {
  switch (ask.kind) {
    case 'side':
      return 'Square from the side, to its middle.';
    case 'between':
      return 'From middle to middle. On bolts screwed in: from the left of one to the left of the other.';
    case 'depth':
      return 'A straightedge over it: how far its top is below the face. ± for one that stands proud.';
  }
}

/** What was taped of an insert, in words: how far off, and how deep. */
export function tellTaped({ item, aside, isOff, depth }: TapedAnswer, stand: Stand): string {
  const deep =
    depth === null ? '' : depth < 0 ? `; ${-depth} mm proud` : depth === 0 ? '; flush' : `; ${depth} mm deep`;
  const off = isOff ? 'OFF: ' : '';
  return `${item.number}: ${off}${tellAside(aside, stand)}${deep} (may be ± ${item.tolerance} mm)`;
}
