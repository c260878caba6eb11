import { findDatumSides } from '../../assess/set-out/form-words.ts';
import { listPanelFindings } from '../../assess/set-out/list-findings.ts';
import type { PanelSetOut, SetOutItem } from '../../assess/set-out/set-out.ts';
import {
  describeFace,
  describeHolding,
  describeLie,
  describePrinted,
  describeType,
} from '../../drawing/sheets/words.ts';
import { layPoint, layTable, layText } from './table.ts';

function rowOf(item: SetOutItem): readonly string[] {
  const [x, y] = describePrinted(item);
  return [
    String(item.number),
    String(item.stage),
    item.castIn.id,
    describeType(item),
    describeFace(item),
    describeHolding(item),
    item.assembly ?? '-',
    x,
    y,
    `± ${item.tolerance}`,
  ];
}

/** The set-out of one panel as text: how it lies, the form, the inserts in walking order, groups, findings. */
export function printSetOut(setOut: PanelSetOut, width: number): string {
  const { panel, form, items, groups, words, datum, datumWords, bed } = setOut;
  const sides = findDatumSides(words, datum);
  const diagonals = form.isRectangle
    ? `diagonals ${form.diagonals[0]!.length}`
    : [...form.sides, ...form.diagonals].map(({ from, to, length }) => `${from} to ${to} ${length}`).join(', ');
  const blocks = [
    layText(
      `Panel ${panel.mark}${bed === null ? ', no bed named' : ` on ${bed.name}`}. ${describeLie(setOut).join(' ')}`,
      width,
    ),
    layText(
      `Form: length ${form.length}, width ${form.width}, depth ${form.depth}, ${diagonals}; each ± ${form.tolerance} mm. Datum corner: ${datumWords}; x counts from ${sides.end}, y from ${sides.rail}. Lengths mm.`,
      width,
    ),
    items.length === 0
      ? layText('Nothing is cast into this panel. Add inserts to inserts.csv or to the job file.', width)
      : layTable(
          [
            { head: 'no.', align: 'right' },
            { head: 'stage', align: 'right' },
            { head: 'insert' },
            { head: 'type', least: 18 },
            { head: 'face', least: 12 },
            { head: 'held by', least: 12 },
            { head: 'section' },
            { head: 'x', least: 6 },
            { head: 'y', least: 6 },
            { head: 'off at most' },
          ],
          items.map(rowOf),
          width,
        ),
  ];
  const lines = groups
    .filter(({ members }) => members.length > 1)
    .map(({ connection, centre, diagonal }) =>
      layPoint(
        `${connection}: middle at ${centre[0]}, ${centre[1]}${diagonal === null ? '' : `; from ${diagonal.from} to ${diagonal.to}: ${diagonal.length}`}`,
        width,
      ),
    );
  if (lines.length > 0) blocks.push(lines.join('\n'));
  const findings = listPanelFindings(setOut).map(({ isStop, words }) =>
    layPoint(`${isStop ? 'STOP: ' : ''}${words}`, width),
  );
  if (findings.length > 0) blocks.push(findings.join('\n'));
  return `${blocks.join('\n\n')}\n`;
}

/** All panels of a job on a line each. */
export function printSetOuts(setOuts: readonly PanelSetOut[], width: number): string {
  const table = layTable(
    [
      { head: 'panel' },
      { head: 'bed', least: 8 },
      { head: 'down' },
      { head: 'stage 1', align: 'right' },
      { head: 'stage 2', align: 'right' },
      { head: 'sections', align: 'right' },
      { head: 'stop', align: 'right' },
      { head: 'look', align: 'right' },
    ],
    setOuts.map(({ panel, bed, faceDown, items, assemblies, problems }) => [
      panel.mark,
      bed?.name ?? '-',
      faceDown,
      String(items.filter(({ stage }) => stage === 1).length),
      String(items.filter(({ stage }) => stage === 2).length),
      String(assemblies.length),
      String(problems.filter(({ severity }) => severity === 'error').length),
      String(problems.filter(({ severity }) => severity === 'warning').length),
    ]),
    width,
  );
  return `${table}\n`;
}
