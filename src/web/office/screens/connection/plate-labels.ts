import type { ConnectionSketch, SketchInsert } from '../../../../drawing/sketch/connection-sketch.ts';
import type { Point } from '../../../../engine/geometry/point.ts';
import { writeQuantity, writeValue } from '../../../parts/units.ts';
import { type Arrow, layArrow, type ScreenView } from './plate-marks.ts';

/** Longest and shortest arrow of an action, and of its share on one insert [px]. */
const ARROW = { most: 78, least: 26, share: 34 };
/** A force below this says nothing [N]. */
export const NOTHING = 0.5;
/** A sign of a label and its line, about [px]. */
const SIGN = { width: 7.4, height: 15, below: 4 };

/** A rectangle of the screen [px]. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Where a text may stand: a point of its base line, and which end of the text is there. */
export interface Place {
  readonly at: Point;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A text that looks for a place. */
export interface Label {
  readonly text: string;
  readonly kind: 'plain' | 'load';
  /** Best first. */
  readonly places: readonly Place[];
  /** It stands in the least crowded place where none is free; else it is left out there. */
  readonly isNeeded: boolean;
}

export interface PlacedLabel extends Place {
  readonly text: string;
  readonly kind: Label['kind'];
}

/** The room that a text takes at a place. */
export function boxOf(text: string, { at: [x, y], anchor }: Place): Box {
  const width = text.length * SIGN.width;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y + SIGN.below - SIGN.height, bottom: y + SIGN.below };
}

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width <= 0 || height <= 0 ? 0 : width * height;
}

/** Texts put one after another where they cover neither marks nor each other. */
export function placeLabels(labels: readonly Label[], marks: readonly Box[]): readonly PlacedLabel[] {
  const taken = [...marks];
  return labels.flatMap(({ text, kind, places, isNeeded }) => {
    const tried = places.map((place) => {
      const box = boxOf(text, place);
      return { place, box, covered: taken.reduce((sum, one) => sum + overlap(box, one), 0) };
    });
    const [first, ...others] = tried;
    if (first === undefined) return [];
    const best = others.reduce((least, one) => (one.covered < least.covered ? one : least), first);
    if (best.covered > 0 && !isNeeded) return [];
    taken.push(best.box);
    return [{ text, kind, ...best.place }];
  });
}

const around = ([x, y]: Point, reach: number): Box => ({
  left: x - reach,
  right: x + reach,
  top: y - reach,
  bottom: y + reach,
});

/** The room along a line, as small squares. */
function alongLine([x0, y0]: Point, [x1, y1]: Point): readonly Box[] {
  const count = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 6));
  return Array.from({ length: count + 1 }, (_, i) =>
    around([x0 + ((x1 - x0) * i) / count, y0 + ((y1 - y0) * i) / count], 4),
  );
}

/** The share of the shear on one insert; null where there is none. */
export function layShare({ put }: ScreenView, { at, load }: SketchInsert, largest: number): Arrow | null {
  if (load === null) return null;
  const shear = Math.hypot(load.Vx, load.Vy);
  return shear < NOTHING
    ? null
    : layArrow(put(at), [load.Vx, load.Vy], 14 + (ARROW.share * shear) / Math.max(largest, shear), 7);
}

/** The shear that the plate puts on the panel; null where there is none. */
export function layAction({ put }: ScreenView, { action, largestShear }: ConnectionSketch): Arrow | null {
  if (action === null) return null;
  const shear = Math.hypot(action.Vx, action.Vy);
  const length = Math.max(ARROW.least, (ARROW.most * shear) / largestShear);
  return shear < NOTHING ? null : layArrow(put(action.at), [action.Vx, action.Vy], length, 13);
}

const place = (x: number, y: number, anchor: Place['anchor']): Place => ({ at: [x, y], anchor });

/** The corners about a point, the upper left first; then above and below. */
function cornersOf([x, y]: Point, reach: number): readonly Place[] {
  const [near, low] = [reach + 5, reach + 11];
  return [
    place(x - near, y - 6, 'end'),
    place(x - near, y + 16, 'end'),
    place(x + near, y - 6, 'start'),
    place(x + near, y + 16, 'start'),
    place(x, y - low, 'middle'),
    place(x, y + low + 9, 'middle'),
  ];
}

/** Distance of a figure along its line, from the insert to the edge; the nearest to the edge has the most room. */
const ALONG = [0.62, 0.75, 0.5, 0.88] as const;

