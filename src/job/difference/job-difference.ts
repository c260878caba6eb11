import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Panel } from '../documents/panel.ts';
import type { Revision } from '../documents/pour.ts';
import type { ValueChange } from './value-changes.ts';

/** One side of a thing that is another, in a word ("type", "recess", "loads"), with the values that changed. */
export interface AspectChange<What extends string> {
  readonly what: What;
  readonly changes: readonly ValueChange[];
}

export type CastInAspect =
  | 'number'
  | 'role'
  | 'type'
  | 'face'
  | 'place'
  | 'recess'
  | 'holding'
  | 'cross bar'
  | 'size'
  | 'tolerance';

export type ConnectionAspect =
  | 'mark'
  | 'face'
  | 'place'
  | 'plate'
  | 'inserts'
  | 'packers'
  | 'bolts'
  | 'concrete'
  | 'bars'
  | 'uses'
  | 'loads'
  | 'tolerance';

export type PanelAspect =
  | 'mark'
  | 'concrete'
  | 'drawn face'
  | 'face down'
  | 'turn'
  | 'datum'
  | 'handed partner'
  | 'outline'
  | 'openings'
  | 'thickness'
  | 'layers'
  | 'zones'
  | 'batter'
  | 'reinforcement';

/** How far an item went within its face: from and to as its document says, and the distance [mm]. */
export interface Move {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly distance: number;
}

/** A cast-in item that is new, gone or changed. `move`: null where it stays, or goes to another face. */
export type CastInDifference =
  | { readonly kind: 'added' | 'removed'; readonly castIn: CastIn }
  | {
      readonly kind: 'changed';
      readonly before: CastIn;
      readonly after: CastIn;
      readonly aspects: readonly AspectChange<CastInAspect>[];
      readonly move: Move | null;
    };

/** A connection that is new, gone or changed; its plate counts with the detail that it names. */
export type ConnectionDifference =
  | { readonly kind: 'added' | 'removed'; readonly connection: Connection }
  | {
      readonly kind: 'changed';
      readonly before: Connection;
      readonly after: Connection;
      readonly aspects: readonly AspectChange<ConnectionAspect>[];
    };

/** A panel that is new, gone or changed in itself or in what it holds. */
export type PanelDifference =
  | { readonly kind: 'added' | 'removed'; readonly panel: Panel; readonly inserts: number }
  | {
      readonly kind: 'changed';
      readonly before: Panel;
      readonly after: Panel;
      readonly aspects: readonly AspectChange<PanelAspect>[];
      readonly castIns: readonly CastInDifference[];
      readonly connections: readonly ConnectionDifference[];
    };

/** Something that panels use and that is another under the same name. */
export interface LibraryDifference {
  readonly kind: 'catalogue item' | 'way of holding' | 'holding part' | 'concrete';
  readonly id: string;
  readonly changes: readonly ValueChange[];
  /** Marks of the panels, after, that use it. */
  readonly panels: readonly string[];
}

/** What holds for the whole job and is another. */
export interface GeneralDifference {
  readonly of: 'rules' | 'yard' | 'pours' | 'project';
  readonly changes: readonly ValueChange[];
}

/** Everything in which one state of a job differs from an earlier one. */
export interface JobDifference {
  readonly revisions: { readonly before: Revision | null; readonly after: Revision | null };
  /** In the order of the later job; those that are gone last. */
  readonly panels: readonly PanelDifference[];
  readonly library: readonly LibraryDifference[];
  readonly general: readonly GeneralDifference[];
  /** Marks of the panels that are the same, with everything that they use. */
  readonly unchanged: readonly string[];
}
