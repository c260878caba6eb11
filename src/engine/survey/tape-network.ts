import { type Blunder, findBlunder, normaliseResiduals } from '../form/data-snooping.ts';
import { findMirrorAxis } from '../form/mirror-axis.ts';
import { distanceGradient, signedDistance, type TapedDistance } from '../form/taped-distance.ts';
import { type Adjustment, adjust } from '../geometry/least-squares.ts';
import type { Point } from '../geometry/point.ts';
import { findSymmetricEigenPairs } from '../geometry/symmetric-eigen.ts';
import { SurveyError } from './survey-error.ts';

/** One taped distance of an insert: to an edge or a known point, or to another insert of the set. Lengths mm. */
export interface NetworkDistance {
  /** Index of the insert. */
  readonly of: number;
  readonly to: TapedDistance['to'] | { readonly kind: 'insert'; readonly other: number };
  readonly distance: number;
  /** Its standard deviation. */
  readonly deviation: number;
}

/** A place in the adjusted set. */
export interface NetworkPlace {
  readonly at: Point;
  readonly sigmaX: number;
  readonly sigmaY: number;
  /** Covariance of x and y [mm²]. */
  readonly covariance: number;
}

/** A set of inserts by its taped distances. */
export interface TapedNetwork {
  readonly places: readonly NetworkPlace[];
  /** Measured less adjusted, in the order of the distances. */
  readonly residuals: readonly number[];
  /** Residuals over their own standard deviations; null: nothing else checks that distance. */
  readonly normalised: readonly (number | null)[];
  readonly redundancy: number;
  readonly blunder: Blunder;
  /**
   * In how many ways the whole set may still move rigidly: 0 it is fixed to the panel; 1 it slides along an edge or turns about a point; 3 only its
   * shape is known. It lies then where it is nearest to the guesses.
   */
  readonly freeMoves: number;
  /** The set's mirror image fits the distances as well; the guesses decide. */
  readonly isMirrorOpen: boolean;
}

/** Most inserts of a set. */
const MOST_INSERTS = 20;

const STEPS = 60;
const HALVINGS = 30;
/** A step below this [mm] changes nothing that anyone could tape. */
const AT_REST = 1e-9;
/** A rigid movement that the distances resist less than this share of what they resist most is free. */
const FREE = 1e-9;
/** What nobody measured is held at the guesses that firmly [mm]: it changes no residual, since no distance tells of it. */
const HELD = 1e-3;
/** Two inserts nearer than this [mm] have no direction between them. */
const NO_DIRECTION = 1e-6;

/** A row of the adjustment: how a reckoned distance follows the x and y of all inserts. */
function rowOf(one: NetworkDistance, places: readonly Point[], sides: readonly number[], index: number): number[] {
  const row = new Array<number>(places.length * 2).fill(0);
  const at = places[one.of]!;
  const gradient =
    one.to.kind === 'insert'
      ? distanceGradient({ kind: 'point', at: places[one.to.other]! }, at)
      : distanceGradient(one.to, at);
  for (const axis of [0, 1] as const) {
    const part = gradient[axis] * sides[index]!;
    row[2 * one.of + axis] = part;
    if (one.to.kind === 'insert') row[2 * one.to.other + axis] = 0 - part;
  }
  return row;
}

function reckon(one: NetworkDistance, places: readonly Point[]): number {
  const at = places[one.of]!;
  return one.to.kind === 'insert'
    ? signedDistance({ kind: 'point', at: places[one.to.other]! }, at)
    : signedDistance(one.to, at);
}

/** Measured less reckoned. */
function missesOf(measured: readonly NetworkDistance[], sides: readonly number[], places: readonly Point[]): number[] {
  return measured.map((one, i) => one.distance - sides[i]! * reckon(one, places));
}

function sumSquares(measured: readonly NetworkDistance[], sides: readonly number[], places: readonly Point[]): number {
  return missesOf(measured, sides, places).reduce((sum, miss, i) => sum + (miss / measured[i]!.deviation) ** 2, 0);
}

/** Shift along x, along y, and turn about the middle of the places, as moves of all inserts, each of length 1. */
function rigidMoves(places: readonly Point[]): readonly (readonly number[])[] {
  const mean = (axis: 0 | 1) => places.reduce((sum, at) => sum + at[axis], 0) / places.length;
  const [mx, my] = [mean(0), mean(1)];
  const moves = [
    places.flatMap(() => [1, 0]),
    places.flatMap(() => [0, 1]),
    places.flatMap(([x, y]) => [my - y, x - mx]),
  ];
  return moves.flatMap((move) => {
    const size = Math.hypot(...move);
    return size < NO_DIRECTION ? [] : [move.map((part) => part / size)];
  });
}

/** The rigid movements of the whole set that no distance resists. */
function freeMovesOf(rows: readonly (readonly number[])[], places: readonly Point[]): readonly (readonly number[])[] {
  const moves = rigidMoves(places);
  const images = moves.map((move) => rows.map((row) => row.reduce((sum, part, k) => sum + part * move[k]!, 0)));
  const resisted = images.map((a) => images.map((b) => a.reduce((sum, part, i) => sum + part * b[i]!, 0)));
  return findSymmetricEigenPairs(resisted)
    .filter(({ value }) => value <= FREE)
    .map(({ vector }) =>
      places.flatMap((_, i) =>
        [0, 1].map((axis) => vector.reduce((sum, share, m) => sum + share * moves[m]![2 * i + axis]!, 0)),
      ),
    );
}

