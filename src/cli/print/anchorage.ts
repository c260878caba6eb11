import type { AnchorageOutput } from '../../calc/anchorage-output.ts';
import { showForce, showRatio } from './numbers.ts';
import { printStep, showSymbol } from './steps.ts';
import { layTable, wrapText } from './table.ts';
import { nameMode } from './words.ts';

type Row = AnchorageOutput['modes'][number];

const newton = (kN: number | null) => (kN === null ? null : kN * 1000);

/** A ratio of JSON: null beside an action means that nothing is left to resist. */
function ratioOf(row: Row): number | null {
  return row.ratio === null && row.action_kN !== null ? Number.POSITIVE_INFINITY : row.ratio;
}

function titleOf(row: Row): string {
  const part = row.part === undefined ? '' : ` (${row.part})`;
  return `${nameMode(row.mode)}${part}`;
}

function edgeOf(row: Row): string {
  if (row.edge === undefined) return '';
  const point = ([x, y]: readonly [number, number]) => `(${Math.round(x)}, ${Math.round(y)})`;
  return `${point(row.edge.from)}-${point(row.edge.to)}`;
}

/** The modes of one result as a table, the governing one first. */
export function printModes(result: AnchorageOutput): string {
  const rows = [...result.modes].sort((a, b) => (ratioOf(b) ?? -1) - (ratioOf(a) ?? -1));
  return layTable(
    [
      { head: 'mode' },
      { head: 'inserts' },
      { head: 'edge (mm)' },
      { head: 'action kN', align: 'right' },
      { head: 'design kN', align: 'right' },
      { head: 'used', align: 'right' },
      { head: 'clause' },
    ],
    rows
      .filter((row) => row.applies)
      .map((row) => [
        titleOf(row),
        row.inserts.join(' '),
        edgeOf(row),
        showForce(newton(row.action_kN)),
        showForce(newton(row.design_kN)),
        showRatio(ratioOf(row)),
        row.clause,
      ]),
  );
}

/** Tension with shear, a line each. */
export function printInteraction(result: AnchorageOutput): string {
  return result.interaction
    .map(
      ({ kind, ratio, clause }) =>
        `tension with shear, ${kind}: ${showRatio(ratio ?? Number.POSITIVE_INFINITY)}   [${clause}]`,
    )
    .join('\n');
}

/** Every row step by step: what is measured, each clause with its numbers, the design value, the ratio. */
export function printSteps(result: AnchorageOutput): string {
  const parts = result.modes.map((row) => {
    const inserts = row.inserts.length > 0 ? `, inserts ${row.inserts.join(' ')}` : '';
    const edge = row.edge === undefined ? '' : `, edge ${edgeOf(row)}`;
    const lines = [`${titleOf(row)}${inserts}${edge}   [${row.clause}]`];
    for (const step of row.steps ?? []) lines.push(printStep(step, '    '));
    if (row.action_kN !== null)
      lines.push(
        `    action ${showForce(newton(row.action_kN))} kN: ${showRatio(ratioOf(row))} of the design resistance${row.applies ? '' : ', not decisive'}`,
      );
    for (const note of row.notes) lines.push(`    - ${wrapText(note, 110, '      ')}`);
    return lines.join('\n');
  });
  for (const { kind, ratio, clause, steps } of result.interaction) {
    const lines = [`tension with shear, ${kind}   [${clause}]`];
    for (const step of steps ?? []) lines.push(printStep(step, '    '));
    lines.push(`    ${showSymbol('ratio')}: ${showRatio(ratio ?? Number.POSITIVE_INFINITY)}`);
    parts.push(lines.join('\n'));
  }
  return parts.join('\n\n');
}
