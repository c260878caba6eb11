import type { PropertyClass } from '../../engine/hardware/property-classes.ts';
import type { ThreadName } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import type { FoundMove } from './try-move.ts';

/** What may be changed besides the insert, and when it must be there. */
export interface ChooseOptions {
  /** How far a connection may be moved along each axis of its face, as its documents give positions [mm]; 0: not at all. */
  readonly move: number;
  /** The plate's holes may be drilled larger to suit another thread, and bolts whose thread is given go with them. */
  readonly drills: boolean;
  /** Bolts of a stronger property class may be taken where steel governs. */
  readonly strongerBolts: boolean;
  /** Days until the pour; null: not known, so nothing is said about what can be had by then. */
  readonly daysToPour: number | null;
}

/** What must change besides the insert. Lengths mm. */
export interface Changes {
  /** In the coordinates in which the connection's documents give positions; by how much it goes on beyond the least that passes. */
  readonly move: FoundMove | null;
  readonly holes: { readonly ids: readonly string[]; readonly from: readonly number[]; readonly to: number } | null;
  readonly boltThread: { readonly from: ThreadName; readonly to: ThreadName } | null;
  readonly boltClass: { readonly from: PropertyClass; readonly to: PropertyClass } | null;
}

/** No change besides the insert. */
export const NO_CHANGES: Changes = { move: null, holes: null, boltThread: null, boltClass: null };

/** How many things change besides the insert. */
export function countChanges(changes: Changes): number {
  const { move, holes, boltThread, boltClass } = changes;
  return [move, holes, boltThread, boltClass].filter((change) => change !== null).length;
}

/** Whether an insert can be had by the pour. */
export type Delivery =
  | { readonly kind: 'not asked' }
  | { readonly kind: 'in time'; readonly leadTime_days: number }
  | { readonly kind: 'late'; readonly leadTime_days: number; readonly by_days: number }
  | { readonly kind: 'not known' };

/** What all inserts of a connection cost. */
export interface Cost {
  readonly amount: number;
  readonly currency: string;
}

/** An insert with which a connection passes, and all that its rank comes from. */
export interface PassingInsert {
  readonly item: CatalogueItem;
  readonly ratio: number;
  readonly governing: NonNullable<ConnectionAnswer['governing']>;
  readonly changes: Changes;
  /** The connection passes as it stands in the job. */
  readonly isAsDesigned: boolean;
  /** How many others of its kind the panel and the whole job have, this connection's own left out. */
  readonly inPanel: number;
  readonly inJob: number;
  readonly delivery: Delivery;
  /** Other inserts of the panel with the same thread and another length. */
  readonly lookAlikes: readonly string[];
  readonly cost: Cost | null;
  /** What goes along with it in the job, besides `changes`: parts that no longer fit. */
  readonly consequences: readonly string[];
  /** What a person should look at before taking it. */
  readonly notes: readonly string[];
}

/** An insert with which a connection does not pass, and why. */
export interface RejectedInsert {
  readonly item: CatalogueItem;
  readonly why: 'fails' | 'not covered' | 'cannot be computed' | 'does not fit' | 'other role';
  /** In words. Where it fails, `ratio` and `governing` say it, and these what is not covered besides. */
  readonly reasons: readonly string[];
  readonly ratio: number | null;
  readonly governing: ConnectionAnswer['governing'];
  /** What was tried besides, in vain. */
  readonly tried: readonly string[];
}

/** The choice for one connection. */
export interface ConnectionChoice {
  /** The connection as it stands in the job. */
  readonly before: Omit<ConnectionAnswer, 'assumptions' | 'warnings'>;
  /** Types of its inserts as it stands, each once. */
  readonly present: readonly string[];
  /**
   * `no action`: nothing says what it must carry; `other role`: its inserts are no fixings; `never covered`: no rule covers its use or
   * its concrete, whichever insert it has.
   */
  readonly outcome: 'chosen' | 'none passes' | 'no action' | 'other role' | 'never covered';
  /** Best first. */
  readonly ranked: readonly PassingInsert[];
  readonly rejected: readonly RejectedInsert[];
  /** Prices are in several currencies, so that cost did not count. */
  readonly hasSeveralCurrencies: boolean;
  /** How many full checks it took. */
  readonly checks: number;
}
