import type { PanelSetOut, SetOutItem } from '../../assess/set-out/set-out.ts';
import type { Mark } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { placeMarks } from '../place.ts';
import { type Cell, layTable, PENCIL_BOX, TABLE_STYLE, type TableColumn } from '../table.ts';
import { layAgreedTolerances } from './agreed-tolerances.ts';
import { layFormCheck } from './form-check-block.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { type Paper, TYPE } from './paper.ts';
import type { Sheet, SheetHead } from './sheet-frame.ts';
import { layGap, layPencilBoxes, laySignature, layTextBlock } from './text-block.ts';
import { describeFace, describeHolding, describePrinted, describeType } from './words.ts';

/** Side of the code [mm]: a tenth of the distance that it is read from. */
export const CODE_SIZE = 34;

const BOX = { kind: 'box', width: 20, height: PENCIL_BOX } as const;
const TICK = { kind: 'box', width: PENCIL_BOX, height: PENCIL_BOX } as const;
/** Larger than other tables: read at arm's length, in rain. */
const CHECK_STYLE = { ...TABLE_STYLE, size: 3.3 };
const BOX_COLUMN = 23;
const TICK_COLUMN = 15;

function placedColumns(width: number): readonly TableColumn[] {
  const rest = width - 3 * BOX_COLUMN - 3 * TICK_COLUMN;
  return [
    { head: 'no.', width: 0.07 * rest },
    { head: 'what it must be', width: 0.53 * rest },
    { head: 'where', width: 0.4 * rest },
    { head: 'x measured', width: BOX_COLUMN },
    { head: 'y measured', width: BOX_COLUMN },
    { head: 'level', width: BOX_COLUMN },
    { head: 'type', width: TICK_COLUMN, align: 'middle' },
    { head: 'face', width: TICK_COLUMN, align: 'middle' },
    { head: 'firm', width: TICK_COLUMN, align: 'middle' },
  ];
}

function whereOf(item: SetOutItem): string {
  const [x, y] = describePrinted(item);
  return item.printed.kind === 'plan' ? `x ${x}, y ${y} (± ${item.tolerance})` : `${x}; ${y} (± ${item.tolerance})`;
}

/** What a check sheet says beside the set-out. */
export interface CheckFacts {
  /** Lengths that must be taped in digits, as `wantedLength` names them; the others are looked at. */
  readonly wanted: ReadonlySet<string>;
  /** When the sheet may no longer be used. */
  readonly voidWords: string;
}

/** Names a length of an insert. @param key permanent key of the cast-in item */
export function wantedLength(key: string, axis: 'x' | 'y'): string {
  return `${key} ${axis}`;
}

function placedRow(item: SetOutItem, wanted: CheckFacts['wanted']): readonly Cell[] {
  const cap = item.item === null ? '' : `; held: ${describeHolding(item)}`;
  return [
    { kind: 'text', text: String(item.number), weight: 'bold' },
    `${describeType(item)}; ${describeFace(item)}${cap}`,
    { kind: 'text', text: whereOf(item), weight: 'bold' },
    { ...BOX, isWanted: wanted.has(wantedLength(item.castIn.key, 'x')) },
    { ...BOX, isWanted: wanted.has(wantedLength(item.castIn.key, 'y')) },
    BOX,
    TICK,
    TICK,
    TICK,
  ];
}

function afterCells(item: SetOutItem | undefined): readonly Cell[] {
  if (item === undefined) return ['', '', '', '', ''];
  return [{ kind: 'text', text: String(item.number), weight: 'bold' }, describeType(item), TICK, TICK, TICK];
}

/** Rows whose last goes with what follows: nobody signs on a sheet of its own. */
function keepTogether(rows: readonly Block[]): readonly Block[] {
  return rows.map((row, i) => (i === rows.length - 1 ? { ...row, staysWithNext: true } : row));
}

/** Who measured, and when: asked at each part, since another may do it on another day. It is typed in as it stands here. */
function layWhoWhen(width: number): Block {
  return layPencilBoxes(
    'who measured and when',
    [
      { words: 'measured by', width: 70 },
      { words: 'date', width: 34 },
      { words: 'time', width: 24 },
    ],
    width,
    TYPE.body,
  );
}

function layStage(setOut: PanelSetOut, stage: 1 | 2, width: number, wanted: CheckFacts['wanted']): readonly Block[] {
  const items = setOut.items.filter((item) => item.stage === stage);
  const head =
    stage === 1
      ? '1 – before the cage: mould face and edges'
      : '2 – before the pour: trowelled face, bars tied, caps on';
  const heading = layTextBlock(head, width, { size: TYPE.heading, weight: 'bold', above: 2, staysWithNext: true });
  if (items.length === 0) return [heading, layTextBlock('Nothing to check in this stage.', width, { size: TYPE.body })];
  return [
    heading,
    layWhoWhen(width),
    ...keepTogether(
      layTable(
        `checks of stage ${stage}`,
        placedColumns(width),
        items.map((item) => placedRow(item, wanted)),
        CHECK_STYLE,
      ),
    ),
    laySignature(stage === 1 ? 'checked before the cage' : 'checked before the pour', width, TYPE.body),
  ];
}

