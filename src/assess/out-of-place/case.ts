import type { PropertyClass } from '../../engine/hardware/property-classes.ts';
import type { InternalThreadClass } from '../../engine/hardware/thread-shear.ts';
import type { ThreadName } from '../../engine/hardware/threads.ts';
import type { StandardName } from '../../engine/standards/standard-name.ts';

/** What the insert is for. Only fixings are answered. */
export type AskedRole = 'fixing' | 'brace' | 'lifting';

/**
 * What somebody beside the panel can say on the phone about an insert that stands in the wrong place: twelve values, null where it was
 * not said. Lengths as they are, not as drawn.
 */
export interface OutOfPlaceCase {
  readonly role: AskedRole | null;
  readonly thread: ThreadName | null;
  /** From the top of the insert to the end of its foot. */
  readonly length_mm: number | null;
  /** From the insert's axis to the nearest edge, opening or joint. */
  readonly edge1_mm: number | null;
  /** To the next nearest. */
  readonly edge2_mm: number | null;
  /** Other inserts under the same plate or near it: none, one, two in a line with it, or three as corners of a square. */
  readonly neighbours: 0 | 1 | 2 | 3 | null;
  /** To the nearest of them, axis to axis. */
  readonly spacing_mm: number | null;
  readonly thickness_mm: number | null;
  /** Cylinder strength that the concrete has today, or will have when it is loaded. */
  readonly strength_MPa: number | null;
  readonly isPoured: boolean | null;
  /** Design (factored) loads on this insert. */
  readonly tension_kN: number | null;
  readonly shear_kN: number | null;
}

export type CaseField = keyof OutOfPlaceCase;

/** A case of which nothing was said. */
export const EMPTY_CASE: OutOfPlaceCase = {
  role: null,
  thread: null,
  length_mm: null,
  edge1_mm: null,
  edge2_mm: null,
  neighbours: null,
  spacing_mm: null,
  thickness_mm: null,
  strength_MPa: null,
  isPoured: null,
  tension_kN: null,
  shear_kN: null,
};

/**
 * What whoever answers may hold in his hand besides: the maker's document, the panel's drawing. Null: not known, and then taken on the
 * safe side.
 */
export interface KnownValues {
  /** The document that lets the insert be designed by a standard, and by which. */
  readonly document: { readonly document: string; readonly standard: string } | null;
  readonly bodyDiameter_mm: number | null;
  readonly footDiameter_mm: number | null;
  /** From the top to the bearing side of the foot. */
  readonly embedment_mm: number | null;
  readonly steelUltimate_MPa: number | null;
  readonly steelYield_MPa: number | null;
  readonly threadClass: InternalThreadClass | null;
  readonly boltClass: PropertyClass | null;
  /** Length of full thread that the bolt has in the insert. */
  readonly engagement_mm: number | null;
  /** Bars at the face closer than 150 mm (100 mm for bars up to 10 mm). */
  readonly isDense: boolean | null;
  /** Bars keep cracks within about 0.3 mm. */
  readonly limitsCracks: boolean | null;
  readonly edgeBars: 'none' | 'bar' | 'bar-and-stirrups' | null;
  /** To any other edge, opening or joint but the two that were said. */
  readonly otherEdges_mm: number | null;
  /** What each neighbour carries at the same time, as a share of this insert's load: 0 to 1. */
  readonly neighboursCarry: number | null;
  /** c_cr,sp of the maker's document. */
  readonly criticalEdge_mm: number | null;
  /** Where it is drawn: from the same two edges. */
  readonly drawnEdge1_mm: number | null;
  readonly drawnEdge2_mm: number | null;
}

export type KnownField = keyof KnownValues;

export const NOTHING_KNOWN: KnownValues = {
  document: null,
  bodyDiameter_mm: null,
  footDiameter_mm: null,
  embedment_mm: null,
  steelUltimate_MPa: null,
  steelYield_MPa: null,
  threadClass: null,
  boltClass: null,
  engagement_mm: null,
  isDense: null,
  limitsCracks: null,
  edgeBars: null,
  otherEdges_mm: null,
  neighboursCarry: null,
  criticalEdge_mm: null,
  drawnEdge1_mm: null,
  drawnEdge2_mm: null,
};

/** By which rules the answer is given, and what is known besides. */
export interface AnswerSettings {
  readonly standard: StandardName;
  readonly known: KnownValues;
}
