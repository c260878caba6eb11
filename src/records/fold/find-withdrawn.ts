import type { FactRecord, RecordOf } from '../record.ts';

/** Each id once, in a fixed order. */
type Records = readonly FactRecord[];

/**
 * What corrections take out: id → id of the correction, the first by id where several do. A correction that is taken out itself takes nothing
 * out. Corrections that point at each other in a ring take nothing out; only a faulty writer makes them.
 */
export function findWithdrawn(records: Records): ReadonlyMap<string, string> {
  const corrections = records.filter((record): record is RecordOf<'correction'> => record.kind === 'correction');
  const withdrawn = new Map<string, string>();
  if (corrections.length === 0) return withdrawn;
  const byId = new Map(records.map((record) => [record.id, record]));
  /** Corrections of a correction that are not decided yet. */
  const waits = new Map<string, number>();
  for (const { body } of corrections) waits.set(body.of, (waits.get(body.of) ?? 0) + 1);
  const decided = corrections.filter(({ id }) => !waits.has(id));
  // Each correction has one target, so that the list grows by at most one for each that is decided.
  for (const { id, body } of decided) {
    const target = byId.get(body.of);
    if (target === undefined) continue;
    if (!withdrawn.has(id)) {
      const other = withdrawn.get(target.id);
      if (other === undefined || id < other) withdrawn.set(target.id, id);
    }
    const left = waits.get(target.id)! - 1;
    waits.set(target.id, left);
    if (left === 0 && target.kind === 'correction') decided.push(target);
  }
  return withdrawn;
}
