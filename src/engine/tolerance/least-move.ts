import type { Point } from '../geometry/point.ts';
import { findLeastShift } from './least-shift.ts';
import type { PlateHole } from './plate-hole.ts';
import { findMiddle, NEAR, type PlateMove, placeBolts, ROUNDING, startSearch, turnBack } from './plate-search.ts';

/** A turn is known to this [rad]: a bolt a metre away moves by a thousandth of a mm. */
const TURN_KNOWN = 1e-6;

/**
 * The least movement with which a plate goes on: the least shift where a shift alone does, else the least turn with the least shift at it; null: no
 * movement does, which is proven. A turn is known to 0.000001 rad.
 *
 * @param mostTurn greatest turn either way [rad]
 */
export function findLeastMove(
  holes: readonly PlateHole[],
  bolts: readonly Point[],
  mostTurn: number = Math.PI,
): PlateMove | null {
  const middle = findMiddle(holes);
  const search = startSearch(holes, middle);
  placeBolts(search, bolts, middle);
  search.run(NEAR, mostTurn, ROUNDING);
  if (search.lack > ROUNDING) return null;
  let best = { turn: search.turn, shift: [search.x, search.y] as Point };
  const straight = search.shiftAt(0, NEAR);
  if (straight.lack <= ROUNDING) best = { turn: 0, shift: straight.shift };
  let without = 0;
  while (Math.abs(best.turn) - without > TURN_KNOWN) {
    const most = (Math.abs(best.turn) + without) / 2;
    search.run(NEAR, most, ROUNDING);
    if (search.lack <= ROUNDING) best = { turn: search.turn, shift: [search.x, search.y] };
    else without = most;
  }
  const { turn } = best;
  const shift = findLeastShift(holes, search.listOffsets(turn), ROUNDING, best.shift);
  return { turn, shift: turnBack(shift, turn) };
}
