import type { Mark, Weight } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { drawBox, drawLine, drawText, drawTextLines } from '../marks.ts';
import { PENCIL_BOX } from '../table.ts';
import { CAP_HEIGHT, DESCENT, LINE_STEP, measureText, wrapText } from '../text-size.ts';

/** How a paragraph stands. Lengths mm. */
export interface TextBlockStyle {
  readonly size: number;
  readonly weight?: Weight;
  /** Free room above and below. */
  readonly above?: number;
  readonly below?: number;
  readonly staysWithNext?: boolean;
}

/** A paragraph as one block, its lines no wider than `width` [mm]. */
export function layTextBlock(text: string, width: number, style: TextBlockStyle): Block {
  const { size, weight = 'plain', above = 0.8, below = 0.8, staysWithNext = false } = style;
  const lines = wrapText(text, size, weight, width);
  const height = above + ((lines.length - 1) * LINE_STEP + CAP_HEIGHT + DESCENT) * size + below;
  return {
    name: `the text "${text.slice(0, 30)}"`,
    height,
    marks: drawTextLines([0, -above], lines, size, { weight, baseline: 'top' }),
    staysWithNext,
  };
}

/** Free room [mm]. */
export function layGap(height: number): Block {
  return { name: 'a gap', height, marks: [] };
}

/** Marks that hang below y = 0 as one block. */
export function layMarks(name: string, height: number, marks: readonly Mark[], staysWithNext = false): Block {
  return { name, height, marks, staysWithNext };
}

/** A row of boxes to write into with a pencil, each behind its word. `width` of a box in mm, as far as there is room. */
export function layPencilBoxes(
  name: string,
  boxes: readonly { readonly words: string; readonly width: number }[],
  width: number,
  size: number,
): Block {
  let x = 0;
  const marks = boxes.flatMap(({ words, width: wanted }): Mark[] => {
    const start = x + measureText(words, size) + 2;
    const box = Math.max(0, Math.min(wanted, width - start));
    const placed = [
      drawText([x, -PENCIL_BOX / 2 - 1.5], words, size, { baseline: 'middle' }),
      drawBox('frame', [start, -PENCIL_BOX - 1.5], box, PENCIL_BOX, 'thin'),
    ];
    x = start + box + 6;
    return placed;
  });
  return { name, height: PENCIL_BOX + 3, marks, staysWithNext: true };
}

/** Lines to sign on: who, when, signature. */
export function laySignature(words: string, width: number, size: number): Block {
  const share = width / 3;
  const line = -11;
  const labels = [words, 'date and time', 'signature'];
  const marks = labels.flatMap((label, i): Mark[] => [
    drawLine('frame', [i * share, line], [(i + 1) * share - 6, line], 'thin'),
    ...drawTextLines([i * share, line - 1.2], [label], size, { baseline: 'top' }),
  ]);
  return { name: `the line to sign for ${words}`, height: 17, marks };
}
