import type { DeviationPicture, PictureRoom } from '../as-cast/deviation-picture.ts';
import type { Drawing } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { placeMarks } from '../place.ts';
import { type Cell, layTable, type TableColumn } from '../table.ts';
import { replaceUndrawable } from '../text-size.ts';
import { fitColumns } from './fit-columns.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { layHeading } from './page-blocks.ts';
import { findFrame, TYPE } from './paper.ts';
import { type FolderFacts, finishSheets, type SheetHead } from './sheet-frame.ts';
import { layGap, layMarks, layTextBlock } from './text-block.ts';

/** An insert as a row, in words. */
export interface AsCastRow {
  readonly number: string;
  readonly type: string;
  readonly face: string;
  readonly dx: string;
  readonly dy: string;
  readonly depth: string;
  readonly tolerance: string;
  readonly state: string;
  readonly isOff: boolean;
}

/** A piece as it came out, in words: the drawing of what stands there. */
export interface AsCastContent {
  readonly head: SheetHead;
  /** How it stands, and the strength that counts. */
  readonly standing: readonly string[];
  /** One a side that has inserts. */
  readonly views: readonly {
    readonly words: string;
    readonly draw: (room: PictureRoom) => DeviationPicture;
  }[];
  readonly rows: readonly AsCastRow[];
  /** Each survey: how, when, by whom, what its known points left over. */
  readonly surveys: readonly string[];
  /** A connection and what was decided about it. */
  readonly decisions: readonly { readonly connection: string; readonly state: string; readonly words: string }[];
  /** Ids of the records that it rests on. */
  readonly records: string;
}

const INSERTS: readonly TableColumn[] = [
  { head: 'no.', width: 10, align: 'end' },
  { head: 'type', width: 62 },
  { head: 'face', width: 44 },
  { head: 'x found less designed', width: 26, align: 'end' },
  { head: 'y found less designed', width: 26, align: 'end' },
  { head: 'top below face', width: 20, align: 'end' },
  { head: 'tolerance', width: 18, align: 'end' },
  { head: 'state', width: 50 },
];

const DECISIONS: readonly TableColumn[] = [
  { head: 'connection', width: 26 },
  { head: 'stands', width: 44 },
  { head: 'decided', width: 186 },
];

/** Lines above and below a picture [mm]. */
const BESIDE = 14;

function layViews({ views }: AsCastContent, width: number, height: number): readonly Block[] {
  return views.map(({ words, draw }): Block => {
    const room = { width, height: height - BESIDE, text: TYPE.body };
    const { drawing, magnification } = draw(room);
    const title = `${words} Panel to scale; arrows ${magnification === 1 ? 'as long as they are' : `${magnification} times as long as what they show`}; boxes are the tolerances.`;
    const line = layTextBlock(title, width, { size: TYPE.body, weight: 'bold' });
    return layMarks(`the view "${words}"`, line.height + drawing.height, [
      ...line.marks,
      ...placeMarks(drawing.marks, { move: [0, -line.height - drawing.height] }),
    ]);
  });
}

function insertRow({ number, type, face, dx, dy, depth, tolerance, state, isOff }: AsCastRow): readonly Cell[] {
  const cells = [number, type, face, dx, dy, depth, tolerance, state];
  return cells.map((text): Cell => ({ kind: 'text', text: replaceUndrawable(text), weight: isOff ? 'bold' : 'plain' }));
}

/** A piece as it came out, as sheets: its sides with arrows, every insert in numbers, the surveys, what was decided about its connections. */
export function drawAsCastSheets(content: AsCastContent, facts: FolderFacts): readonly Drawing[] {
  const { paper } = facts;
  const width = findPageWidth(paper);
  const height = findFrame(paper).height - 3;
  const style = { size: TYPE.body, padding: 1.3, leastHeight: 5.6 };
  const line = (words: string) =>
    layTextBlock(replaceUndrawable(words), width, { size: TYPE.body, above: 0.5, below: 0.5 });
  const standing = content.standing.map(line);
  const used = standing.reduce((sum, block) => sum + block.height, 0);
  const blocks: readonly Block[] = [
    ...standing,
    ...layViews(content, width, height - used),
    layHeading('Every insert', TYPE.large, width),
    ...layTable('inserts', fitColumns(INSERTS, width), content.rows.map(insertRow), style),
    layGap(1.5),
    layHeading('Surveys', TYPE.large, width),
    ...(content.surveys.length === 0 ? ['Nothing is surveyed.'] : content.surveys).map(line),
    layHeading('Connections', TYPE.large, width),
    ...layTable(
      'connections',
      fitColumns(DECISIONS, width),
      content.decisions.map(({ connection, state, words }) => [connection, state, replaceUndrawable(words)]),
      style,
    ),
    layGap(1.5),
    line(content.records),
  ];
  return finishSheets(layPages(content.head, blocks, paper), facts);
}
