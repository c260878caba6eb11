import { hashLogLine, LOG_START } from '../../../src/records/log-line.ts';
import type { StoredRecord } from '../../../src/records/record-text.ts';
import { checkLines } from '../../../src/records/verify/check-lines.ts';
import { examineLine, type LogLine } from '../../../src/records/verify/examine-line.ts';
import type { Finding } from '../../../src/records/verify/finding.ts';

/** A log as a server writes it, in memory. */
export function makeLog(records: readonly StoredRecord[]): LogLine[] {
  let before = LOG_START;
  return records.map(({ record, text, hash }, index) => {
    before = hashLogLine(before, record.job, hash);
    const { job, id, piece, item, kind, device, chain } = record;
    const from = { device, deviceNumber: chain.number, previous: chain.previous };
    return { number: index + 1, job, id, piece, item, kind, ...from, hash, logHash: before, text };
  });
}

export function check(lines: readonly LogLine[], asides: readonly string[] = []): readonly Finding[] {
  return checkLines(lines.map(examineLine), new Set(asides));
}
