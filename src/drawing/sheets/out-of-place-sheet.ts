import type { FilledCase } from '../../assess/out-of-place/fill-case.ts';
import type { Drawing } from '../drawing.ts';
import { DrawingError } from '../drawing-error.ts';
import { type Block, drawBlocks, flowBlocks } from '../flow.ts';
import { drawLine, drawText } from '../marks.ts';
import { drawOutOfPlaceSketch, type SketchWords } from '../out-of-place-sketch.ts';
import { placeMarks } from '../place.ts';
import { layAccepted, layActs, layLimits, layVerdict } from './answer-blocks.ts';
import {
  GUTTER,
  layBeside,
  layHeading,
  layInColumns,
  layList,
  layPencilLines,
  layValues,
  sumHeights,
} from './page-blocks.ts';
import { layGap, layMarks, layTextBlock } from './text-block.ts';

/** What the page says, already in words and in a person's units. */
export interface OutOfPlacePage {
  /** Rule set and version. */
  readonly rules: string;
  readonly said: readonly (readonly [string, string])[];
  readonly limits: readonly { readonly words: string; readonly most: string; readonly why: string }[];
  readonly verdict: string;
  /** Anything but a pass. */
  readonly isStop: boolean;
  readonly reasons: readonly string[];
  readonly assumed: readonly string[];
  readonly conditions: readonly string[];
  readonly may: readonly string[];
  readonly ask: readonly string[];
  readonly never: readonly string[];
  readonly cautions: readonly string[];
  readonly sketch: SketchWords;
}

/** ISO 216 A4, upright [mm]. */
const SHEET = { width: 210, height: 297, margin: 11 } as const;
const WIDTH = SHEET.width - 2 * SHEET.margin;

/** Font sizes [mm]: as large as the page allows, the smallest still legible on a wet grey copy. */
const SIZES = [3.1, 2.9, 2.75, 2.6] as const;

function layPage(page: OutOfPlacePage, filled: FilledCase, size: number): readonly Block[] {
  const half = (WIDTH - GUTTER) / 2;
  const said = [layHeading('What was said', size, half), ...layValues(page.said, size, half, 0.64)];
  const saidHeight = sumHeights(said);
  const sketch = drawOutOfPlaceSketch(filled, page.sketch, { width: half, height: saidHeight - 7, text: 3.1 });
  const picture = [
    layHeading('As it stands', size, half),
    layMarks('the sketch', sketch.height, placeMarks(sketch.marks, { move: [0, -sketch.height] })),
  ];
  const limits = layLimits(page, 'One load at a time, design (factored) values', [0.42, 0.2], size, WIDTH, 1.1);
  return [
    layPencilLines(['panel and insert', 'asked by', 'measured by', 'date and time'], size, WIDTH),
    layBeside([said, picture], half),
    ...(page.limits.length === 0 ? [] : [layHeading('Carries at most', size, WIDTH), ...limits]),
    layGap(1.5),
    layVerdict(page, size, WIDTH),
    ...(page.reasons.length === 0
      ? []
      : [layHeading('It can be no pass, because', size, WIDTH), ...layList(page.reasons, size, WIDTH)]),
    layActs(page, 'May be done now', size, WIDTH),
    layHeading('Assumed, on the safe side', size, WIDTH),
    layInColumns(page.assumed, 2, size, WIDTH),
    layHeading('Holds only if', size, WIDTH),
    layInColumns(page.conditions, 2, size, WIDTH),
    layGap(1),
    layTextBlock(page.cautions.join(' '), WIDTH, { size, weight: 'bold' }),
    layAccepted(size, WIDTH),
  ];
}

/**
 * The page of an answer, to be sent, printed and signed: what was said, the sketch, what it carries, what may be done and who accepts it.
 * Throws DrawingError where it does not go onto one page even in the smallest letters.
 */
export function drawOutOfPlaceSheet(page: OutOfPlacePage, filled: FilledCase): Drawing {
  const { width, height, margin } = SHEET;
  const top = height - margin;
  const line = top - 9;
  const foot = margin + 4;
  const room = line - 1 - foot;
  for (const size of SIZES) {
    const blocks = layPage(page, filled, size);
    if (sumHeights(blocks) > room) continue;
    const [only = []] = flowBlocks(blocks, room);
    return {
      width,
      height,
      marks: [
        drawText([margin, top - 6], 'Insert out of place', 6, { weight: 'bold' }),
        drawText([width - margin, top - 6], page.rules, 3.1, { align: 'end' }),
        drawLine('frame', [margin, line], [width - margin, line], 'thick'),
        ...drawBlocks(only, [margin, line - 1]),
        drawLine('frame', [margin, foot], [width - margin, foot], 'hair'),
        drawText(
          [margin, margin],
          'NOT FOR LIFTING and not for braces. This page shows what was computed; it accepts nothing.',
          2.6,
          {
            weight: 'bold',
          },
        ),
      ],
    };
  }
  throw new DrawingError('the answer does not go onto one page; expected fewer reasons or shorter words');
}
