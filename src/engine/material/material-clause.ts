import type { Clause } from '../standards/clause.ts';

/** A clause record of a document on materials; the recalled mark is off unless the entry sets it. */
export function materialClause(
  entry: Omit<Clause, 'reference' | 'recalled'> & Partial<Pick<Clause, 'recalled'>>,
): Clause {
  const { document, edition, recalled = false } = entry;
  return { ...entry, recalled, reference: `${document}:${edition} ${entry.clause}` };
}
