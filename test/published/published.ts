// A case computes the values of one published entry. The test and the page docs/verification.md read the same rows.

import type { Clause } from '../../src/engine/standards/clause.ts';
import { findEntry, findValue, type PublishedEntry, type PublishedValue } from './entry.ts';
import { toleranceOf } from './tolerance.ts';

/** Hands numbers to the engine and notes what of it was used, so that a row cannot claim a clause that it did not run. */
export interface Evaluator {
  /** Evaluates a clause by its record. */
  clause(record: Clause, ...args: readonly number[]): number;
  /** A number that another part of the engine gave; `what` names that part. */
  part(what: string, value: number): number;
}

export interface PublishedCase {
  /** Id of the entry in data/. */
  readonly entry: string;
  /** What is particular about this way of computing; for the page. */
  readonly how: string;
  /** Published name → the same number computed, in the published unit. */
  readonly values: Readonly<Record<string, (by: Evaluator) => number>>;
  /** Tolerance added to that of the printed digits; only where the entry itself gives a reason for the value. */
  readonly widened?: Readonly<Record<string, { readonly by: number; readonly because: string }>>;
}

/** One published value beside the computed one. */
export interface PublishedRow {
  readonly entry: PublishedEntry;
  readonly value: PublishedValue;
  readonly how: string;
  readonly clauses: readonly Clause[];
  /** Other parts of the engine that gave the number. */
  readonly parts: readonly string[];
  readonly computed: number;
  readonly deviation: number;
  readonly tolerance: number;
  /** Why the tolerance is wider than the printed digits; null when it is not. */
  readonly widenedBecause: string | null;
  readonly isWithin: boolean;
}

/**
 * Computes every value of a case.
 * @throws Error when the case names an entry or value that is not there, or widens a tolerance without the entry's reason
 */
export function runCase(one: PublishedCase): readonly PublishedRow[] {
  const entry = findEntry(one.entry);
  for (const name of Object.keys(one.widened ?? {})) {
    if (findValue(entry, name).reason === undefined || one.values[name] === undefined) {
      throw new Error(
        `case of "${one.entry}": "${name}" may be widened only with a reason in the entry, where it is computed`,
      );
    }
  }
  return Object.entries(one.values).map(([name, compute]) => {
    const value = findValue(entry, name);
    const clauses = new Set<Clause>();
    const parts = new Set<string>();
    const computed = compute({
      clause(record, ...args) {
        if (args.length !== record.args.length) {
          throw new Error(
            `case of "${one.entry}": clause ${record.clause} (${record.symbol}) takes ${record.args.length} numbers`,
          );
        }
        clauses.add(record);
        return record.fn(...args);
      },
      part(what, number) {
        parts.add(what);
        return number;
      },
    });
    const widening = one.widened?.[name];
    const tolerance = toleranceOf(value) + (widening?.by ?? 0);
    const deviation = computed - value.value;
    return {
      entry,
      value,
      how: one.how,
      clauses: [...clauses],
      parts: [...parts],
      computed,
      deviation,
      tolerance,
      widenedBecause: widening?.because ?? null,
      // A source may round a number that lies half way; floating point then puts it a hair to one side.
      isWithin: Math.abs(deviation) <= tolerance * (1 + 1e-9),
    };
  });
}
