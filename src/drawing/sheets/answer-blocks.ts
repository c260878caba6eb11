import type { Block } from '../flow.ts';
import { drawBox, drawTextLines } from '../marks.ts';
import { layTable, TABLE_STYLE } from '../table.ts';
import { CAP_HEIGHT, LINE_STEP, wrapText } from '../text-size.ts';
import { GUTTER, layBeside, layHeading, layList, layPencilLines } from './page-blocks.ts';
import { layMarks } from './text-block.ts';

/** What a page of an answer says of loads, and of who may do what. */
export interface AnswerWords {
  readonly limits: readonly { readonly words: string; readonly most: string; readonly why: string }[];
  readonly verdict: string;
  /** Anything but a pass. */
  readonly isStop: boolean;
  readonly may: readonly string[];
  readonly ask: readonly string[];
  readonly never: readonly string[];
}

/** The answer in a frame, thick where it is no pass. */
export function layVerdict({ verdict, isStop }: AnswerWords, size: number, width: number): Block {
  const large = size + 0.8;
  const lines = wrapText(verdict, large, 'bold', width - 8);
  const height = ((lines.length - 1) * LINE_STEP + CAP_HEIGHT) * large + 5;
  return layMarks('the verdict', height + 3, [
    drawBox('frame', [0, -height - 1.5], width, height, isStop ? 'thick' : 'thin'),
    ...drawTextLines([4, -4], lines, large, { weight: 'bold', baseline: 'top' }),
  ]);
}

/**
 * The largest load in each direction, and what limits it.
 * @param shares of the width that the first two columns take; the rest is for why
 */
export function layLimits(
  { limits }: AnswerWords,
  head: string,
  shares: readonly [number, number],
  size: number,
  width: number,
  padding: number,
): readonly Block[] {
  const [words, most] = shares;
  return layTable(
    'largest loads',
    [
      { head, width: width * words },
      { head: 'at most', width: width * most, align: 'end' },
      { head: 'what limits it', width: width * (1 - words - most) },
    ],
    limits.map((limit) => [limit.words, { kind: 'text', text: limit.most, weight: 'bold' }, limit.why]),
    { ...TABLE_STYLE, size, leastHeight: size * 1.9, padding },
  );
}

/** What may be done, what needs somebody else, what is never done, beside each other. @param may heading of the first */
export function layActs({ may: acts, ask, never }: AnswerWords, may: string, size: number, width: number): Block {
  const third = (width - 2 * GUTTER) / 3;
  const lay = (heading: string, items: readonly string[]) => [
    layHeading(heading, size, third),
    ...layList(items, size, third),
  ];
  return layBeside([lay(may, acts), lay('Needs the design engineer', ask), lay('NEVER', never)], third);
}

/** Who accepts it, by hand. */
export function layAccepted(size: number, width: number): Block {
  return layPencilLines(['accepted by (name)', 'capacity', 'registration no.', 'date', 'signature'], size, width);
}
