import type { Point } from '../../engine/geometry/point.ts';
import { type Box, boxAround, growBox } from '../boxes.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { type LabelWish, placeLabels } from '../label-places.ts';
import { drawArea, drawCircle, drawLine, drawPath, drawText } from '../marks.ts';
import { ASCENT, DESCENT, measureText } from '../text-size.ts';
import type { DeviationMark, SeenPanel } from './deviation-marks.ts';

/** Steps of the magnification: numbers that are easily reckoned with. */
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200] as const;
/** The longest arrow, and half of the smallest and the largest box of a tolerance, are not longer than this [mm of paper]. */
const MOST = { arrow: 15, smallest: 5, largest: 16 } as const;
/** Around the panel [mm of paper]. */
const MARGIN = 8;
const HEAD = 1.9;
/** Designed places hollow, found ones solid [mm of paper]. */
const RADIUS = { designed: 1.1, found: 0.9 } as const;

/** How large a picture is, and its letters [mm of paper]. */
export interface PictureRoom {
  readonly width: number;
  readonly height: number;
  readonly text: number;
}

/** A picture and how much its deviations are magnified beside the panel in it. */
export interface DeviationPicture {
  readonly drawing: Drawing;
  readonly magnification: number;
}

/** The largest step at which no arrow and no box outgrows the picture. @param scale paper to panel */
function findMagnification(marks: readonly DeviationMark[], scale: number): number {
  const longest = Math.max(0, ...marks.map(({ by }) => (by === null ? 0 : Math.hypot(...by))));
  const tolerances = marks.map(({ tolerance }) => tolerance);
  const [least, most] = [Math.min(Infinity, ...tolerances), Math.max(0, ...tolerances)];
  const fits = (step: number) =>
    longest * step * scale <= MOST.arrow &&
    (tolerances.length === 0 || least * step * scale <= MOST.smallest) &&
    most * step * scale <= MOST.largest;
  return STEPS.findLast(fits) ?? STEPS[0];
}

type Segment = readonly [Point, Point];

/** What an insert may be off, magnified: a box on a face, a bar along an edge. */
function ringOfTolerance({ along, tolerance }: DeviationMark, at: Point, factor: number): readonly Point[] {
  const half = tolerance * factor;
  if (along === null) return cornersOf([1, 0], [0, 1], at, half, half);
  return cornersOf(along, [-along[1], along[0]], at, half, RADIUS.designed);
}

function sidesOf(ring: readonly Point[]): readonly Segment[] {
  return ring.map((from, i): Segment => [from, ring[(i + 1) % ring.length]!]);
}

function cornersOf(u: Point, v: Point, [x, y]: Point, a: number, b: number): readonly Point[] {
  const signs: readonly Point[] = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ];
  return signs.map(([p, q]): Point => [x + p * a * u[0] + q * b * v[0], y + p * a * u[1] + q * b * v[1]]);
}

/** An arrow from the designed place to the found one, which is a solid dot. */
function drawArrow(from: Point, to: Point, isOff: boolean): readonly Mark[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const found = drawCircle('insert', null, isOff ? 'black' : 'grey', to, isOff ? RADIUS.found : 0.7 * RADIUS.found);
  if (length < RADIUS.designed + RADIUS.found) return [found];
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const tip: Point = [to[0] - RADIUS.found * ux, to[1] - RADIUS.found * uy];
  const head = Math.min(HEAD, 0.6 * length);
  const side = (sign: number): Point => [
    tip[0] - head * ux - sign * 0.4 * head * uy,
    tip[1] - head * uy + sign * 0.4 * head * ux,
  ];
  return [
    drawLine('insert', from, tip, isOff ? 'medium' : 'faint'),
    ...(isOff ? [drawArea('insert', null, 'black', [tip, side(1), side(-1)])] : []),
    found,
  ];
}

interface Label {
  readonly wish: LabelWish;
  readonly text: string;
  readonly weight: 'plain' | 'bold';
}

