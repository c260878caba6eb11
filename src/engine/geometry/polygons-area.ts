/** One side of a polygon that is not upright, left end first. */
export interface PolygonEdge {
  readonly leftX: number;
  readonly leftY: number;
  readonly rightX: number;
  readonly rightY: number;
  readonly slope: number;
  /** +1 where the polygon lies above the edge, −1 where it lies below. */
  readonly winding: number;
  readonly polygon: number;
}

/** Edges that part by no more than this [mm] over their common width are taken as one, slabs no wider as rounding. */
const TOGETHER = 1e-11;

/**
 * Area [mm²] of the union of polygons, each simple and counter-clockwise, given as x, y, x, y … [mm].
 *
 * Exact: between one corner or crossing of edges and the next, the covered height changes in a straight line, so the slab
 * between them has the area width × height at its middle. Edges that lie on each other, touching corners and equal
 * polygons need no care: a crossing that is missed by rounding shifts the area by no more than that rounding.
 */
export function unionOfPolygonsArea(polygons: readonly (readonly number[])[]): number {
  const { edges, cuts } = collectEdges(polygons);
  let area = 0;
  let first = 0;
  let active: PolygonEdge[] = [];
  const heights = new Float64Array(edges.length);
  const windings = new Int8Array(edges.length);
  for (let k = 0; k + 1 < cuts.length; k++) {
    const width = cuts[k + 1]! - cuts[k]!;
    if (width <= TOGETHER) continue;
    const middle = (cuts[k]! + cuts[k + 1]!) / 2;
    for (; first < edges.length && edges[first]!.leftX < middle; first++) active.push(edges[first]!);
    active = active.filter((edge) => edge.rightX > middle);
    area += width * coveredHeight(active, middle, heights, windings);
  }
  return area;
}

/** The edges of polygons, left ends first to last, and in order every x at which one ends or two of them cross. */
export function collectEdges(polygons: readonly (readonly number[])[]): {
  readonly edges: readonly PolygonEdge[];
  readonly cuts: Float64Array;
} {
  const edges: PolygonEdge[] = [];
  const cuts: number[] = [];
  polygons.forEach((polygon, index) => {
    appendEdges(polygon, index, edges, cuts);
  });
  edges.sort((a, b) => a.leftX - b.leftX);
  for (let i = 0; i < edges.length; i++) appendCrossings(edges, i, cuts);
  return { edges, cuts: Float64Array.from(cuts).sort() };
}

function coveredHeight(active: readonly PolygonEdge[], x: number, heights: Float64Array, windings: Int8Array): number {
  for (let i = 0; i < active.length; i++) {
    const edge = active[i]!;
    const y = edge.leftY + (x - edge.leftX) * edge.slope;
    let j = i;
    for (; j > 0 && heights[j - 1]! > y; j--) {
      heights[j] = heights[j - 1]!;
      windings[j] = windings[j - 1]!;
    }
    heights[j] = y;
    windings[j] = edge.winding;
  }
  let depth = 0;
  let covered = 0;
  for (let i = 0; i < active.length; i++) {
    if (depth > 0) covered += heights[i]! - heights[i - 1]!;
    depth += windings[i]!;
  }
  return covered;
}

function appendEdges(polygon: readonly number[], index: number, edges: PolygonEdge[], cuts: number[]): void {
  const n = polygon.length;
  for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
    const ax = polygon[j]!;
    const ay = polygon[j + 1]!;
    const bx = polygon[i]!;
    const by = polygon[i + 1]!;
    cuts.push(bx);
    if (Math.abs(bx - ax) <= TOGETHER) continue;
    const slope = (by - ay) / (bx - ax);
    edges.push(
      ax < bx
        ? { leftX: ax, leftY: ay, rightX: bx, rightY: by, slope, winding: 1, polygon: index }
        : { leftX: bx, leftY: by, rightX: ax, rightY: ay, slope, winding: -1, polygon: index },
    );
  }
}

/** Appends where edge i crosses the edges after it that belong to other polygons. */
function appendCrossings(edges: readonly PolygonEdge[], i: number, cuts: number[]): void {
  const a = edges[i]!;
  const low = Math.min(a.leftY, a.rightY);
  const high = Math.max(a.leftY, a.rightY);
  for (let j = i + 1; j < edges.length; j++) {
    const b = edges[j]!;
    if (b.leftX >= a.rightX) return;
    if (b.polygon === a.polygon) continue;
    if ((b.leftY > high && b.rightY > high) || (b.leftY < low && b.rightY < low)) continue;
    const from = b.leftX;
    const to = Math.min(a.rightX, b.rightX);
    const before = a.leftY + (from - a.leftX) * a.slope - b.leftY;
    const after = before + (to - from) * (a.slope - b.slope);
    if (before > 0 === after > 0 || (Math.abs(before) <= TOGETHER && Math.abs(after) <= TOGETHER)) continue;
    cuts.push(from + ((to - from) * before) / (before - after));
  }
}
