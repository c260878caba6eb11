import type { ConnectionBolt } from '../../assess/bolt-of-connection.ts';
import { findLowest } from '../../engine/hardware/tightening.ts';
import { indentLines, layPoint, layTable, layText } from './table.ts';

const millimetre = (length: number) => `${Number(length.toFixed(1))}`;

/** One row a range of packers: length, thread in contact, turns by hand, room at the bottom. */
function listLengths({ answer, packers }: ConnectionBolt): string[][] {
  const { pitch } = answer.path.thread;
  const rows =
    answer.packerRows.length === 0
      ? [{ packers: [packers, packers] as const, choice: answer.choice }]
      : answer.packerRows;
  return rows.map(({ packers: [from, to], choice }) => {
    const range = from === to ? millimetre(from) : `${millimetre(from)} to ${millimetre(to)}`;
    if (choice === null) return [range, 'none fits', '-', '-', '-'];
    const { least, greatest } = choice.engagement;
    return [
      range,
      `${answer.path.thread.name} × ${choice.length}`,
      least === greatest ? millimetre(least) : `${millimetre(least)} to ${millimetre(greatest)}`,
      (least / pitch).toFixed(1),
      millimetre(choice.clearToBottom),
    ];
  });
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
    listLengths(bolt),
    width - 2,
  );
  const lowest = findLowest(answer.torqueLimits);
  const limits = answer.torqueLimits.map(({ kind, torque }) => `${kind} ${Math.floor(torque / 1000)} N m`);
  return [
    layText(head, width),
    indentLines(table, '  '),
    ...(lowest === null ? [] : [layPoint(`limits of the torque: ${limits.join(', ')}`, width)]),
    ...bolt.notes.map((note) => layPoint(note, width)),
  ].join('\n');
}
