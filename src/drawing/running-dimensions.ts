import type { Point } from '../engine/geometry/point.ts';
import type { Mark } from './drawing.ts';
import { DrawingError } from './drawing-error.ts';
import { drawLine, drawPath, drawText } from './marks.ts';
import { spreadPlaces } from './spread.ts';
import { LINE_STEP, measureText } from './text-size.ts';

/** One figure of a row of running dimensions. */
export interface RunningDimension {
  /** Where it is, along the row [mm of the drawing]. */
  readonly at: number;
  /** What is written: the distance from the datum. */
  readonly text: string;
  /** Across the row: where what is dimensioned lies, for a line to it; left out: none [mm of the drawing]. */
  readonly feature?: number;
}

/** A row of running dimensions: every figure from one datum, as ISO 129-1 has it (recalled). */
export interface RunningRow {
  /** To which side of the drawing the figures go. */
  readonly side: '+x' | '-x' | '+y' | '-y';
  /** Across the row: where its line lies [mm of the drawing]. */
  readonly line: number;
  /** Along the row: where the figures may lie. */
  readonly from: number;
  readonly to: number;
  /** Along the row: the datum, marked with a circle. */
  readonly datum: number;
  readonly dimensions: readonly RunningDimension[];
  /** Font size [mm]. */
  readonly size: number;
}

/** Marks of a row, and how far it reaches from its line [mm]. */
export interface RunningRowMarks {
  readonly marks: readonly Mark[];
  readonly depth: number;
}

/** From the line outward: straight, then slanted to where the figure is, then straight up to it [mm]. */
const STEPS = { stub: 1.4, slant: 2.6, end: 0.8, gap: 0.6 };
const TICK = 1.1;
const DATUM_RADIUS = 1.1;

/** Figures of one place and text are one; in rising order. */
function sortDimensions(
  dimensions: readonly RunningDimension[],
): readonly (RunningDimension & { features: number[] })[] {
  const groups = new Map<string, RunningDimension & { features: number[] }>();
  for (const dimension of dimensions) {
    const key = `${dimension.at.toFixed(3)} ${dimension.text}`;
    const group = groups.get(key) ?? { ...dimension, features: [] };
    if (dimension.feature !== undefined) group.features.push(dimension.feature);
    groups.set(key, group);
  }
  return [...groups.values()].sort((a, b) => a.at - b.at);
}

/** Length along the row that so many figures need [mm]. */
export function lengthForFigures(count: number, size: number): number {
  return count * size * LINE_STEP;
}

/**
 * Draws a row of running dimensions: a tick at every true place, a figure outward of it, at a right angle to the row. Figures that would touch
 * are moved apart as little as possible, in order, and tied to their tick by a slanted line.
 * Throws DrawingError when the figures do not fit between `from` and `to` at all.
 */
export function drawRunningDimensions(row: RunningRow): RunningRowMarks {
  const { side, line, size, from, to } = row;
  const dimensions = sortDimensions(row.dimensions);
  const needed = lengthForFigures(dimensions.length, size);
  if (needed > to - from)
    throw new DrawingError(
      `${dimensions.length} running dimensions of size ${size} mm need ${needed.toFixed(1)} mm; ${(to - from).toFixed(1)} mm were given; expected a larger scale or a smaller figure`,
    );
  const outward = side.startsWith('+') ? 1 : -1;
  const isAlongX = side.endsWith('y');
  const point = (along: number, out: number): Point => {
    const across = line + outward * out;
    return isAlongX ? [along, across] : [across, along];
  };
  const pitch = size * LINE_STEP;
  const places = spreadPlaces(
    dimensions.map(({ at }) => at),
    pitch,
    from + pitch / 2,
    to - pitch / 2,
  );
  const reach = STEPS.stub + STEPS.slant + STEPS.end;
  const marks: Mark[] = [];
  const ends = [row.datum, ...dimensions.map(({ at }) => at)];
  marks.push(drawLine('dimension', point(Math.min(...ends), 0), point(Math.max(...ends), 0), 'thin'));
  marks.push({
    kind: 'circle',
    layer: 'dimension',
    at: point(row.datum, 0),
    radius: DATUM_RADIUS,
    pen: 'thin',
    fill: 'white',
  });
  let widest = 0;
  for (const [k, { at, text, features }] of dimensions.entries()) {
    const place = places[k]!;
    marks.push(...drawTick(at, point, row.datum));
    for (const feature of features) {
      const inward = (feature - line) * outward;
      if (inward < 0) marks.push(drawLine('dimension', point(at, inward), point(at, 0), 'hair'));
    }
    const leader = [point(at, 0), point(at, STEPS.stub), point(place, STEPS.stub + STEPS.slant), point(place, reach)];
    marks.push(drawPath('dimension', leader, 'hair'));
    marks.push(
      drawText(point(place, reach + STEPS.gap), text, size, {
        layer: 'dimension',
        align: outward > 0 ? 'start' : 'end',
        baseline: 'middle',
        turn: isAlongX ? Math.PI / 2 : 0,
      }),
    );
    widest = Math.max(widest, measureText(text, size));
  }
  return { marks, depth: reach + STEPS.gap + widest };
}

/** A short slanted stroke across the row's line; the datum has its circle. */
function drawTick(at: number, point: (along: number, out: number) => Point, datum: number): Mark[] {
  if (at === datum) return [];
  return [drawLine('dimension', point(at - TICK, -TICK), point(at + TICK, TICK), 'medium')];
}
