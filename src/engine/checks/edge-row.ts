import type { Side } from '../geometry/region.ts';
import { visibleSpan } from '../geometry/sight.ts';
import { roundForText, writeMessage } from './messages.ts';
import type { EdgeRow, EdgeView, PreparedAnchorage } from './prepared.ts';

/** Front row: inserts within this multiple of the smallest edge distance (common practice; see the contract's choices). */
const FRONT_ROW = 1.1;

/** Interior angles below a right angle by more than this are sharp corners [rad]. */
const SHARP = Math.PI / 2 - 1e-6;

/** A foot this near the end of its side is at the end: sight along the side's own corner is a matter of rounding [mm]. */
const GRAZED = 1e-6;

function squareTo(side: Side, x: number, y: number): number {
  return (side.fromX - x) * side.nx + (side.fromY - y) * side.ny;
}

/** Looks at one side from every insert; null where none faces it. Found once for each side. */
export function viewEdge(p: PreparedAnchorage, side: Side): EdgeView | null {
  const known = p.cache.views[side.index];
  if (known !== undefined) return known;
  const distance: number[] = [];
  const along: number[] = [];
  const left: number[] = [];
  const right: number[] = [];
  const isBeside: boolean[] = [];
  const before = p.region.sides[side.previous]!;
  const after = p.region.sides[side.next]!;
  let isFaced = false;
  for (let i = 0; i < p.count; i++) {
    const x = p.xs[i]!;
    const y = p.ys[i]!;
    const foot = (x - side.fromX) * side.ux + (y - side.fromY) * side.uy;
    const d = squareTo(side, x, y);
    const span = visibleSpan(p.region, side.index, x, y);
    const reentrantStart = side.angleAtFrom > Math.PI;
    const reentrantEnd = side.angleAtTo > Math.PI;
    const isBesideStart = span === null && d > 0 && reentrantStart && foot < GRAZED && -foot < 1.5 * d;
    const isBesideEnd =
      span === null && d > 0 && reentrantEnd && foot > side.length - GRAZED && foot - side.length < 1.5 * d;
    along.push(foot);
    if (span === null && !isBesideStart && !isBesideEnd) {
      distance.push(Number.POSITIVE_INFINITY);
      left.push(Number.POSITIVE_INFINITY);
      right.push(Number.POSITIVE_INFINITY);
      isBeside.push(false);
      continue;
    }
    isFaced = true;
    distance.push(d);
    isBeside.push(span === null);
    const from = span?.from ?? 0;
    const to = span?.to ?? side.length;
    const toStart = isBesideStart ? Number.POSITIVE_INFINITY : foot - from;
    const toEnd = isBesideEnd ? Number.POSITIVE_INFINITY : to - foot;
    left.push(from <= 1e-6 && !reentrantStart ? Math.min(toStart, squareTo(before, x, y)) : toStart);
    right.push(to >= side.length - 1e-6 && !reentrantEnd ? Math.min(toEnd, squareTo(after, x, y)) : toEnd);
  }
  const view = isFaced ? { side, distance, along, left, right, isBeside } : null;
  p.cache.views[side.index] = view;
  return view;
}

/**
 * Rows of inserts along one edge. The front row is what stands within 1.1 of the smallest edge distance; neighbours along
 * the edge closer than `chain` times c1 act together; an insert behind belongs to the row it stands behind. Inserts beside
 * every row (farther along the edge than that) form rows of their own, with their own smallest distance.
 * @param members inserts that carry the load in question
 * @param chain multiple of c1
 */
