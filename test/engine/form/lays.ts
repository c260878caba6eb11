import fc from 'fast-check';
import type { DatumCorner, LargeFace, Lay, QuarterTurn } from '../../../src/engine/form/mould-view.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';

const FACES: readonly LargeFace[] = ['outside', 'inside'];
const TURNS: readonly QuarterTurn[] = [0, 90, 180, 270];
const CORNERS: readonly DatumCorner[] = ['bottom-left', 'bottom-right', 'top-left', 'top-right'];

/** Every way to lay a panel: which face is drawn, which is down, the turn, the datum corner. */
export const ALL_LAYS: readonly Omit<Lay, 'outline'>[] = FACES.flatMap((drawnFace) =>
  FACES.flatMap((faceDown) => TURNS.flatMap((turn) => CORNERS.map((datum) => ({ drawnFace, faceDown, turn, datum })))),
);

/** Whole and half millimetres, which floating point adds exactly. */
const halves = (low: number, high: number) => fc.integer({ min: 2 * low, max: 2 * high }).map((n) => n / 2);
export const anyPoint: fc.Arbitrary<Point> = fc.tuple(halves(-4000, 4000), halves(-4000, 4000));

/** A four-sided outline without a square corner, somewhere in the drawing, either way round. */
export const anyOutline: fc.Arbitrary<readonly Point[]> = fc
  .record({
    at: anyPoint,
    width: halves(1000, 6000),
    height: halves(1000, 3500),
    cuts: fc.tuple(halves(0, 400), halves(0, 400), halves(0, 400), halves(0, 400)),
    isReversed: fc.boolean(),
  })
  .map(({ at: [x, y], width, height, cuts: [a, b, c, d], isReversed }) => {
    const corners: readonly Point[] = [
      [x, y + a],
      [x + width, y],
      [x + width - b, y + height - c],
      [x + d, y + height],
    ];
    return isReversed ? [...corners].reverse() : corners;
  });

/** Twice the signed area of three points: positive counter-clockwise. */
export function turnOf(p: Point, q: Point, r: Point): number {
  return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
}
