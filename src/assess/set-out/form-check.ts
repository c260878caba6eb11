import { wholeMillimetres } from '../../engine/form/whole-millimetres.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { FormCheck } from './set-out.ts';

/** Corners that differ by less from a rectangle's [mm] belong to one. */
const RECTANGULAR = 1e-6;

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

function isRectangle(outline: readonly Point[], length: number, width: number): boolean {
  if (outline.length !== 4) return false;
  const isAtEnd = (value: number, extent: number) =>
    Math.abs(value) < RECTANGULAR || Math.abs(value - extent) < RECTANGULAR;
  return outline.every(([x, y]) => isAtEnd(x, length) && isAtEnd(y, width));
}

/** How a corner of the outline is called on the sheet: by its number in the drawing, counted from 1. */
export function nameCorner(index: number): string {
  return `corner ${index + 1}`;
}

/**
 * What is measured on the form before anything is measured from it: length, width, depth, and the diagonals that show a racked form. An outline
 * that is no rectangle has its sides, and every line from its first corner to one that is not beside it, so that its shape is fixed.
 *
 * @param outline corners in the plan, the extent's least corner at (0, 0) [mm]
 * @param datumAt the datum corner in the plan
 */
export function findFormCheck(
  outline: readonly Point[],
  length: number,
  width: number,
  depth: number,
  datumAt: Point,
  tolerance: number,
): FormCheck {
  const whole = {
    length: wholeMillimetres(length),
    width: wholeMillimetres(width),
    depth: wholeMillimetres(depth),
    tolerance,
  };
  if (isRectangle(outline, length, width)) {
    const diagonal = wholeMillimetres(Math.hypot(length, width));
    return {
      ...whole,
      isRectangle: true,
      sides: [],
      diagonals: [
        { from: 'datum corner', to: 'the corner opposite (A)', length: diagonal },
        { from: 'the two other corners', to: 'each other (B)', length: diagonal },
      ],
    };
  }
  const count = outline.length;
  const between = (i: number, j: number) => ({
    from: nameCorner(i),
    to: nameCorner(j),
    length: wholeMillimetres(distance(outline[i]!, outline[j]!)),
  });
  // From the corner nearest to the datum corner, so that the tape is hooked where everything else is measured from.
  const nearest = outline.reduce(
    (best, corner, i) => (distance(corner, datumAt) < distance(outline[best]!, datumAt) ? i : best),
    0,
  );
  const across = Array.from({ length: count - 3 }, (_, k) => (nearest + 2 + k) % count);
  return {
    ...whole,
    isRectangle: false,
    sides: outline.map((_, i) => between(i, (i + 1) % count)),
    diagonals: across.map((other) => between(nearest, other)),
  };
}
