import type { Drawing, Mark } from '../drawing.ts';
import { type Block, drawBlocks, flowBlocks } from '../flow.ts';
import { drawBox, drawLine, drawText, drawTextLines } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { type Cell, layTable, TABLE_STYLE } from '../table.ts';
import { LINE_STEP, measureText, replaceUndrawable, wrapText } from '../text-size.ts';
import { layAccepted, layActs, layLimits, layVerdict } from './answer-blocks.ts';
import { GUTTER, layBeside, layHeading, layInColumns, layList, layValues, sumHeights } from './page-blocks.ts';
import { layGap, layMarks, layTextBlock } from './text-block.ts';

/** A remedy as a row, in words. */
export interface RemedyRow {
  readonly words: string;
  readonly verdict: string;
  readonly ratio: string;
  readonly room: string;
  readonly who: string;
  readonly isDecided: boolean;
}

/** What the page says, already in words. */
export interface NonConformancePage {
  /** Panel, piece and connection. */
  readonly subject: string;
  readonly project: string;
  /** Rule set, edition, engine. */
  readonly rules: string;
  /** At most twelve; what is assumed says so. */
  readonly given: readonly (readonly [string, string])[];
  readonly limits: readonly { readonly words: string; readonly most: string; readonly why: string }[];
  readonly verdict: string;
  readonly isStop: boolean;
  /** Against the action, the plate, the movement: a sentence each. */
  readonly found: readonly string[];
  readonly remedies: readonly RemedyRow[];
  readonly decision: readonly string[];
  readonly may: readonly string[];
  readonly ask: readonly string[];
  readonly never: readonly string[];
  readonly cautions: readonly string[];
  /** Ids of the records that it rests on. */
  readonly records: string;
  readonly drawSketch:
    | ((room: { readonly width: number; readonly height: number; readonly text: number }) => Drawing)
    | null;
}

/** ISO 216 A4, upright [mm]. */
const SHEET = { width: 210, height: 297, margin: 11 } as const;
const WIDTH = SHEET.width - 2 * SHEET.margin;
/** Font sizes [mm]: as large as the page allows. */
const SIZES = [3.1, 2.9, 2.75, 2.6] as const;
const FOOT = 'NOT FOR LIFTING and not for braces. This page shows what was computed; only a signature accepts it.';

function layRemedies(remedies: readonly RemedyRow[], size: number): readonly Block[] {
  if (remedies.length === 0) return [];
  const rows = remedies.map(({ words, verdict, ratio, room, who, isDecided }): readonly Cell[] => {
    const weight = isDecided ? 'bold' : 'plain';
    const cell = (text: string): Cell => ({ kind: 'text', text, weight });
    return [cell(isDecided ? `▶ decided: ${words}` : words), cell(verdict), cell(ratio), cell(room), cell(who)];
  });
  return [
    layHeading('What may be done about it, side by side', size, WIDTH),
    ...layTable(
      'remedies',
      [
        { head: 'remedy', width: WIDTH * 0.38 },
        { head: 'answer', width: WIDTH * 0.28 },
        { head: 'ratio', width: WIDTH * 0.08, align: 'end' },
        { head: 'room', width: WIDTH * 0.1, align: 'end' },
        { head: 'decided by', width: WIDTH * 0.16 },
      ],
      rows,
      { ...TABLE_STYLE, size, leastHeight: size * 1.8, padding: size > 2.7 ? 1 : 0.8 },
    ),
  ];
}

function layPicture({ drawSketch }: NonConformancePage, width: number, height: number, size: number): readonly Block[] {
  const heading = layHeading('As designed dashed, as cast solid', size, width);
  if (drawSketch === null) return [heading, layTextBlock('It cannot be drawn: see why below.', width, { size })];
  const room = { width, height: Math.max(45, height - 7), text: 3.1 };
  const sketch = drawSketch(room);
  const frame: Mark = drawBox('frame', [0, -room.height], room.width, room.height, 'hair');
  return [
    heading,
    layMarks('the sketch', room.height, [...placeMarks(sketch.marks, { move: [0, -room.height] }), frame]),
  ];
}

