import type { ValueReplacement } from '../../job/edit/replace-values.ts';
import type { ConnectionState } from '../connection-answer.ts';

/** What can be changed so that a connection passes. */
export type RemedyKind =
  | 'longer insert'
  | 'larger insert'
  | 'other insert'
  | 'move'
  | 'stronger bolts'
  | 'thicker plate'
  | 'stronger concrete'
  | 'thicker panel'
  | 'several changes';

/** One change with which a connection passes, as little of it as does. */
export interface Remedy {
  readonly kind: RemedyKind;
  /** What to do, as a person says it: `move it 40 mm up, away from the edge (90 mm, then 130 mm)`. */
  readonly words: string;
  /** What goes along with it, and what to look at. */
  readonly notes: readonly string[];
  /** As data; `replaceValues` makes the recipe of it. */
  readonly change: ValueReplacement;
  readonly ratioBefore: number | null;
  readonly ratioAfter: number;
}

/** What would make a connection pass. */
export interface Remedies {
  /** The connection that is to be changed: of a handed partner the one of its source, which it follows. */
  readonly connection: string;
  readonly state: ConnectionState;
  readonly remedies: readonly Remedy[];
  /** What was tried and does not do, in words. */
  readonly inVain: readonly string[];
}

/** A change that may do; it counts only once it is verified. */
export type Proposal = Omit<Remedy, 'ratioBefore' | 'ratioAfter'>;

/** What one way of changing a connection came to. */
export interface Attempt {
  readonly proposals: readonly Proposal[];
  readonly inVain: readonly string[];
}
