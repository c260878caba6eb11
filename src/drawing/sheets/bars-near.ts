import type { PlanBar } from '../../assess/set-out/lay-bars.ts';
import type { Point } from '../../engine/geometry/point.ts';

/** How far around an insert its bars are shown [mm of the panel]: as far as a hand is spread, where a setter looks for them. */
const NEAR = 200;

/** Pieces of a bar's axis that lie near to places, those that touch joined, as shares of its length. */
function findNear({ from, to }: PlanBar, places: readonly Point[]): readonly (readonly [number, number])[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const pieces = places.flatMap(([x, y]): [number, number][] => {
    const along = ((x - from[0]) * dx + (y - from[1]) * dy) / length;
    const aside = ((x - from[0]) * dy - (y - from[1]) * dx) / length;
    if (Math.abs(aside) >= NEAR) return [];
    const half = Math.sqrt(NEAR * NEAR - aside * aside);
    const [a, b] = [Math.max(0, along - half), Math.min(length, along + half)];
    return a < b ? [[a / length, b / length]] : [];
  });
  const joined: [number, number][] = [];
  for (const [a, b] of pieces.sort((p, q) => p[0] - q[0])) {
    const last = joined.at(-1);
    if (last !== undefined && a <= last[1]) last[1] = Math.max(last[1], b);
    else joined.push([a, b]);
  }
  return joined;
}

/** The pieces of bars near inserts, in the plan: enough to see what is where, and not a grid over the whole panel. */
export function listBarsNear(
  bars: readonly PlanBar[],
  places: readonly Point[],
): readonly (readonly [from: Point, to: Point])[] {
  return bars.flatMap((bar) => {
    const at = (share: number): Point => [
      bar.from[0] + share * (bar.to[0] - bar.from[0]),
      bar.from[1] + share * (bar.to[1] - bar.from[1]),
    ];
    return findNear(bar, places).map(([a, b]) => [at(a), at(b)] as const);
  });
}
