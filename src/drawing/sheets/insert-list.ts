import { findDatumSides } from '../../assess/set-out/form-words.ts';
import type { PanelSetOut, SetOutGroup, SetOutItem } from '../../assess/set-out/set-out.ts';
import type { Block } from '../flow.ts';
import { type Cell, layTable, type TableColumn } from '../table.ts';
import { layAgreedTolerances } from './agreed-tolerances.ts';
import { fitColumns } from './fit-columns.ts';
import { TYPE } from './paper.ts';
import { layGap, layTextBlock } from './text-block.ts';
import { describeFace, describeHolding, describePrinted, describeType, writeSigned } from './words.ts';

/** Shares of the width that the columns have. */
const COLUMNS: readonly TableColumn[] = [
  { head: 'no.', width: 3.4 },
  { head: 'insert', width: 15 },
  { head: 'face', width: 11 },
  { head: 'held by', width: 15 },
  { head: 'section', width: 5.4 },
  { head: 'x from the end', width: 10 },
  { head: 'y from the rail', width: 9 },
  { head: 'from the middle x, y', width: 9 },
  { head: 'off at most', width: 6.4 },
  { head: 'expected scatter', width: 7.6 },
  { head: 'cross bar', width: 8 },
];

/** One standard deviation, doubled: about 19 of 20 places are nearer. */
function describeScatter({ scatter }: SetOutItem): string {
  const [x, y] = [2 * scatter.x, 2 * scatter.y].map((value) => value.toFixed(1));
  return x === y ? `± ${x}` : `± ${x}, ${y}`;
}

function describeCrossBar({ crossBar }: SetOutItem): string {
  if (crossBar === null) return '–';
  const { diameter, length, planDirection_deg } = crossBar;
  const turn = planDirection_deg === null ? 'not level' : describeDirection(planDirection_deg);
  return `Ø${diameter} × ${length}, ${turn}`;
}

/** A level direction by the form: along it, across it, or by its angle. */
function describeDirection(degrees: number): string {
  const turn = ((degrees % 180) + 180) % 180;
  if (Math.abs(turn) < 0.05 || Math.abs(turn - 180) < 0.05) return 'along';
  if (Math.abs(turn - 90) < 0.05) return 'across';
  return `${turn.toFixed(0)}°`;
}

function toRow(item: SetOutItem, group: SetOutGroup | undefined, isChanged: boolean): readonly Cell[] {
  const [x, y] = describePrinted(item);
  const member = group?.members.find(({ number }) => number === item.number);
  const isGroup = group !== undefined && group.members.length > 1 && member !== undefined;
  return [
    { kind: 'text', text: String(item.number), weight: 'bold' },
    { kind: 'text', text: `${isChanged ? '▲ ' : ''}${describeType(item)}`, weight: 'bold' },
    describeFace(item),
    describeHolding(item),
    item.assembly ?? '–',
    { kind: 'text', text: x, weight: 'bold' },
    { kind: 'text', text: y, weight: 'bold' },
    isGroup ? `${writeSigned(member.dx)}, ${writeSigned(member.dy)}` : '–',
    `± ${item.tolerance}`,
    item.item === null ? '–' : describeScatter(item),
    describeCrossBar(item),
  ];
}

/** What is said of a group above its members. */
function describeGroup({ connection, centre, diagonal, hasTemplate, place }: SetOutGroup): string {
  const middle = place === 'edge' ? `${centre[0]} along, ${centre[1]} above the bed` : `x ${centre[0]}, y ${centre[1]}`;
  const check = diagonal === null ? '' : `; check: from ${diagonal.from} to ${diagonal.to} is ${diagonal.length}`;
  return `${connection}: middle at ${middle}${hasTemplate ? '; one template board' : ''}${check}`;
}

const STAGES = { 1: 'Stage 1 – before the cage goes in', 2: 'Stage 2 – with the cage in' } as const;

/** The list of inserts in walking order, stage by stage, groups from their middle. */
export function layInsertList(setOut: PanelSetOut, width: number, changed: ReadonlySet<string>): readonly Block[] {
  const sides = findDatumSides(setOut.words, setOut.datum);
  const columns = fitColumns(COLUMNS, width);
  const groupOf = new Map(
    setOut.groups.flatMap((group) => group.members.map(({ number }) => [number, group] as const)),
  );
  const blocks: Block[] = [
    layTextBlock(
      `x counts from ${sides.end}, y from ${sides.rail}. Measure to the middle of the insert. Expected scatter: two standard deviations of taping and holding. Cross bars: along or across the bed, else degrees counter-clockwise from along it, seen from above.`,
      width,
      { size: TYPE.body, below: 1.5 },
    ),
  ];
  if (setOut.items.some(({ castIn }) => changed.has(castIn.key)))
    blocks.push(
      layTextBlock('▲ is new or another since the revision that the cover names.', width, { size: TYPE.body }),
    );
  blocks.push(...layAgreedTolerances(setOut, width));
  for (const stage of [1, 2] as const) {
    const items = setOut.items.filter((item) => item.stage === stage);
    blocks.push(
      layTextBlock(STAGES[stage], width, { size: TYPE.heading, weight: 'bold', above: 2, staysWithNext: true }),
    );
    if (items.length === 0) {
      blocks.push(layTextBlock('Nothing to set in this stage.', width, { size: TYPE.body }));
      continue;
    }
    blocks.push(
      ...layTable(
        `inserts of stage ${stage}`,
        columns,
        items.map((item) => toRow(item, groupOf.get(item.number), changed.has(item.castIn.key))),
      ),
      layGap(2),
    );
    const groups = setOut.groups.filter(
      ({ members }) => members.length > 1 && items.some(({ number }) => number === members[0]!.number),
    );
    for (const group of groups) blocks.push(layTextBlock(describeGroup(group), width, { size: TYPE.body }));
  }
  return blocks;
}
