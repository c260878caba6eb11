import type { Finding, RecordPlace } from '../records/verify/finding.ts';
import { countOf } from './part-words.ts';

/** Where lines are counted: in the server's log, or in a file. */
export interface FindingNames {
  /** A piece as its mark and serial; null: no record names it. */
  readonly piece: (id: string) => string | null;
  readonly lines: 'log' | 'file';
}

/** The day and the minute of a moment in UTC. */
function writeMoment(moment: string): string {
  return `${moment.slice(0, 10)} ${moment.slice(11, 16)} UTC`;
}

function writeRun(from: number, to: number): string {
  return from === to ? `no. ${from}` : `nos. ${from} to ${to}`;
}

/** A record with all that is known of it: where it stands, whose it is, of what, from when. */
function namePlace({ line, id, device, number, piece, typedAt }: RecordPlace, names: FindingNames): string {
  const parts = [
    ...(line === null ? [] : [`${names.lines === 'log' ? 'line' : 'text'} ${line}`]),
    ...(id === null ? [] : [`record ${id}`]),
    ...(device === null ? [] : [`device ${device}${number === null ? '' : ` no. ${number}`}`]),
    ...(piece === null ? [] : [`piece ${names.piece(piece) ?? piece}`]),
    ...(typedAt === null ? [] : [`typed ${writeMoment(typedAt)}`]),
  ];
  return parts.join(', ');
}

function shorten(hash: string): string {
  return hash.slice(0, 12);
}

/** A finding in one line: what, of which record, and what may have been done. */
export function tellFinding(finding: Finding, names: FindingNames): string {
  const place = (at: RecordPlace) => namePlace(at, names);
  switch (finding.kind) {
    case 'text changed':
      return `changed: ${place(finding.at)}: its text is not the one that was taken in`;
    case 'no record':
      return `unreadable: ${place(finding.at)}: ${finding.why}`;
    case 'column changed':
      return `changed: ${place(finding.at)}: stored under ${finding.column} ${finding.stored}, its text says ${finding.said}`;
    case 'lines missing':
      return `removed: ${finding.from === finding.to ? `line ${finding.from} of the log is` : `lines ${finding.from} to ${finding.to} of the log are`} not there`;
    case 'out of order':
      return `reordered: ${place(finding.at)}: it belongs on line ${finding.belongs}`;
    case 'log broken':
      return `changed: ${place(finding.at)}: it does not continue the line before it; this record or its line was changed, or a line before it was taken out`;
    case 'records missing':
      return `removed: device ${finding.device} ${writeRun(finding.from, finding.to)} not there, though a later one is: ${place(finding.next)}; taken out, or left behind on the device`;
    case 'link broken':
      return finding.before === null
        ? `changed: ${place(finding.at)}: what it holds of the record before it does not go with its running number`
        : `changed: ${place(finding.at)}: it does not hold the hash of the record before it (${place(finding.before)}); one of both was changed, or the device was copied`;
    case 'fork':
      return `copied device: ${finding.device} wrote two texts under ${writeRun(finding.from, finding.to)}: ${finding.records.map(place).join('; ')}`;
    case 'seen missing':
      return `removed: ${place(finding.at)}: it was written after ${countOf(finding.seen.length, 'record')} that ${finding.seen.length === 1 ? 'is' : 'are'} not there: ${finding.seen.join(', ')}; taken out, or not sent yet`;
    case 'aside changed':
      return `changed: ${place(finding.at) || 'a text without an id'}: what was kept aside is not the text that came`;
    case 'aside':
      return `kept aside: ${place(finding.at) || 'a text without an id'}: ${finding.why}`;
    case 'two texts':
      return `two texts: ${place(finding.at)}: the id stands for another text too (${place(finding.other)})`;
    case 'photo missing':
      return `photo missing: ${finding.photo}, of ${place(finding.at)}; taken away, or not sent yet`;
    case 'photo changed':
      return `photo changed: ${finding.photo}, of ${place(finding.at)}: its bytes have the hash ${finding.found}`;
    case 'head differs': {
      const by = finding.by === null ? 'the head that was written down' : `the head on ${place(finding.by)}`;
      return finding.found === null
        ? `removed: ${by} is ${finding.number}:${shorten(finding.hash)}, and the log has no such line: it was taken out, and with it what may have followed`
        : `rewritten: ${by} is ${finding.number}:${shorten(finding.hash)}, and line ${finding.number} has ${shorten(finding.found)}: something up to there was changed, and the hashes after it`;
    }
  }
}
