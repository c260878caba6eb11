import type { Mark, Weight } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { drawLine, drawTextLines } from '../marks.ts';
import { CAP_HEIGHT, DESCENT, LINE_STEP, wrapText } from '../text-size.ts';

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
