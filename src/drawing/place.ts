import type { Point } from '../engine/geometry/point.ts';
import type { Mark } from './drawing.ts';

/** How marks are put elsewhere: scaled around the origin, turned around it [rad], then moved [mm]. Never mirrored. */
export interface Placement {
  readonly scale?: number;
  readonly turn?: number;
  readonly move?: Point;
}

/** Where a placement puts a point. */
export function placePoint([x, y]: Point, { scale = 1, turn = 0, move = [0, 0] }: Placement): Point {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [move[0] + scale * (c * x - s * y), move[1] + scale * (s * x + c * y)];
}

/** Puts marks elsewhere, such as a panel at 1:1 on a sheet at 1:20 (`scale: 1 / 20`). Sizes of text and widths of pens stay: they are of paper. */
export function placeMarks(marks: readonly Mark[], placement: Placement): readonly Mark[] {
  return marks.map((mark) => placeMark(mark, placement));
}

function placeMark(mark: Mark, placement: Placement): Mark {
  const { scale = 1, turn = 0 } = placement;
  const put = (point: Point) => placePoint(point, placement);
  switch (mark.kind) {
    case 'line':
      return { ...mark, from: put(mark.from), to: put(mark.to) };
    case 'polyline':
      return { ...mark, points: mark.points.map(put) };
    case 'area':
      return { ...mark, rings: mark.rings.map((ring) => ring.map(put)) };
    case 'circle':
      return { ...mark, at: put(mark.at), radius: mark.radius * scale };
    case 'arc':
      return { ...mark, at: put(mark.at), radius: mark.radius * scale, from: mark.from + turn, to: mark.to + turn };
    case 'text':
      return { ...mark, at: put(mark.at), turn: mark.turn + turn };
    case 'symbol':
      return { ...mark, at: put(mark.at), scale: mark.scale * scale, turn: mark.turn + turn };
  }
}

/** The marks of a drawing with those of each symbol in its place. Symbols within symbols too. */
export function expandSymbols(marks: readonly Mark[]): readonly Mark[] {
  if (!marks.some((mark) => mark.kind === 'symbol')) return marks;
  return marks.flatMap((mark) =>
    mark.kind === 'symbol'
      ? expandSymbols(placeMarks(mark.shape, { scale: mark.scale, turn: mark.turn, move: mark.at }))
      : mark,
  );
}

/** A circle as a polygon whose sides are at most about 0.01 mm off it on paper. */
export function circleRing(at: Point, radius: number): readonly Point[] {
  const sides = Math.max(24, Math.ceil(Math.PI / Math.sqrt(0.02 / Math.max(radius, 1))));
  return Array.from({ length: sides }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / sides;
    return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
  });
}

/** Angle that an arc goes through, counter-clockwise [rad, 0 to 2π]. */
export function findSweep({ from, to }: { readonly from: number; readonly to: number }): number {
  const whole = 2 * Math.PI;
  return (((to - from) % whole) + whole) % whole;
}
