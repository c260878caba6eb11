import { measureRay } from '../geometry/ray.ts';
import type { Side } from '../geometry/region.ts';
import { isInSight, visibleSpan, visibleSpanAround } from '../geometry/sight.ts';
import type { EdgeEnd, EdgeView, PreparedAnchorage } from './prepared.ts';

/** A foot this near the end of its side is at the end: sight along the side's own corner is a matter of rounding [mm]. */
const GRAZED = 1e-6;

/** Outlines from drawings have corners that hardly turn: up to 10 degrees in all, sides count as one edge [rad]. */
const SMALL_TURN = Math.PI / 18;

/** A side between two corners of at least 120 degrees is a cut or rounded corner, an edge only to what stands before it. */
const CUT_CORNER = (2 * Math.PI) / 3 - 1e-9;

/** An insert beside a side that goes on stands before its line up to this multiple of the distance: the body's reach. */
const BESIDE_REACH = 1.5;

/** An insert beyond an outward corner still belongs to the side up to this multiple of the distance (45 degrees). */
const BEYOND_REACH = 1;

/** Distance from a point to the line of a side, positive on the concrete's side [mm]. */
function squareTo(side: Side, x: number, y: number): number {
  return (side.fromX - x) * side.nx + (side.fromY - y) * side.ny;
}

/** Walks on from one end of a side, through corners that hardly turn, to the corner that ends the edge. */
function findEnd(p: PreparedAnchorage, side: Side, toward: 'start' | 'end'): EdgeEnd {
  const { sides } = p.region;
  const walked: Side[] = [];
  let current = side;
  let turned = 0;
  let beyond = 0;
  for (;;) {
    const angle = toward === 'start' ? current.angleAtFrom : current.angleAtTo;
    const neighbour = sides[toward === 'start' ? current.previous : current.next]!;
    const turn = Math.PI - angle;
    if (Math.abs(turned + turn) > SMALL_TURN || walked.length === sides.length) {
      const open = angle > Math.PI ? measureOpen(p, side, current, toward) : null;
      return { sides: walked, beyond, angle: angle - turned, open, neighbour };
    }
    turned += turn;
    beyond += neighbour.length * Math.cos(turned);
    walked.push(neighbour);
    current = neighbour;
  }
}

/** How far the line of a side goes on through the concrete past the corner where its edge ends. */
function measureOpen(p: PreparedAnchorage, side: Side, last: Side, toward: 'start' | 'end'): number {
  return toward === 'start'
    ? measureRay(p.region, last.fromX, last.fromY, -side.ux, -side.uy)
    : measureRay(p.region, last.toX, last.toY, side.ux, side.uy);
}

/** How one insert stands to a side; null where the side is no edge to it. Lengths mm. */
interface Stand {
  readonly distance: number;
  readonly left: number;
  readonly right: number;
  readonly place: 'before' | 'beside' | 'beyond';
}

/** Distance along the edge to where the body ends: a corner, square to what follows it, or the end of the concrete. */
function measureToEnd(p: PreparedAnchorage, i: number, along: number, end: EdgeEnd, side: Side, sense: 1 | -1): number {
  const x = p.xs[i]!;
  const y = p.ys[i]!;
  if (end.open === null) return Math.min(along + end.beyond, squareTo(end.neighbour, x, y));
  // The concrete beside the insert may end before that beyond the corner does.
  const beside = measureRay(p.region, x, y, sense * side.ux, sense * side.uy);
  return Math.min(along + end.beyond + end.open, Math.max(along + end.beyond, beside));
}

