import type { Side } from '../geometry/region.ts';
import { isInSight, visibleSpan } from '../geometry/sight.ts';
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
  let current = side;
  let turned = 0;
  let beyond = 0;
  for (let step = 0; step < sides.length; step++) {
    const angle = toward === 'start' ? current.angleAtFrom : current.angleAtTo;
    const next = sides[toward === 'start' ? current.previous : current.next]!;
    const turn = Math.PI - angle;
    if (Math.abs(turned + turn) > SMALL_TURN)
      return { beyond, angle: angle - turned, isReentrant: angle > Math.PI, neighbour: next };
    turned += turn;
    beyond += next.length * Math.cos(turned);
    current = next;
  }
  return { beyond, angle: Math.PI, isReentrant: false, neighbour: current };
}

/** How one insert stands to a side; null where the side is no edge to it. Lengths mm. */
interface Stand {
  readonly distance: number;
  readonly left: number;
  readonly right: number;
  readonly place: 'before' | 'beside' | 'beyond';
}

function standTo(p: PreparedAnchorage, side: Side, start: EdgeEnd, end: EdgeEnd, i: number): Stand | null {
  const x = p.xs[i]!;
  const y = p.ys[i]!;
  const distance = squareTo(side, x, y);
  if (!(distance > 0)) return null;
  const foot = (x - side.fromX) * side.ux + (y - side.fromY) * side.uy;
  const span = visibleSpan(p.region, side.index, x, y);
  // The body goes on past a re-entrant corner: there is more concrete beyond, not less.
  const toCorner = (along: number, { beyond, isReentrant, neighbour }: EdgeEnd) =>
    isReentrant ? Number.POSITIVE_INFINITY : Math.min(along + beyond, squareTo(neighbour, x, y));
  if (span !== null) {
    const left = span.from > GRAZED ? foot - span.from : toCorner(foot, start);
    const right = span.to < side.length - GRAZED ? span.to - foot : toCorner(side.length - foot, end);
    return { distance, left, right, place: 'before' };
  }
  const past = foot < GRAZED ? -foot - start.beyond : foot - side.length - end.beyond;
  const isPastStart = foot < GRAZED;
  if (!isPastStart && foot <= side.length - GRAZED) return null;
  const corner = isPastStart ? start : end;
  const [cornerX, cornerY] = isPastStart ? [side.fromX, side.fromY] : [side.toX, side.toY];
  const isNear = past > -GRAZED && past < (corner.isReentrant ? BESIDE_REACH : BEYOND_REACH) * distance;
  if (!isNear || !isInSight(p.region, x, y, cornerX, cornerY)) return null;
  const other = isPastStart ? toCorner(side.length - foot, end) : toCorner(foot, start);
  if (corner.isReentrant) {
    const open = Number.POSITIVE_INFINITY;
    return { distance, left: isPastStart ? open : other, right: isPastStart ? other : open, place: 'beside' };
  }
  if (start.angle >= CUT_CORNER && end.angle >= CUT_CORNER) return null;
  // No corner distance is left, and the body reaches the edge only from its end on: a negative distance says so.
  return { distance, left: isPastStart ? -past : other, right: isPastStart ? other : -past, place: 'beyond' };
}

/**
 * Looks at one side from every insert; null where it is no edge to any. Found once for each side.
 *
 * A side is an edge to an insert that sees the foot of its perpendicular; to one beside a re-entrant end, as if the side went
 * on, as far as the body reaches; and to one beyond an outward corner of less than 120 degrees, up to 45 degrees off.
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
