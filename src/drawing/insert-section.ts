import type { CatalogueItem } from '../job/documents/catalogue.ts';
import type { Drawing, Mark } from './drawing.ts';
import { drawArea, drawLine, drawText, rectangle } from './marks.ts';
import { placeMarks } from './place.ts';
import type { SectionFrame } from './section/section-frame.ts';
import { drawCrossHole, drawInsertBody, findFootDiameter } from './section/section-insert.ts';
import { findScale } from './sheets/paper.ts';
import { measureText } from './text-size.ts';

/** Scale 1 : n of the small drawings of a list: all alike, so that inserts can be compared by eye. */
const LIST_SCALE = 5;
/** Concrete shown beside the foot and below it [mm of the insert]. */
const BESIDE = 12;
const BELOW = 10;
/** Height over the face: the axis reaches out [mm of the insert]. */
const ABOVE = 10;
const TEXT = 3.1;
/** From the concrete to the first line of dimensions, and to the next; a tick's half length [mm of paper]. */
const STEP = 7;
const TICK = 0.9;
/** The largest size of the dimensioned insert [mm of paper]. */
const ROOM = { width: 70, height: 78 };

/** The top of the insert at (0, 0), in the face of the concrete; its foot below. */
const FRAME: SectionFrame = { top: [0, 0], along: [0, -1], tilt: 0, axisHeight: 0, step: [0, 0] };

function drawBare(item: CatalogueItem): {
  readonly marks: readonly Mark[];
  readonly half: number;
  readonly deep: number;
} {
  const half = Math.max(findFootDiameter(item), item.bodyDiameter_mm) / 2 + BESIDE;
  const deep = item.length_mm + BELOW;
  return {
    marks: [
      drawArea('section', null, 'light', rectangle(-half, -deep, 2 * half, deep)),
      drawLine('section', [-half, 0], [half, 0], 'medium'),
      ...drawInsertBody(FRAME, item),
      ...drawCrossHole(FRAME, item),
    ],
    half,
    deep,
  };
}

/** An insert in section at 1:5, the face of the concrete above and its foot below. Lengths of the drawing: mm of paper. */
export function drawInsertSmall(item: CatalogueItem): Drawing {
  const { marks, half, deep } = drawBare(item);
  const scale = 1 / LIST_SCALE;
  return {
    width: 2 * half * scale,
    height: (deep + ABOVE) * scale,
    marks: placeMarks(marks, { scale, move: [half * scale, deep * scale] }),
  };
}

interface Upright {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** A row of upright dimensions to one side of the insert, each in a line of its own. */
function drawUprights(rows: readonly Upright[], start: number, side: 1 | -1): readonly Mark[] {
  return rows.flatMap(({ from, to, text }, k): readonly Mark[] => {
    const x = start + side * STEP * (k + 0.6);
    return [
      drawLine('dimension', [x, from], [x, to], 'hair'),
      ...[from, to].flatMap((y) => [
        drawLine('dimension', [start - side * 1, y], [x + side * TICK, y], 'hair'),
        drawLine('dimension', [x - TICK, y - TICK], [x + TICK, y + TICK], 'thin'),
      ]),
      drawText([x - 1, (from + to) / 2], text, TEXT, {
        layer: 'dimension',
        align: 'middle',
        turn: Math.PI / 2,
      }),
    ];
  });
}

/** A level dimension around the axis, its text below the line. */
function drawLevel(width: number, y: number, feature: number, text: string): readonly Mark[] {
  const half = width / 2;
  return [
    drawLine('dimension', [-half, y], [half, y], 'hair'),
    ...[-half, half].flatMap((x) => [
      drawLine('dimension', [x, feature], [x, y - TICK], 'hair'),
      drawLine('dimension', [x - TICK, y - TICK], [x + TICK, y + TICK], 'thin'),
    ]),
    drawText([0, y - 1.2], text, TEXT, { layer: 'dimension', align: 'middle', baseline: 'top' }),
  ];
}

/**
 * An insert in section with its dimensions, at the largest handy scale. Lengths of the drawing: mm of paper.
 * @param write a length [mm] in the units of the reader, without the unit
 */
export function drawInsertDimensioned(
  item: CatalogueItem,
  write: (length: number) => string,
): { readonly drawing: Drawing; readonly scale: number } {
  const { marks, half, deep } = drawBare(item);
  const scale = findScale([
    [2 * half, ROOM.width],
    [deep, ROOM.height],
  ]);
  // Longer than anything that is cast in: drawn at the least scale of all.
  const n = scale ?? Math.ceil(Math.max((2 * half) / ROOM.width, deep / ROOM.height));
  const s = 1 / n;
  const foot = findFootDiameter(item);
  const start = item.threadStartsBelowTop_mm;
  const left: Upright[] = [{ from: 0, to: -item.length_mm * s, text: `length ${write(item.length_mm)}` }];
  const right: Upright[] = [
    {
      from: -start * s,
      to: -(start + item.threadDepth_mm) * s,
      text: `thread ${write(item.threadDepth_mm)}`,
    },
    { from: 0, to: -item.embedment_mm * s, text: `embedment ${write(item.embedment_mm)}` },
  ];
  const footText =
    item.foot.kind === 'diameter' ? `foot ${write(foot)}` : `foot, round one of the same area ${write(foot)}`;
  const bottom = -deep * s;
  const heading = `${item.thread}, body ${write(item.bodyDiameter_mm)}`;
  const reach = Math.max(half * s + 2.6 * STEP, measureText(footText, TEXT) / 2, measureText(heading, TEXT) / 2) + 2;
  const above = ABOVE * s + 8;
  const below = -bottom + STEP + 6;
  const all: readonly Mark[] = [
    ...placeMarks(marks, { scale: s, move: [0, 0] }),
    ...drawUprights(left, -half * s, -1),
    ...drawUprights(right, half * s, 1),
    ...drawLevel(foot * s, bottom - 3, -item.length_mm * s - 1, footText),
    drawText([0, ABOVE * s + 2], heading, TEXT, { layer: 'dimension', align: 'middle', weight: 'bold' }),
  ];
  return {
    drawing: { width: 2 * reach, height: above + below, marks: placeMarks(all, { scale: 1, move: [reach, below] }) },
    scale: n,
  };
}
