import type { Point } from '../engine/geometry/point.ts';
import type { AreaMark, CircleMark, Fill, LineMark, PolylineMark, TextMark, Weight } from './drawing.ts';
import type { LayerName } from './layers.ts';
import type { PenName, Tone } from './pens.ts';
import { LINE_STEP } from './text-size.ts';

export function drawLine(layer: LayerName, from: Point, to: Point, pen: PenName): LineMark {
  return { kind: 'line', layer, from, to, pen };
}

/** Lines through the points, open unless said otherwise. */
export function drawPath(layer: LayerName, points: readonly Point[], pen: PenName, isClosed = false): PolylineMark {
  return { kind: 'polyline', layer, points, isClosed, pen };
}

/** A polygon with holes: a ring inside a ring is a hole. */
export function drawArea(
  layer: LayerName,
  pen: PenName | null,
  fill: Fill,
  ...rings: readonly (readonly Point[])[]
): AreaMark {
  return { kind: 'area', layer, rings, pen, fill };
}

export function drawCircle(layer: LayerName, pen: PenName | null, fill: Fill, at: Point, radius: number): CircleMark {
  return { kind: 'circle', layer, at, radius, pen, fill };
}

/** Corners of an upright rectangle, counter-clockwise from its lower corner of least x. */
export function rectangle(x: number, y: number, width: number, height: number): readonly Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}

/** A box with its sides along x and y, its lower corner of least x at `at`. */
export function drawBox(
  layer: LayerName,
  at: Point,
  width: number,
  height: number,
  pen: PenName | null,
  fill: Fill = 'none',
): AreaMark {
  return drawArea(layer, pen, fill, rectangle(at[0], at[1], width, height));
}

/** What of a text is not as usual; the usual is plain black text that starts at `at` and stands on its line. */
export interface TextStyle {
  readonly layer?: LayerName;
  readonly weight?: Weight;
  readonly align?: TextMark['align'];
  readonly baseline?: TextMark['baseline'];
  readonly turn?: number;
  readonly tone?: Tone;
}

export function drawText(at: Point, text: string, size: number, style: TextStyle = {}): TextMark {
  return {
    kind: 'text',
    layer: 'text',
    at,
    text,
    size,
    weight: 'plain',
    align: 'start',
    baseline: 'bottom',
    turn: 0,
    tone: 'black',
    ...style,
  };
}

/** Lines of text below each other, the first at `at`; an empty line leaves its room. */
export function drawTextLines(
  at: Point,
  lines: readonly string[],
  size: number,
  style: TextStyle = {},
): readonly TextMark[] {
  const turn = style.turn ?? 0;
  return lines.flatMap((line, k) => {
    if (line === '') return [];
    const down = k * size * LINE_STEP;
    return [drawText([at[0] + down * Math.sin(turn), at[1] - down * Math.cos(turn)], line, size, style)];
  });
}
