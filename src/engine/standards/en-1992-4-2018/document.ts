import type { Clause } from '../clause.ts';

type Entry = Omit<Clause, 'document' | 'edition' | 'recalled' | 'reference'> &
  Partial<Pick<Clause, 'document' | 'edition' | 'recalled'>>;

/** A clause record of EN 1992-4:2018; the recalled mark is off unless the entry sets it. */
export function enClause(entry: Entry): Clause {
  const { document = 'EN 1992-4', edition = '2018', recalled = false } = entry;
  return { ...entry, document, edition, recalled, reference: `${document}:${edition} ${entry.clause}` };
}
