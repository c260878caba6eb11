import type { HoldingPlace } from '../../engine/form/holding-methods.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { HoldingWay } from '../../job/documents/holding-parts.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { Rules } from '../../job/documents/rules.ts';
import type { Bed } from '../../job/documents/yard.ts';
import type { Assembly } from './assembly-type.ts';
import type { SetOutProblem } from './set-out-problem.ts';

/** Where an insert sits while the concrete is placed. */
export type FormPlace = HoldingPlace;

/**
 * What the yard calls the four sides of a form, seen from above with the bed's x axis across the page: the ends at the least and greatest x, the
 * rails at the least and greatest y.
 */
export interface FormWords {
  readonly start: string;
  readonly finish: string;
  readonly railA: string;
  readonly railB: string;
}

/** Dimensions as they are printed, in whole mm. */
export type PrintedPlace =
  | { readonly kind: 'plan'; readonly x: number; readonly y: number }
  | {
      readonly kind: 'edge';
      /** Along the side of the form, from the corner of it that `from` names. */
      readonly along: number;
      readonly from: string;
      readonly aboveBed: number;
    };

/** One cast-in item as a form setter meets it. Lengths mm, angles degrees. */
export interface SetOutItem {
  /** Its number on the sheet: the walking order, stage by stage. */
  readonly number: number;
  readonly castIn: CastIn;
  readonly item: CatalogueItem | null;
  readonly way: HoldingWay | null;
  /** The mark of its connection; null: none. */
  readonly connection: string | null;
  readonly place: FormPlace;
  /** On an edge: which side of the form, in the yard's words. */
  readonly side: string | null;
  /** From the datum corner along the form, exact. */
  readonly at: Point;
  /** Seen from above, x along the bed and y across it, from the corner of the panel's extent at least x and y. */
  readonly plan: Point;
  /** On an edge: height of its axis above the bed. */
  readonly aboveBed: number | null;
  /** On an edge: direction into the concrete in the plan. */
  readonly inward: Point | null;
  /** 1: before the cage; 2: with the cage. */
  readonly stage: 1 | 2;
  /** Letter of its assembly; null where it has no type or no way of holding. */
  readonly assembly: string | null;
  readonly printed: PrintedPlace;
  /** The two lengths that are taped, exact: along x and y from the datum corner; on an edge along it and above the bed. */
  readonly taped: Point;
  /** How far it may be off along each axis. */
  readonly tolerance: number;
  /** Who agreed to that where it is the box of its connection's position zone; null: it is its own, or that of the rules. */
  readonly agreement: Rules['positionZones'];
  /** Standard deviation of its place along x and y, from taping and holding. */
  readonly scatter: { readonly x: number; readonly y: number };
  readonly crossBar: {
    readonly diameter: number;
    readonly length: number /** Null where it does not lie level. */;
    readonly planDirection_deg: number | null;
  } | null;
}

/** The inserts of one connection, set out from the middle of the group. Printed lengths in whole mm; they add up. */
export interface SetOutGroup {
  readonly connection: string;
  readonly place: FormPlace;
  /** Printed, from the datum corner; on an edge along it and above the bed. */
  readonly centre: readonly [number, number];
  readonly members: readonly { readonly number: number; readonly dx: number; readonly dy: number }[];
  /** The longest distance between two of them, to check by; null for a single insert. */
  readonly diagonal: { readonly from: number; readonly to: number; readonly length: number } | null;
  /** Set by one template board. */
  readonly hasTemplate: boolean;
}

/** The form of one panel, to be checked before anything is measured from it. Whole mm. */
export interface FormCheck {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly isRectangle: boolean;
  /** Sides by corner number; empty for a rectangle, whose length and width say it. */
  readonly sides: readonly { readonly from: string; readonly to: string; readonly length: number }[];
  /** Of a rectangle A from the datum corner and B; of other outlines from corner to corner. */
  readonly diagonals: readonly { readonly from: string; readonly to: string; readonly length: number }[];
  readonly tolerance: number;
}

/** Everything that the set-out sheet of one panel shows, as data. */
export interface PanelSetOut {
  readonly panel: Panel;
  readonly bed: Bed | null;
  readonly words: FormWords;
  /** Outline and openings seen from above (plan coordinates); corner n is corner n of the drawing. */
  readonly outline: readonly Point[];
  readonly openings: readonly (readonly Point[])[];
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly datum: Panel['inForm']['datum'];
  /** The datum corner in plan coordinates, and its name in the yard's words. */
  readonly datumAt: Point;
  readonly datumWords: string;
  readonly faceDown: 'outside' | 'inside';
  /** The drawing's view and the view from above are mirror images. */
  readonly isMirrored: boolean;
  readonly form: FormCheck;
  readonly items: readonly SetOutItem[];
  readonly groups: readonly SetOutGroup[];
  readonly assemblies: readonly Assembly[];
  readonly problems: readonly SetOutProblem[];
}
