import type { PanelSetOut } from '../../../../assess/set-out/set-out.ts';
import type { FormMeasure } from '../../../../assess/yard/form-measures.ts';
import type { Point } from '../../../../engine/geometry/point.ts';

/** From the sides of the form to where its depth is taken, as a share of length and width. */
const INSIDE = 0.06;

/** Corner of the form's extent, counted from the datum corner: 0 at it, 1 along its rail, 2 opposite, 3 along its end. */
function cornerFrom({ length, width, datum }: PanelSetOut, k: number, inside = 0): Point {
  const isFar = { x: k === 1 || k === 2, y: k === 2 || k === 3 };
  const x = (isFar.x ? 1 - inside : inside) * length;
  const y = (isFar.y ? 1 - inside : inside) * width;
  return [datum.endsWith('left') ? x : length - x, datum.startsWith('bottom') ? y : width - y];
}

/** Where a length of the form is taped, in the plan: a line, or twice the same point for a depth; null: it cannot be shown. */
export function findMeasureLine(setOut: PanelSetOut, { what, kind }: FormMeasure): readonly [Point, Point] | null {
  if (kind === 'length') return [cornerFrom(setOut, 0), cornerFrom(setOut, 1)];
  if (kind === 'width') return [cornerFrom(setOut, 0), cornerFrom(setOut, 3)];
  if (kind === 'depth') {
    const at = cornerFrom(setOut, Number(what.slice('depth '.length)) - 1, INSIDE);
    return [at, at];
  }
  const named = /^corner (\d+) to corner (\d+)$/.exec(what);
  if (named === null) {
    // Of a rectangle: A from the datum corner, B between the two others.
    return what.startsWith('datum corner')
      ? [cornerFrom(setOut, 0), cornerFrom(setOut, 2)]
      : [cornerFrom(setOut, 1), cornerFrom(setOut, 3)];
  }
  const [from, to] = [setOut.outline[Number(named[1]) - 1], setOut.outline[Number(named[2]) - 1]];
  return from === undefined || to === undefined ? null : [from, to];
}
