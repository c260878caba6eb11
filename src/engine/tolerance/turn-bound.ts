/** What is nothing beside 1: rounding of the cosine of an angle. */
const ROUNDING = 1e-12;

/**
 * A bound that holds at every turn: A cos θ + B sin θ − C. Rows of numbers, not objects, because millions are made.
 * What is kept of it: A, B, C at 3 i, 3 i + 1, 3 i + 2.
 */
export type TurnBounds = Float64Array;

/** The bound's value at a turn. */
export function boundAt(bounds: TurnBounds, i: number, turn: number): number {
  return bounds[3 * i] * Math.cos(turn) + bounds[3 * i + 1] * Math.sin(turn) - bounds[3 * i + 2];
}

/** Where the greater of two bounds is least between two turns: `out[0]` the turn, `out[1]` the value. */
export function findLeastOfGreater(
  bounds: TurnBounds,
  left: number,
  right: number,
  from: number,
  to: number,
  out: Float64Array,
): void {
  out[0] = from;
  out[1] = Math.max(boundAt(bounds, left, from), boundAt(bounds, right, from));
  tryTurn(to, Math.max(boundAt(bounds, left, to), boundAt(bounds, right, to)), out);
  tryTrough(bounds, left, right, from, to, out);
  if (left === right) return;
  tryTrough(bounds, right, left, from, to, out);
  tryCrossings(bounds, left, right, from, to, out);
}

function tryTurn(turn: number, value: number, out: Float64Array): void {
  if (value >= out[1]) return;
  out[0] = turn;
  out[1] = value;
}

/** The turn, a whole number of circles away, that is the first not below `from`. */
function unroll(turn: number, from: number): number {
  const circle = 2 * Math.PI;
  return turn + circle * Math.ceil((from - turn) / circle);
}

/** Where one bound is least by itself: −√(A² + B²) − C; it counts where the other is not above it. */
function tryTrough(bounds: TurnBounds, one: number, other: number, from: number, to: number, out: Float64Array): void {
  const turn = unroll(Math.atan2(-bounds[3 * one + 1], -bounds[3 * one]), from);
  if (turn < to) tryTurn(turn, Math.max(boundAt(bounds, one, turn), boundAt(bounds, other, turn)), out);
}

/**
 * Where two bounds cross. Of the two values at a crossing that rounding has moved the lower counts: where it is the least of the greater, one bound
 * falls and the other rises, so that the lower of them lies below the true crossing.
 */
function tryCrossings(
  bounds: TurnBounds,
  left: number,
  right: number,
  from: number,
  to: number,
  out: Float64Array,
): void {
  const a = bounds[3 * left] - bounds[3 * right];
  const b = bounds[3 * left + 1] - bounds[3 * right + 1];
  const c = bounds[3 * left + 2] - bounds[3 * right + 2];
  const size = Math.hypot(a, b);
  if (size === 0 || Math.abs(c) > size * (1 + ROUNDING)) return;
  const middle = Math.atan2(b, a);
  const half = Math.acos(Math.max(-1, Math.min(1, c / size)));
  for (let side = -1; side <= 1; side += 2) {
    const turn = unroll(middle + side * half, from);
    if (turn < to) tryTurn(turn, Math.min(boundAt(bounds, left, turn), boundAt(bounds, right, turn)), out);
  }
}
