import type { Point, Polygon } from '../../engine/geometry/point.ts';
import { FARTHEST_EDGE, type FilledCase } from './fill-case.ts';

/**
 * One way in which insert, edges and neighbours may stand: the insert at the origin, its nearest edge below it, the next nearest to its
 * left. mm.
 */
export interface Layout {
  readonly outline: Polygon;
  /** This insert first. */
  readonly places: readonly Point[];
}

/** Places of the neighbours, in spacings: where they may be beside an insert, never nearer to the nearest edge than it is. */
const NEIGHBOURS: Readonly<Record<FilledCase['neighbours'], readonly (readonly Point[])[]>> = {
  0: [[]],
  1: [[[1, 0]], [[-1, 0]], [[0, 1]]],
  2: [
    [
      [-1, 0],
      [1, 0],
    ],
    [
      [1, 0],
      [2, 0],
    ],
    [
      [-1, 0],
      [-2, 0],
    ],
    [
      [0, 1],
      [0, 2],
    ],
  ],
  3: [
    [
      [1, 0],
      [0, 1],
      [1, 1],
    ],
    [
      [-1, 0],
      [0, 1],
      [-1, 1],
    ],
  ],
};

/**
 * How far the other edges may be: as near as they were said or assumed to be, or far off. A code can give an insert between near edges more than
 * the same insert with two of them far off (the embedment that is reduced at three edges is capped by pull-out in another way than the
 * full one), and what is not known may be so: both count.
 */
function listOthers({ others }: FilledCase): readonly number[] {
  return others < FARTHEST_EDGE ? [others, FARTHEST_EDGE] : [others];
}

/**
 * Every way in which a case's edges and neighbours may stand. No edge comes nearer to a neighbour than the nearest comes to the insert: where
 * the next edge is too near for a neighbour on its side, it is moved out, so that the way is the mirror image of the one on the other side.
 */
export function layOut(filled: FilledCase): readonly Layout[] {
  const { nearest, second, neighbours, spacing } = filled;
  return NEIGHBOURS[neighbours].flatMap((steps) =>
    listOthers(filled).map((others): Layout => {
      const places: readonly Point[] = [[0, 0], ...steps.map(([x, y]): Point => [x * spacing, y * spacing])];
      const xs = places.map(([x]) => x);
      const ys = places.map(([, y]) => y);
      const left = -Math.max(second, nearest - Math.min(...xs));
      const right = Math.max(others, nearest + Math.max(...xs));
      const top = Math.max(others, nearest + Math.max(...ys));
      const outline: Polygon = [
        [left, -nearest],
        [right, -nearest],
        [right, top],
        [left, top],
      ];
      return { outline, places };
    }),
  );
}
