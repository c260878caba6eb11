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
  const rows: EdgeRow[] = [];
  let left = members.filter((i) => view.distance[i]! < Number.POSITIVE_INFINITY);
  while (left.length > 0) {
    const least = Math.min(...left.map((i) => view.distance[i]!));
    const front = left
      .filter((i) => view.distance[i]! <= FRONT_ROW * least)
      .sort((a, b) => view.along[a]! - view.along[b]! || a - b);
    const chains: number[][] = [];
    for (const i of front) {
      const last = chains.at(-1);
      if (last !== undefined && view.along[i]! - view.along[last.at(-1)!]! < chain * least) last.push(i);
      else chains.push([i]);
    }
    const all = chains.map((members) => [...members]);
    const beside: number[] = [];
    for (const i of left) {
      if (front.includes(i)) continue;
      const gaps = chains.map((row) => Math.min(...row.map((j) => Math.abs(view.along[i]! - view.along[j]!))));
      const nearest = gaps.indexOf(Math.min(...gaps));
      if (gaps[nearest]! < chain * least) all[nearest]!.push(i);
      else beside.push(i);
    }
    for (const [k, row] of chains.entries()) rows.push(describeRow(view, row, all[k]!));
    left = beside;
  }
  return rows;
}

function describeRow(view: EdgeView, front: readonly number[], all: readonly number[]): EdgeRow {
  const corners = [
    Math.min(...front.map((i) => view.left[i]!)),
    Math.min(...front.map((i) => view.right[i]!)),
  ] as const;
  let largestSpacing = 0;
  for (let k = 1; k < front.length; k++)
    largestSpacing = Math.max(largestSpacing, view.along[front[k]!]! - view.along[front[k - 1]!]!);
  const length = view.along[front.at(-1)!]! - view.along[front[0]!]!;
  return {
    view,
    front,
    all,
    edge: Math.min(...front.map((i) => view.distance[i]!)),
    corner: Math.min(...corners),
    farCorner: Math.max(...corners),
    largestSpacing,
    meanSpacing: front.length > 1 ? length / (front.length - 1) : 0,
    centre: front.reduce((sum, i) => sum + view.along[i]!, 0) / front.length,
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
