import type { Clause } from '../clause.ts';

type Entry = Omit<Clause, 'document' | 'edition' | 'recalled' | 'reference'> & Partial<Pick<Clause, 'recalled'>>;

/**
 * A clause record of ACI 318-19 and its SI edition 318M-19, which share the clause numbers; the recalled mark is off unless
 * the entry sets it.
 */
export function aciClause(entry: Entry): Clause {
  const { recalled = false } = entry;
  const reference = `ACI 318-19 and 318M-19, ${entry.clause}`;
  return { ...entry, document: 'ACI 318', edition: '19', recalled, reference };
}
