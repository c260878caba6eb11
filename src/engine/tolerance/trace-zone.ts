import type { Point, Polygon } from '../geometry/point.ts';

/** How a region is traced. Lengths mm. */
export interface ZoneGrid {
  /** Nothing farther from the origin than this, along x or y, is looked at. */
  readonly window: number;
  /** Distance of the points that are asked first: what is narrower may be missed. */
  readonly step: number;
  /** The boundary is known to this. */
  readonly within: number;
}

/** The connected region around the origin. */
export interface TracedZone {
  /** Counter-clockwise, not closed; every corner passes. */
  readonly boundary: Polygon;
  /** What fails inside it, clockwise; every corner passes. */
  readonly holes: readonly Polygon[];
  /** Whether the window cut it, toward each side. */
  readonly isCut: { readonly left: boolean; readonly right: boolean; readonly down: boolean; readonly up: boolean };
}

/** Right, up, left, down: each a quarter turn counter-clockwise from the one before. */
const WAYS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** A boundary is refined between two of its corners this often at most. */
const MOST_SPLITS = 6;

/** A step from a node that passes to its neighbour that does not. */
interface Crossing {
  readonly i: number;
  readonly j: number;
  readonly way: number;
}

function turnsLeft(points: Polygon): boolean {
  let twice = 0;
  for (const [k, [x, y]] of points.entries()) {
    const [nx, ny] = points[(k + 1) % points.length]!;
    twice += x * ny - nx * y;
  }
  return twice > 0;
}

/** The nodes around the origin, each asked once. */
class Nodes {
  readonly count: number;
  readonly pitch: number;
  readonly #known = new Map<number, boolean>();
  readonly #passes: (x: number, y: number) => boolean;

  constructor(passes: (x: number, y: number) => boolean, { window, step }: ZoneGrid) {
    this.#passes = passes;
    this.count = Math.max(1, Math.ceil(window / step));
    this.pitch = window / this.count;
  }

  isOut(i: number, j: number): boolean {
    return Math.abs(i) > this.count || Math.abs(j) > this.count;
  }

  key(i: number, j: number): number {
    return (i + this.count) * (2 * this.count + 1) + j + this.count;
  }

  passes(i: number, j: number): boolean {
    if (this.isOut(i, j)) return false;
    const key = this.key(i, j);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = this.#passes(i * this.pitch, j * this.pitch);
    this.#known.set(key, found);
    return found;
  }
}

/** Follows what passes and what does not, node by node. */
class Tracer {
  readonly #nodes: Nodes;
  readonly #seen = new Set<number>();
  readonly #passes: (x: number, y: number) => boolean;
  readonly #grid: ZoneGrid;

  constructor(ask: (x: number, y: number) => boolean, grid: ZoneGrid) {
    const { window } = grid;
    this.#passes = (x, y) => Math.abs(x) <= window && Math.abs(y) <= window && ask(x, y);
    this.#grid = grid;
    this.#nodes = new Nodes(this.#passes, grid);
  }

