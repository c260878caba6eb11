import type { Finding, RecordPlace } from './finding.ts';

/** A record as the chain of its device sees it. */
export interface DeviceLink {
  readonly device: string;
  readonly number: number;
  /** Hash that it holds of the record before; undefined: its text cannot be relied on. */
  readonly previous: string | null | undefined;
  readonly hash: string;
  readonly at: RecordPlace;
}

/** By number, each text once. */
type Numbered = ReadonlyMap<number, readonly DeviceLink[]>;

function groupByNumber(links: readonly DeviceLink[]): Numbered {
  const byNumber = new Map<number, DeviceLink[]>();
  for (const link of links) {
    const group = byNumber.get(link.number);
    if (group === undefined) byNumber.set(link.number, [link]);
    else if (group.every(({ hash }) => hash !== link.hash)) group.push(link);
  }
  return byNumber;
}

/** Whether a record holds the hash of one before it, as far as that can be told. */
function isLinked(link: DeviceLink, before: readonly DeviceLink[] | undefined): boolean {
  if (link.previous === undefined) return true;
  if (link.number === 1 || link.previous === null) return link.number === 1 && link.previous === null;
  return before === undefined || before.some(({ hash }) => hash === link.previous);
}

/** Runs of numbers that have two texts: a fork goes on until one of both ends, and is told once. */
function findForks(device: string, byNumber: Numbered, numbers: readonly number[]): Finding[] {
  const runs: number[][] = [];
  for (const number of numbers) {
    if ((byNumber.get(number) ?? []).length < 2) continue;
    const run = runs.at(-1);
    if (run?.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  return runs.map((run) => {
    const records = run.flatMap((number) => byNumber.get(number) ?? []).map(({ at }) => at);
    return { kind: 'fork', device, from: run[0]!, to: run[0]! + run.length - 1, records };
  });
}

function checkOne(device: string, byNumber: Numbered, start: number | null): Finding[] {
  const findings: Finding[] = [];
  const numbers = [...byNumber.keys()].sort((a, b) => a - b);
  let last = start;
  for (const number of numbers) {
    const links = byNumber.get(number) ?? [];
    const before = byNumber.get(number - 1);
    if (last !== null && number > last + 1)
      findings.push({ kind: 'records missing', device, from: last + 1, to: number - 1, next: links[0]!.at });
    for (const link of links)
      if (!isLinked(link, before)) findings.push({ kind: 'link broken', at: link.at, before: before?.[0]?.at ?? null });
    last = number;
  }
  return [...findings, ...findForks(device, byNumber, numbers)];
}

/**
 * Walks through the chains of devices: running numbers that are not there, numbers with two texts (a tablet was copied, or put back to an earlier
 * state), records that do not hold the hash of the one before.
 * @param isWhole from their first record on; else the earlier ones are somewhere else
 */
export function checkDeviceChains(links: readonly DeviceLink[], isWhole: boolean): readonly Finding[] {
  const byDevice = new Map<string, DeviceLink[]>();
  for (const link of links) {
    const group = byDevice.get(link.device);
    if (group === undefined) byDevice.set(link.device, [link]);
    else group.push(link);
  }
  return [...byDevice].flatMap(([device, own]) => checkOne(device, groupByNumber(own), isWhole ? 0 : null));
}
