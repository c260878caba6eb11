import type { Drawing, Mark } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { drawBox } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { type Cell, layTable, TABLE_STYLE, type TableColumn } from '../table.ts';
import { replaceUndrawable } from '../text-size.ts';
import { fitColumns } from './fit-columns.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { TYPE } from './paper.ts';
import { type FolderFacts, finishSheets, type SheetHead } from './sheet-frame.ts';
import { layGap, layTextBlock } from './text-block.ts';

/** One act of a piece as it stands in its printed history. All texts as people typed them: signs that cannot be drawn are replaced, and show. */
export interface HistoryEntry {
  readonly words: string;
  /** Moments as they shall be read. */
  readonly measured: string;
  readonly typed: string;
  readonly who: string;
  /** The device and its running numbers. */
  readonly chain: string;
  /** Why it does not count any more; null: it counts. */
  readonly withdrawn: string | null;
}

/** A piece on paper: what must not be overlooked, what was decided on what, then everything that was recorded. */
export interface HistoryContent {
  readonly head: SheetHead;
  /** In words; empty: none. */
  readonly flags: readonly string[];
  /** What the piece was cleared, held or poured on: a line, then facts by name. Null: nobody has decided. */
  readonly clearance: {
    readonly words: string;
    readonly facts: readonly { readonly name: string; readonly value: string }[];
    readonly open: readonly string[];
  } | null;
  /** How it stands now, a line each. */
  readonly standing: readonly string[];
  readonly entries: readonly HistoryEntry[];
  /** Head of the server's log as known to who prints; null: never heard. */
  readonly logHead: string | null;
  /** By which clock the moments are. */
  readonly clockWords: string;
}

/** A longer text is cut on paper, and says so: the row must fit a page. */
const LONGEST = 1200;
const MOST_LINES = 12;

/** A text as it is printed: what cannot be drawn is replaced, what is too long for a row is cut and says so. */
function readyText(text: string): string {
  const lines = replaceUndrawable(text).split('\n');
  const kept = lines.slice(0, MOST_LINES).join('\n');
  if (lines.length <= MOST_LINES && kept.length <= LONGEST) return kept;
  return `${kept.slice(0, LONGEST)} … (cut here; the record has ${text.length} signs)`;
}

/** Blocks in a frame of their own, which must not be passed over. */
function frameBlocks(blocks: readonly Block[], width: number): readonly Block[] {
  return blocks.map((block) => {
    const frame: Mark = drawBox('frame', [0, -block.height], width, block.height, 'thick');
    return { ...block, marks: [frame, ...placeMarks(block.marks, { move: [2, 0] })] };
  });
}

function layFlags(flags: readonly string[], width: number): readonly Block[] {
  if (flags.length === 0) return [];
  const lines = flags.map((flag) =>
    layTextBlock(readyText(flag), width - 4, { size: TYPE.large, weight: 'bold', above: 2, below: 2 }),
  );
  const heading = layTextBlock('Must not be overlooked', width, {
    size: TYPE.heading,
    weight: 'bold',
    staysWithNext: true,
  });
  return [heading, ...frameBlocks(lines, width), layGap(2)];
}

function layClearance(clearance: HistoryContent['clearance'], width: number): readonly Block[] {
  const heading = layTextBlock('Clearance', width, {
    size: TYPE.heading,
    weight: 'bold',
    above: 2,
    staysWithNext: true,
  });
  if (clearance === null)
    return [heading, layTextBlock('Nobody has cleared or held this piece.', width, { size: TYPE.body })];
  const text = (words: string) => layTextBlock(readyText(words), width, { size: TYPE.body, above: 0.4, below: 0.4 });
  return [
    heading,
    layTextBlock(readyText(clearance.words), width, { size: TYPE.large, weight: 'bold', staysWithNext: true }),
    ...clearance.facts.map(({ name, value }) => text(`${name}: ${value}`)),
    ...(clearance.open.length === 0 ? [] : [text('Open at that moment:')]),
    ...clearance.open.map((point) => text(`– ${point}`)),
  ];
}

const COLUMNS: readonly TableColumn[] = [
  { head: 'no.', width: 9, align: 'end' },
  { head: 'measured', width: 27 },
  { head: 'typed', width: 27 },
  { head: 'what', width: 134 },
  { head: 'who', width: 36 },
  { head: 'device, no.', width: 24 },
];

function entryRow(entry: HistoryEntry, k: number): readonly Cell[] {
  const isTypedApart = entry.typed !== entry.measured;
  const words = readyText(entry.words);
  return [
    String(k + 1),
    entry.measured,
    isTypedApart ? entry.typed : 'at once',
    entry.withdrawn === null
      ? words
      : { kind: 'text', text: `WITHDRAWN, does not count (${readyText(entry.withdrawn)}): ${words}`, weight: 'plain' },
    readyText(entry.who),
    entry.chain,
  ];
}

/**
 * The history of a piece as sheets, for the file that is kept: flags first, then the clearance with what it was given on, then every record in order.
 */
export function drawPieceHistory(content: HistoryContent, facts: FolderFacts): readonly Drawing[] {
  const { paper } = facts;
  const width = findPageWidth(paper);
  const line = (words: string, staysWithNext = false) =>
    layTextBlock(readyText(words), width, { size: TYPE.body, above: 0.4, below: 0.4, staysWithNext });
  const blocks: readonly Block[] = [
    ...layFlags(content.flags, width),
    ...content.standing.map((words) => line(words)),
    ...layClearance(content.clearance, width),
    layTextBlock('Everything that was recorded', width, {
      size: TYPE.heading,
      weight: 'bold',
      above: 3,
      staysWithNext: true,
    }),
    line(
      `${content.clockWords} Order comes from what each record knew of, not from clocks. ${
        content.logHead === null
          ? 'The head of the server’s log is not known to this device.'
          : `Head of the server’s log: ${content.logHead}.`
      }`,
      true,
    ),
    ...(content.entries.length === 0
      ? [line('Nothing is recorded of this piece.')]
      : layTable('the history', fitColumns(COLUMNS, width), content.entries.map(entryRow), TABLE_STYLE)),
  ];
  return finishSheets(layPages(content.head, blocks, paper), facts);
}