/**
 * Finds a set of inserts from any mixture of distances to edges, to known points and between inserts by weighted least squares, from guesses
 * (the designed places). The guesses give each edge its side, and choose between places that fit equally.
 *
 * Distances among inserts alone give the shape, which is enough to try a plate on it: it may still move, turn and be mirrored, and is laid where it is
 * nearest to the guesses (`freeMoves`, `isMirrorOpen`).
 *
 * @throws SurveyError where an insert is not fixed to the others, or the distances lead nowhere
 * @example two inserts, each from two edges: 4 distances, redundancy 0; the distance between them as a fifth checks all
 */
export function adjustNetwork(measured: readonly NetworkDistance[], guesses: readonly Point[]): TapedNetwork {
  checkInput(measured, guesses);
  const sides = measured.map((one) => (reckon(one, guesses) < 0 ? -1 : 1));
  const deviations = measured.map(({ deviation }) => deviation);
  let places = guesses;
  let local = adjustAt(measured, sides, places, guesses);
  for (let step = 0; step < STEPS; step += 1) {
    const next = descend(measured, sides, places, local.adjustment.unknowns);
    if (next === null) break;
    places = next.places;
    local = adjustAt(measured, sides, places, guesses);
    if (next.size < AT_REST) break;
  }
  const { adjustment, free } = local;
  // What holds the free movements is no observation: its rows come last.
  const own: Adjustment = {
    ...adjustment,
    residuals: missesOf(measured, sides, places),
    residualCovariance: adjustment.residualCovariance.slice(0, measured.length),
  };
  const variance = (i: number, j: number) => adjustment.covariance[i]![j]!;
  return {
    places: places.map((at, i) => ({
      at,
      sigmaX: Math.sqrt(variance(2 * i, 2 * i)),
      sigmaY: Math.sqrt(variance(2 * i + 1, 2 * i + 1)),
      covariance: variance(2 * i, 2 * i + 1),
    })),
    residuals: own.residuals,
    normalised: normaliseResiduals(own, deviations),
    redundancy: measured.length - (2 * guesses.length - free),
    blunder: findBlunder(own, deviations),
    freeMoves: free,
    isMirrorOpen: free > 0 || isItsMirror(measured),
  };
}

function adjustAt(
  measured: readonly NetworkDistance[],
  sides: readonly number[],
  places: readonly Point[],
  guesses: readonly Point[],
): { readonly adjustment: Adjustment; readonly free: number } {
  const rows = measured.map((one, i) => rowOf(one, places, sides, i));
  const free = freeMovesOf(rows, places);
  const back = guesses.flatMap((guess, i) => [guess[0] - places[i]![0], guess[1] - places[i]![1]]);
  const held = free.map((move) => move.reduce((sum, part, k) => sum + part * back[k]!, 0));
  const adjustment = adjust(
    [...rows, ...free],
    [...missesOf(measured, sides, places), ...held],
    [...measured.map(({ deviation }) => deviation), ...free.map(() => HELD)],
  );
  if (adjustment === null) throw notFixed(measured, guesses.length);
  return { adjustment, free: free.length };
}

/** The first of the moves 1, 1/2, 1/4 … that does not raise the sum; null where none does. */
function descend(
  measured: readonly NetworkDistance[],
  sides: readonly number[],
  places: readonly Point[],
  move: readonly number[],
): { readonly places: readonly Point[]; readonly size: number } | null {
  const now = sumSquares(measured, sides, places);
  for (let k = 0, share = 1; k < HALVINGS; k += 1, share /= 2) {
    const next = places.map(([x, y], i): Point => [x + share * move[2 * i]!, y + share * move[2 * i + 1]!]);
    const size = share * Math.max(...move.map(Math.abs));
    if (sumSquares(measured, sides, next) <= now) return { places: next, size };
    if (size < AT_REST) return null;
  }
  return null;
}

function checkInput(measured: readonly NetworkDistance[], guesses: readonly Point[]): void {
  if (guesses.length === 0 || guesses.length > MOST_INSERTS)
    throw new SurveyError('insert', `${guesses.length} inserts, expected 1 to ${MOST_INSERTS} in one set`);
  for (const [i, { of, to }] of measured.entries())
    if (to.kind === 'insert' && to.other === of)
      throw new SurveyError(
        'measured',
        `distance ${i} (counted from 0) runs from an insert to itself, expected another`,
      );
  if (measured.length === 0) throw notFixed(measured, guesses.length);
  for (const [i, one] of measured.entries())
    if (one.to.kind !== 'edge' && reckon(one, guesses) < NO_DIRECTION)
      throw new SurveyError(
        'insert',
        `the guesses at both ends of distance ${i} (counted from 0) are one place, expected places apart`,
      );
}

function notFixed(measured: readonly NetworkDistance[], count: number): SurveyError {
  const taped = Array.from(
    { length: count },
    (_, i) => measured.filter(({ of, to }) => of === i || (to.kind === 'insert' && to.other === i)).length,
  );
  const short = taped.flatMap((distances, i) => (distances < 2 ? [i] : []));
  const which =
    short.length > 0
      ? `${short.length === 1 ? 'insert' : 'inserts'} ${short.join(', ')} (counted from 0) ${short.length === 1 ? 'has' : 'have'} fewer than two distances`
      : 'the distances leave inserts free to move against each other';
  return new SurveyError(
    'measured',
    `${which}, expected at least two for each insert, in different directions, to edges or to inserts that are fixed`,
  );
}

/** Whether edges and points are their own mirror image in a line, so that the whole set may lie on either side of it. */
function isItsMirror(measured: readonly NetworkDistance[]): boolean {
  const taped = measured.flatMap(({ to, distance, deviation }): TapedDistance[] =>
    to.kind === 'insert' ? [] : [{ to, distance, deviation }],
  );
  return findMirrorAxis(taped) !== null;
}
