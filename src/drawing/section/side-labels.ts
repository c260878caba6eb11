import type { Point } from '../../engine/geometry/point.ts';
import type { Mark, Weight } from '../drawing.ts';
import { drawPath, drawTextLines } from '../marks.ts';
import { spreadPlaces } from '../spread.ts';
import { CAP_HEIGHT, DESCENT, LINE_STEP, measureText, wrapText } from '../text-size.ts';

/** Words beside a picture that name what lies at a point of it. */
export interface SideLabel {
  readonly words: string;
  readonly weight?: Weight;
  /** What it names [mm of the sheet]. */
  readonly at: Point;
}

/** A label with its lines. */
interface LaidLabel {
  readonly label: SideLabel;
  readonly lines: readonly string[];
  /** With the room that parts it from the next. */
  readonly height: number;
}

/** A column of labels whose sizes are known, whose places are not. */
export interface LaidColumn {
  readonly labels: readonly LaidLabel[];
  /** Of the widest line, and of all labels on top of each other [mm]. */
  readonly width: number;
  readonly height: number;
}

/** Between labels [mm]. */
const GAP = 1.4;

/** Turns labels into lines no wider than a column, the lowest first. */
export function layColumn(labels: readonly SideLabel[], width: number, size: number): LaidColumn {
  const laid = labels
    .map((label): LaidLabel => {
      const lines = wrapText(label.words, size, label.weight ?? 'plain', width);
      return { label, lines, height: heightOfLines(lines.length, size) + GAP };
    })
    .sort((a, b) => a.label.at[1] - b.label.at[1]);
  const widths = laid.flatMap(({ label, lines }) => lines.map((line) => measureText(line, size, label.weight)));
  return {
    labels: laid,
    width: Math.max(0, ...widths),
    height: laid.reduce((sum, { height }) => sum + height, 0),
  };
}

function heightOfLines(count: number, size: number): number {
  return ((count - 1) * LINE_STEP + CAP_HEIGHT + DESCENT) * size;
}

/** Where the middles of stacked labels lie: as near to what they name as they can without touching. */
function spreadLabels(labels: readonly LaidLabel[], from: number, to: number): readonly number[] {
  // Half heights taken off, "not touching" becomes "not falling".
  let below = 0;
  const offsets = labels.map(({ height }) => {
    const offset = below + height / 2;
    below += height;
    return offset;
  });
  const places = labels.map(({ label }, k) => label.at[1] - offsets[k]!);
  return spreadPlaces(places, 0, from, to - below).map((place, k) => place + offsets[k]!);
}

/** From what a label names straight to this far from the words, then slanted to them [mm]. */
const SLANT = 3;
const LEADER_GAP = 0.6;

/**
 * Draws a column of labels beside a picture, each tied to what it names.
 *
 * @param side to which side of the picture the column lies
 * @param edge x of the column's side that looks at the picture
 * @param from, to where labels may lie; at least as long as the column is high
 */
export function drawColumn(
  { labels }: LaidColumn,
  side: '-x' | '+x',
  edge: number,
  from: number,
  to: number,
  size: number,
): readonly Mark[] {
  const outward = side === '+x' ? 1 : -1;
  const middles = spreadLabels(labels, from, to);
  return labels.flatMap(({ label, lines }, k): Mark[] => {
    const middle = middles[k]!;
    const top = middle + heightOfLines(lines.length, size) / 2;
    const bend: Point = [edge - outward * (SLANT + LEADER_GAP), label.at[1]];
    const leader = [label.at, bend, [edge - outward * LEADER_GAP, middle] as const];
    return [
      drawPath('dimension', leader, 'hair'),
      ...drawTextLines([edge, top], lines, size, {
        layer: 'dimension',
        align: outward > 0 ? 'start' : 'end',
        baseline: 'top',
        weight: label.weight ?? 'plain',
      }),
    ];
  });
}

/** How far a stroke reaches to each side of its dimension line [mm of paper]. */
export const TICK = 1;

/** A line of dimensions across heights: a slanted stroke at each, and a hair line to what is dimensioned. */
export function drawChain(x: number, heights: readonly number[], feature: number): readonly Mark[] {
  const distinct = [...new Set(heights)];
  return [
    drawPath(
      'dimension',
      [
        [x, Math.min(...heights)],
        [x, Math.max(...heights)],
      ],
      'thin',
    ),
    ...distinct.flatMap((y): Mark[] => [
      drawPath(
        'dimension',
        [
          [feature, y],
          [x, y],
        ],
        'hair',
      ),
      drawPath(
        'dimension',
        [
          [x - TICK, y - TICK],
          [x + TICK, y + TICK],
        ],
        'medium',
      ),
    ]),
  ];
}
