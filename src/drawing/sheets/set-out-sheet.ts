import type { PlanBar } from '../../assess/set-out/lay-bars.ts';
import { listPanelFindings } from '../../assess/set-out/list-findings.ts';
import type { PanelSetOut } from '../../assess/set-out/set-out.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Mark } from '../drawing.ts';
import { type Block, drawBlocks, flowBlocks } from '../flow.ts';
import { drawLegend } from '../insert-symbol.ts';
import { drawLine, drawText } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { layAssemblyNotes } from './assembly-notes.ts';
import { CODE_SIZE } from './check-sheet.ts';
import { layInsertList } from './insert-list.ts';
import { findPageWidth, layPages } from './lay-pages.ts';
import { drawPanelPlan } from './panel-plan.ts';
import { findFrame, type Paper, TYPE } from './paper.ts';
import type { Sheet, SheetHead } from './sheet-frame.ts';
import { layMarks, layTextBlock } from './text-block.ts';
import { describeLie } from './words.ts';

/** Width of the column beside the plan [mm]. */
const COLUMN: Readonly<Record<Paper['name'], number>> = { A3: 92, A4: 74 };
const GAP = 5;

/** An arrow to north, as it is on the bed [mm on paper]. */
function layNorth(north_deg: number): Block {
  const angle = (north_deg * Math.PI) / 180;
  const middle: Point = [8, -8];
  const at = (along: number, across: number): Point => [
    middle[0] + along * Math.cos(angle) - across * Math.sin(angle),
    middle[1] + along * Math.sin(angle) + across * Math.cos(angle),
  ];
  return layMarks('the arrow to north', 17, [
    drawLine('text', at(-5.5, 0), at(5.5, 0), 'medium'),
    {
      kind: 'area',
      layer: 'text',
      pen: null,
      fill: 'black',
      rings: [[at(6.5, 0), at(2.5, 1.6), at(2.5, -1.6)]],
    },
    drawText([19, -8], 'north of the bed', TYPE.body, { baseline: 'middle' }),
  ]);
}

function describeForm({ form, depth }: PanelSetOut): readonly string[] {
  const [a, b] = form.diagonals;
  const lines = form.isRectangle
    ? [`diagonals A and B ${a!.length} each`]
    : [...form.sides, ...(b === undefined && a === undefined ? [] : form.diagonals)].map(
        ({ from, to, length }) => `${from} to ${to}: ${length}`,
      );
  return [
    `length ${form.length}, width ${form.width}, depth ${Math.round(depth)}`,
    ...lines,
    `each ± ${form.tolerance}`,
  ];
}

function layColumn(setOut: PanelSetOut, width: number, code: readonly Mark[], codeWords: readonly string[]): Block[] {
  const words = (text: string, weight: 'plain' | 'bold' = 'plain', above = 0.6) =>
    layTextBlock(text, width, { size: TYPE.body, weight, above, below: 0.4 });
  const beside = width - CODE_SIZE - 3;
  let down = 0;
  const codeText = codeWords.flatMap((line, i) => {
    const block = layTextBlock(line, beside, {
      size: i === 0 ? TYPE.large : TYPE.small,
      weight: i === 0 ? 'bold' : 'plain',
    });
    const marks = placeMarks(block.marks, { move: [CODE_SIZE + 3, -down] });
    down += block.height;
    return marks;
  });
  const [seen, facing, ...others] = describeLie(setOut);
  const north = setOut.bed?.north_deg ?? null;
  return [
    layMarks('the code', CODE_SIZE + 2, [...placeMarks(code, { move: [0, -CODE_SIZE] }), ...codeText]),
    layTextBlock(facing!, width, { size: TYPE.heading, weight: 'bold', above: 1.5 }),
    words(seen!, 'bold'),
    ...others.map((text) => words(text)),
    words(`Datum corner: ${setOut.datumWords}. Paint the solid mark on the form there.`, 'bold', 2),
    ...(north === null ? [] : [layNorth(north)]),
    words('Form, before anything is measured from it:', 'bold', 2),
    ...describeForm(setOut).map((text) => words(text)),
    words(
      'Figures in brackets are the numbers of the inserts. Letters: sections. Grey: bars near inserts, as far as their places are known.',
      'plain',
      2,
    ),
  ];
}

/** Blocks of the legend, for what occurs on this panel. */
function layLegend(setOut: PanelSetOut, width: number): Block {
  const { marks, height } = drawLegend(setOut.items, width, TYPE.small);
  return layMarks('the legend', height + 1, marks);
}

/** Everything that must be told of a panel, the stops first. */
function layProblems(setOut: PanelSetOut, warnings: readonly string[], width: number): readonly Block[] {
  return [
    ...listPanelFindings(setOut).map(({ isStop, words }) =>
      layTextBlock(`${isStop ? 'STOP' : 'Look'}: ${words}`, width, {
        size: TYPE.body,
        weight: isStop ? 'bold' : 'plain',
      }),
    ),
    ...warnings.map((text) => layTextBlock(`Look: ${text}`, width, { size: TYPE.body })),
  ];
}

/**
 * The set-out of one panel: the plan as it lies with a column of words, then the list of its inserts.
 * @param code marks of the code, CODE_SIZE wide from its lower corner of least x
 * @param more warnings beyond those of the set-out itself, such as look-alikes; keys of inserts that changed, marked ▲; bars of the panel
 */
export function drawSetOutSheets(
  setOut: PanelSetOut,
  head: SheetHead,
  paper: Paper,
  code: readonly Mark[],
  codeWords: readonly string[],
  more: {
    readonly warnings: readonly string[];
    readonly changed: ReadonlySet<string>;
    readonly bars: readonly PlanBar[];
  },
): readonly Sheet[] {
  const frame = findFrame(paper);
  const columnWidth = COLUMN[paper.name];
  const top = frame.y + frame.height - 3;
  const planWidth = frame.width - columnWidth - GAP;
  const plan = drawPanelPlan(setOut, more.bars, planWidth, frame.height - 3);
  const column = [...layColumn(setOut, columnWidth, code, codeWords), layLegend(setOut, columnWidth)];
  const [first = [], ...rest] = flowBlocks(column, frame.height - 3);
  const width = findPageWidth(paper);
  const missing = plan.notes.map((note) => layTextBlock(note, width, { size: TYPE.body, weight: 'bold' }));
  const left = rest.flat().map(({ block }) => block);
  return [
    {
      head: { ...head, title: `${head.title}, 1 : ${plan.scale}` },
      marks: [
        ...placeMarks(plan.marks, { move: [frame.x, frame.y] }),
        ...drawBlocks(first, [frame.x + planWidth + GAP, top]),
      ],
    },
    ...layPages(
      { ...head, title: 'Inserts in walking order' },
      [
        ...layProblems(setOut, more.warnings, width),
        ...missing,
        ...layInsertList(setOut, width, more.changed),
        ...left,
        ...layAssemblyNotes(setOut.assemblies, width),
      ],
      paper,
    ),
  ];
}
