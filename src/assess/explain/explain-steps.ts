import { explainAnchorage, findResistances } from '../../engine/checks/anchorage.ts';
import type { AnchorageResult, Row, Step } from '../../engine/checks/result.ts';
import { isWithin } from '../../engine/checks/verdict.ts';
import { type WrittenStep, writeStep } from '../../engine/checks/write-step.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { WorkedConnection } from '../assess-connection.ts';
import type { Decisive } from '../connection-answer.ts';

/** One row of a combination, step by step: symbol, formula, the formula with its numbers, result, clause. Forces N. */
export interface SteppedRow {
  readonly mode: Decisive;
  readonly part: string | null;
  readonly inserts: readonly string[];
  readonly edge: { readonly from: Point; readonly to: Point } | null;
  readonly clause: string;
  readonly governs: boolean;
  /** Down to the design value. */
  readonly steps: readonly WrittenStep[];
  readonly action: number | null;
  readonly resistance: number | null;
  /** action / resistance; Infinity where nothing is left to resist. */
  readonly ratio: number | null;
  /** What comes after that ratio: both parts of a shear together. */
  readonly after: readonly WrittenStep[];
  /** False: another row carries the load in its place. */
  readonly applies: boolean;
  readonly isWithin: boolean | null;
  readonly notes: readonly string[];
}

/** All that is computed of one combination. */
export interface SteppedCombination {
  /** Null: resistances alone. */
  readonly combination: string | null;
  readonly document: string;
  readonly rows: readonly SteppedRow[];
}

const write = (steps: readonly Step[]) => steps.map(writeStep);

function ofRow(row: Row, governing: Row | undefined): SteppedRow {
  const written = write(row.steps);
  // Both parts of a shear come together after the ratio of each: that step is the last.
  const own = row.ratioTogether === null ? written : written.slice(0, -1);
  const decisive = row.ratioTogether ?? row.ratio;
  return {
    mode: row.mode,
    part: row.part,
    inserts: row.inserts,
    edge: row.edge,
    clause: row.clause,
    governs: row === governing,
    steps: own,
    action: row.action,
    resistance: row.design,
    ratio: row.ratio,
    after: written.slice(own.length),
    applies: row.applies,
    isWithin: decisive === null ? null : isWithin(decisive),
    notes: row.notes,
  };
}

function listRows({ rows, interaction, governing }: AnchorageResult): readonly SteppedRow[] {
  const first = rows.find(
    (row) => row.applies && row.mode === governing?.mode && (row.ratioTogether ?? row.ratio) === governing.ratio,
  );
  return [
    ...rows.filter(({ applies, design }) => applies || design !== null).map((row) => ofRow(row, first)),
    ...interaction.map(({ kind, ratio, clause, steps }): SteppedRow => {
      const mode = `interaction-${kind}` as const;
      return {
        mode,
        part: null,
        inserts: [],
        edge: null,
        clause,
        governs: governing?.mode === mode,
        steps: write(steps),
        action: null,
        resistance: null,
        ratio,
        after: [],
        applies: true,
        isWithin: isWithin(ratio),
        notes: [],
      };
    }),
  ];
}

/**
 * One combination step by step, by the same code that gave its numbers.
 * @param combination its name; null: resistances alone
 * @param modes which to give; null: all
 * @returns null where the connection has no such combination, or its forces could not be found
 */
export function explainSteps(
  { prepared, cases }: WorkedConnection,
  combination: string | null,
  modes: ReadonlySet<Decisive> | null = null,
): SteppedCombination | null {
  const found = cases.find((one) => one.combination.name === combination)?.combination;
  if (combination !== null && found?.kind !== 'solved') return null;
  const result =
    found?.kind === 'solved' ? explainAnchorage(prepared, found.actions, true) : findResistances(prepared, true);
  const rows = listRows(result);
  return {
    combination,
    document: result.document,
    rows: modes === null ? rows : rows.filter(({ mode }) => modes.has(mode)),
  };
}
