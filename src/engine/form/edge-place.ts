import type { Point } from '../geometry/point.ts';
import { FormError } from './form-error.ts';
import type { MouldView } from './mould-view.ts';

/** A place on the side of a panel, as a drawing gives it. Lengths mm. */
export interface DrawnEdgePlace {
  /** The side from corner `edge` of the outline (from 0) to the next. */
  readonly edge: number;
  /** From that corner along the side. */
  readonly along: number;
  /** From the outside face to the axis. */
  readonly fromOutside: number;
}

/** The same place in the form. Lengths mm. */
export interface EdgePlace {
  /** On the drawn face. */
  readonly drawing: Point;
  /** From the datum corner along the form. */
  readonly form: Point;
  /** Seen from above. */
  readonly plan: Point;
  /** Height of the axis above the form. */
  readonly aboveForm: number;
  /** Unit direction into the concrete, seen from above. */
  readonly inward: Point;
  /** The side in the plan, from its first corner to its second. */
  readonly side: readonly [Point, Point];
}

/** Lengths that lie this close together [mm] are the same: rounding in floating point. */
const ROUNDING = 1e-6;

/**
 * Finds a place on the side of a panel in the form.
 *
 * A side along an axis of the drawing gives exact coordinates. `aboveForm` is `fromOutside` with the outside face down, else what is left
 * of the thickness.
 *
 * @throws FormError when the outline has no such side, or the place lies beyond the side or the thickness
 */
export function placeOnEdge(view: MouldView, place: DrawnEdgePlace, thickness: number): EdgePlace {
  const { outline, faceDown } = view.lay;
  const from = outline[place.edge];
  const to = outline[(place.edge + 1) % outline.length];
  if (from === undefined || to === undefined)
    throw new FormError('edge', `${place.edge} is no side of the outline, expected 0 to ${outline.length - 1}`);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(place.along >= 0 && place.along <= length + ROUNDING))
    throw new FormError(
      'along',
      `${place.along} mm lies beyond side ${place.edge}, expected 0 to its length of ${Number(length.toFixed(3))} mm`,
    );
  if (!(place.fromOutside >= 0 && place.fromOutside <= thickness))
    throw new FormError(
      'fromOutside',
      `${place.fromOutside} mm lies beyond the panel, expected 0 to its thickness of ${thickness} mm`,
    );
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const drawing: Point = [from[0] + along[0] * place.along, from[1] + along[1] * place.along];
  const inward: Point = isCounterClockwise(outline) ? [0 - along[1], along[0]] : [along[1], 0 - along[0]];
  return {
    drawing,
    form: view.toForm(drawing),
    plan: view.toPlan(drawing),
    aboveForm: faceDown === 'outside' ? place.fromOutside : thickness - place.fromOutside,
    inward: view.turnVector(inward),
    side: [view.toPlan(from), view.toPlan(to)],
  };
}

function isCounterClockwise(outline: readonly Point[]): boolean {
  const twiceArea = outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return twiceArea > 0;
}
