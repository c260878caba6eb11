import type { Point } from '../../engine/geometry/point.ts';
import type { FoundPlace } from './placing-answer.ts';

/** An insert of a template board: where it should be, and what was taped of it [mm]. */
export interface OnBoard {
  readonly taped: Point;
  readonly found: Pick<FoundPlace, 'x' | 'y'>;
}

/** A length that was taped: how far off it was, and what a turn of the board by 1 rad adds to it [mm]. */
interface Reading {
  readonly off: number;
  readonly lever: number;
}

/** Levers that are all shorter [mm] say nothing of a turn. */
const SHORT = 1;

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Levers and what was off, each less its mean: a shift along an axis takes up the means of that axis. */
function lessMeans(readings: readonly Reading[]): readonly Reading[] {
  const [off, lever] = [mean(readings.map((one) => one.off)), mean(readings.map((one) => one.lever))];
  return readings.map((one) => ({ off: one.off - off, lever: one.lever - lever }));
}

/**
 * How a board lies by what was taped on it: shifted, and turned where two lengths along one axis show a turn, by least squares. A board does not
 * deform, so that those of its inserts that nobody taped lie with it.
 * @returns where an insert is that should be at a place; along an axis of which nothing was taped null. Null: nothing was taped at all
 */
export function fitBoard(inserts: readonly OnBoard[]): ((at: Point) => Pick<FoundPlace, 'x' | 'y'>) | null {
  // A small turn counter-clockwise brings x by −y and y by x.
  const alongX = inserts.flatMap(({ taped, found: { x } }): Reading[] =>
    x === null ? [] : [{ off: x - taped[0], lever: -taped[1] }],
  );
  const alongY = inserts.flatMap(({ taped, found: { y } }): Reading[] =>
    y === null ? [] : [{ off: y - taped[1], lever: taped[0] }],
  );
  if (alongX.length === 0 && alongY.length === 0) return null;
  const both = [...lessMeans(alongX), ...lessMeans(alongY)];
  const isTurnShown = both.some(({ lever }) => Math.abs(lever) > SHORT);
  const turn = isTurnShown
    ? both.reduce((sum, { off, lever }) => sum + off * lever, 0) / both.reduce((sum, { lever }) => sum + lever ** 2, 0)
    : 0;
  const shift = (readings: readonly Reading[]) =>
    readings.length === 0 ? null : mean(readings.map(({ off, lever }) => off - turn * lever));
  const [dx, dy] = [shift(alongX), shift(alongY)];
  return ([x, y]) => ({
    x: dx === null ? null : x + dx - turn * y,
    y: dy === null ? null : y + dy + turn * x,
  });
}
