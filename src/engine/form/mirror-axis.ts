import type { Point } from '../geometry/point.ts';
import type { TapedDistance } from './taped-distance.ts';

/** A straight line, by a point of it and a unit direction. */
export interface Axis {
  readonly through: Point;
  readonly along: Point;
}

/** Points no farther from a line [mm], and directions no farther from square to it, lie on it and are square. */
const ON_LINE = 1e-6;

/**
 * The line in which a set of distances is its own mirror image, so that they fit two places alike: through all points, square to all
 * edges. Null: there is none, the distances tell both sides apart.
 */
export function findMirrorAxis(measured: readonly TapedDistance[]): Axis | null {
  const points = measured.flatMap(({ to }) => (to.kind === 'point' ? [to.at] : []));
  const edges = measured.flatMap(({ to }) => (to.kind === 'edge' ? [unit(to.from, to.end)] : []));
  const [through] = points;
  if (through === undefined) return null;
  const other = points.find((at) => Math.hypot(at[0] - through[0], at[1] - through[1]) > ON_LINE);
  const [edge] = edges;
  if (other === undefined && edge === undefined) return null;
  const along: Point = other === undefined ? [0 - edge![1], edge![0]] : unit(through, other);
  const axis: Axis = { through, along };
  const isItsImage =
    points.every((at) => Math.abs(sideOf(axis, at)) <= ON_LINE) &&
    edges.every(([x, y]) => Math.abs(x * along[0] + y * along[1]) <= ON_LINE);
  return isItsImage ? axis : null;
}

/**
 * The place on the guess's side that fits the distances as well as `at` does; null where `at` is on that side already, or the distances tell
 * both sides apart.
 */
export function findMirrorPlace(measured: readonly TapedDistance[], at: Point, guess: Point): Point | null {
  const axis = findMirrorAxis(measured);
  if (axis === null) return null;
  const side = sideOf(axis, at);
  if (side * sideOf(axis, guess) >= 0) return null;
  const [ux, uy] = axis.along;
  return [at[0] + 2 * side * uy, at[1] - 2 * side * ux];
}

/** Distance from the axis, positive on the side to the left of its direction. */
function sideOf({ through, along: [ux, uy] }: Axis, [x, y]: Point): number {
  return ux * (y - through[1]) - uy * (x - through[0]);
}

function unit(from: Point, end: Point): Point {
  const length = Math.hypot(end[0] - from[0], end[1] - from[1]);
  return [(end[0] - from[0]) / length, (end[1] - from[1]) / length];
}