function layAfterScreed(setOut: PanelSetOut, width: number): readonly Block[] {
  const items = setOut.items.filter(({ place }) => place === 'trowelled face');
  const heading = layTextBlock('3 – after screeding, while it can still be moved: level, plumb, cap on', width, {
    size: TYPE.heading,
    weight: 'bold',
    above: 2,
    staysWithNext: true,
  });
  if (items.length === 0)
    return [heading, layTextBlock('No insert in the trowelled face.', width, { size: TYPE.body })];
  const half: readonly TableColumn[] = [
    { head: 'no.', width: 12 },
    { head: 'insert', width: width / 2 - 12 - 3 * TICK_COLUMN },
    { head: 'level', width: TICK_COLUMN, align: 'middle' },
    { head: 'plumb', width: TICK_COLUMN, align: 'middle' },
    { head: 'cap', width: TICK_COLUMN, align: 'middle' },
  ];
  // Two beside each other: down the first half, then down the second.
  const rows = Math.ceil(items.length / 2);
  const cells = Array.from({ length: rows }, (_, i) => [...afterCells(items[i]), ...afterCells(items[rows + i])]);
  return [
    heading,
    layWhoWhen(width),
    ...keepTogether(layTable('checks after screeding', [...half, ...half], cells, CHECK_STYLE)),
    laySignature('checked after screeding', width, TYPE.body),
  ];
}

/**
 * The check sheet of one piece: form first, then three stages, boxes for a pencil, lines to sign.
 * @param code marks of the code, from its lower corner of least x, CODE_SIZE wide
 * @param codeWords what the code says, for people
 */
export function drawCheckSheets(
  setOut: PanelSetOut,
  head: SheetHead,
  paper: Paper,
  code: readonly Mark[],
  codeWords: readonly string[],
  { wanted, voidWords }: CheckFacts,
): readonly Sheet[] {
  const width = findPageWidth(paper);
  const beside = width - CODE_SIZE - 8;
  const intro = [
    layTextBlock('0 – the form itself, before anything is measured from it', beside, {
      size: TYPE.heading,
      weight: 'bold',
    }),
    layTextBlock(
      `Off by more than ± ${setOut.form.tolerance} mm, or diagonals that differ by more than ${2 * setOut.form.tolerance} mm: put the form right first. Write what the tape shows, not what it should. A box with a thick line must have its digits; in an edge x is along it and y above the bed; level: below the face +, proud of it −.`,
      beside,
      { size: TYPE.body },
    ),
    layTextBlock(voidWords, beside, { size: TYPE.body, weight: 'bold', below: 2 }),
  ];
  const rows = layFormCheck(setOut.form, beside);
  const words = codeWords.map((line, i) =>
    layTextBlock(line, CODE_SIZE, { size: TYPE.small, weight: i === 0 ? 'bold' : 'plain', above: 0.2, below: 0.2 }),
  );
  let down = CODE_SIZE + 1;
  const wordMarks = words.flatMap(({ marks, height }) => {
    const placed = placeMarks(marks, { move: [width - CODE_SIZE, -down] });
    down += height;
    return placed;
  });
  const codeMarks = [...placeMarks(code, { move: [width - CODE_SIZE, -CODE_SIZE] }), ...wordMarks];
  // As many rows stand beside the code as it is high; the others flow below it.
  const heightOf = (blocks: readonly Block[]) => blocks.reduce((sum, { height }) => sum + height, 0);
  let count = 0;
  while (count < rows.length && heightOf([...intro, ...rows.slice(0, count)]) < down) count += 1;
  const beforeCode = [...intro, ...rows.slice(0, count)];
  const withCode: Block = {
    name: 'the check of the form',
    height: Math.max(heightOf(beforeCode), down),
    marks: [...stack(beforeCode), ...codeMarks],
  };
  return layPages(
    head,
    [
      withCode,
      ...rows.slice(count),
      ...layAgreedTolerances(setOut, width),
      ...layStage(setOut, 1, width, wanted),
      ...layStage(setOut, 2, width, wanted),
      ...layAfterScreed(setOut, width),
      layGap(1),
    ],
    paper,
  );
}

function stack(blocks: readonly Block[]): readonly Mark[] {
  let top = 0;
  return blocks.flatMap(({ marks, height }) => {
    const placed = placeMarks(marks, { move: [0, -top] });
    top += height;
    return placed;
  });
}
