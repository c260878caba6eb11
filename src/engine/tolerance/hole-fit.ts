import type { Point } from '../geometry/point.ts';
import { findLeastShift } from './least-shift.ts';
import type { PlateHole } from './plate-hole.ts';
import { findMiddle, NEAR, type PlateMove, placeBolts, ROUNDING, startSearch, turnBack } from './plate-search.ts';
import type { TurnSearch } from './turn-search.ts';

/** No movement is better than the one that is found by more than this [mm], where many plates are asked for, and where one is. */
const KNOWN = 1e-5;
const KNOWN_OF_ONE = 1e-6;
/** What may be given up for a shorter shift [mm]. */
const GIVEN_UP = 1e-8;

/** The best movement of a plate over its bolts, and how sure it is. Lengths mm. */
export interface HoleFit {
  readonly fits: boolean;
  /** Radial clearance that is left at the tightest hole; below 0 the plate does not go on. */
  readonly margin: number;
  /** No other movement leaves more than this on top of the margin. */
  readonly provenWithin: number;
  readonly move: PlateMove;
  /** Radial clearance at each hole, in their order; in a slot, to its nearest side or end. */
  readonly clearances: readonly number[];
}

/** A plate whose holes are read once, for bolts at many places: nothing is made anew for each. Lengths mm. */
export interface PreparedHoles {
  /**
   * Whether the plate goes on, in any way within its turn.
   * @param bolts x, y of each in the order of the holes, in the axes of the plate
   * @param enlarged what is added to the slack of every hole
   */
  decide(bolts: Float64Array, enlarged?: number): boolean;
  /**
   * The radial clearance left at the tightest hole in the best movement, within 0.00001 mm; −margin: the least that must be added to the slack of
   * every hole so that the plate goes on.
   */
  margin(bolts: Float64Array): number;
}

/**
 * Reads the holes of a plate for many sets of bolts.
 * @param holes one or more
 * @param mostTurn greatest turn either way [rad]; left out: any
 */
export function prepareHoles(holes: readonly PlateHole[], mostTurn: number = Math.PI): PreparedHoles {
  const middle = findMiddle(holes);
  const search = startSearch(holes, middle);
  return {
    decide(bolts, enlarged = 0) {
      search.setBolts(bolts, middle[0], middle[1]);
      search.run(NEAR, mostTurn, enlarged + ROUNDING);
      return search.lack <= enlarged + ROUNDING;
    },
    margin(bolts) {
      search.setBolts(bolts, middle[0], middle[1]);
      search.run(KNOWN, mostTurn, null);
      return -search.lack;
    },
  };
}

/**
 * The rigid movement of a plate that leaves the largest least radial clearance of its bolts, of all movements there are: any shift, any turn within
 * `mostTurn`. What no movement can be better than is proven, not estimated (`TurnSearch`). Of movements that leave the same the one without a turn is
 * taken, and of the shifts at a turn the least.
 *
 * @param holes one or more; a plate with one hole is not turned
 * @param bolts as they stand, one a hole, in the axes of the plate where it was drawn [mm]
 * @param mostTurn greatest turn either way [rad]; left out: any
 * @example two holes of 18 mm 200 mm apart, bolts of 16 mm 201 mm apart → margin 0.5 mm: each stands half a mm outside
 */
export function findHoleFit(holes: readonly PlateHole[], bolts: readonly Point[], mostTurn: number = Math.PI): HoleFit {
  const middle = findMiddle(holes);
  const search = startSearch(holes, middle);
  placeBolts(search, bolts, middle);
  search.run(KNOWN_OF_ONE, mostTurn, null);
  if (search.lack > ROUNDING && search.bound <= ROUNDING) search.run(NEAR, mostTurn, null);
  const { lack, bound } = search;
  const found = { turn: search.turn, shift: [search.x, search.y] as const };
  const { turn, shift } = preferLess(holes, search, found, lack);
  const clearances = search.listLacks(turn, ...shift).map((one) => -one);
  const margin = Math.min(...clearances);
  const fits = lack <= ROUNDING;
  return {
    fits,
    margin: fits ? Math.max(0, margin) : margin,
    provenWithin: Math.max(0, -bound - margin),
    move: { turn, shift: turnBack(shift, turn) },
    clearances,
  };
}

/** Of movements that are equal but for rounding: the plate where it was drawn, else unturned, else the least shift. */
function preferLess(holes: readonly PlateHole[], search: TurnSearch, found: PlateMove, lack: number): PlateMove {
  const straight = search.shiftAt(0, NEAR);
  const turn = straight.lack <= lack + ROUNDING ? 0 : found.turn;
  const [shift, level] = turn === found.turn ? [found.shift, lack] : [straight.shift, straight.lack];
  return { turn, shift: findLeastShift(holes, search.listOffsets(turn), level + GIVEN_UP, shift) };
}

/**
 * The radius that all holes must have beside that of their bolts, if all were round, so that the plate goes on [mm]: the least there is, within
 * 0.00001 mm, never less than what its own movement needs.
 */
export function findRoundSlackNeeded(
  places: readonly Point[],
  bolts: readonly Point[],
  mostTurn: number = Math.PI,
): number {
  const round = places.map((at) => ({ at, slack: 0, slot: 0, angle: 0 }));
  return Math.max(0, -findHoleFit(round, bolts, mostTurn).margin);
}
