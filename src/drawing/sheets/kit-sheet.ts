import type { PartLine } from '../../assess/parts/part-kind.ts';
import type { Mark } from '../drawing.ts';
import type { Block } from '../flow.ts';
import { drawBox } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { type Cell, layTable, type TableColumn } from '../table.ts';
import { fitColumns } from './fit-columns.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { layHeading, sumHeights } from './page-blocks.ts';
import { type Paper, TYPE } from './paper.ts';
import type { Picture } from './picture-sheet.ts';
import type { Sheet, SheetHead } from './sheet-frame.ts';
import { layGap, layTextBlock } from './text-block.ts';

/** The bag of one connection, in words. */
export interface KitLabelContent {
  readonly panel: string;
  readonly connection: string;
  /** Piece, place in the building, revision. */
  readonly lines: readonly string[];
  readonly parts: readonly PartLine[];
  /** Lengths for other packers, how hard, what is easily swapped. */
  readonly notes: readonly string[];
  /** Marks of the code from its lower corner of least x, and its side; null: none. */
  readonly code: { readonly mark: Mark; readonly side: number } | null;
}

/** Around the code, as readers need it [mm]. */
const QUIET = 5;
const PAD = 4;

/** A label to cut out and tie to the bag of one connection. */
export function makeKitLabel(label: KitLabelContent): Picture {
  return {
    draw: (width) => {
      const inner = width - 2 * PAD;
      const beside = label.code === null ? inner : inner - label.code.side - 2 * QUIET;
      const body = { size: TYPE.body, above: 0.5, below: 0.5 };
      const top: readonly Block[] = [
        layTextBlock(`${label.panel}  ${label.connection}`, beside, { size: TYPE.mark, weight: 'bold' }),
        ...label.lines.map((line) => layTextBlock(line, beside, body)),
        layTextBlock('NOT FOR LIFTING', beside, { size: TYPE.heading, weight: 'bold', above: 1.5 }),
      ];
      const parts = label.parts.map(({ kind, count }) => `${count} × ${kind.words}`);
      const below: readonly Block[] = [
        ...(parts.length === 0 ? ['nothing: see the card'] : parts).map((text) =>
          layTextBlock(text, inner, { size: TYPE.large, weight: 'bold', above: 0.6, below: 0.6 }),
        ),
        ...label.notes.map((text) => layTextBlock(text, inner, body)),
      ];
      const head = Math.max(sumHeights(top), label.code === null ? 0 : label.code.side + QUIET);
      const height = head + sumHeights(below) + 2 * PAD + 2;
      const stack = (blocks: readonly Block[], from: number): readonly Mark[] => {
        let y = from;
        return blocks.flatMap((block) => {
          const placed = placeMarks(block.marks, { move: [PAD, y] });
          y -= block.height;
          return placed;
        });
      };
      const code =
        label.code === null
          ? []
          : placeMarks([label.code.mark], {
              move: [width - PAD - QUIET - label.code.side + 2, height - PAD - 1 - label.code.side],
            });
      return {
        marks: [
          drawBox('frame', [0, 0], width, height, 'thin'),
          ...code,
          ...stack(top, height - PAD),
          ...stack(below, height - PAD - head - 2),
        ],
        width,
        height,
      };
    },
  };
}

/** A bag as a row of a pick list, in words. */
export interface PickBag {
  readonly connection: string;
  readonly piece: string;
  readonly parts: readonly PartLine[];
  /** Why nothing is fetched for it yet; empty: it is. */
  readonly open: readonly string[];
}

/** What is fetched for one panel at one place, in words. */
export interface PickListContent {
  readonly head: SheetHead;
  readonly parts: readonly PartLine[];
  readonly bags: readonly PickBag[];
  /** What is easily swapped, what else must be known. */
  readonly notes: readonly string[];
}

const TICK = { kind: 'box', width: 12, height: 12 } as const;

const SUMS: readonly TableColumn[] = [
  { head: 'what', width: 120 },
  { head: 'to fetch', width: 20, align: 'end' },
  { head: 'lot', width: 44 },
  { head: 'there', width: 18 },
];

const BAGS: readonly TableColumn[] = [
  { head: 'bag', width: 20 },
  { head: 'piece', width: 22 },
  { head: 'in it', width: 140 },
  { head: 'packed', width: 18 },
];

function bagRow({ connection, piece, parts, open }: PickBag): readonly Cell[] {
  const words =
    open.length > 0
      ? `NOT YET: ${open.join('; ')}`
      : parts.map(({ kind, count }) => `${count} × ${kind.words}`).join('\n');
  return [{ kind: 'text', text: connection, weight: 'bold' }, piece, words, open.length > 0 ? '–' : TICK];
}

/** A pick list as sheets: the sum first, then bag by bag with boxes to tick. */
export function drawPickSheets({ head, parts, bags, notes }: PickListContent, paper: Paper): readonly Sheet[] {
  const width = findPageWidth(paper);
  const sums = parts.map(({ kind, count }): readonly Cell[] => [
    kind.words,
    { kind: 'text', text: String(count), weight: 'bold' },
    { kind: 'box', width: 38, height: 12 },
    TICK,
  ]);
  const style = { size: TYPE.body, padding: 1.5, leastHeight: 6 };
  const blocks: readonly Block[] = [
    ...notes.map((text) => layTextBlock(text, width, { size: TYPE.body, weight: 'bold' })),
    ...(sums.length === 0
      ? [layTextBlock('Nothing is to be fetched.', width, { size: TYPE.body })]
      : [
          layHeading('All together', TYPE.large, width),
          ...layTable('what is fetched', fitColumns(SUMS, width), sums, style),
        ]),
    ...(bags.length === 0
      ? []
      : [
          layGap(1.5),
          layHeading('Bag by bag', TYPE.large, width),
          ...layTable('the bags', fitColumns(BAGS, width), bags.map(bagRow), style),
        ]),
  ];
  return layPages(head, blocks, paper);
}
