import type { BagLabel, BenchLine } from '../../assess/parts/bench.ts';
import type { Block } from '../flow.ts';
import { drawBox } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { type Cell, layTable, type TableColumn } from '../table.ts';
import { fitColumns } from './fit-columns.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { type Paper, TYPE } from './paper.ts';
import type { Picture } from './picture-sheet.ts';
import type { Sheet, SheetHead } from './sheet-frame.ts';
import { layTextBlock } from './text-block.ts';

const TICK = { kind: 'box', width: 12, height: 12 } as const;

const BENCH: readonly TableColumn[] = [
  { head: 'bin', width: 16 },
  { head: 'what', width: 42 },
  { head: 'built in', width: 10, align: 'end' },
  { head: 'spare', width: 9, align: 'end' },
  { head: 'to fetch', width: 10, align: 'end' },
  { head: 'for', width: 44 },
  { head: 'lot', width: 30 },
  { head: 'there', width: 16 },
];

function benchRow({ kind, count, spares, panels }: BenchLine): readonly Cell[] {
  return [
    kind.id,
    kind.words,
    String(count),
    spares === 0 ? '–' : String(spares),
    { kind: 'text', text: String(count + spares), weight: 'bold' },
    panels
      .map(({ mark, each, serials }) => `${mark}: ${each}${serials.length > 1 ? ` × ${serials.length}` : ''}`)
      .join('; '),
    { kind: 'box', width: 24, height: 12 },
    TICK,
  ];
}

/** What the bench of a pour holds, bin by bin, with boxes for lots and ticks. */
export function drawBenchSheets(
  bench: readonly BenchLine[],
  warnings: readonly string[],
  head: SheetHead,
  paper: Paper,
): readonly Sheet[] {
  const width = findPageWidth(paper);
  const notes = warnings.map((text) => layTextBlock(`Look: ${text}`, width, { size: TYPE.body }));
  if (bench.length === 0)
    return layPages(
      head,
      [
        ...notes,
        layTextBlock(
          'Nothing is built in at this pour. Give its panels inserts, or take them out of the pour.',
          width,
          { size: TYPE.body },
        ),
      ],
      paper,
    );
  const groups = [...new Set(bench.map(({ kind }) => kind.group))];
  const blocks: Block[] = groups.flatMap((group) => [
    layTextBlock(`${group[0]!.toUpperCase()}${group.slice(1)}`, width, {
      size: TYPE.heading,
      weight: 'bold',
      above: 2.5,
      staysWithNext: true,
    }),
    ...layTable(group, fitColumns(BENCH, width), bench.filter(({ kind }) => kind.group === group).map(benchRow)),
  ]);
  return layPages(head, [...notes, ...blocks], paper);
}

/** A label to cut out and tie to the bag of one piece. */
export function makeLabelPicture(label: BagLabel): Picture {
  return {
    draw: (width) => {
      const inner = width - 8;
      const lines = label.inBag.map(({ kind, count }) => `${count} × ${kind.id}  ${kind.words}`);
      const beside = label.beside.map(({ kind, count }) => `${count} × ${kind.words}`);
      const body = { size: TYPE.body, above: 0.5, below: 0.5 };
      const blocks = [
        layTextBlock(`${label.panel}  no. ${label.serial}`, inner, { size: TYPE.mark, weight: 'bold' }),
        layTextBlock(`revision ${label.revision} · pour ${label.pour} · ${label.date} · ${label.bed}`, inner, body),
        layTextBlock('In this bag', inner, { size: TYPE.large, weight: 'bold', above: 2 }),
        ...(lines.length === 0 ? ['nothing'] : lines).map((text) => layTextBlock(text, inner, body)),
        ...(beside.length === 0
          ? []
          : [
              layTextBlock('Beside the bag: too large for it, or by others', inner, {
                size: TYPE.large,
                weight: 'bold',
                above: 2,
              }),
              ...beside.map((text) => layTextBlock(text, inner, body)),
            ]),
      ];
      const height = blocks.reduce((sum, block) => sum + block.height, 8);
      let top = height - 4;
      const marks = blocks.flatMap((block) => {
        const placed = placeMarks(block.marks, { move: [4, top] });
        top -= block.height;
        return placed;
      });
      return {
        marks: [drawBox('frame', [0, 0], width, height, 'thin'), ...marks],
        width,
        height,
      };
    },
  };
}
