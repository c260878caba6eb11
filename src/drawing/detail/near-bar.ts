import type { PlanBar } from '../../assess/set-out/lay-bars.ts';
import type { SetOutItem } from '../../assess/set-out/set-out.ts';
import type { Point } from '../../engine/geometry/point.ts';

function distanceToSegment([x, y]: Point, from: Point, to: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((x - from[0]) * dx + (y - from[1]) * dy) / square;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(x - from[0] - share * dx, y - from[1] - share * dy);
}

/** Of all bars and inserts the two whose axes are nearest to each other, seen from above [mm]; null where there are no bars. */
export function findNearestBar(
  bars: readonly PlanBar[],
  items: readonly SetOutItem[],
): { readonly bar: PlanBar; readonly number: number; readonly distance: number } | null {
  let nearest: { bar: PlanBar; number: number; distance: number } | null = null;
  for (const bar of bars)
    for (const { number, plan } of items) {
      const distance = distanceToSegment(plan, bar.from, bar.to);
      if (nearest === null || distance < nearest.distance) nearest = { bar, number, distance };
    }
  return nearest;
}

/** A kind of bar in words: `Ø10, mould face`. */
export function describeBar({ diameter, face, kind }: PlanBar): string {
  const what = kind === 'bars' ? '' : ` ${kind}`;
  return `Ø${Number(diameter.toFixed(1))}${what} of the ${face}`;
}
