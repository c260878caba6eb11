import type { Point } from '../geometry/point.ts';
import type { PlateHole } from './plate-hole.ts';
import { TurnSearch } from './turn-search.ts';

/** Where only the sign of what is left is asked, it is known from this on [mm]; a plate that lacks less goes on: rounding of places. */
export const ROUNDING = 1e-6;
/** As near as a search comes that must know on which side of a rounding the least lack lies [mm]. */
export const NEAR = 1e-7;

/** Movement of a plate: turned about the middle of its holes, counter-clockwise [rad], then shifted [mm]. */
export interface PlateMove {
  readonly turn: number;
  readonly shift: Point;
}

/** The middle of holes: what a plate is turned about. */
export function findMiddle(holes: readonly PlateHole[]): Point {
  const sum = (axis: 0 | 1) => holes.reduce((total, { at }) => total + at[axis], 0);
  return [sum(0) / holes.length, sum(1) / holes.length];
}

/** A search over the movements of a plate that turns about a point. */
export function startSearch(holes: readonly PlateHole[], [x, y]: Point): TurnSearch {
  return new TurnSearch(holes.map((hole) => ({ ...hole, at: [hole.at[0] - x, hole.at[1] - y] })));
}

/** Gives a search its bolts, in the axes of the plate. */
export function placeBolts(search: TurnSearch, bolts: readonly Point[], [x, y]: Point): void {
  search.setBolts(Float64Array.from(bolts.flat()), x, y);
}

/** A shift in the axes of the turned plate, as seen from outside it. */
export function turnBack([x, y]: Point, turn: number): Point {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [cos * x - sin * y, sin * x + cos * y];
}
