/** One argument of a clause: its symbol in the formula text, its unit, its meaning, and the range a test draws from. */
export interface ClauseArgument {
  readonly symbol: string;
  readonly unit: string;
  readonly meaning: string;
  readonly range: readonly [low: number, high: number];
}

/**
 * The record that stands beside a clause function: where the rule comes from and the same formula as text in plain
 * arithmetic. A printed step is this text with the numbers of the case; a test evaluates the text against the function.
 */
export interface Clause {
  readonly document: string;
  readonly edition: string;
  /** Clause, equation or table number. */
  readonly clause: string;
  /** Document, edition and clause in one, as results name it. */
  readonly reference: string;
  /** One phrase: what the number is. */
  readonly gives: string;
  /** Symbol of the result, as in the document; commas of an index written as underscores. */
  readonly symbol: string;
  readonly unit: string;
  readonly formula: string;
  readonly args: readonly ClauseArgument[];
  /** True where the wording was recalled and not confirmed against print. */
  readonly recalled: boolean;
  readonly fn: (...args: number[]) => number;
}

/** Receives the factors and steps of a calculation while it runs; absent in the numbers-only path. */
export interface Sink {
  /** Basic resistance before the factors [N]. */
  basic(value: number): void;
  /** A factor of the result row, by its symbol in the standard. */
  factor(symbol: string, value: number): void;
  /** A measured or geometric quantity that a clause then uses, and how it came about; a function is asked where it is kept. */
  quantity(symbol: string, value: number, unit: string, how: string | (() => string)): void;
  /** A sentence about what was assumed or chosen. */
  note(text: string): void;
  /** One evaluated clause with the arguments in the order of its record; `symbol` where it is not the record's own. */
  step(clause: Clause, args: readonly number[], value: number, symbol?: string): void;
}

type ArgumentTuple = readonly [symbol: string, unit: string, meaning: string, low: number, high: number];

/** Writes the arguments of a record in one line each. */
export function listArguments(...tuples: readonly ArgumentTuple[]): readonly ClauseArgument[] {
  return tuples.map(([symbol, unit, meaning, low, high]) => ({ symbol, unit, meaning, range: [low, high] as const }));
}
