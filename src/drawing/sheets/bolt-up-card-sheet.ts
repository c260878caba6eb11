import { drawPlateAsCast, type PlateAsCast } from '../as-cast/plate-picture.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { type Block, drawBlocks, flowBlocks } from '../flow.ts';
import { drawBox, drawLine, drawText, drawTextLines } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { type Cell, layTable, PENCIL_BOX, type TableColumn } from '../table.ts';
import { CAP_HEIGHT, LINE_STEP, measureText, wrapText } from '../text-size.ts';
import { layHeading, layList } from './page-blocks.ts';
import { PAPERS } from './paper.ts';
import { layMarks, layTextBlock } from './text-block.ts';

/** A bolt as a row of the card, in words. */
export interface CardRow {
  readonly insert: string;
  readonly hole: string;
  readonly recess: string;
  readonly turns: string;
  /** For each range of packers. */
  readonly lengths: readonly string[];
}

/** What a card says, already in words. */
export interface BoltUpCardContent {
  /** Panel, large. */
  readonly panel: string;
  readonly connection: string;
  /** Piece, grid and level, revision. */
  readonly lines: readonly string[];
  /** From where one sees it so. */
  readonly stand: string;
  /** Whether it may be bolted, and why not. */
  readonly state: string;
  readonly isStop: boolean;
  readonly stops: readonly string[];
  /** Null: no plate is known. */
  readonly plate: PlateAsCast | null;
  /** Under the picture: where it is on the panel, which hand it has. */
  readonly where: readonly string[];
  /** Bolts, washers in their order, packers with what their strength is. */
  readonly bolts: string;
  readonly ranges: readonly string[];
  readonly rows: readonly CardRow[];
  readonly notes: readonly string[];
  readonly tightening: readonly string[];
  readonly lists: readonly { readonly title: string; readonly items: readonly string[] }[];
  /** What to measure where it does not go on. */
  readonly measures: readonly string[];
  readonly foot: string;
  readonly writeLength: (mm: number) => string;
}

/** ISO 216 A5, upright: two of them are a sheet A4 on its side [mm]. */
const CARD = { width: 148.5, height: 210, margin: 8 } as const;
const WIDTH = CARD.width - 2 * CARD.margin;
/** Of its letters, read at arm's length [mm]: smaller only where two sides hold it so. */
const SIZES = [3.2, 3, 2.8] as const;
const SIZE = SIZES[0];
const FOOT = 7;

/** Head of a side: what it is of, large, and that nothing is lifted by it. */
function drawHead(
  content: BoltUpCardContent,
  side: string,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const { width, height, margin } = CARD;
  const [left, right, top] = [margin, width - margin, height - margin];
  const name = `${content.panel}  ${content.connection}`;
  const warning = 'NOT FOR LIFTING';
  const box = measureText(warning, 4.2, 'bold') + 5;
  const room = WIDTH - box - 4;
  const size = Math.min(8, (8 * room) / measureText(name, 8, 'bold'));
  const lines = content.lines.flatMap((line) => wrapText(line, SIZE, 'plain', WIDTH));
  const stand = wrapText(content.stand, 3.8, 'bold', WIDTH);
  const standTop = top - 12.5 - lines.length * SIZE * LINE_STEP;
  const base = standTop - stand.length * 3.8 * LINE_STEP - 1;
  return {
    height: top - base,
    marks: [
      drawText([left, top - 7], name, size, { weight: 'bold' }),
      drawBox('frame', [right - box, top - 8.5], box, 8.5, 'thick'),
      drawText([right - box / 2, top - 4.25], warning, 4.2, { weight: 'bold', align: 'middle', baseline: 'middle' }),
      ...drawTextLines([left, top - 12.5], lines, SIZE),
      ...drawTextLines([left, standTop - 0.8], stand, 3.8, { weight: 'bold' }),
      drawLine('frame', [left, base], [right, base], 'thick'),
      drawLine('frame', [left, margin + FOOT - 2.5], [right, margin + FOOT - 2.5], 'hair'),
      ...drawTextLines([left, margin + 0.6], [content.foot], 2.7, { weight: 'bold' }),
      drawText([right, margin + 0.6], side, 2.7, { align: 'end' }),
    ],
  };
}

function layState({ state, isStop, stops }: BoltUpCardContent, size: number): readonly Block[] {
  const large = 4;
  const lines = wrapText(state, large, 'bold', WIDTH - 6);
  const height = ((lines.length - 1) * LINE_STEP + CAP_HEIGHT) * large + 4.4;
  const box = layMarks('the state', height + 2.6, [
    drawBox('frame', [0, -height - 1.2], WIDTH, height, isStop ? 'thick' : 'thin'),
    ...drawTextLines([3, -3.4], lines, large, { weight: 'bold', baseline: 'top' }),
  ]);
  return [box, ...layList(stops, size, WIDTH)];
}

