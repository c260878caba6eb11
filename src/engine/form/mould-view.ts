import type { Point, Polygon } from '../geometry/point.ts';

/** The large faces of a panel. */
export type LargeFace = 'outside' | 'inside';

/** Counter-clockwise as seen from above the form. */
export type QuarterTurn = 0 | 90 | 180 | 270;

/** A corner of the panel's extent as it lies, seen from above. */
export type DatumCorner = 'bottom-left' | 'bottom-right' | 'top-left' | 'top-right';

/** How a drawn panel is laid into the form. Lengths mm. */
export interface Lay {
  /** Corners as drawn: x right, y up, seen from in front of the drawn face. */
  readonly outline: Polygon;
  readonly drawnFace: LargeFace;
  readonly faceDown: LargeFace;
  readonly turn: QuarterTurn;
  readonly datum: DatumCorner;
}

/**
 * A panel as it lies in the form, seen from above. Three frames, all in mm:
 * - drawing: as drawn;
 * - plan: x right, y up as seen from above, from the lower left corner of the panel's extent;
 * - form: distances from the datum corner along the form, both positive into the panel.
 */
export interface MouldView {
  readonly lay: Lay;
  /** The outline in form coordinates; corner n is corner n of the drawing. */
  readonly outline: Polygon;
  /** Extent along x and along y of the plan. */
  readonly length: number;
  readonly width: number;
  /** The datum corner in the plan. */
  readonly datumAt: Point;
  /** The drawing and the view from above are mirror images: the drawn face lies down. */
  readonly isMirrored: boolean;
  /** Form coordinates are left-handed as seen from above, as with the datum at one of the corners bottom-right and top-left. */
  readonly isHandReversed: boolean;
  readonly toForm: (drawing: Point) => Point;
  /** The inverse of `toForm`. */
  readonly toDrawing: (form: Point) => Point;
  readonly toPlan: (drawing: Point) => Point;
  /** A vector of the drawing in the plan. */
  readonly turnVector: (drawing: Point) => Point;
  /** A direction of the drawing, counter-clockwise from its x axis in degrees, in the plan: 0 to below 360. */
  readonly turnDirection: (degrees: number) => number;
}

/** One axis of a view: which axis of the drawing it follows, and from which end of the extent it counts. */
interface AxisReading {
  readonly axis: 0 | 1;
  readonly isFromHigh: boolean;
}

/** The axes of the plan after a turn, for a panel whose drawn face is up. */
const TURNED: Readonly<Record<QuarterTurn, readonly [x: AxisReading, y: AxisReading]>> = {
  0: [
    { axis: 0, isFromHigh: false },
    { axis: 1, isFromHigh: false },
  ],
  90: [
    { axis: 1, isFromHigh: true },
    { axis: 0, isFromHigh: false },
  ],
  180: [
    { axis: 0, isFromHigh: true },
    { axis: 1, isFromHigh: true },
  ],
  270: [
    { axis: 1, isFromHigh: false },
    { axis: 0, isFromHigh: true },
  ],
};

/**
 * Lays a panel into the form and looks at it from above.
 *
 * With the drawn face up the panel keeps its hand; with it down it is mirrored (x → width − x of the extent). Then it is turned. Every
 * coordinate is one subtraction from an end of the drawn extent, so nothing is rounded that the drawing has not rounded.
 *
 * @example 3000 × 2000 drawn from the outside, outside down, turn 0, datum bottom-left: drawing (500, 300) → form (2500, 300).
 */
export function mouldView(lay: Lay): MouldView {
  const xs = lay.outline.map(([x]) => x);
  const ys = lay.outline.map(([, y]) => y);
  const low: Point = [Math.min(...xs), Math.min(...ys)];
  const high: Point = [Math.max(...xs), Math.max(...ys)];
  const isMirrored = lay.faceDown === lay.drawnFace;
  const isFromFarX = lay.datum.endsWith('right');
  const isFromFarY = lay.datum.startsWith('top');

  const plan = TURNED[lay.turn].map(({ axis, isFromHigh }) => ({
    axis,
    isFromHigh: isFromHigh !== (isMirrored && axis === 0),
  })) as [AxisReading, AxisReading]; // map keeps the length of a pair
  const form: readonly [AxisReading, AxisReading] = [
    { axis: plan[0].axis, isFromHigh: plan[0].isFromHigh !== isFromFarX },
    { axis: plan[1].axis, isFromHigh: plan[1].isFromHigh !== isFromFarY },
  ];

  const read = ({ axis, isFromHigh }: AxisReading, at: Point) =>
    isFromHigh ? high[axis] - at[axis] : at[axis] - low[axis];
  const writeBack = ({ axis, isFromHigh }: AxisReading, distance: number) =>
    isFromHigh ? high[axis] - distance : low[axis] + distance;
  const turnPart = ({ axis, isFromHigh }: AxisReading, vector: Point) =>
    isFromHigh ? 0 - vector[axis] : vector[axis] + 0;
  const toForm = (at: Point): Point => [read(form[0], at), read(form[1], at)];
  const length = high[plan[0].axis] - low[plan[0].axis];
  const width = high[plan[1].axis] - low[plan[1].axis];

  return {
    lay,
    outline: lay.outline.map(toForm),
    length,
    width,
    datumAt: [isFromFarX ? length : 0, isFromFarY ? width : 0],
    isMirrored,
    isHandReversed: isFromFarX !== isFromFarY,
    toForm,
    toDrawing: ([x, y]) =>
      form[0].axis === 0
        ? [writeBack(form[0], x), writeBack(form[1], y)]
        : [writeBack(form[1], y), writeBack(form[0], x)],
    toPlan: (at) => [read(plan[0], at), read(plan[1], at)],
    turnVector: (vector) => [turnPart(plan[0], vector), turnPart(plan[1], vector)],
    turnDirection: (degrees) => ((((isMirrored ? 180 - degrees : degrees) + lay.turn) % 360) + 360) % 360,
  };
}

/** Where a large face lies while the concrete is placed. */
export function levelOf(view: MouldView, face: LargeFace): 'on the form' | 'at the top' {
  return face === view.lay.faceDown ? 'on the form' : 'at the top';
}
