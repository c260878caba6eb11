import { type CoverageRow, describeCoverage } from '../../engine/checks/coverage.ts';
import { standardNames } from '../../engine/standards/standard-name.ts';
import { layPoint, layTable } from './table.ts';

function layRows(rows: readonly CoverageRow[], title: string, width: number): string {
  return layTable(
    [{ head: title, least: 16 }, ...standardNames.map((head) => ({ head, least: 15 }))],
    rows.map(({ subject, answers }) => [subject, ...standardNames.map((name) => answers[name])]),
    width,
  );
}

/** What each edition computes, mode by mode, and what none of its answers may pass. */
export function printCoverage(width: number): string {
  const rows = describeCoverage();
  return [
    layRows(
      rows.filter(({ kind }) => kind === 'mode'),
      'failure mode',
      width,
    ),
    '',
    layRows(
      rows.filter(({ kind }) => kind === 'condition'),
      'condition',
      width,
    ),
    '',
    layPoint('"not covered" is never a pass; the numbers are still shown.', width),
    layPoint(
      'Blow-out: checked where an edge is nearer than that. Splitting: with c_cr,sp and h_min of the product, or kept away by least distances (17.9).',
      width,
    ),
    layPoint(
      'Edge in shear: by the resultant of an inclined shear, or in two parts, toward the edge and along it.',
      width,
    ),
    layPoint('Bars that are not counted change nothing: the concrete alone must carry.', width),
    '',
  ].join('\n');
}