  #keyOf({ i, j, way }: Crossing): number {
    return 4 * this.#nodes.key(i, j) + way;
  }

  /** The next crossing counter-clockwise about what passes; nodes that touch over a corner only are not joined. */
  #goOn({ i, j, way }: Crossing): Crossing {
    const ahead = (way + 1) % 4;
    const [ax, ay] = WAYS[ahead]!;
    const [ox, oy] = WAYS[way]!;
    if (!this.#nodes.passes(i + ax, j + ay)) return { i, j, way: ahead };
    if (!this.#nodes.passes(i + ax + ox, j + ay + oy)) return { i: i + ax, j: j + ay, way };
    return { i: i + ax + ox, j: j + ay + oy, way: (way + 3) % 4 };
  }

  /** Between a place that passes and one that does not: the last that passes, to what is asked for. */
  #bisect([ax, ay]: Point, [bx, by]: Point): Point {
    let [inside, outside] = [0, 1];
    const length = Math.hypot(bx - ax, by - ay);
    while ((outside - inside) * length > this.#grid.within / 2) {
      const at = (inside + outside) / 2;
      if (this.#passes(ax + at * (bx - ax), ay + at * (by - ay))) inside = at;
      else outside = at;
    }
    return [ax + inside * (bx - ax), ay + inside * (by - ay)];
  }

  #place({ i, j, way }: Crossing): Point {
    const { pitch } = this.#nodes;
    const [ox, oy] = WAYS[way]!;
    const at: Point = [i * pitch, j * pitch];
    return this.#nodes.isOut(i + ox, j + oy) ? at : this.#bisect(at, [(i + ox) * pitch, (j + oy) * pitch]);
  }

  /** The farthest place that passes from one that does, a way along; null: it passes as far as was looked. */
  #reach([x, y]: Point, [ux, uy]: Point, from: number, most: number): Point | null {
    let far = from;
    for (let next = 2 * from; far < most; next *= 2) {
      if (!this.#passes(x + next * ux, y + next * uy)) {
        return this.#bisect([x + far * ux, y + far * uy], [x + next * ux, y + next * uy]);
      }
      far = next;
    }
    return null;
  }

  /** The nearest place that passes from one that does not, a way along; null: none as far as was looked. */
  #retreat([x, y]: Point, [ux, uy]: Point, from: number, most: number): Point | null {
    let outside = 0;
    for (let next = from; outside < most; next *= 2) {
      if (this.#passes(x + next * ux, y + next * uy))
        return this.#bisect([x + next * ux, y + next * uy], [x + outside * ux, y + outside * uy]);
      outside = next;
    }
    return null;
  }

  /** What lies between two corners of the boundary where it is not the straight line: a notch, a corner that the nodes stepped over. */
  #refine(a: Point, b: Point, splits: number, into: Point[]): void {
    const { within } = this.#grid;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (splits === MOST_SPLITS || length <= 2 * within) return;
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const out: Point = [(b[1] - a[1]) / length, (a[0] - b[0]) / length];
    const isIn = this.#passes(...middle);
    if (isIn && !this.#passes(middle[0] + within * out[0], middle[1] + within * out[1])) return;
    const found = isIn
      ? this.#reach(middle, out, within, length)
      : this.#retreat(middle, [-out[0], -out[1]], within / 2, length);
    if (found === null) return;
    this.#refine(a, found, splits + 1, into);
    into.push(found);
    this.#refine(found, b, splits + 1, into);
  }

  /** Once round from a crossing; `isOuter`: about what passes, not about a hole in it. */
  follow(start: Crossing): { readonly points: Polygon; readonly isOuter: boolean } {
    const rough: Point[] = [];
    const path: Point[] = [];
    let at = start;
    do {
      this.#seen.add(this.#keyOf(at));
      path.push([at.i + WAYS[at.way]![0] / 2, at.j + WAYS[at.way]![1] / 2]);
      const place = this.#place(at);
      const last = rough.at(-1);
      if (last === undefined || Math.hypot(place[0] - last[0], place[1] - last[1]) > 1e-9) rough.push(place);
      at = this.#goOn(at);
    } while (at.i !== start.i || at.j !== start.j || at.way !== start.way);
    const found: Point[] = [];
    for (const [k, a] of rough.entries()) {
      found.push(a);
      this.#refine(a, rough[(k + 1) % rough.length]!, 0, found);
    }
    return { points: found, isOuter: turnsLeft(path) };
  }

  isSeen(crossing: Crossing): boolean {
    return this.#seen.has(this.#keyOf(crossing));
  }

  /** The region around the origin, which must pass. */
  trace(): { readonly boundary: Polygon; readonly holes: readonly Polygon[] } {
    const nodes = this.#nodes;
    const holes: Polygon[] = [];
    let boundary: Polygon | null = null;
    // A breadth-first walk over all that hangs together; where it ends, there is a boundary.
    const reached = new Set<number>([nodes.key(0, 0)]);
    const queue: (readonly [number, number])[] = [[0, 0]];
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      const [i, j] = next;
      for (const [way, [ox, oy]] of WAYS.entries()) {
        const [ni, nj] = [i + ox, j + oy];
        if (nodes.passes(ni, nj)) {
          const key = nodes.key(ni, nj);
          if (reached.has(key)) continue;
          reached.add(key);
          queue.push([ni, nj]);
        } else if (!this.isSeen({ i, j, way })) {
          const { points, isOuter } = this.follow({ i, j, way });
          if (isOuter) boundary = points;
          else holes.push(points);
        }
      }
    }
    return { boundary: boundary!, holes };
  }
}

/**
 * Traces the connected region around the origin in which something passes: asked at nodes of a grid as far as they hang together, the boundary
 * found between the last node that passes and the first that does not. Holes and necks narrower than the step may be missed.
 * @returns null where the origin itself does not pass
 */
export function traceZone(passes: (x: number, y: number) => boolean, grid: ZoneGrid): TracedZone | null {
  if (!passes(0, 0)) return null;
  const { boundary, holes } = new Tracer(passes, grid).trace();
  const { window, within } = grid;
  const reaches = (find: (at: Point) => number) => boundary.some((at) => find(at) > window - within);
  return {
    boundary,
    holes,
    isCut: {
      left: reaches(([x]) => -x),
      right: reaches(([x]) => x),
      down: reaches(([, y]) => -y),
      up: reaches(([, y]) => y),
    },
  };
}
