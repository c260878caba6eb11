import type { Point } from '../../engine/geometry/point.ts';
import type { PictureRoom } from '../as-cast/deviation-picture.ts';
import { findStep } from '../as-cast/scatter-picture.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { drawArea, drawCircle, drawLine, drawText } from '../marks.ts';

export interface DistanceContent {
  /** Designed distance from the datum along the axis, and the deviation along it [mm]. */
  readonly points: readonly { readonly at: Point; readonly isOff: boolean }[];
  readonly tolerances: readonly number[];
  /** The line through them, where it is known: its value and interval at a distance. Null: too few, or all at one distance. */
  readonly lineAt: ((from: number) => { readonly y: number; readonly interval: readonly [number, number] }) | null;
  /** What is drawn, such as `off along the form over the distance from the datum along it`. */
  readonly words: string;
}

/** Room for words and numbers around the field [mm of paper]. */
const EDGE = { left: 11, right: 5, foot: 9, head: 9 } as const;
const DOT = 0.8;
/** The band of a straight line is bent: drawn in so many pieces. */
const PIECES = 24;
/** Distances of the marks along the axis [mm]. */
const STEPS = [100, 200, 500, 1000, 2000, 5000, 10_000] as const;
const MOST_STEPS = 6;

/**
 * How far inserts are off along one axis over how far they lie from the datum along it: one dot an insert, black where it is off, tolerances dashed, the
 * line through them with the band that holds it.
 * @param write a length for people
 */
export function drawDistance(
  { points, tolerances, lineAt, words }: DistanceContent,
  room: PictureRoom,
  write: (mm: number) => string,
): Drawing {
  const { text } = room;
  const farthest = 1.05 * Math.max(1, ...points.map(({ at }) => at[0]));
  const inSight = points.map(({ at }) => at[0]);
  const [first, last] = [Math.min(...inSight), Math.max(...inSight)];
  const stops = Array.from({ length: PIECES + 1 }, (_, k) => first + ((last - first) * k) / PIECES);
  const line = lineAt === null || points.length === 0 ? [] : stops.map((from) => ({ from, ...lineAt(from) }));
  const heights = [...points.map(({ at }) => at[1]), ...tolerances, ...line.flatMap(({ interval }) => interval)];
  const reach = 1.1 * Math.max(1, ...heights.map(Math.abs));
  const wide = room.width - EDGE.left - EDGE.right;
  const half = (room.height - EDGE.foot - EDGE.head) / 2;
  const put = (from: number, off: number): Point => [
    EDGE.left + (from / farthest) * wide,
    EDGE.foot + half + (off / reach) * half,
  ];
  const across = (off: number, pen: 'thin' | 'faint' | 'dashed') =>
    drawLine('dimension', put(0, off), put(farthest, off), pen);
  const step = findStep(reach * 1.5);
  const count = Math.floor(reach / step);
  const levels = Array.from({ length: 2 * count + 1 }, (_, k) => (k - count) * step).flatMap((off): readonly Mark[] => [
    across(off, off === 0 ? 'thin' : 'faint'),
    drawText([EDGE.left - 1, put(0, off)[1]], write(off), text, { align: 'end', baseline: 'middle', tone: 'grey' }),
  ]);
  const every = STEPS.find((one) => farthest / one <= MOST_STEPS) ?? STEPS.at(-1)!;
  const distances = Array.from({ length: Math.floor(farthest / every) + 1 }, (_, k) => k * every).map((from) =>
    drawText([put(from, 0)[0], EDGE.foot - 1], write(from), text, { align: 'middle', baseline: 'top', tone: 'grey' }),
  );
  const limits = tolerances.flatMap((tolerance) => [across(tolerance, 'dashed'), across(-tolerance, 'dashed')]);
  const band = [
    ...line.map(({ from, interval }) => put(from, interval[0])),
    ...line.map(({ from, interval }) => put(from, interval[1])).reverse(),
  ];
  const trend = line.slice(1).map(({ from, y }, k): Mark => {
    const before = line[k]!;
    return drawLine('dimension', put(before.from, before.y), put(from, y), 'thick');
  });
  return {
    width: room.width,
    height: room.height,
    marks: [
      ...(band.length === 0 ? [] : [drawArea('dimension', 'hair', 'grey', band)]),
      ...levels,
      drawLine('dimension', put(0, -reach), put(0, reach), 'thin'),
      ...limits,
      ...trend,
      ...points.map(({ at: [from, off], isOff }) =>
        drawCircle('insert', 'thin', isOff ? 'black' : 'white', put(from, off), DOT),
      ),
      ...distances,
      drawText([1, room.height - 0.5], words, text, { baseline: 'top', weight: 'bold' }),
    ],
  };
}
