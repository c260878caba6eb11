import type { Clause, Sink } from '../clause.ts';

type Entry = Omit<Clause, 'document' | 'edition' | 'recalled' | 'reference'>;

/** A clause record of AS 5216:2021. No printed copy was at hand: every one counts as recalled. */
export function asClause(entry: Entry): Clause {
  return { ...entry, document: 'AS 5216', edition: '2021', recalled: true, reference: `AS 5216:2021 ${entry.clause}` };
}

const restated = new WeakMap<Clause, Clause>();

/** A rule of EN 1992-4 as AS 5216 takes it over: the same formula under its own document. Its clause number is EN's, said so. */
export function restate(clause: Clause): Clause {
  const known = restated.get(clause);
  if (known !== undefined) return known;
  // Rules that EN 1992-4 takes from EN 1992-1-1 keep their source.
  const own =
    clause.document === 'EN 1992-4' ? asClause({ ...clause, clause: `as EN 1992-4 ${clause.clause}` }) : clause;
  restated.set(clause, own);
  return own;
}

/** A sink that hears the rules of EN 1992-4 under AS 5216. */
export function restateSink(sink: Sink | null): Sink | null {
  if (sink === null) return null;
  return {
    basic: (value) => sink.basic(value),
    factor: (symbol, value) => sink.factor(symbol, value),
    quantity: (symbol, value, unit, how) => sink.quantity(symbol, value, unit, how),
    note: (text) => sink.note(text),
    step: (clause, args, value, symbol) => sink.step(restate(clause), args, value, symbol ?? clause.symbol),
  };
}
