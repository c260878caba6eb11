import { writeCanonical } from '../../job/canonical.ts';
import type { FactRecord } from '../record.ts';

/**
 * Each id once. Two different records with one id are a fault that the store keeps apart and reports; where both come all the same, the one whose
 * canonical text comes first is taken, so that the order of arrival decides nothing.
 */
export function uniteRecords(records: Iterable<FactRecord>): ReadonlyMap<string, FactRecord> {
  const byId = new Map<string, FactRecord>();
  for (const record of records) {
    const other = byId.get(record.id);
    if (other === undefined || (other !== record && writeCanonical(record) < writeCanonical(other)))
      byId.set(record.id, record);
  }
  return byId;
}
