import type { Point } from '../../engine/geometry/point.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { placeLabels } from '../label-places.ts';
import { drawBox, drawCircle, drawLine, drawPath, drawText } from '../marks.ts';
import { ASCENT, DESCENT, measureText } from '../text-size.ts';
import type { PictureRoom } from './deviation-picture.ts';

/** A deviation in the picture of all of them: found less designed [mm]. */
export interface ScatterPoint {
  /** Said beside its dot where it is off; null: of many pieces no number says which. */
  readonly number: number | null;
  readonly by: Point;
  readonly isOff: boolean;
}

/** An ellipse by its middle, its half axes and the direction of the first [mm, rad]. */
export interface ScatterEllipse {
  readonly middle: Point;
  readonly half: readonly [number, number];
  readonly turn: number;
}

export interface ScatterContent {
  readonly points: readonly ScatterPoint[];
  /** Different tolerances of these inserts, each per axis [mm]. */
  readonly tolerances: readonly number[];
  /** Null: too few for one. */
  readonly ellipse: ScatterEllipse | null;
  /** A smaller one about the same middle, such as that of one standard deviation. */
  readonly inner?: ScatterEllipse | null;
}

/** Room for the words at the axes [mm of paper]. */
const MARGIN = 9;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200] as const;
/** Lines of the grid on each side of the middle, at most. */
const MOST_LINES = 6;
const DOT = 0.9;
const SIDES = 60;

/** The distance of grid lines so that not too many stand on a side [mm]. */
export function findStep(reach: number): number {
  return STEPS.find((step) => reach / step <= MOST_LINES) ?? STEPS.at(-1)!;
}

function ringOf({ middle, half, turn }: ScatterEllipse): readonly Point[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return Array.from({ length: SIDES }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / SIDES;
    const [a, b] = [half[0] * Math.cos(angle), half[1] * Math.sin(angle)];
    return [middle[0] + c * a - s * b, middle[1] + s * a + c * b];
  });
}

/**
 * Where all inserts were found beside where they were designed, each in its own face: one dot an insert, those that are off black with their number,
 * tolerances as boxes, the ellipses of the scatter dashed with a cross in their middle.
 * @param write a length for people
 */
export function drawScatter(
  { points, tolerances, ellipse, inner = null }: ScatterContent,
  room: PictureRoom,
  write: (mm: number) => string,
): Drawing {
  const oval = ellipse === null ? [] : ringOf(ellipse);
  const reach = 1.1 * Math.max(1, ...tolerances, ...[...points.map(({ by }) => by), ...oval].flat().map(Math.abs));
  const half = Math.min(room.width, room.height) / 2 - MARGIN;
  const middle: Point = [room.width / 2, room.height / 2];
  const put = ([x, y]: Point): Point => [middle[0] + (x / reach) * half, middle[1] + (y / reach) * half];
  const step = findStep(reach);
  const count = Math.floor(reach / step);
  const grid = Array.from({ length: 2 * count + 1 }, (_, k) => (k - count) * step).flatMap((value): readonly Mark[] => {
    const [x, y] = put([value, value]);
    const pen = value === 0 ? 'thin' : 'faint';
    const style = { tone: 'grey', baseline: 'middle' } as const;
    return [
      drawLine('dimension', [x, middle[1] - half], [x, middle[1] + half], pen),
      drawLine('dimension', [middle[0] - half, y], [middle[0] + half, y], pen),
      ...(value === 0
        ? []
        : [
            drawText([x, middle[1] - half - 3], write(value), room.text, { ...style, align: 'middle' }),
            drawText([middle[0] - half - 1, y], write(value), room.text, { ...style, align: 'end' }),
          ]),
    ];
  });
  const boxes = tolerances.map((tolerance): Mark => {
    const size = (2 * tolerance * half) / reach;
    return drawBox('dimension', put([-tolerance, -tolerance]), size, size, 'medium');
  });
  const dots = points.map(({ by, isOff }) => drawCircle('insert', 'thin', isOff ? 'black' : 'white', put(by), DOT));
  const named = points.flatMap(({ number, by, isOff }) => (isOff && number !== null ? [{ number, by }] : []));
  const cross = ellipse === null ? [] : drawCross(put(ellipse.middle));
  const shape = [
    ...(oval.length === 0 ? [] : [drawPath('dimension', oval.map(put), 'dashed', true)]),
    ...(inner === null ? [] : [drawPath('dimension', ringOf(inner).map(put), 'dashed', true)]),
  ];
  return {
    width: room.width,
    height: room.height,
    marks: [...grid, ...boxes, ...shape, ...cross, ...dots, ...drawNumbers(named, put, room)],
  };
}

/** Numbers beside their dots, clear of each other. */
function drawNumbers(
  points: readonly { readonly number: number; readonly by: Point }[],
  put: (at: Point) => Point,
  { width, height, text }: PictureRoom,
): readonly Mark[] {
  const wishes = points.map(({ number, by }) => ({
    anchor: put(by),
    radius: DOT + 0.3,
    width: measureText(String(number), text, 'bold') + 0.4,
    height: (ASCENT + DESCENT) * text,
  }));
  const obstacles = wishes.map(({ anchor: [x, y] }) => ({ x: x - DOT, y: y - DOT, width: 2 * DOT, height: 2 * DOT }));
  const places = placeLabels(wishes, { frame: { x: 0, y: 0, width, height }, obstacles, lines: [], gap: 0.3 });
  return points.flatMap(({ number }, i): readonly Mark[] => {
    const place = places[i] ?? null;
    if (place === null) return [];
    return [
      ...(place.leader === null ? [] : [drawLine('text', ...place.leader, 'hair')]),
      drawText([place.box.x + 0.2, place.box.y + DESCENT * text], String(number), text, { weight: 'bold' }),
    ];
  });
}

function drawCross([x, y]: Point): readonly Mark[] {
  return [
    drawLine('dimension', [x - 1.6, y], [x + 1.6, y], 'medium'),
    drawLine('dimension', [x, y - 1.6], [x, y + 1.6], 'medium'),
  ];
}
