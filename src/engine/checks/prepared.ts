import type { Region, Side } from '../geometry/region.ts';
import type { NearPoint } from '../geometry/sight.ts';
import type { ConcreteMode, ConeLoad, EdgeResistance, Edition, ResistanceUnder } from '../standards/edition.ts';
import type { AnchorageGroup, SteelPart } from './anchorage-group.ts';
import type { MemberSet } from './members.ts';

/** The squares of one cluster of inserts projected on the face. Lengths mm, areas mm². */
export interface Projection {
  readonly members: readonly number[];
  /** Characteristic edge distance used: half the side of a square. */
  readonly criticalEdge: number;
  /** Ratio of the reduced to the full embedment; 1 unless three or more edges are near. */
  readonly reduction: number;
  readonly largestEdge: number;
  readonly largestSpacing: number;
  /** Smallest edge distance; Infinity where none is near. */
  readonly edge: number;
  readonly area: number;
  /** Axes of the squares that give the least area: unit vectors, several where the area is the same, none where any
   * direction gives the same. */
  readonly axes: readonly { readonly ux: number; readonly uy: number }[];
  readonly centroidX: number;
  readonly centroidY: number;
}

/** One cluster of inserts with what its concrete resists. */
export interface Cone {
  readonly projection: Projection;
  readonly resistance: ResistanceUnder<ConeLoad>;
}

/** Where an edge ends: past corners that hardly turn, at the first that does. */
export interface EdgeEnd {
  /** Sides that the edge goes on along beyond its own, in order, and their length along it [mm]. */
  readonly sides: readonly Side[];
  readonly beyond: number;
  /** Angle of the concrete between the edge and what follows [rad]. */
  readonly angle: number;
  /**
   * Past a re-entrant corner the body goes on: how far until something ends the concrete [mm]. Null at an outward corner.
   */
  readonly open: number | null;
  readonly neighbour: Side;
}

/** One side of the concrete as seen by every insert. Lengths mm. */
export interface EdgeView {
  readonly side: Side;
  readonly start: EdgeEnd;
  readonly end: EdgeEnd;
  /** Distance square to the side; Infinity where the insert does not face it. */
  readonly distance: readonly number[];
  /** Position along the side, from its start. */
  readonly along: readonly number[];
  /**
   * Distance to the corner toward the start and toward the end: the smaller of along the edge and square to the next side;
   * negative where the insert stands beyond the corner, Infinity where nothing ends the body.
   */
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** Before the side, beside its re-entrant end, or beyond its outward corner; null where it is no edge to the insert. */
  readonly place: readonly ('before' | 'beside' | 'beyond' | null)[];
}

/** Inserts along one edge that act together. */
export interface EdgeRow {
  readonly view: EdgeView;
  /** Front inserts, in order along the edge: they resist. */
  readonly front: readonly number[];
  /** Front inserts and those whose load toward the edge reaches this row: behind it, or with no sight of the edge. */
  readonly all: readonly number[];
  /** True for a row behind another: it counts only where it carries more by itself than the row before it. */
  readonly isBehind: boolean;
  /** Smallest edge distance of the front inserts. */
  readonly edge: number;
  /** Smaller and larger distance to a corner; Infinity where none is near. */
  readonly corner: number;
  readonly farCorner: number;
  /** Largest and mean distance between neighbours along the edge; 0 for one insert. */
  readonly largestSpacing: number;
  readonly meanSpacing: number;
  /** Mean position of the front inserts along the edge. */
  readonly centre: number;
}

/** A row of inserts whose concrete may fail toward an edge. */
interface EdgeBody<Resist> {
  readonly row: EdgeRow;
  /** c1 that counts: of the row, or c1' in a member both thin and narrow. */
  readonly edgeUsed: number;
  /** Why a corner puts the row outside the code; null where none does. */
  readonly sharp: string | null;
  readonly resistance: Resist;
}

/** A row in side-face blow-out; the load is its eccentricity [mm]. */
export type BlowOutRow = EdgeBody<ResistanceUnder<number>>;

/** A row in edge failure; `reinforcementNote` says why the bars along the edge count or not. */
export interface ShearRow extends EdgeBody<EdgeResistance> {
  /** Sides of the body's area: along the edge and square to that. */
  readonly length: number;
  readonly height: number;
  readonly reinforcementNote: string | null;
}

/** The rows along one side; those behind are prepared only when one of them counts. */
export interface ShearSide {
  readonly front: readonly ShearRow[];
  readonly behind: readonly EdgeRow[];
  readonly preparedBehind: (ShearRow | undefined)[];
}

/** A resistance with its safety factor: γ_M or φ, as the document has it. Forces N. */
export interface Resistance {
  readonly characteristic: number;
  readonly safety: number;
  readonly design: number;
}

/** A steel part with its resistances; null where it does not carry that load. */
export interface PreparedPart {
  readonly part: SteelPart;
  readonly tension: Resistance | null;
  readonly shear: Resistance | null;
}

/** Resistances of the whole insert's steel from tests; null where there is no report that holds. */
export interface TestedSteel {
  readonly tension: (Resistance & { readonly report: string }) | null;
  readonly shear: (Resistance & { readonly report: string }) | null;
}

/** Design resistances of one piece of steel that act together [N]. */
export interface SteelPair {
  readonly tension: number;
  readonly shear: number;
}

/** Everything about a group that does not depend on the load, found once and used for every combination. */
export interface PreparedAnchorage {
  readonly group: AnchorageGroup;
  readonly edition: Edition;
  readonly region: Region;
  readonly count: number;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  /** Near points of each insert, nearest first, as far as any cone-like check reaches. */
  readonly near: readonly (readonly NearPoint[])[];
  readonly parts: readonly PreparedPart[];
  readonly tested: TestedSteel;
  readonly steelPairs: readonly SteelPair[];
  /** A lever arm bends some steel: its bending resistance already carries the tension. */
  readonly hasBentPart: boolean;
  readonly bearingArea: number;
  readonly pullOut: Resistance;
  readonly pryOutFactor: number;
  /** Whether a safety factor divides (γ) or multiplies (φ), beside the edition for the fast path. */
  readonly safetyDivides: boolean;
  /** Edges farther than this need no check in shear [mm]; Infinity: every edge is checked. */
  readonly edgeLimit: number;
  /** Safety factor of each concrete mode. */
  readonly safety: Readonly<Record<ConcreteMode, number>>;
  readonly uncovered: readonly string[];
  /** Filled as sets of inserts come up; the same set never costs twice. */
  readonly cache: {
    readonly cones: Map<MemberSet, readonly Cone[]>;
    readonly splitting: Map<MemberSet, readonly Cone[]>;
    readonly views: (EdgeView | null | undefined)[];
    /** For each side of the region, in their order. */
    readonly shearSides: Map<MemberSet, readonly ShearSide[]>;
    readonly blowOutRows: Map<MemberSet, readonly BlowOutRow[]>;
  };
}
