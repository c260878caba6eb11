import { hashText } from '../../job/fingerprint.ts';
import type { FactRecord } from '../record.ts';
import { readRecord } from '../record-text.ts';
import type { DeviceLink } from './check-device-chains.ts';
import type { LogLink } from './check-log.ts';
import type { Finding, RecordPlace } from './finding.ts';

/** A line of the server's log as it lies in the store: columns and text each for itself. */
export interface LogLine {
  readonly number: number;
  readonly job: string;
  readonly id: string;
  readonly piece: string;
  readonly item: string | null;
  readonly kind: string;
  readonly device: string;
  readonly deviceNumber: number;
  /** Hash of the device's record before, as the record says. */
  readonly previous: string | null;
  /** Of the text as it was taken in. */
  readonly hash: string;
  readonly logHash: string;
  readonly text: string;
}

/** What a line comes to by itself, without its text. */
export interface ExaminedLine extends LogLink, DeviceLink {
  readonly id: string;
  readonly seen: readonly string[];
  /** A photo that it refers to. */
  readonly photo: string | null;
  /** Head of the log that a clearance was given on. */
  readonly head: { readonly number: number; readonly hash: string } | null;
  /** What the piece is marked as by this record. */
  readonly marked: { readonly piece: string; readonly mark: string; readonly serial: string } | null;
  readonly findings: readonly Finding[];
}

function headOf(record: FactRecord): ExaminedLine['head'] {
  return record.kind === 'cleared' || record.kind === 'override' ? record.body.frozen.head : null;
}

function markOf({ piece, ...record }: FactRecord): ExaminedLine['marked'] {
  if (record.kind !== 'piece-started' && record.kind !== 're-marked') return null;
  return { piece, mark: record.body.mark, serial: record.body.serial };
}

/** Columns that say something else than the text does: the record would be looked for in the wrong place. */
function findColumns(line: LogLine, at: RecordPlace, record: FactRecord): Finding[] {
  const pairs: readonly (readonly [string, string | number | null, string | number | null])[] = [
    ['job', line.job, record.job],
    ['id', line.id, record.id],
    ['piece', line.piece, record.piece],
    ['insert', line.item, record.item],
    ['kind', line.kind, record.kind],
    ['device', line.device, record.device],
    ['running number', line.deviceNumber, record.chain.number],
    ['hash of the record before', line.previous, record.chain.previous],
  ];
  return pairs.flatMap(([column, stored, said]) =>
    stored === said
      ? []
      : [
          {
            kind: 'column changed' as const,
            at,
            column,
            stored: String(stored ?? 'none'),
            said: String(said ?? 'none'),
          },
        ],
  );
}

/** Looks at one line: whether its text is the one that was taken in, and whether its columns say what the text says. */
export function examineLine(line: LogLine): ExaminedLine {
  const read = readRecord(line.text);
  const record = read.ok ? read.stored.record : null;
  const isText = (read.ok ? read.stored.hash : hashText(line.text)) === line.hash;
  const at: RecordPlace = {
    line: line.number,
    id: line.id,
    device: line.device,
    number: line.deviceNumber,
    piece: line.piece,
    typedAt: record?.typedAt ?? null,
  };
  const findings: Finding[] = [];
  if (!isText) findings.push({ kind: 'text changed', at });
  else if (!read.ok) findings.push({ kind: 'no record', at, why: read.why });
  else findings.push(...findColumns(line, at, read.stored.record));
  // What a changed text says is not held against others: one change would be told many times.
  const sound = isText ? record : null;
  return {
    line: line.number,
    job: line.job,
    hash: line.hash,
    logHash: line.logHash,
    at,
    id: line.id,
    device: sound?.device ?? line.device,
    number: sound?.chain.number ?? line.deviceNumber,
    previous: sound === null ? undefined : sound.chain.previous,
    seen: sound?.seen ?? [],
    photo: sound?.kind === 'photo' ? sound.body.photo : null,
    head: sound === null ? null : headOf(sound),
    marked: sound === null ? null : markOf(sound),
    findings,
  };
}
