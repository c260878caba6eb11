import type { Point } from '../engine/geometry/point.ts';
import type { LayerName } from './layers.ts';
import type { PenName, Tone } from './pens.ts';

/**
 * The one model of a drawing, from which SVG, PDF and DXF are written. Coordinates in mm, x to the side, y UP, origin in the lower corner of
 * least x; angles in rad, counter-clockwise from x. On a sheet a mm is a mm of paper; in a drawing at 1:1 it is a mm of the panel.
 */
export interface Drawing {
  /** Of the sheet, or of what is drawn [mm]. */
  readonly width: number;
  readonly height: number;
  /** In the order of drawing: later marks lie on earlier ones. */
  readonly marks: readonly Mark[];
}

export type Mark = LineMark | PolylineMark | AreaMark | CircleMark | ArcMark | TextMark | SymbolMark;

/** Hatching: lines at 45°, HATCH_SPACING apart. White hides what lies below it (not in DXF). */
export type Fill = 'none' | 'black' | 'grey' | 'light' | 'white' | 'hatch';

export interface LineMark {
  readonly kind: 'line';
  readonly layer: LayerName;
  readonly from: Point;
  readonly to: Point;
  readonly pen: PenName;
}

export interface PolylineMark {
  readonly kind: 'polyline';
  readonly layer: LayerName;
  readonly points: readonly Point[];
  /** The last point is joined to the first. */
  readonly isClosed: boolean;
  readonly pen: PenName;
}

/** A polygon with holes, by the even-odd rule: a ring inside a ring is a hole. */
export interface AreaMark {
  readonly kind: 'area';
  readonly layer: LayerName;
  readonly rings: readonly (readonly Point[])[];
  /** Of the outlines; null: none. */
  readonly pen: PenName | null;
  readonly fill: Fill;
}

export interface CircleMark {
  readonly kind: 'circle';
  readonly layer: LayerName;
  readonly at: Point;
  readonly radius: number;
  readonly pen: PenName | null;
  readonly fill: Fill;
}

/** Part of a circle, counter-clockwise from one angle to the other [rad]. */
export interface ArcMark {
  readonly kind: 'arc';
  readonly layer: LayerName;
  readonly at: Point;
  readonly radius: number;
  readonly from: number;
  readonly to: number;
  readonly pen: PenName;
}

export type Weight = 'plain' | 'bold';

/** One line of text in DejaVu Sans Condensed. */
export interface TextMark {
  readonly kind: 'text';
  readonly layer: LayerName;
  readonly at: Point;
  readonly text: string;
  /** Font size (em) [mm on paper]; a capital is CAP_HEIGHT of it high (`text-size.ts`). */
  readonly size: number;
  readonly weight: Weight;
  readonly align: 'start' | 'middle' | 'end';
  /** What of the text lies at `at`: the line that letters stand on, half the height of a capital, or its top. */
  readonly baseline: 'bottom' | 'middle' | 'top';
  /** Counter-clockwise around `at` [rad]. */
  readonly turn: number;
  readonly tone: Tone;
}

/**
 * A shape with a name that stands in several places and carries data, such as an insert. In DXF: a block, inserted with its attributes, whose
 * place a reader finds as one point.
 */
export interface SymbolMark {
  readonly kind: 'symbol';
  readonly layer: LayerName;
  /** Letters, digits, "-" and "_". Symbols of one name have one shape. */
  readonly name: string;
  readonly at: Point;
  readonly turn: number;
  readonly scale: number;
  /** Around its own origin [mm]. */
  readonly shape: readonly Mark[];
  /** Data, not drawn. Tags are capital letters, digits, "-" and "_". */
  readonly attributes: readonly { readonly tag: string; readonly text: string }[];
}
