import type { Side } from '../geometry/region.ts';
import type { Clause, Sink } from '../standards/clause.ts';
import type { ClauseName } from '../standards/edition.ts';
import type { Mode, Row, Step } from './result.ts';
import { loadRatio } from './verdict.ts';

/** What a row says about itself before its numbers. */
export interface RowHead {
  readonly mode: Mode;
  readonly inserts: readonly string[];
  readonly clause: ClauseName;
  /** Which steel part, or which part of an inclined shear. */
  readonly part?: string;
  readonly edge?: Side;
  readonly embedmentUsed?: number;
  readonly edgeUsed?: number | null;
  readonly direction?: number;
}

const NO_STEPS: readonly Step[] = [];

/**
 * Collects the rows of a full result while the same code runs that gives the numbers alone. Steps are kept only when asked:
 * `keepsSteps` false gives rows and factors.
 */
export class Report implements Sink {
  readonly rows: Row[] = [];
  readonly keepsSteps: boolean;
  /** How a design value follows from a characteristic one. */
  readonly #design: Clause;
  #head: RowHead | null = null;
  #basic: number | null = null;
  #factors: Record<string, number> = {};
  #notes: string[] = [];
  #together: { readonly clause: Clause; readonly args: readonly number[]; readonly ratio: number } | null = null;
  #steps: Step[] = [];

  constructor(keepsSteps: boolean, design: Clause) {
    this.keepsSteps = keepsSteps;
    this.#design = design;
  }

  /** Starts a row; everything that follows belongs to it until `close` or `skip`. */
  open(head: RowHead): void {
    this.#head = head;
    this.#basic = null;
    this.#factors = {};
    this.#notes = [];
    this.#together = null;
    this.#steps = [];
  }

  basic(value: number): void {
    this.#basic = value;
  }

  factor(symbol: string, value: number): void {
    this.#factors[symbol] = value;
  }

  quantity(symbol: string, value: number, unit: string, how: string | (() => string)): void {
    if (!this.keepsSteps) return;
    this.#steps.push({ kind: 'quantity', symbol, value, unit, how: typeof how === 'string' ? how : how() });
  }

  step(clause: Clause, args: readonly number[], value: number, symbol = clause.symbol): void {
    if (this.keepsSteps) this.#steps.push({ kind: 'clause', clause, args, value, symbol });
  }

  note(text: string): void {
    this.#notes.push(text);
  }

  /** The ratio of this part of a shear and of the other part together; its step comes last. */
  together(clause: Clause, args: readonly number[], ratio: number): void {
    this.#together = { clause, args, ratio };
  }

  /** Ends the row with its numbers; `action` null where only the resistance is asked. */
  close(characteristic: number, safety: number, action: number | null, applies = true): void {
    const design = this.#design.fn(characteristic, safety);
    this.step(this.#design, [characteristic, safety], design);
    if (this.#together !== null) this.step(this.#together.clause, this.#together.args, this.#together.ratio);
    const ratio = action === null ? null : loadRatio(action, design);
    this.#push(applies, characteristic, safety, design, action, ratio);
  }

  /** A mode that does not apply, with the reason. */
  skip(head: RowHead, note: string): void {
    this.open(head);
    this.note(note);
    this.#push(false, null, null, null, null, null);
  }

  #push(
    applies: boolean,
    characteristic: number | null,
    safety: number | null,
    design: number | null,
    action: number | null,
    ratio: number | null,
  ): void {
    const head = this.#head;
    if (head === null) throw new Error('a row was closed that was never opened');
    const { edge } = head;
    this.rows.push({
      mode: head.mode,
      part: head.part ?? null,
      applies,
      inserts: head.inserts,
      edge: edge === undefined ? null : { from: [edge.fromX, edge.fromY] as const, to: [edge.toX, edge.toY] as const },
      basic: this.#basic,
      factors: this.#factors,
      characteristic,
      safety,
      design,
      action,
      ratio,
      ratioTogether: this.#together?.ratio ?? null,
      embedmentUsed: head.embedmentUsed ?? null,
      edgeUsed: head.edgeUsed ?? null,
      direction: head.direction ?? null,
      clause: head.clause.reference,
      notes: this.#notes,
      steps: this.keepsSteps ? this.#steps : NO_STEPS,
    });
    this.#head = null;
  }
}