export function findEdgeRows(view: EdgeView, members: readonly number[], chain: number): EdgeRow[] {
  const { distance, along } = view;
  const rows: EdgeRow[] = [];
  let left = members.filter((i) => distance[i]! < Number.POSITIVE_INFINITY);
  while (left.length > 0) {
    let least = Number.POSITIVE_INFINITY;
    for (const i of left) least = Math.min(least, distance[i]!);
    const front = left.filter((i) => distance[i]! <= FRONT_ROW * least).sort((a, b) => along[a]! - along[b]! || a - b);
    const chains: Chain[] = [];
    for (const i of front) {
      const last = chains.at(-1);
      if (last !== undefined && along[i]! - along[last.front.at(-1)!]! < chain * least) last.front.push(i);
      else chains.push({ front: [i], behind: [] });
    }
    const beside: number[] = [];
    for (const i of left) {
      if (distance[i]! <= FRONT_ROW * least) continue;
      const nearest = findNearestChain(chains, along, i);
      if (nearest.gap < chain * least) nearest.chain.behind.push(i);
      else beside.push(i);
    }
    for (const { front, behind } of chains) rows.push(describeRow(view, front, [...front, ...behind]));
    left = beside;
  }
  return rows;
}

/** Front inserts that act together, in order along the edge, and those that stand behind them. */
interface Chain {
  readonly front: number[];
  readonly behind: number[];
}

/** The chain whose front comes nearest to an insert, measured along the edge. */
function findNearestChain(
  chains: readonly Chain[],
  along: readonly number[],
  insert: number,
): { readonly chain: Chain; readonly gap: number } {
  let nearest = chains[0]!;
  let gap = Number.POSITIVE_INFINITY;
  for (const chain of chains)
    for (const i of chain.front) {
      const distance = Math.abs(along[insert]! - along[i]!);
      if (distance >= gap) continue;
      gap = distance;
      nearest = chain;
    }
  return { chain: nearest, gap };
}

function describeRow(view: EdgeView, front: readonly number[], all: readonly number[]): EdgeRow {
  let edge = Number.POSITIVE_INFINITY;
  let left = Number.POSITIVE_INFINITY;
  let right = Number.POSITIVE_INFINITY;
  let largestSpacing = 0;
  let sum = 0;
  let before = view.along[front[0]!]!;
  for (const i of front) {
    const along = view.along[i]!;
    edge = Math.min(edge, view.distance[i]!);
    left = Math.min(left, view.left[i]!);
    right = Math.min(right, view.right[i]!);
    largestSpacing = Math.max(largestSpacing, along - before);
    sum += along;
    before = along;
  }
  return {
    view,
    front,
    all,
    edge,
    corner: Math.min(left, right),
    farCorner: Math.max(left, right),
    largestSpacing,
    meanSpacing: front.length > 1 ? (before - view.along[front[0]!]!) / (front.length - 1) : 0,
    centre: sum / front.length,
  };
}

/** Length along the edge covered by bodies of `reach` to each side of every front insert, cut at corners [mm]. */
export function coverAlong(row: EdgeRow, reach: number): number {
  const { view } = row;
  let covered = 0;
  let end = Number.NEGATIVE_INFINITY;
  const spans = row.front
    .map(
      (i) =>
        [view.along[i]! - Math.min(reach, view.left[i]!), view.along[i]! + Math.min(reach, view.right[i]!)] as const,
    )
    .sort((a, b) => a[0] - b[0]);
  for (const [from, to] of spans) {
    if (to <= end) continue;
    covered += to - Math.max(from, end);
    end = to;
  }
  return covered;
}

/** Why a row is not covered: a corner sharper than a right angle within reach. Null where there is none. */
export function findSharpCorner(row: EdgeRow, reach: number): string | null {
  const { side, left, right } = row.view;
  // A reduced c1' lets the body end right at the corner: rounding must not decide, so a body that touches it reaches it.
  const touching = reach * (1 + 1e-9);
  const isNear = (distances: readonly number[]) => row.front.some((i) => distances[i]! <= touching);
  for (const [angle, distances] of [
    [side.angleAtFrom, left],
    [side.angleAtTo, right],
  ] as const)
    if (angle < SHARP && isNear(distances))
      return writeMessage('sharp-corner', { angle: roundForText((angle * 180) / Math.PI) });
  return null;
}
