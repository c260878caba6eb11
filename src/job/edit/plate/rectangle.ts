import type { Point, Polygon } from '../../../engine/geometry/point.ts';

/** A rectangle with its sides along x and y [mm]. */
export interface Rectangle {
  readonly middle: Point;
  readonly width: number;
  readonly height: number;
}

/** A plate's outline as a rectangle with its sides along the plate's axes; null where it is another shape. */
export function findRectangle(outline: Polygon): Rectangle | null {
  if (outline.length !== 4) return null;
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const corners = new Set(outline.map(([x, y]) => `${x} ${y}`));
  const isThere = [x0, x1].every((x) => [y0, y1].every((y) => corners.has(`${x} ${y}`)));
  if (!isThere || x0 === x1 || y0 === y1) return null;
  return { middle: [(x0 + x1) / 2, (y0 + y1) / 2], width: x1 - x0, height: y1 - y0 };
}

/** Corners of a rectangle, counter-clockwise from the lower left. */
export function makeRectangle({ middle: [x, y], width, height }: Rectangle): [number, number][] {
  const [w, h] = [width / 2, height / 2];
  return [
    [x - w, y - h],
    [x + w, y - h],
    [x + w, y + h],
    [x - w, y + h],
  ];
}
