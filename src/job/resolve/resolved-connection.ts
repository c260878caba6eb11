import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';
import type { FixtureAction, FixtureBolt } from '../../engine/fixture/fixture-forces.ts';
import type { Polygon } from '../../engine/geometry/point.ts';
import type { BoltSteel } from '../../engine/hardware/property-classes.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Connection } from '../documents/connection.ts';

/** A plate ready for the fixture solver, in face coordinates [mm]. */
export interface ResolvedPlate {
  readonly outline: Polygon;
  readonly thickness: number;
  /** f_y [MPa]; null: not given, so the plate's bending is not checked. */
  readonly yield: number | null;
  readonly attachment: Polygon | null;
  /** n = E_s/E_c. */
  readonly modularRatio: number;
  /** One bolt a position of the group, in the same order. */
  readonly bolts: readonly FixtureBolt[];
}

/** What is asked of a connection, in engine units; moments as `FixtureAction` takes them. */
export type ResolvedActions =
  | {
      readonly kind: 'loads';
      readonly combinations: readonly { readonly name: string; readonly action: FixtureAction }[];
    }
  | { readonly kind: 'required'; readonly N: number; readonly V: number }
  | { readonly kind: 'none' };

/** What the engine's numbers come from, for those who explain them. */
export interface ConnectionSource {
  /** How positions on the face follow from the documents', in words. */
  readonly coordinates: string;
  readonly item: CatalogueItem;
  readonly bolt: BoltSteel;
  /** Length of full thread in contact [mm]. */
  readonly engagement: number;
  /** One a position of the group, in the same order. */
  readonly castIns: readonly CastIn[];
  /** The connection as the job has it. */
  readonly connection: Connection;
}

/** A connection as the engine takes it. Everything in N, mm, MPa, rad and in coordinates of its face seen from the front. */
export interface ResolvedConnection {
  readonly kind: 'resolved';
  readonly mark: string;
  readonly panel: string;
  /** The face in words: `outside`, `inside`, `edge 2`. */
  readonly face: string;
  readonly group: AnchorageGroup;
  readonly plate: ResolvedPlate | null;
  readonly actions: ResolvedActions;
  readonly source: ConnectionSource;
  /** Each default and choice that was taken, in words. */
  readonly assumptions: readonly string[];
  /** Why the result can never be a pass, whatever the numbers say. */
  readonly notCovered: readonly string[];
  /** What a person should look at, though it changes no resistance. */
  readonly warnings: readonly string[];
}

/** A connection that cannot be computed, and why. */
export interface UnresolvedConnection {
  readonly kind: 'unresolved';
  readonly mark: string;
  readonly panel: string;
  readonly face: string;
  readonly reasons: readonly string[];
}

export type Resolution = ResolvedConnection | UnresolvedConnection;
