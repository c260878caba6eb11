import type { PlanBar } from '../../assess/set-out/lay-bars.ts';
import type { PanelSetOut, SetOutItem } from '../../assess/set-out/set-out.ts';
import { writeNumbers } from '../../assess/set-out/write-numbers.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { type Box, boxAround, textCorners } from '../boxes.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { DrawingError } from '../drawing-error.ts';
import { insertSymbol } from '../insert-symbol.ts';
import { type LabelWish, placeLabels } from '../label-places.ts';
import { drawLine, drawText } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { drawRunningDimensions, lengthForFigures } from '../running-dimensions.ts';
import { ASCENT, DESCENT, measureText } from '../text-size.ts';
import { listBarsNear } from './bars-near.ts';
import { findScale, PAPERS, TYPE } from './paper.ts';
import { listPlanRows, type PlanRow } from './plan-dimensions.ts';

/** The panel as it lies in the form, drawn to scale on paper. */
export interface PanelPlan {
  /** From the lower corner of least x of the room that was given. */
  readonly marks: readonly Mark[];
  /** 1 : scale. */
  readonly scale: number;
  /** Where on paper the plan's own origin lies. */
  readonly origin: Point;
  /** What found no room on the plan and must be looked up in the list, in sentences. */
  readonly notes: readonly string[];
}

/** From the outline to the first row, and between rows [mm on paper]. */
const FIRST_ROW = 7.5;
const ROW_GAP = 2.5;
/** What a row takes beside its figures [mm], as `running-dimensions.ts` draws it. */
const ROW_STEPS = 5.4;
/** Room for the name of a rail or end [mm]. */
const NAME = 7;
/** Room beyond the panel for what a row is of [mm]. */
const ROW_WORDS = 13;
/** Side of the solid square at the datum corner [mm]. */
const DATUM = 5;
const FIGURE = TYPE.small;
/** Of symbols: as large as the nearest neighbours leave room for, within these. */
const SYMBOL_RADIUS = { least: 0.8, most: 1.7 };

function depthOfRows(rows: readonly PlanRow[]): number {
  return rows.reduce(
    (sum, { dimensions }) =>
      sum + ROW_STEPS + ROW_GAP + Math.max(0, ...dimensions.map(({ text }) => measureText(text, FIGURE))),
    FIRST_ROW,
  );
}

/** Where the panel lies on paper, and at which scale. */
interface Layout {
  readonly scale: number;
  readonly origin: Point;
  readonly rows: readonly [x: readonly PlanRow[], y: readonly PlanRow[]];
  readonly isStart: boolean;
  readonly isRailA: boolean;
  /** Rows that have no room. */
  readonly omitted: readonly string[];
}

/** Rows and the scale that goes with them in some room; null where not even the panel fits. */
function tryRows(
  setOut: PanelSetOut,
  rows: Layout['rows'],
  box: { readonly width: number; readonly height: number },
): {
  readonly scale: number;
  readonly below: number;
  readonly beside: number;
  readonly room: readonly [number, number];
} | null {
  const [below, beside] = [depthOfRows(rows[0]) + NAME, depthOfRows(rows[1]) + NAME];
  const room = [box.width - beside - ROW_WORDS, box.height - below - ROW_WORDS] as const;
  const scale = findScale([
    [setOut.length, room[0]],
    [setOut.width, room[1]],
  ]);
  return scale === null ? null : { scale, below, beside, room };
}

/**
 * Places the panel and its rows of dimensions. A row with more figures than its side has room for is left out whole, and named: the list has
 * every figure.
 */
