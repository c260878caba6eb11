import type { Point, Polygon } from './point.ts';
import { collectEdges, type PolygonEdge } from './polygons-area.ts';

/** Points closer than this are one [mm]; slabs narrower than this are none. */
const SAME_PLACE = 1e-7;

/** A corner that turns by no more than this, as a sine, is no corner. */
const STRAIGHT = 1e-9;

/** Part of a slab that the union covers: heights at its left and at its right. */
interface Piece {
  readonly bottom: readonly [left: number, right: number];
  readonly top: readonly [left: number, right: number];
}

/** A point of the outline: heights on one cut that are the same share one node. */
interface Node {
  readonly x: number;
  readonly y: number;
  /** Where the outline goes on from here, the covered side on its left. */
  readonly next: Node[];
}

/** An upright line between two slabs, with its nodes from below up. */
interface Cut {
  readonly x: number;
  readonly nodes: readonly Node[];
}

/**
 * Outline of the union of polygons, each simple and counter-clockwise, given as x, y, x, y … [mm].
 * @returns rings with what is covered on the left: outer rings counter-clockwise, holes clockwise; their signed areas add up to
 * that of the union, to 1e-6 mm a millimetre of outline
 */
export function outlineUnion(polygons: readonly (readonly number[])[]): readonly Polygon[] {
  const { edges, cuts } = collectEdges(polygons);
  const xs = [...cuts].filter((x, k) => k === 0 || x - cuts[k - 1]! > SAME_PLACE);
  const slabs = xs.slice(1).map((right, k) => findPieces(edges, xs[k]!, right));
  const lines = xs.map((x, k) => makeCut(x, slabs[k - 1] ?? [], slabs[k] ?? []));
  slabs.forEach((pieces, k) => {
    for (const { bottom, top } of pieces) {
      link(findNode(lines[k]!, bottom[0]), findNode(lines[k + 1]!, bottom[1]));
      link(findNode(lines[k + 1]!, top[1]), findNode(lines[k]!, top[0]));
    }
  });
  lines.forEach((line, k) => {
    linkUpright(line, slabs[k - 1] ?? [], slabs[k] ?? []);
  });
  return walkRings(lines);
}

/** What the union covers between two cuts, from below up; between pieces that touch the outline goes there and back, which is no corner. */
function findPieces(edges: readonly PolygonEdge[], left: number, right: number): readonly Piece[] {
  const middle = (left + right) / 2;
  // An edge may end within what counts as one cut: it goes no farther than its end.
  const heightAt = ({ leftX, leftY, rightX, slope }: PolygonEdge, x: number) =>
    leftY + (Math.min(rightX, Math.max(leftX, x)) - leftX) * slope;
  const active = edges
    .filter((edge) => edge.leftX < middle && edge.rightX > middle)
    .map((edge) => ({ edge, height: heightAt(edge, middle) }))
    .sort((a, b) => a.height - b.height || b.edge.winding - a.edge.winding);
  const found: { bottom: PolygonEdge; top: PolygonEdge }[] = [];
  let depth = 0;
  for (const { edge } of active) {
    if (depth === 0) found.push({ bottom: edge, top: edge });
    depth += edge.winding;
    if (depth === 0) found.at(-1)!.top = edge;
  }
  return found.map(({ bottom, top }) => ({
    bottom: [heightAt(bottom, left), heightAt(bottom, right)],
    top: [heightAt(top, left), heightAt(top, right)],
  }));
}

function makeCut(x: number, before: readonly Piece[], after: readonly Piece[]): Cut {
  const heights = [
    ...before.flatMap(({ bottom, top }) => [bottom[1], top[1]]),
    ...after.flatMap(({ bottom, top }) => [bottom[0], top[0]]),
  ].sort((a, b) => a - b);
  const nodes: Node[] = [];
  for (const y of heights) if (nodes.length === 0 || y - nodes.at(-1)!.y > SAME_PLACE) nodes.push({ x, y, next: [] });
  return { x, nodes };
}

/** The node of a height: the last that is not above it. */
function findNode({ nodes }: Cut, y: number): Node {
  let low = 0;
  for (let k = 1; k < nodes.length && nodes[k]!.y <= y; k++) low = k;
  return nodes[low]!;
}

function link(from: Node, to: Node): void {
  if (from !== to) from.next.push(to);
}

/** The outline along a cut: down where only what follows is covered, up where only what comes before is. */
function linkUpright({ nodes }: Cut, before: readonly Piece[], after: readonly Piece[]): void {
  for (let k = 1; k < nodes.length; k++) {
    const [below, above] = [nodes[k - 1]!, nodes[k]!];
    const middle = (below.y + above.y) / 2;
    const isBefore = before.some(({ bottom, top }) => bottom[1] < middle && top[1] > middle);
    const isAfter = after.some(({ bottom, top }) => bottom[0] < middle && top[0] > middle);
    if (isAfter && !isBefore) link(above, below);
    if (isBefore && !isAfter) link(below, above);
  }
}

function walkRings(lines: readonly Cut[]): readonly Polygon[] {
  const rings: Polygon[] = [];
  for (const { nodes } of lines)
    for (const start of nodes)
      while (start.next.length > 0) {
        const ring: Point[] = [];
        for (let node = start; ; ) {
          ring.push([node.x, node.y]);
          const next: Node | undefined = node.next.pop();
          if (next === undefined || next === start) break;
          node = next;
        }
        const corners = dropStraight(ring);
        if (corners.length > 2) rings.push(corners);
      }
  return rings;
}

/** A ring without the points between which it goes straight on. */
function dropStraight(ring: readonly Point[]): Polygon {
  const kept: Point[] = [];
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = kept.at(-1) ?? ring.at(-1)!;
    const [bx, by] = ring[i]!;
    const [cx, cy] = ring[(i + 1) % ring.length]!;
    const turn = (bx - ax) * (cy - by) - (by - ay) * (cx - bx);
    const size = Math.hypot(bx - ax, by - ay) * Math.hypot(cx - bx, cy - by);
    if (Math.abs(turn) > STRAIGHT * size) kept.push(ring[i]!);
  }
  return kept;
}
