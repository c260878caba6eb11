import type { FilledCase } from '../assess/out-of-place/fill-case.ts';
import type { Point } from '../engine/geometry/point.ts';
import { type Box, boxAround, doBoxesOverlap, growBox, textCorners } from './boxes.ts';
import type { Drawing, Mark, TextMark } from './drawing.ts';
import { drawArea, drawCircle, drawLine, drawPath, drawText, rectangle } from './marks.ts';
import { circleRing } from './place.ts';
import { CAP_HEIGHT, measureText } from './text-size.ts';

/** What the sketch says, in a person's units. */
export interface SketchWords {
  readonly nearest: string;
  readonly second: string;
  readonly spacing: string;
  readonly asDrawn: string;
}

/** How large the sketch is, and its letters [mm]. */
export interface SketchSize {
  readonly width: number;
  readonly height: number;
  readonly text: number;
}

/** A far edge is drawn no farther than this many times the near one, or than this [mm], with its dimension broken. */
const BROKEN_BEYOND = 3.5;
const BROKEN_LEAST = 220;

/** Around the picture, for what stands beside it; from a line to its text; of ticks [mm]. */
const MARGIN = 2;
const GAP = 1.1;
const TICK = 1.1;

/** What neighbours a sketch shows, in spacings; on which side they really stand was not said. */
const SHOWN: Readonly<Record<FilledCase['neighbours'], readonly Point[]>> = {
  0: [],
  1: [[1, 0]],
  2: [
    [1, 0],
    [2, 0],
  ],
  3: [
    [1, 0],
    [0, 1],
    [1, 1],
  ],
};

/** A dimension between two points along x or y, ticks at its ends; a break in its middle where it is not to scale. */
function drawDimension(from: Point, to: Point, isBroken: boolean): readonly Mark[] {
  const tick = ([x, y]: Point) => drawLine('dimension', [x - TICK, y - TICK], [x + TICK, y + TICK], 'medium');
  const marks: Mark[] = [drawLine('dimension', from, to, 'thin'), tick(from), tick(to)];
  if (!isBroken) return marks;
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const isLevel = from[1] === to[1];
  const zigzag: readonly Point[] = [
    [-1.2, 0],
    [-0.5, 1.3],
    [0.5, -1.3],
    [1.2, 0],
  ];
  const turned = zigzag.map(([a, b]): Point => (isLevel ? [x + a, y + b] : [x + b, y + a]));
  return [...marks, drawLine('dimension', turned[0]!, turned[3]!, 'thin'), drawPath('dimension', turned, 'medium')];
}

/** The first of several places where a text lies on none of the boxes; the last where all are taken. */
function placeText(places: readonly TextMark[], taken: readonly Box[]): TextMark {
  const isFree = (mark: TextMark) => !taken.some((box) => doBoxesOverlap(box, boxAround(textCorners(mark))));
  return places.find(isFree) ?? places.at(-1)!;
}

/**
 * Draws an insert as it stands, to scale: its nearest edge below, the next to the left, neighbours as far as they were said, and dashed
 * where it is drawn, if that is known.
 */