function layOut(setOut: PanelSetOut, box: { readonly width: number; readonly height: number }): Layout {
  const isStart = setOut.datum.endsWith('left');
  const isRailA = setOut.datum.startsWith('bottom');
  const all = [listPlanRows(setOut, 0), listPlanRows(setOut, 1)] as const;
  const first = tryRows(setOut, all, box);
  const fits = (row: PlanRow, room: number) => lengthForFigures(row.dimensions.length, FIGURE) <= room;
  const rows =
    first === null ? all : ([0, 1] as const).map((axis) => all[axis].filter((row) => fits(row, first.room[axis])));
  const kept: Layout['rows'] = [rows[0]!, rows[1]!];
  const laid = tryRows(setOut, kept, box);
  if (laid === null)
    throw new DrawingError(
      `its plan does not fit on ${box.width.toFixed(0)} × ${box.height.toFixed(0)} mm; expected a larger sheet`,
    );
  const { scale, below, beside, room } = laid;
  const [w, h] = [setOut.length / scale, setOut.width / scale];
  // In the middle of the room that is left.
  const x = (isStart ? beside : ROW_WORDS) + (room[0] - w) / 2;
  const y = (isRailA ? below : ROW_WORDS) + (room[1] - h) / 2;
  const omitted = ([0, 1] as const).flatMap((axis) =>
    all[axis].filter((row) => !kept[axis].includes(row)).map(({ words }) => `${words} along ${axis === 0 ? 'x' : 'y'}`),
  );
  return { scale, origin: [x, y], rows: kept, isStart, isRailA, omitted };
}

function drawRows(setOut: PanelSetOut, layout: Layout, box: Box): readonly Mark[] {
  const { scale, origin, rows, isStart, isRailA } = layout;
  const marks: Mark[] = [];
  for (const axis of [0, 1] as const) {
    const isLow = axis === 0 ? isRailA : isStart;
    const across = axis === 0 ? 1 : 0;
    const extent = (axis === 0 ? setOut.width : setOut.length) / scale;
    const outward = isLow ? -1 : 1;
    let line = origin[across] + (isLow ? 0 : extent) + outward * FIRST_ROW;
    const counts = axis === 0 ? isStart : isRailA;
    const toPaper = (distance: number) =>
      origin[axis] + (counts ? distance : (axis === 0 ? setOut.length : setOut.width) - distance) / scale;
    const reach: [number, number] = axis === 0 ? [box.x, box.x + box.width] : [box.y, box.y + box.height];
    for (const row of rows[axis]) {
      const drawn = drawRunningDimensions({
        side: `${isLow ? '-' : '+'}${axis === 0 ? 'y' : 'x'}`,
        line,
        from: Math.max(reach[0], origin[axis] - 14),
        to: Math.min(reach[1], origin[axis] + (axis === 0 ? setOut.length : setOut.width) / scale + 14),
        datum: toPaper(0),
        size: FIGURE,
        dimensions: row.dimensions.map(({ at, text }) => ({ at: toPaper(at), text })),
      });
      marks.push(
        ...drawn.marks,
        nameRow(
          row,
          line,
          row.dimensions.map(({ at }) => toPaper(at)),
          counts,
        ),
      );
      line += outward * (drawn.depth + ROW_GAP);
    }
    marks.push(...nameSide(setOut, layout, axis, line));
  }
  return marks;
}

/** What a row is of, beyond its figure that is farthest from the datum. */
function nameRow({ words, axis }: PlanRow, line: number, places: readonly number[], isRising: boolean): Mark {
  const end = isRising ? Math.max(...places) + 3 : Math.min(...places) - 3;
  return drawText(axis === 0 ? [end, line] : [line, end], words, TYPE.small, {
    align: isRising ? 'start' : 'end',
    baseline: 'middle',
    turn: axis === 0 ? 0 : Math.PI / 2,
  });
}

/** The two names of an axis's sides: beyond the rows on the datum's side, right at the form on the other. */
function nameSide(setOut: PanelSetOut, { origin, scale, isStart, isRailA }: Layout, axis: 0 | 1, line: number): Mark[] {
  const { words } = setOut;
  const middle = origin[axis] + (axis === 0 ? setOut.length : setOut.width) / scale / 2;
  const isLow = axis === 0 ? isRailA : isStart;
  const names = axis === 0 ? [words.railA, words.railB] : [words.start, words.finish];
  const [low, high] = [origin[1 - axis]!, origin[1 - axis]! + (axis === 0 ? setOut.width : setOut.length) / scale];
  const places = isLow ? [line - 1.5, high + 3.5] : [low - 3.5, line + 1.5];
  return names.map((name, i) =>
    drawText(axis === 0 ? [middle, places[i]!] : [places[i]!, middle], name, TYPE.body, {
      align: 'middle',
      baseline: 'middle',
      turn: axis === 0 ? 0 : Math.PI / 2,
    }),
  );
}

