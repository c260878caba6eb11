import type { PropertyClass } from '../../engine/hardware/property-classes.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { ValueReplacement } from '../../job/edit/replace-values.ts';
import type { Changes } from '../choose/choice.ts';
import type { Move } from '../choose/find-move.ts';
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

/** A mix with its strength at the age asked for [MPa]. */
export interface MixThen {
  readonly id: string;
  readonly strength: number;
}

/** What to do, as data: lengths mm, strengths MPa; `say/remedy-words.ts` says it in a person's units and from where he looks. */
export type Deed =
  | {
      readonly kind: 'insert';
      readonly from: string;
      readonly to: Pick<CatalogueItem, 'id' | 'thread' | 'length_mm'>;
      readonly changes: Changes;
      /** Thickness of the plate that goes with it; null: it stays. */
      readonly plate: number | null;
    }
  | {
      readonly kind: 'move';
      /** In the coordinates in which the connection's documents give positions. */
      readonly move: Move;
      /** Distance to the edge that it leads away from, as it stands; null where there is none. */
      readonly behind: number | null;
    }
  | { readonly kind: 'bolts'; readonly from: PropertyClass; readonly to: PropertyClass }
  | { readonly kind: 'plate'; readonly from: number; readonly to: number }
  | { readonly kind: 'concrete'; readonly panel: string; readonly from: MixThen; readonly to: MixThen }
  | { readonly kind: 'thickness'; readonly panel: string; readonly from: number; readonly to: number };

/** What was tried up to its most and does not do, as data; or a deed that others stand against. */
export type Vain =
  | { readonly kind: 'inserts'; readonly count: number }
  | { readonly kind: 'move'; readonly most: number }
  | { readonly kind: 'bolts'; readonly most: PropertyClass }
  | { readonly kind: 'plate'; readonly most: number }
  | { readonly kind: 'concrete'; readonly most: string }
  | { readonly kind: 'thickness'; readonly most: number }
  | { readonly kind: 'together'; readonly move: number }
  | { readonly kind: 'refused'; readonly deed: Deed; readonly why: string };

/** One change with which a connection passes, as little of it as does. */
export interface Remedy {
  readonly kind: RemedyKind;
  readonly deed: Deed;
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
  readonly inVain: readonly Vain[];
}

/** A change that may do; it counts only once it is verified. */
export type Proposal = Omit<Remedy, 'ratioBefore' | 'ratioAfter'>;

/** What one way of changing a connection came to. */
export interface Attempt {
  readonly proposals: readonly Proposal[];
  readonly inVain: readonly Vain[];
}