function layFound(found: readonly string[], size: number, isOnePage: boolean): readonly Block[] {
  if (found.length === 0) return [];
  return isOnePage ? [layInColumns(found, 2, size, WIDTH)] : layList(found, size, WIDTH);
}

/** @param isOnePage else what was found goes on from page to page, however much it is */
function layPage(page: NonConformancePage, size: number, isOnePage: boolean): readonly Block[] {
  const half = (WIDTH - GUTTER) / 2;
  const given = [layHeading('What is given', size, half), ...layValues(page.given, size, half, 0.43)];
  const limits = layLimits(
    page,
    'Carries at most, one load at a time, design (factored) values',
    [0.52, 0.13],
    size,
    WIDTH,
    1,
  );
  return [
    layBeside([given, layPicture(page, half, sumHeights(given), size)], half),
    ...(page.limits.length === 0 ? [] : [layGap(1.5), ...limits]),
    layGap(1.2),
    layVerdict(page, size, WIDTH),
    ...layFound(page.found, size, isOnePage),
    ...layRemedies(page.remedies, size),
    layHeading('Decision', size, WIDTH),
    ...page.decision.map((words) => layTextBlock(replaceUndrawable(words), WIDTH, { size, above: 0.4, below: 0.4 })),
    layActs(page, 'May be done now, without asking', size, WIDTH),
    layGap(1),
    layTextBlock(page.cautions.join(' '), WIDTH, { size, weight: 'bold' }),
    layTextBlock(page.records, WIDTH, { size: 2.6 }),
    layAccepted(size, WIDTH),
  ];
}

/** Two texts on a line at its ends; the second on lines of its own where both do not go onto one. @returns marks from y = 0 down */
function layEnds(text: string, size: number, end: string): Block {
  const [small, gap] = [2.9, 4];
  const fitted = Math.min(size, (size * WIDTH) / measureText(text, size, 'bold'));
  const isBeside = measureText(text, fitted, 'bold') + gap + measureText(end, small) <= WIDTH;
  const lines = isBeside ? [] : wrapText(end, small, 'plain', WIDTH);
  return layMarks(text, size + 1.2 + lines.length * LINE_STEP * small, [
    drawText([0, -size], text, fitted, { weight: 'bold' }),
    ...(isBeside ? [drawText([WIDTH, -size], end, small, { align: 'end' })] : []),
    ...drawTextLines([0, -size - 1.6], lines, small, { baseline: 'top' }),
  ]);
}

/**
 * One connection that did not come out as drawn, to be sent and signed: what is given, the sketch, what it carries, what may be done side by side, what was decided and by whom.
 * One page A4 where it goes onto one in letters that can be read; else it goes on, on pages that say so, and is signed on the last.
 * Throws DrawingError where one sentence is longer than a page.
 */
export function drawNonConformanceSheets(page: NonConformancePage): readonly Drawing[] {
  const { width, height, margin } = SHEET;
  const top = height - margin;
  const head = [
    layEnds('Non-conformance: not as drawn', 5.5, page.rules),
    layEnds(page.subject, 4, page.project),
  ] as const;
  const line = top - sumHeights(head);
  const foot = margin + 4;
  const room = line - 1 - foot;
  const size = SIZES.find((one) => sumHeights(layPage(page, one, true)) <= room);
  const blocks = size === undefined ? layPage(page, SIZES[0], false) : layPage(page, size, true);
  const pages = flowBlocks(blocks, room);
  const [headPage = []] = flowBlocks(head, height);
  return pages.map((placed, k): Drawing => {
    const count =
      pages.length === 1
        ? []
        : [drawText([width - margin, margin], `page ${k + 1} of ${pages.length}`, 2.6, { align: 'end' })];
    return {
      width,
      height,
      marks: [
        ...drawBlocks(headPage, [margin, top]),
        drawLine('frame', [margin, line], [width - margin, line], 'thick'),
        ...drawBlocks(placed, [margin, line - 1]),
        drawLine('frame', [margin, foot], [width - margin, foot], 'hair'),
        drawText([margin, margin], FOOT, 2.6, { weight: 'bold' }),
        ...count,
      ],
    };
  });
}