/** The datum corner: a solid square outside the form, as it is painted on it, with its word beyond. */
function drawDatum(setOut: PanelSetOut, { origin, scale, isStart, isRailA }: Layout): readonly Mark[] {
  const at: Point = [origin[0] + setOut.datumAt[0] / scale, origin[1] + setOut.datumAt[1] / scale];
  const [dx, dy] = [isStart ? -1 : 1, isRailA ? -1 : 1];
  const size = DATUM;
  return [
    {
      kind: 'area',
      layer: 'datum',
      pen: null,
      fill: 'black',
      rings: [[at, [at[0] + dx * size, at[1]], [at[0] + dx * size, at[1] + dy * size], [at[0], at[1] + dy * size]]],
    },
    drawText([at[0] + dx * 9.5, at[1] + dy * 10.5], 'DATUM', TYPE.body, {
      layer: 'datum',
      weight: 'bold',
      align: isStart ? 'end' : 'start',
      baseline: 'middle',
    }),
  ];
}

interface Label {
  readonly wish: LabelWish;
  readonly words: string;
  readonly weight: 'plain' | 'bold';
  readonly size: number;
  readonly number: number | null;
}

function toLabel(
  at: Point,
  radius: number,
  words: string,
  size: number,
  weight: Label['weight'],
  number: number | null,
): Label {
  const width = measureText(words, size, weight) + 0.6;
  return {
    wish: { anchor: at, radius, width, height: (ASCENT + DESCENT) * size, weight: number === null ? 0.3 : 1 },
    words,
    weight,
    size,
    number,
  };
}

/** What stands at an insert: its number and the letter of its section. */
function labelOf(item: SetOutItem): string {
  return item.assembly === null ? String(item.number) : `${item.number} ${item.assembly}`;
}

function findSymbolRadius(items: readonly SetOutItem[], scale: number): number {
  const { least, most } = SYMBOL_RADIUS;
  let radius = most;
  for (const [i, a] of items.entries())
    for (const b of items.slice(i + 1))
      radius = Math.min(radius, Math.hypot(a.plan[0] - b.plan[0], a.plan[1] - b.plan[1]) / scale / 2.3);
  return Math.max(least, radius);
}

/** Where labels may lie: on the panel, and beside it as far as the first row of dimensions or the name of a side lets them. */
function labelFrame(setOut: PanelSetOut, { origin, scale, isStart, isRailA }: Layout): Box {
  const [rows, name] = [FIRST_ROW - 2.5, ROW_WORDS - 6];
  const [left, below] = [isStart ? rows : name, isRailA ? rows : name];
  return {
    x: origin[0] - left,
    y: origin[1] - below,
    width: setOut.length / scale + rows + name,
    height: setOut.width / scale + rows + name,
  };
}

/** The solid square of the datum corner, which no label lies on. */
function datumBox(setOut: PanelSetOut, { origin, scale, isStart, isRailA }: Layout): Box {
  const x = origin[0] + setOut.datumAt[0] / scale - (isStart ? DATUM : 0);
  const y = origin[1] + setOut.datumAt[1] / scale - (isRailA ? DATUM : 0);
  return { x, y, width: DATUM, height: DATUM };
}

function describeMissing(unlabelled: readonly number[], omitted: readonly string[]): readonly string[] {
  return [
    ...(unlabelled.length === 0
      ? []
      : [`No room on the plan for the numbers ${writeNumbers(unlabelled)}: find them by x and y.`]),
    ...(omitted.length === 0
      ? []
      : [`No room on the plan for the figures of ${omitted.join(', ')}: they are in the list.`]),
  ];
}

