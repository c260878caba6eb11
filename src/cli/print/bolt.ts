import type { ConnectionBolt } from '../../assess/bolt-of-connection.ts';
import { nameDays } from '../../engine/material/strength-at-age.ts';
import { nameMode } from '../../say/words.ts';
import { indentLines, layPoint, layTable, layText } from './table.ts';

const millimetre = (length: number) => `${Number(length.toFixed(1))}`;

/** For the packers that the connection states: length, thread in contact, turns by hand, room at the bottom. */
function writeLength({ answer, packers }: ConnectionBolt): string[] {
  const { goesIn, choice, path } = answer;
  const given = millimetre(packers);
  if (!goesIn) return [given, 'none goes in', '-', '-', '-'];
  if (choice === null) return [given, 'none fits', '-', '-', '-'];
  const { least, greatest } = choice.engagement;
  return [
    given,
    `${path.thread.name} × ${choice.length}`,
    millimetre(least) === millimetre(greatest) ? millimetre(least) : `${millimetre(least)} to ${millimetre(greatest)}`,
    (least / path.thread.pitch).toFixed(1),
    millimetre(choice.clearToBottom),
  ];
}

/** The limits of the torque, each with what it rests on where that is not plain; none where none is known. */
function listLimits({ answer, concreteLimit }: ConnectionBolt): string[] {
  const ofConcrete =
    concreteLimit === null
      ? ''
      : ` (${nameMode(concreteLimit.mode)} of the connection, all bolts at once, concrete of ${nameDays(concreteLimit.age_days)})`;
  const limits = answer.torqueLimits.map(
    ({ kind, torque }) => `${kind} ${Math.floor(torque / 1000 + 1e-9)} N m${kind === 'concrete' ? ofConcrete : ''}`,
  );
  const unknown =
    concreteLimit === null ? ['concrete: no limit known, its tension is not covered or not computed'] : [];
  return limits.length === 0 ? [] : [`limits of the torque: ${[...limits, ...unknown].join(', ')}`];
}

/** The bolt of a connection: what to put in the kit, how many turns it must enter by hand, how hard it may be tightened. */
export function printBolt(bolt: ConnectionBolt, width: number): string {
  const { answer, finish, propertyClass, washer } = bolt;
  const { path } = answer;
  const head = `Bolt: ${path.thread.name} ${propertyClass}, ${finish}; washer ${washer.standard} ${washer.outside} × ${washer.thickness} mm; through ${millimetre(path.grip)} mm${bolt.packers > 0 ? ` (packers ${millimetre(bolt.packers)} mm in it)` : ''}${path.threadStart > 0 ? ` and ${millimetre(path.threadStart)} mm down to the thread` : ''}`;
  const table = layTable(
    [
      { head: 'packers mm', align: 'right' },
      { head: 'bolt' },
      { head: 'thread in contact mm', align: 'right' },
      { head: 'turns by hand, least', align: 'right' },
      { head: 'free at the bottom mm', align: 'right' },
    ],
    [writeLength(bolt)],
    width - 2,
  );
  return [
    layText(head, width),
    indentLines(table, '  '),
    ...listLimits(bolt).map((limits) => layPoint(limits, width)),
    ...bolt.notes.map((note) => layPoint(note, width)),
  ].join('\n');
}