function layPicture({ plate, where, writeLength }: BoltUpCardContent, size: number): readonly Block[] {
  const room = { width: WIDTH, height: 54, text: SIZE };
  const words = where.map((line) => layTextBlock(line, WIDTH, { size, above: 0.5, below: 0.5 }));
  if (plate === null) return words;
  const picture = drawPlateAsCast(plate, room, writeLength);
  const frame = drawBox('frame', [0, -room.height], room.width, room.height, 'hair');
  return [
    layMarks(
      'the picture',
      room.height + 1.5,
      [...placeMarks(picture.marks, { move: [0, -room.height] }), frame],
      true,
    ),
    ...words,
  ];
}

function layBolts({ bolts, ranges, rows, notes }: BoltUpCardContent, size: number): readonly Block[] {
  if (rows.length === 0) return [];
  const share = (WIDTH - 64) / Math.max(ranges.length, 1);
  const columns: readonly TableColumn[] = [
    { head: 'insert', width: 14 },
    { head: 'hole', width: 12 },
    { head: 'recess', width: 16, align: 'end' },
    { head: 'turns by hand, least', width: 22, align: 'end' },
    ...ranges.map((head): TableColumn => ({ head, width: share, align: 'end' })),
  ];
  const cells = rows.map(({ insert, hole, recess, turns, lengths }): readonly Cell[] => [
    { kind: 'text', text: insert, weight: 'bold' },
    hole,
    recess,
    turns,
    ...lengths.map((text, k): Cell => ({ kind: 'text', text, weight: k === 0 ? 'bold' : 'plain' })),
  ]);
  return [
    layHeading(bolts, size + 0.3, WIDTH),
    ...layTable('bolts', columns, cells, { size, padding: 1.1, leastHeight: 6 }),
    ...notes.map((note, k) => layTextBlock(note, WIDTH, { size, above: k === 0 ? 1.6 : 0.4, below: 0.4 })),
  ];
}

/** Boxes to write what was measured into. */
function layMeasures(measures: readonly string[], size: number): readonly Block[] {
  return measures.map((words): Block => {
    const lines = wrapText(words, size, 'plain', WIDTH - 34);
    const middle = -PENCIL_BOX / 2 + ((lines.length - 1) * LINE_STEP * size) / 2;
    return layMarks(`the box for "${words.slice(0, 20)}"`, PENCIL_BOX + 1.5, [
      ...drawTextLines([0, middle], lines, size, { baseline: 'middle' }),
      drawBox('frame', [WIDTH - 32, -PENCIL_BOX], 32, PENCIL_BOX, 'thin'),
    ]);
  });
}

function layCard(content: BoltUpCardContent, size: number): readonly Block[] {
  const list = (title: string, items: readonly string[]) =>
    items.length === 0 ? [] : [layHeading(title, size, WIDTH), ...layList(items, size, WIDTH)];
  const [first, ...others] = content.lists;
  return [
    ...layState(content, size),
    ...layPicture(content, size),
    ...layBolts(content, size),
    ...list('Tighten', content.tightening),
    ...(first === undefined ? [] : list(first.title, first.items)),
    ...(content.measures.length === 0
      ? []
      : [
          layHeading('If it does not go on: measure, and send it with a photo of the tape', size, WIDTH),
          ...layMeasures(content.measures, size),
        ]),
    ...others.flatMap(({ title, items }) => list(title, items)),
  ];
}

/** The card of one connection for the man at the bracket, as sides of A5 upright: seen as it hangs there, bolts by packers, how hard, in which order, what if not. */
export function drawBoltUpCard(content: BoltUpCardContent): readonly Drawing[] {
  const { width, height, margin } = CARD;
  const head = drawHead(content, '');
  const room = height - 2 * margin - FOOT - head.height - 1;
  const tries = SIZES.map((size) => flowBlocks(layCard(content, size), room));
  const pages = tries.find(({ length }) => length <= 2) ?? tries[0]!;
  return pages.map((page, k) => ({
    width,
    height,
    marks: [
      ...drawHead(content, `side ${k + 1} of ${pages.length}`).marks,
      ...drawBlocks(page, [margin, height - margin - head.height - 1]),
    ],
  }));
}

/** Sides of cards two to a sheet A4, to be cut apart in its middle. */
export function pairCards(sides: readonly Drawing[]): readonly Drawing[] {
  const { width, height } = PAPERS.A4;
  return Array.from({ length: Math.ceil(sides.length / 2) }, (_, k): Drawing => {
    const [one, other] = [sides[2 * k], sides[2 * k + 1]];
    return {
      width,
      height,
      marks: [
        ...(one?.marks ?? []),
        ...placeMarks(other?.marks ?? [], { move: [width / 2, 0] }),
        drawLine('frame', [width / 2, 0], [width / 2, 6], 'faint'),
        drawLine('frame', [width / 2, height - 6], [width / 2, height], 'faint'),
      ],
    };
  });
}
