import type { Point } from '../../engine/geometry/point.ts';
import type { Region } from '../../engine/geometry/region.ts';

/** A move in whole millimetres of the documents' coordinates. */
export interface Move {
  readonly dx: number;
  readonly dy: number;
}

/** How many of the nearest sides give a direction of their own: straight away from them. */
const NEAREST_SIDES = 4;

/** Directions nearer to each other than this are one: the cosine of 1°. */
const SAME_DIRECTION = 0.99985;

/** Along the axes and halfway between them. */
const COMPASS: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [Math.SQRT1_2, Math.SQRT1_2],
  [Math.SQRT1_2, -Math.SQRT1_2],
  [-Math.SQRT1_2, Math.SQRT1_2],
  [-Math.SQRT1_2, -Math.SQRT1_2],
];

/**
 * Directions in which a move is tried: straight away from the nearest sides, of the outline and of openings, nearest first; then the
 * axes and the four diagonals. At most twelve.
 * @param region the concrete, in the coordinates of the move; null: only axes and diagonals
 * @param middle of the inserts
 */
export function findDirections(region: Region | null, [x, y]: Point): readonly Point[] {
  const sides = (region?.sides ?? [])
    .map((side) => {
      const along = (x - side.fromX) * side.ux + (y - side.fromY) * side.uy;
      const place = Math.min(side.length, Math.max(0, along));
      const distance = Math.hypot(x - side.fromX - side.ux * place, y - side.fromY - side.uy * place);
      return { distance, away: [0 - side.nx, 0 - side.ny] as const, index: side.index };
    })
    .sort((a, b) => a.distance - b.distance || a.index - b.index)
    .slice(0, NEAREST_SIDES)
    .map(({ away }) => away);
  const found: Point[] = [];
  for (const [ux, uy] of [...sides, ...COMPASS])
    if (!found.some(([vx, vy]) => ux * vx + uy * vy > SAME_DIRECTION)) found.push([ux, uy]);
  return found;
}

function moveBy([ux, uy]: Point, steps: number): Move {
  return { dx: Math.round(steps * ux) + 0, dy: Math.round(steps * uy) + 0 };
}

const lengthOf = ({ dx, dy }: Move) => Math.hypot(dx, dy);

/**
 * A move that goes on in its own direction, so that a place may be off by a tolerance; as far as the limit lets it.
 * @param by how much farther [mm]
 * @param limit how far along each axis [mm]
 */
export function goBeyond(move: Move, by: number, limit: number): Move {
  const length = lengthOf(move);
  const direction: Point = [move.dx / length, move.dy / length];
  const reach = limit / Math.max(Math.abs(direction[0]), Math.abs(direction[1]));
  return moveBy(direction, Math.max(length, Math.min(length + by, reach)));
}

/**
 * The smallest move with which a connection passes, of those in some directions; null where none is found.
 *
 * Along each direction a quarter, a half and all of the way is tried; between the first of these that passes and the one before
 * it the way is halved down to 1 mm, so one millimetre less in that direction does not pass. A direction is followed no
 * farther than the best move so far. At most 3 + log2(way / 2) checks a direction: ten at 150 mm, less than 120 in all.
 *
 * @param limit how far along each axis [mm]
 * @param passes the full check of the connection, moved
 */
export function findMove(limit: number, directions: readonly Point[], passes: (move: Move) => boolean): Move | null {
  let best: Move | null = null;
  for (const direction of directions) {
    const [ux, uy] = direction;
    const reach = Math.floor(limit / Math.max(Math.abs(ux), Math.abs(uy)) + 1e-9);
    const farthest = best === null ? reach : Math.min(reach, Math.ceil(lengthOf(best)) - 1);
    let low = 0;
    let high: number | null = null;
    for (const steps of new Set([Math.ceil(farthest / 4), Math.ceil(farthest / 2), farthest])) {
      if (steps === 0) continue;
      if (passes(moveBy(direction, steps))) {
        high = steps;
        break;
      }
      low = steps;
    }
    if (high === null) continue;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (passes(moveBy(direction, middle))) high = middle;
      else low = middle;
    }
    const found = moveBy(direction, high);
    if (best === null || lengthOf(found) < lengthOf(best)) best = found;
  }
  return best;
}
