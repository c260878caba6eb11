import type { HoldingPlace } from '../../engine/form/holding-methods.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { HoldingPart, HoldingWay } from '../../job/documents/holding-parts.ts';
import type { PlacedLayer } from '../../job/section.ts';
import type { SetOutProblem } from './set-out-problem.ts';

/** One step of the stack that makes up the thickness, from the bed upward: what it is and how high [mm]. */
export interface StackStep {
  readonly kind: 'recess' | 'insert' | 'chair' | 'sink' | 'concrete';
  readonly words: string;
  readonly height: number;
}

/** Cover of one part of an assembly toward the nearest face that it is meant to keep from: what is there and what is wanted [mm]. */
export interface CoverLine {
  readonly part: 'foot' | 'body' | 'cross bar';
  /** The face or layer that it looks at, in words. */
  readonly toward: string;
  readonly cover: number;
  readonly wanted: number;
}

/** One distinct way of building an insert into the form: equal for every insert that shares its letter. Lengths mm. */
export interface Assembly {
  readonly letter: string;
  readonly item: CatalogueItem;
  readonly way: HoldingWay;
  readonly place: HoldingPlace;
  /** Concrete and other layers where it stands: at a large face over the thickness, counted from the bed upward; on an edge the same. */
  readonly layers: readonly PlacedLayer[];
  readonly thickness: number;
  /** How far its faces lie inside the panel's own there, as a zone's may; negative where they stand out of them. */
  readonly surface: { readonly mould: number; readonly trowelled: number };
  readonly recess: number;
  readonly stack: readonly StackStep[];
  /** Of the method chair: which, and the range in which the top ends up below the trowelled face. */
  readonly chair: {
    readonly part: HoldingPart;
    readonly needed: number;
    readonly topBelowFace: number;
    readonly range: readonly [number, number];
  } | null;
  /** Axis off square to the face, from a battered side form [deg]. */
  readonly tilt_deg: number;
  readonly crossBar: { readonly diameter: number; readonly length: number; readonly fromFoot: number } | null;
  readonly covers: readonly CoverLine[];
  /** Counted and fetched for one insert; `per` group: for one connection. */
  readonly parts: readonly { readonly part: HoldingPart; readonly count: number; readonly per: 'insert' | 'group' }[];
  /** What must be so before and after it is fixed, to be ticked: plain sentences. */
  readonly checkLines: readonly string[];
  /** 1: before the cage; 2: with the cage. */
  readonly stage: 1 | 2;
  readonly scatter: { readonly position: number; readonly level: number };
  readonly problems: readonly SetOutProblem[];
  /** Numbers of the inserts built so, on this sheet. */
  readonly numbers: readonly number[];
}
