import { roundForText, writeMessage } from './messages.ts';
import type { EdgeRow, EdgeView } from './prepared.ts';
import { isAtMost, justBelow } from './rounding.ts';

/** Front row: inserts within this multiple of the smallest edge distance (common practice). */
const FRONT_ROW = 1.1;

/** Interior angles below this are sharp corners [rad]: a tenth of a degree is left to the rounding of drawn coordinates. */
const SHARP = ((90 - 0.1) * Math.PI) / 180;

/**
 * Rows of inserts along one edge. The front row is what stands within 1.1 of the smallest edge distance; neighbours along
 * the edge closer than `chain` times c1 act together. All other inserts bring their load to the row they are nearest to along
 * the edge. Inserts that face the edge behind or beside the front row form further rows, marked `isBehind`.
 * @param members inserts that carry the load in question
 * @param chain multiple of c1
 */
export function findEdgeRows(view: EdgeView, members: readonly number[], chain: number): EdgeRow[] {
  const { distance, along } = view;
  const rows: EdgeRow[] = [];
  let left = members;
  for (;;) {
    let least = Number.POSITIVE_INFINITY;
    for (const i of left) least = Math.min(least, distance[i]!);
    if (least === Number.POSITIVE_INFINITY) return rows;
    const isFront = (i: number) => isAtMost(distance[i]!, FRONT_ROW * least);
    const chains: Chain[] = [];
    for (const i of left.filter(isFront).sort((a, b) => along[a]! - along[b]! || a - b)) {
      const last = chains.at(-1);
      if (last !== undefined && along[i]! - along[last.front.at(-1)!]! < justBelow(chain * least)) last.front.push(i);
      else chains.push({ front: [i], behind: [] });
    }
    const others = left.filter((i) => !isFront(i));
    for (const i of others) findNearestChain(chains, along, i).behind.push(i);
    const isBehind = left !== members;
    for (const { front, behind } of chains) rows.push(describeRow(view, front, [...front, ...behind], isBehind));
    left = others;
  }
}

/** Front inserts that act together, in order along the edge, and those whose load they take besides. */
interface Chain {
  readonly front: number[];
  readonly behind: number[];
}

/** The chain whose front comes nearest to an insert, measured along the edge. */
function findNearestChain(chains: readonly Chain[], along: readonly number[], insert: number): Chain {
  let nearest = chains[0]!;
  let gap = Number.POSITIVE_INFINITY;
  for (const chain of chains)
    for (const i of chain.front) {
      const distance = Math.abs(along[insert]! - along[i]!);
      if (distance >= gap) continue;
      gap = distance;
      nearest = chain;
    }
  return nearest;
}

function describeRow(view: EdgeView, front: readonly number[], all: readonly number[], isBehind: boolean): EdgeRow {
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
    isBehind,
    edge,
    corner: Math.max(0, Math.min(left, right)),
    farCorner: Math.max(0, left, right),
    largestSpacing,
    meanSpacing: front.length > 1 ? (before - view.along[front[0]!]!) / (front.length - 1) : 0,
    centre: sum / front.length,
  };
}

/** Stretches along the edge covered by bodies of `reach` to each side of every front insert, cut at corners, joined [mm]. */
export function spanAlong(row: EdgeRow, reach: number): readonly { readonly from: number; readonly to: number }[] {
  const { view } = row;
  const spans = row.front
    .map((i) => ({
      from: view.along[i]! - Math.min(reach, view.left[i]!),
      to: view.along[i]! + Math.min(reach, view.right[i]!),
    }))
    .sort((a, b) => a.from - b.from);
  const joined: { from: number; to: number }[] = [];
  for (const { from, to } of spans) {
    const last = joined.at(-1);
    // Beyond a corner, a short reach may not come as far as the edge.
    if (to <= (last?.to ?? Number.NEGATIVE_INFINITY) || to <= from) continue;
    if (last !== undefined && from <= last.to) last.to = to;
    else joined.push({ from, to });
  }
  return joined;
}

/** Length along the edge covered by bodies of `reach` to each side of every front insert, cut at corners [mm]. */
export function coverAlong(row: EdgeRow, reach: number): number {
  return spanAlong(row, reach).reduce((covered, { from, to }) => covered + to - from, 0);
}

/** Why a row is not covered: a corner sharper than a right angle within reach. Null where there is none. */
export function findSharpCorner(row: EdgeRow, reach: number): string | null {
  const { start, end, left, right } = row.view;
  // A reduced c1' lets the body end right at the corner: rounding must not decide, so a body that touches it reaches it.
  const isNear = (distances: readonly number[]) => row.front.some((i) => isAtMost(distances[i]!, reach));
  for (const [angle, distances] of [
    [start.angle, left],
    [end.angle, right],
  ] as const)
    if (angle < SHARP && isNear(distances))
      return writeMessage('sharp-corner', { angle: roundForText((angle * 180) / Math.PI) });
  return null;
}