function labelDistances(view: ScreenView, { distances }: ConnectionSketch): readonly Label[] {
  return distances.flatMap(({ from, to, length }): readonly Label[] => {
    const [[x0, y0], [x1, y1]] = [view.put(from), view.put(to)];
    if (Math.hypot(x1 - x0, y1 - y0) < 1) return [];
    const isUpright = Math.abs(y1 - y0) > Math.abs(x1 - x0);
    const places = ALONG.flatMap((part): readonly Place[] => {
      const [x, y] = [x0 + (x1 - x0) * part, y0 + (y1 - y0) * part];
      return isUpright
        ? [place(x + 6, y, 'start'), place(x - 6, y, 'end')]
        : [place(x, y - 6, 'middle'), place(x, y + 16, 'middle')];
    });
    return [{ text: writeQuantity('length', length), kind: 'plain', places, isNeeded: true }];
  });
}

function labelAction(view: ScreenView, sketch: ConnectionSketch): readonly Label[] {
  const { action } = sketch;
  if (action === null) return [];
  const [x, y] = view.put(action.at);
  const arrow = layAction(view, sketch);
  const labels: Label[] = [];
  if (Math.abs(action.N) > NOTHING)
    labels.push({
      text: `N ${writeQuantity('force', Math.abs(action.N) / 1000)} ${action.N > 0 ? 'out' : 'in'}`,
      kind: 'load',
      places: [
        ...[26, -16, 44, -34, 62, -52].map((down) => place(x, y + down, 'middle')),
        place(x + 16, y + 5, 'start'),
        place(x - 16, y + 5, 'end'),
      ],
      isNeeded: true,
    });
  if (arrow !== null) {
    const [tx, ty] = arrow.tip;
    labels.push({
      text: `V ${writeQuantity('force', Math.hypot(action.Vx, action.Vy) / 1000)}`,
      kind: 'load',
      places: [
        place(tx + 8, ty + 14, 'start'),
        place(tx - 8, ty + 14, 'end'),
        place(tx, ty + 20, 'middle'),
        place(tx, ty - 12, 'middle'),
        place((x + tx) / 2, y - 14, 'middle'),
        place(tx + 10, ty - 4, 'start'),
        place(tx - 10, ty - 4, 'end'),
      ],
      isNeeded: true,
    });
  }
  return labels;
}

/** All texts of the picture where they cover nothing: names of inserts and the action first, shares of the tension where room is left. */
export function labelPlate(view: ScreenView, sketch: ConnectionSketch): readonly PlacedLabel[] {
  const { inserts, action, largestShear } = sketch;
  const reachOf = ({ body }: SketchInsert) => Math.max(3, (body / 2) * view.scale);
  const arrowOf = (insert: SketchInsert) => layShare(view, insert, largestShear);
  const actionArrow = layAction(view, sketch);
  const marks: readonly Box[] = [
    ...inserts.map((insert) => around(view.put(insert.at), reachOf(insert))),
    ...inserts.flatMap((insert) => {
      const arrow = arrowOf(insert);
      return arrow === null ? [] : alongLine(view.put(insert.at), arrow.tip);
    }),
    ...(action === null || Math.abs(action.N) <= NOTHING ? [] : [around(view.put(action.at), 10)]),
    ...(action === null || actionArrow === null ? [] : alongLine(view.put(action.at), actionArrow.tip)),
  ];
  const names = inserts.map(
    (insert): Label => ({
      text: insert.id,
      kind: 'plain',
      places: cornersOf(view.put(insert.at), reachOf(insert)),
      isNeeded: true,
    }),
  );
  const shares = inserts.flatMap((insert): readonly Label[] => {
    const { load, at } = insert;
    if (load === null || load.N <= NOTHING) return [];
    const [upperLeft, lowerLeft, upperRight, lowerRight, ...others] = cornersOf(view.put(at), reachOf(insert));
    const places = [lowerRight, upperRight, lowerLeft, upperLeft, ...others].filter((one) => one !== undefined);
    const text = `N ${writeValue('force', load.N / 1000)}`;
    return [{ text, kind: 'load', places, isNeeded: false }];
  });
  const needed = [...names, ...labelAction(view, sketch), ...labelDistances(view, sketch)];
  const placed = placeLabels([...needed, ...shares], marks);
  // Figures of some inserts and not of others would say that those carry nothing.
  return placed.length === needed.length + shares.length ? placed : placed.slice(0, needed.length);
}
