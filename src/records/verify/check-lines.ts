import { checkDeviceChains } from './check-device-chains.ts';
import { checkLog } from './check-log.ts';
import type { ExaminedLine } from './examine-line.ts';
import type { Finding, RecordPlace } from './finding.ts';

/** A head of the log: number and hash of a line. Of a hash that was copied by hand the first digits are enough. */
export interface WrittenHead {
  readonly number: number;
  readonly hash: string;
}

/** Compares a head that was written down with what stands there now. */
export function checkHead(
  lines: ReadonlyMap<number, Pick<ExaminedLine, 'logHash'>>,
  { number, hash }: WrittenHead,
  by: RecordPlace | null,
): readonly Finding[] {
  const found = lines.get(number)?.logHash ?? null;
  if (found?.startsWith(hash)) return [];
  return [{ kind: 'head differs', number, hash, found, by }];
}

function findUnseen(lines: readonly ExaminedLine[], elsewhere: ReadonlySet<string>): Finding[] {
  const ids = new Set(lines.map(({ id }) => id));
  return lines.flatMap(({ at, seen }) => {
    const missing = seen.filter((id) => !ids.has(id) && !elsewhere.has(id));
    return missing.length === 0 ? [] : [{ kind: 'seen missing' as const, at, seen: missing }];
  });
}

/**
 * All that lines of the log say about each other: the chain of the log, the chains of the devices, heads that clearances were given on, records
 * that others have seen and that are not there.
 * @param lines the whole log, by rising number
 * @param asides ids of texts that are kept aside
 */
export function checkLines(lines: readonly ExaminedLine[], asides: ReadonlySet<string>): readonly Finding[] {
  const byNumber = new Map(lines.map((line) => [line.line, line]));
  return [
    ...lines.flatMap(({ findings }) => findings),
    ...checkLog(lines),
    ...checkDeviceChains(lines, true),
    ...findUnseen(lines, asides),
    ...lines.flatMap(({ head, at }) => (head === null ? [] : checkHead(byNumber, head, at))),
  ];
}