function standTo(p: PreparedAnchorage, side: Side, start: EdgeEnd, end: EdgeEnd, i: number): Stand | null {
  const x = p.xs[i]!;
  const y = p.ys[i]!;
  const distance = squareTo(side, x, y);
  if (!(distance > 0)) return null;
  const foot = (x - side.fromX) * side.ux + (y - side.fromY) * side.uy;
  const span = visibleSpan(p.region, side.index, x, y);
  const toStart = () => measureToEnd(p, i, foot, start, side, -1);
  const toEnd = () => measureToEnd(p, i, side.length - foot, end, side, 1);
  if (span !== null) {
    const left = span.from > GRAZED ? foot - span.from : toStart();
    const right = span.to < side.length - GRAZED ? span.to - foot : toEnd();
    return { distance, left, right, place: 'before' };
  }
  const isPastStart = foot < GRAZED;
  if (!isPastStart && foot <= side.length - GRAZED) return null;
  const corner = isPastStart ? start : end;
  const past = (isPastStart ? -foot : foot - side.length) - corner.beyond;
  if (past < 0) return standAlong(p, corner, i, distance, toStart, toEnd);
  const [cornerX, cornerY] = isPastStart ? [side.fromX, side.fromY] : [side.toX, side.toY];
  const reach = (corner.open === null ? BEYOND_REACH : BESIDE_REACH) * distance;
  if (past >= reach || !isInSight(p.region, x, y, cornerX, cornerY)) return null;
  if (corner.open !== null) return { distance, left: toStart(), right: toEnd(), place: 'beside' };
  if (start.angle >= CUT_CORNER && end.angle >= CUT_CORNER) return null;
  // What an opening hides of the edge ends it here too. The edge may go on past its own side at corners that hardly turn.
  const seen = visibleSpanAround(p.region, side.index, x, y, isPastStart ? 0 : side.length);
  if (seen === null) return null;
  const left = seen.from > GRAZED ? foot - seen.from : toStart();
  const right = seen.to < side.length - GRAZED ? seen.to - foot : toEnd();
  // No corner distance is left, and the body reaches the edge only from its end on: a negative distance says so.
  return { distance, left: isPastStart ? -past : left, right: isPastStart ? right : -past, place: 'beyond' };
}

/** An insert before a side that the edge goes on along, or between two such sides at a corner that hardly turns in. */
function standAlong(
  p: PreparedAnchorage,
  corner: EdgeEnd,
  i: number,
  distance: number,
  toStart: () => number,
  toEnd: () => number,
): Stand | null {
  const x = p.xs[i]!;
  const y = p.ys[i]!;
  let left = toStart();
  let right = toEnd();
  let nearest = distance;
  let isSeen = false;
  for (const next of corner.sides) {
    const square = squareTo(next, x, y);
    if (square > 0) nearest = Math.min(nearest, square);
    const span = visibleSpan(p.region, next.index, x, y);
    isSeen ||=
      span !== null ||
      isInSight(p.region, x, y, next.fromX, next.fromY) ||
      isInSight(p.region, x, y, next.toX, next.toY);
    if (span === null) continue;
    const foot = (x - next.fromX) * next.ux + (y - next.fromY) * next.uy;
    if (span.from > GRAZED) left = Math.min(left, foot - span.from);
    if (span.to < next.length - GRAZED) right = Math.min(right, span.to - foot);
  }
  return isSeen ? { distance: nearest, left, right, place: 'before' } : null;
}

/**
 * Looks at one side from every insert; null where it is no edge to any. Found once for each side.
 *
 * A side is an edge to an insert that sees the foot of its perpendicular, on the side itself or on one that it goes on along;
 * to one beside a re-entrant end, as if the side went on, as far as the body reaches; and to one beyond an outward corner of less than 120 degrees, up to 45 degrees off.
 */
export function viewEdge(p: PreparedAnchorage, side: Side): EdgeView | null {
  const known = p.cache.views[side.index];
  if (known !== undefined) return known;
  const start = findEnd(p, side, 'start');
  const end = findEnd(p, side, 'end');
  const stands = Array.from({ length: p.count }, (_, i) => standTo(p, side, start, end, i));
  const view: EdgeView | null = stands.every((stand) => stand === null)
    ? null
    : {
        side,
        start,
        end,
        distance: stands.map((stand) => stand?.distance ?? Number.POSITIVE_INFINITY),
        along: stands.map((_, i) => (p.xs[i]! - side.fromX) * side.ux + (p.ys[i]! - side.fromY) * side.uy),
        left: stands.map((stand) => stand?.left ?? Number.POSITIVE_INFINITY),
        right: stands.map((stand) => stand?.right ?? Number.POSITIVE_INFINITY),
        place: stands.map((stand) => stand?.place ?? null),
      };
  p.cache.views[side.index] = view;
  return view;
}
