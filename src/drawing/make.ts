import type { Point } from '../engine/geometry/point.ts';
import type { AreaMark, CircleMark, Fill, LineMark, PolylineMark, TextMark } from './drawing.ts';
import type { LayerName } from './layers.ts';
import type { PenName } from './pens.ts';

/** Short ways to make the marks that every drawing is full of. All lengths mm. */

export function line(layer: LayerName, pen: PenName, from: Point, to: Point): LineMark {
  return { kind: 'line', layer, from, to, pen };
}

export function path(layer: LayerName, pen: PenName, points: readonly Point[], isClosed = false): PolylineMark {
  return { kind: 'polyline', layer, points, isClosed, pen };
}

export function area(
  layer: LayerName,
  pen: PenName | null,
  fill: Fill,
  ...rings: readonly (readonly Point[])[]
): AreaMark {
  return { kind: 'area', layer, rings, pen, fill };
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

export function circle(layer: LayerName, pen: PenName | null, fill: Fill, at: Point, radius: number): CircleMark {
  return { kind: 'circle', layer, at, radius, pen, fill };
}

/** A line of text; what is left out: plain, black, level, its start on the line. */
export function text(
  layer: LayerName,
  at: Point,
  size: number,
  words: string,
  more: Partial<Pick<TextMark, 'weight' | 'align' | 'baseline' | 'turn' | 'tone'>> = {},
): TextMark {
  return {
    kind: 'text',
    layer,
    at,
    text: words,
    size,
    weight: 'plain',
    align: 'start',
    baseline: 'bottom',
    turn: 0,
    tone: 'black',
    ...more,
  };
}