export function drawOutOfPlaceSketch(filled: FilledCase, words: SketchWords, size: SketchSize): Drawing {
  const { nearest, second, spacing, neighbours, insert } = filled;
  const { width, height, text } = size;
  const cap = Math.max(BROKEN_LEAST, BROKEN_BEYOND * nearest);
  const shown = { below: Math.min(nearest, BROKEN_LEAST * 2), left: Math.min(second, cap) };
  const steps = SHOWN[neighbours];
  const { item } = insert;
  const foot = insert.footWidth;
  const beyond = 0.45 * Math.max(shown.below, shown.left) + foot;
  const right = Math.max(...steps.map(([x]) => x * spacing), 0) + beyond;
  const above = Math.max(...steps.map(([, y]) => y * spacing), 0) + beyond;
  // Beside the edges stands what does not fit between them and the insert.
  const left = MARGIN + measureText(words.second, text) + GAP;
  const below = MARGIN + 2 * text;
  const scale = Math.min(
    (width - left - MARGIN) / (shown.left + right),
    (height - below - MARGIN) / (shown.below + above),
  );
  const put = ([x, y]: Point): Point => [left + (shown.left + x) * scale, below + (shown.below + y) * scale];
  const at = put([0, 0]);
  const ends = { x: width - MARGIN, y: height - MARGIN };
  const marks: Mark[] = [
    drawArea('section', null, 'light', rectangle(left, below, ends.x - left, ends.y - below)),
    drawLine('outline', [left, below], [ends.x, below], 'thick'),
    drawLine('outline', [left, below], [left, ends.y], 'thick'),
  ];
  const radius = Math.max((foot / 2) * scale, 1.6);
  const round = ([x, y]: Point): Box => ({ x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius });
  const taken: Box[] = [];
  /** Where it is drawn, from the same two edges as it stands; held within the picture. */
  const findDrawn = (): Point | null => {
    if (filled.drawn === null) return null;
    const [x, y] = put([filled.drawn.second - second, filled.drawn.nearest - nearest]);
    return [Math.min(Math.max(x, left), ends.x - radius), Math.min(Math.max(y, below), ends.y - radius)];
  };
  const drawInsert = (middle: Point, isOwn: boolean) => {
    taken.push(round(middle));
    marks.push(drawCircle('insert', isOwn ? 'medium' : 'faint', 'white', middle, radius));
    const body = Math.max((item.bodyDiameter_mm / 2) * scale, 1);
    marks.push(drawCircle('insert', isOwn ? 'medium' : 'faint', isOwn ? 'black' : 'grey', middle, body));
  };
  for (const [x, y] of steps) drawInsert(put([x * spacing, y * spacing]), false);
  marks.push(...drawDimension([left, at[1]], at, second > cap));
  marks.push(...drawDimension([at[0], below], at, nearest > shown.below));
  if (neighbours > 0) marks.push(...drawDimension(at, put([spacing, 0]), false));
  drawInsert(at, true);
  const drawn = findDrawn();
  if (drawn !== null) {
    taken.push(round(drawn));
    marks.push(drawPath('insert', circleRing(drawn, radius), 'dashed', true));
  }
  const texts: TextMark[] = [];
  const add = (...places: readonly TextMark[]) => {
    const placed = placeText(places, taken);
    texts.push(placed);
    taken.push(growBox(boxAround(textCorners(placed)), 0.3));
  };
  const style = { layer: 'dimension' as const };
  const cap2 = CAP_HEIGHT * text;
  const room = (length: number, words_: string) => length - radius - 2 * GAP >= measureText(words_, text);
  const middleX = (left + at[0] - radius) / 2;
  add(
    room(at[0] - left, words.second)
      ? drawText([middleX, at[1] + GAP + 0.6], words.second, text, { ...style, align: 'middle' })
      : drawText([left - GAP, at[1]], words.second, text, { ...style, align: 'end', baseline: 'middle' }),
  );
  add(
    at[1] - below - radius >= cap2 + 2 * GAP
      ? drawText([at[0] + GAP + 0.6, (below + at[1] - radius) / 2], words.nearest, text, {
          ...style,
          baseline: 'middle',
        })
      : drawText([at[0], below - GAP], words.nearest, text, { ...style, align: 'middle', baseline: 'top' }),
  );
  if (neighbours > 0) {
    const middle = at[0] + (spacing * scale) / 2;
    const above2 = drawText([middle, at[1] + radius + GAP], words.spacing, text, { ...style, align: 'middle' });
    const inLine = drawText([middle, at[1] + GAP + 0.6], words.spacing, text, { ...style, align: 'middle' });
    const under = drawText([middle, at[1] - GAP - 0.6], words.spacing, text, {
      ...style,
      align: 'middle',
      baseline: 'top',
    });
    if (room(spacing * scale - radius, words.spacing)) add(inLine, under);
    else add(above2);
  }
  if (drawn !== null) {
    const [x, y] = drawn;
    const beside = (px: number, py: number, align: TextMark['align']) =>
      drawText([px, py], words.asDrawn, text, { ...style, align, baseline: 'middle' });
    const half = measureText(words.asDrawn, text) / 2;
    const centred = Math.min(Math.max(x, left + half + GAP), ends.x - half);
    const fits = (mark: TextMark) => {
      const box = boxAround(textCorners(mark));
      return box.x >= 0 && box.x + box.width <= width && box.y >= 0 && box.y + box.height <= height;
    };
    const places = [
      beside(centred, y + radius + cap2, 'middle'),
      beside(x + radius + GAP, y, 'start'),
      beside(x - radius - GAP, y, 'end'),
      beside(x + radius + GAP, y + radius, 'start'),
      beside(centred, y - radius - cap2, 'middle'),
      beside(left + GAP + half, ends.y - text, 'middle'),
    ];
    add(...places.filter(fits));
  }
  return { width, height, marks: [...marks, ...texts] };
}
