import type { RecordExport } from '../export.ts';
import { readRecord, type StoredRecord } from '../record-text.ts';
import { checkDeviceChains, type DeviceLink } from './check-device-chains.ts';
import type { Finding, RecordPlace } from './finding.ts';

function placeOf({ record }: StoredRecord, line: number): RecordPlace {
  const { id, device, chain, piece, typedAt } = record;
  return { line, id, device, number: chain.number, piece, typedAt };
}

const NOWHERE = { id: null, device: null, number: null, piece: null, typedAt: null };

/**
 * Looks at a file of unsent records: texts that are no records of its job, ids with two texts, and the chains of the devices as far as they are in it. What
 * was sent before is not in it, so that they begin anywhere; nothing holds the last record of each.
 */
export function checkExport({ job, texts }: RecordExport): readonly Finding[] {
  const findings: Finding[] = [];
  const links: DeviceLink[] = [];
  const byId = new Map<string, { readonly at: RecordPlace; readonly hash: string }>();
  for (const [index, text] of texts.entries()) {
    const line = index + 1;
    const read = readRecord(text);
    if (!read.ok) {
      findings.push({ kind: 'no record', at: { line, ...NOWHERE }, why: read.why });
      continue;
    }
    const { record, hash } = read.stored;
    const at = placeOf(read.stored, line);
    if (record.job !== job) findings.push({ kind: 'column changed', at, column: 'job', stored: job, said: record.job });
    const other = byId.get(record.id);
    if (other === undefined) byId.set(record.id, { at, hash });
    else if (other.hash !== hash) findings.push({ kind: 'two texts', at, other: other.at });
    links.push({ device: record.device, number: record.chain.number, previous: record.chain.previous, hash, at });
  }
  return [...findings, ...checkDeviceChains(links, false)];
}
