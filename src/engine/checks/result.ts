import type { Point } from '../geometry/point.ts';
import type { Clause } from '../standards/clause.ts';

/** Failure modes of an anchorage; the bar modes stand for supplementary reinforcement. */
export type Mode =
  | 'steel-tension'
  | 'concrete-cone'
  | 'pull-out'
  | 'blow-out'
  | 'splitting'
  | 'bar-steel'
  | 'bar-anchorage'
  | 'steel-shear'
  | 'pry-out'
  | 'concrete-edge';

/** One line of a step-by-step print: a clause with its numbers, or a quantity and how it came about. */
export type Step =
  | {
      readonly kind: 'clause';
      readonly clause: Clause;
      readonly args: readonly number[];
      readonly value: number;
      readonly symbol: string;
    }
  | {
      readonly kind: 'quantity';
      readonly symbol: string;
      readonly value: number;
      readonly unit: string;
      readonly how: string;
    };

/** One failure mode of one set of inserts. Forces N, lengths mm, angles rad. */
export interface Row {
  readonly mode: Mode;
  /** Which steel part, for steel rows; which part of the shear, where an edge is checked by parts. */
  readonly part: string | null;
  readonly applies: boolean;
  readonly inserts: readonly string[];
  readonly edge: { readonly from: Point; readonly to: Point } | null;
  readonly basic: number | null;
  readonly factors: Readonly<Record<string, number>>;
  readonly characteristic: number | null;
  /** Partial factor γ_M (design = characteristic / safety), or φ (design = safety · characteristic), as the document has it. */
  readonly safety: number | null;
  readonly design: number | null;
  readonly action: number | null;
  /** action / design; Infinity where nothing is left to resist; null without an action. */
  readonly ratio: number | null;
  /** Where a shear is checked by parts and both act: the ratio of both together. */
  readonly ratioTogether: number | null;
  readonly embedmentUsed: number | null;
  readonly edgeUsed: number | null;
  /** Axis of the squares, or the direction toward the edge, counter-clockwise from x. */
  readonly direction: number | null;
  readonly clause: string;
  readonly notes: readonly string[];
  readonly steps: readonly Step[];
}

/** Tension and shear together. */
export interface InteractionRow {
  readonly kind: 'steel' | 'concrete' | 'all';
  readonly ratio: number;
  readonly clause: string;
  readonly steps: readonly Step[];
}

/** The three answers of a check; null where no action was given and nothing is out of scope. */
export type Verdict = 'pass' | 'fail' | 'not covered';

/** What governs: a mode, or an interaction of tension and shear. */
export type GoverningMode = Mode | 'interaction-steel' | 'interaction-concrete' | 'interaction-all';

/** The whole answer for one load combination. */
export interface AnchorageResult {
  readonly document: string;
  readonly rows: readonly Row[];
  readonly interaction: readonly InteractionRow[];
  readonly governing: { readonly mode: GoverningMode; readonly ratio: number } | null;
  readonly verdict: Verdict | null;
  /** Why the answer cannot be a pass; empty when all is covered. */
  readonly uncovered: readonly string[];
  readonly notes: readonly string[];
}
