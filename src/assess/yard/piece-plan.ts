import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';

/** A length that must be taped in digits, and why: the rest is looked at. */
export interface DigitAsk {
  /** Number of the insert on the sheet. */
  readonly number: number;
  /** Permanent key of the insert. */
  readonly key: string;
  /** x and y of the form from the datum corner; on an edge x runs along it and y is above the bed. */
  readonly axis: 'x' | 'y';
  readonly why: 'group corner' | 'sample' | 'lifting or brace';
  /** No taped value has more digits: the panel is not longer. */
  readonly mostDigits: number;
}

/** What a person looks at with one look: neighbours of the walk that are built alike. */
export interface CheckStop {
  readonly stage: 1 | 2;
  readonly members: readonly SetOutItem[];
  /** Mark of the connection that they all belong to; null: singles. */
  readonly connection: string | null;
  /** Letter of their assembly; null: none. */
  readonly assembly: string | null;
  readonly asks: readonly DigitAsk[];
}

/** What the yard must do and check for one piece. */
export interface PiecePlan {
  readonly piece: string;
  readonly setOut: PanelSetOut;
  /** Check key of each cast-in item by its permanent key: hash of what the yard must do for it. */
  readonly keys: ReadonlyMap<string, string>;
  /** The same for the form itself. */
  readonly formKey: string;
  readonly stops: readonly CheckStop[];
  /** Looked at after screeding: what stands in the trowelled face. */
  readonly afterScreed: readonly SetOutItem[];
}
