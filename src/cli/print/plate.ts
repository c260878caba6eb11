import type { LoadCase } from '../../assess/load-cases.ts';
import type { PlateBending } from '../../engine/fixture/plate-bending.ts';
import type { ResolvedConnection, ResolvedPlate } from '../../job/resolve/resolved-connection.ts';
import { listBendingSteps, listPlateSteps } from '../../say/plate-steps.ts';
import { indentLines, layPoint, layTable, layText } from './table.ts';

const right = (head: string) => ({ head, align: 'right' as const });

/** The plate of one combination: its action, the strain plane, each insert's force, and the check of equilibrium. */
export function printPlateSteps(connection: ResolvedConnection, one: LoadCase, width: number): string {
  const steps = listPlateSteps(connection, one);
  if (steps === null) return '';
  const sums = [{ head: 'sum' }, { head: 'of the forces' }, right('gives'), right('action'), { head: 'check' }];
  return [
    'Forces of the plate (N, mm, MPa; axes of the face)',
    ...steps.lines.map((line) => layText(line, width, '  ')),
    indentLines(
      layTable(
        [{ head: 'insert' }, right('x'), right('y'), right('A_s'), right('e'), right('N'), right('Vx'), right('Vy')],
        steps.rows.map((row) => [...row]),
        width - 2,
      ),
      '  ',
    ),
    '  equilibrium, moments about (x_0, y_0):',
    indentLines(
      layTable(
        sums,
        steps.balance.map((row) => [...row]),
        width - 2,
      ),
      '  ',
    ),
  ].join('\n');
}

/** The plate's bending along the line that governs, step by step. */
export function printBendingSteps(
  bending: PlateBending | null,
  plate: ResolvedPlate | null,
  governs: boolean,
  width: number,
): string {
  const steps = listBendingSteps(bending, plate);
  if (steps === null) return '';
  return [
    `bending of the plate${governs ? '   governs' : ''}`,
    ...steps.lines.map((line) => layText(line, width, '    ')),
    ...steps.limits.map((limit) => layPoint(limit, width, '    ')),
  ].join('\n');
}