/** The number of an insert; of one that is off how far, too. */
function labelOf(mark: DeviationMark, at: Point, size: number, write: (mm: number) => string): Label {
  const isOff = mark.state === 'off' || mark.state === 'conflict';
  const text = isOff && mark.by !== null ? `${mark.number}: ${write(Math.hypot(...mark.by))}` : String(mark.number);
  const weight = isOff ? 'bold' : 'plain';
  const width = measureText(text, size, weight) + 0.6;
  return {
    wish: {
      anchor: at,
      radius: RADIUS.designed + 0.4,
      width,
      height: (ASCENT + DESCENT) * size,
      weight: isOff ? 4 : 1,
    },
    text,
    weight,
  };
}

/** Names stand clear of arrows, and of the boxes where there is room for that. */
function drawLabels(
  labels: readonly Label[],
  frame: Box,
  arrows: readonly Segment[],
  boxes: readonly Segment[],
  size: number,
): readonly Mark[] {
  const wishes = labels.map(({ wish }) => wish);
  const place = (lines: readonly Segment[]) => placeLabels(wishes, { frame, obstacles: [], lines, gap: 0.5 });
  const clear = place([...arrows, ...boxes]);
  const places = clear.some((one) => one === null) ? place(arrows) : clear;
  return labels.flatMap(({ text, weight }, i): readonly Mark[] => {
    const found = places[i] ?? null;
    if (found === null) return [];
    return [
      ...(found.leader === null ? [] : [drawLine('text', ...found.leader, 'hair')]),
      drawText([found.box.x + 0.3, found.box.y + DESCENT * size], text, size, { weight }),
    ];
  });
}

/**
 * A panel with an arrow from each designed place to where it was found. The panel is to scale, what lies off is magnified beside it; the boxes are the
 * tolerances at the same magnification. Designed places are hollow, found ones solid, those that are off black with how far.
 * @param write a length for people
 */
export function drawDeviationPicture(
  { outline, openings, marks }: SeenPanel,
  room: PictureRoom,
  write: (mm: number) => string,
): DeviationPicture {
  const box = boxAround(outline);
  const scale = Math.min((room.width - 2 * MARGIN) / box.width, (room.height - 2 * MARGIN) / box.height);
  const height = Math.min(room.height, box.height * scale + 2 * MARGIN);
  const magnification = findMagnification(marks, scale);
  const put = ([x, y]: Point): Point => [
    room.width / 2 + (x - box.x - box.width / 2) * scale,
    height / 2 + (y - box.y - box.height / 2) * scale,
  ];
  const factor = magnification * scale;
  const seats = marks.map((mark) => {
    const at = put(mark.at);
    const to: Point = mark.by === null ? at : [at[0] + mark.by[0] * factor, at[1] + mark.by[1] * factor];
    return { mark, at, to, isOff: mark.state === 'off' || mark.state === 'conflict' };
  });
  const labels = seats.map(({ mark, at }) => labelOf(mark, at, room.text, write));
  const arrows = seats.map(({ at, to }): Segment => [at, to]);
  const boxes = seats.map(({ mark, at }) => ringOfTolerance(mark, at, factor));
  const frame = growBox({ x: 0, y: 0, width: room.width, height }, -0.5);
  const drawn: readonly Mark[] = [
    drawArea('outline', 'medium', 'light', outline.map(put)),
    ...openings.map((ring) => drawArea('opening', 'thin', 'white', ring.map(put))),
    ...boxes.map((ring) => drawPath('dimension', ring, 'faint', true)),
    ...seats.map(({ mark, at }) =>
      drawCircle('insert', mark.by === null ? 'faint' : 'thin', 'white', at, RADIUS.designed),
    ),
    ...seats.flatMap(({ mark, at, to, isOff }) => (mark.by === null ? [] : drawArrow(at, to, isOff))),
    ...drawLabels(labels, frame, arrows, boxes.flatMap(sidesOf), room.text),
  ];
  return { drawing: { width: room.width, height, marks: drawn }, magnification };
}