/** Draws a panel in room of a width and height on paper [mm]. */
export function drawPanelPlan(setOut: PanelSetOut, bars: readonly PlanBar[], width: number, height: number): PanelPlan {
  const layout = layOut(setOut, { width, height });
  const { scale, origin } = layout;
  const toPaper = ([x, y]: Point): Point => [origin[0] + x / scale, origin[1] + y / scale];
  const marks: Mark[] = [];
  const outline = setOut.outline.map(toPaper);
  const openings = setOut.openings.map((ring) => ring.map(toPaper));
  const near = listBarsNear(
    bars,
    setOut.items.map(({ plan }) => plan),
  );
  for (const [from, to] of near) marks.push(drawLine('bar', toPaper(from), toPaper(to), 'faint'));
  marks.push({ kind: 'area', layer: 'outline', rings: [outline], pen: 'thick', fill: 'none' });
  for (const ring of openings) {
    marks.push({ kind: 'area', layer: 'opening', rings: [ring], pen: 'medium', fill: 'hatch' });
  }
  const around = [...drawRows(setOut, layout, { x: 0, y: 0, width, height }), ...drawDatum(setOut, layout)];
  marks.push(...around);
  const radius = findSymbolRadius(setOut.items, scale);
  const labels: Label[] = [];
  for (const item of setOut.items) {
    const at = toPaper(item.plan);
    marks.push(insertSymbol(item, at, radius));
    labels.push(toLabel(at, radius, labelOf(item), TYPE.body, 'bold', item.number));
  }
  const byNumber = new Map(setOut.items.map((item) => [item.number, item]));
  for (const { connection, members } of setOut.groups) {
    const points = members.map(({ number }) => toPaper(byNumber.get(number)!.plan));
    const middle: Point = [
      points.reduce((sum, [x]) => sum + x, 0) / points.length,
      points.reduce((sum, [, y]) => sum + y, 0) / points.length,
    ];
    labels.push(toLabel(middle, 0.2, connection, TYPE.small, 'plain', null));
  }
  if (!setOut.form.isRectangle)
    for (const [i, corner] of outline.entries())
      labels.push(toLabel(corner, 0.5, `corner ${i + 1}`, TYPE.small, 'plain', null));
  const places = placeLabels(
    labels.map(({ wish }) => wish),
    {
      frame: labelFrame(setOut, layout),
      obstacles: [
        ...openings.map(boxAround),
        datumBox(setOut, layout),
        ...around.flatMap((mark) => (mark.kind === 'text' ? [boxAround(textCorners(mark))] : [])),
      ],
      lines: [outline, ...openings].flatMap((ring) =>
        ring.map((corner, i): readonly [Point, Point] => [corner, ring[(i + 1) % ring.length]!]),
      ),
      gap: 1.2,
    },
  );
  const unlabelled: number[] = [];
  for (const [i, { words, weight, size, number }] of labels.entries()) {
    const place = places[i];
    if (place === null || place === undefined) {
      if (number !== null) unlabelled.push(number);
      continue;
    }
    if (place.leader !== null) marks.push(drawLine('insert', ...place.leader, 'hair'));
    marks.push(drawText([place.box.x + 0.3, place.box.y + DESCENT * size], words, size, { weight, layer: 'insert' }));
  }
  return { marks, scale, origin, notes: describeMissing(unlabelled, layout.omitted) };
}

/** The plan of a panel in mm of the panel, its plan's origin at (0, 0): for files that are read and measured. `scale`: that of its texts. */
export function drawPanelAtSize(
  setOut: PanelSetOut,
  bars: readonly PlanBar[],
): {
  readonly drawing: Drawing;
  readonly scale: number;
  readonly notes: readonly string[];
} {
  const { marks, scale, origin, notes } = drawPanelPlan(setOut, bars, PAPERS.A3.width, PAPERS.A3.height);
  const move: Point = [-origin[0] * scale, -origin[1] * scale];
  return {
    drawing: { width: setOut.length, height: setOut.width, marks: placeMarks(marks, { scale, move }) },
    scale,
    notes,
  };
}
