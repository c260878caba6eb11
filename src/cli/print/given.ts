import { writeNumber } from '../../engine/checks/write-step.ts';
import { explainSteelParts } from '../../job/resolve/explain-steel-parts.ts';
import type { ResolvedConnection } from '../../job/resolve/resolved-connection.ts';
import { listGiven, listPlaces } from '../../say/given.ts';
import { printStep } from './steps.ts';
import { indentLines, layPairs, layPoint, layTable, layText } from './table.ts';

const n = writeNumber;

function printPositions(connection: ResolvedConnection, width: number): string {
  const { places, sides } = listPlaces(connection);
  return [
    'sides in sight (mm; walking along them, the concrete is on the left)',
    indentLines(
      sides.length === 0
        ? 'none'
        : layTable(
            [{ head: 'side' }, { head: 'of' }, { head: 'from' }, { head: 'to' }, { head: 'length', align: 'right' }],
            sides.map(({ name, of, from, to, length }) => [name, of, from, to, length]),
            width - 2,
          ),
      '  ',
    ),
    'inserts (mm)',
    indentLines(
      layTable(
        [
          { head: 'insert' },
          { head: 'given' },
          { head: 'on the face' },
          { head: 'recess', align: 'right' },
          { head: 'shear', least: 5 },
          { head: 'distance square to sides', least: 12 },
        ],
        places.map(({ id, given, onFace, recess, takesShear, near }) => [id, given, onFace, recess, takesShear, near]),
        width - 2,
      ),
      '  ',
    ),
  ].join('\n');
}

function printParts({ source: { item, bolt, engagement }, group }: ResolvedConnection, width: number): string {
  const explained = new Map(explainSteelParts(item, bolt, engagement).map(({ name, steps }) => [name, steps]));
  return group.insert.steelParts
    .map(({ name, ultimate, yield: yieldStress, resists }) => {
      const load = resists === 'both' ? 'tension and shear' : resists;
      const head = `${name}: f_uk ${n(ultimate)} MPa, f_yk ${n(yieldStress)} MPa, carries ${load}`;
      return [layText(head, width), ...(explained.get(name) ?? []).map((step) => printStep(step, '  ', width))].join(
        '\n',
      );
    })
    .join('\n');
}

/** All inputs of a connection, from which its steps start. */
export function printGiven(connection: ResolvedConnection, width: number): string {
  const inner = width - 2;
  return [
    'Given',
    indentLines(layPairs(listGiven(connection), inner), '  '),
    '',
    indentLines(printPositions(connection, inner), '  '),
    '',
    '  steel sections',
    indentLines(printParts(connection, width - 4), '    '),
    ...(connection.notCovered.length === 0 ? [] : ['', '  not covered, whatever the numbers say']),
    ...connection.notCovered.map((reason) => layPoint(reason, width, '    ')),
  ].join('\n');
}
