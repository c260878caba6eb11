import type { FactRecord, RecordOf } from '../record.ts';

/** Each id once, in a fixed order. */
type Records = readonly FactRecord[];

/**
 * What corrections take out: id → id of the correction, the first by id where several do. A correction that is taken out itself takes nothing
 * out. Corrections that point at each other in a ring, and that none from outside opens, take nothing out; only a faulty writer makes them.
 */
export function findWithdrawn(records: Records): ReadonlyMap<string, string> {
  const corrections = records.filter((record): record is RecordOf<'correction'> => record.kind === 'correction');
  const withdrawn = new Map<string, string>();
  if (corrections.length === 0) return withdrawn;
  const byId = new Map(records.map((record) => [record.id, record]));
  /** Corrections of a record that may still count. */
  const against = new Map<string, number>();
  for (const { body } of corrections) against.set(body.of, (against.get(body.of) ?? 0) + 1);
  // Those that count for certain. What one takes out may free what that one pointed at; each comes in once at most.
  const certain = corrections.filter(({ id }) => !against.has(id));
  for (const { id, body } of certain) {
    const target = byId.get(body.of);
    if (target === undefined) continue;
    const other = withdrawn.get(target.id);
    if (other === undefined || id < other) withdrawn.set(target.id, id);
    if (other !== undefined || target.kind !== 'correction') continue;
    const freed = byId.get(target.body.of);
    const left = (against.get(target.body.of) ?? 0) - 1;
    against.set(target.body.of, left);
    if (left === 0 && freed?.kind === 'correction') certain.push(freed);
  }
  return withdrawn;
}
