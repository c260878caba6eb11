import type { Point } from '../engine/geometry/point.ts';
import type { Mark, TextMark } from './drawing.ts';
import { expandSymbols } from './place.ts';
import { ASCENT, CAP_HEIGHT, DESCENT, measureText } from './text-size.ts';

/** A box with its sides along x and y [mm]. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Whether two boxes share area; boxes that only touch do not. */
export function doBoxesOverlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** A box, larger by `by` on every side. */
export function growBox({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

/** The least box around points; at least one point. */
export function boxAround(points: readonly Point[]): Box {
  let [leastX, leastY, mostX, mostY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    leastX = Math.min(leastX, x);
    mostX = Math.max(mostX, x);
    leastY = Math.min(leastY, y);
    mostY = Math.max(mostY, y);
  }
  return { x: leastX, y: leastY, width: mostX - leastX, height: mostY - leastY };
}

/** Where the line lies that a text stands on, from its place upward across the text [mm]. */
export function findRise({ baseline, size }: TextMark): number {
  if (baseline === 'bottom') return 0;
  return -(baseline === 'middle' ? CAP_HEIGHT / 2 : CAP_HEIGHT) * size;
}

/** Where a text of a width starts, from its place along the text [mm]. */
export function findStart({ align }: TextMark, width: number): number {
  if (align === 'start') return 0;
  return align === 'middle' ? -width / 2 : -width;
}

/** The four corners of a text with all its letters may need above and below the line. */
export function textCorners(mark: TextMark): readonly Point[] {
  const width = measureText(mark.text, mark.size, mark.weight);
  const start = findStart(mark, width);
  const rise = findRise(mark);
  const [c, s] = [Math.cos(mark.turn), Math.sin(mark.turn)];
  const [low, high] = [rise - DESCENT * mark.size, rise + ASCENT * mark.size];
  const corner = (along: number, up: number): Point => [
    mark.at[0] + c * along - s * up,
    mark.at[1] + s * along + c * up,
  ];
  return [corner(start, low), corner(start + width, low), corner(start + width, high), corner(start, high)];
}

/** Box that a mark takes; of an arc that of its whole circle. */
function boxOfMark(mark: Exclude<Mark, { kind: 'symbol' }>): Box {
  switch (mark.kind) {
    case 'line':
      return boxAround([mark.from, mark.to]);
    case 'polyline':
      return boxAround(mark.points);
    case 'area':
      return boxAround(mark.rings.flat());
    case 'circle':
    case 'arc':
      return growBox({ x: mark.at[0], y: mark.at[1], width: 0, height: 0 }, mark.radius);
    case 'text':
      return boxAround(textCorners(mark));
  }
}

/** The least box around marks, widths of pens left out; null when there is none. */
export function boxOfMarks(marks: readonly Mark[]): Box | null {
  const corners = expandSymbols(marks).flatMap((mark): Point[] => {
    if (mark.kind === 'symbol') return [];
    const { x, y, width, height } = boxOfMark(mark);
    return [
      [x, y],
      [x + width, y + height],
    ];
  });
  return corners.length === 0 ? null : boxAround(corners);
}
