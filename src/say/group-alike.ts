import { writeCanonical } from '../job/canonical.ts';
import type { FactRecord } from '../records/record.ts';

/** Typed further apart than this is another act [ms]. */
const ONE_ACT = 120_000;

/** Of these kinds each tells of itself. */
const ALONE: ReadonlySet<FactRecord['kind']> = new Set(['correction', 'photo', 'comment', 'decision', 'measured']);

function isSameAct(a: FactRecord, b: FactRecord): boolean {
  return (
    a.kind === b.kind &&
    a.person === b.person &&
    a.measuredBy === b.measuredBy &&
    a.device === b.device &&
    a.item !== null &&
    b.item !== null &&
    Math.abs(Date.parse(a.typedAt) - Date.parse(b.typedAt)) <= ONE_ACT &&
    writeCanonical(a.body) === writeCanonical(b.body)
  );
}

/**
 * Records that follow each other in a history and say the same of one insert after another, as one group each: a look at four inserts is one act.
 * @param breaks ids of records that stand alone: those that were withdrawn
 */
export function groupAlike(
  history: readonly FactRecord[],
  breaks: Pick<ReadonlySet<string>, 'has'> = new Set<string>(),
): readonly (readonly FactRecord[])[] {
  const groups: FactRecord[][] = [];
  for (const record of history) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    const joins =
      group !== undefined &&
      last !== undefined &&
      !ALONE.has(record.kind) &&
      !breaks.has(record.id) &&
      !breaks.has(last.id) &&
      isSameAct(last, record);
    if (joins) group.push(record);
    else groups.push([record]);
  }
  return groups;
}
