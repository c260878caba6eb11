import polygonClipping from 'polygon-clipping';
import { GeometryError } from '../../../src/engine/geometry/geometry-error.ts';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import { isInside, prepareRegion, type Region } from '../../../src/engine/geometry/region.ts';

/** Faces drawn at random and the second way of computing their areas: polygon-clipping, a general polygon library. */

/** Evenly scattered numbers 0 … 1 that are the same in every run (mulberry32, a published public-domain generator). */
export function scatter(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface Face {
  readonly outline: Polygon;
  readonly openings: readonly Polygon[];
  readonly points: readonly Point[];
  readonly half: number;
  readonly ux: number;
  readonly uy: number;
}

export type Move = (point: Point) => Point;

/** The same face with rings begun k corners later, the outline the other way round, openings and points in another order. */
export function reorder(face: Face, k: number): Face {
  const turnRing = (ring: Polygon): Polygon => ring.map((_, i) => ring[(i + k) % ring.length]!);
  return {
    ...face,
    outline: [...turnRing(face.outline)].reverse(),
    openings: face.openings.map(turnRing).reverse(),
    points: face.points.map((_, i) => face.points[(i + k) % face.points.length]!).reverse(),
  };
}

/** The same face moved: every point through `move`, the squares' direction through its linear part. */
export function moveFace(face: Face, move: Move): Face {
  const [ox, oy] = move([0, 0]);
  const [px, py] = move([face.ux, face.uy]);
  const length = Math.hypot(px - ox, py - oy);
  return {
    outline: face.outline.map(move),
    openings: face.openings.map((opening) => opening.map(move)),
    points: face.points.map(move),
    half: face.half,
    ux: (px - ox) / length,
    uy: (py - oy) / length,
  };
}

/** Turn by `angle` [rad] about the origin, mirrored first (x → −x) if asked, then shifted. */
export function makeMove(angle: number, mirrored: boolean, dx: number, dy: number): Move {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return ([x, y]) => {
    const mx = mirrored ? -x : x;
    return [mx * c - y * s + dx, mx * s + y * c + dy];
  };
}

export function regionOf(face: Face): Region {
  return prepareRegion(face.outline, face.openings);
}

export function coordinates(face: Face): { readonly xs: Float64Array; readonly ys: Float64Array } {
  return { xs: Float64Array.from(face.points, (p) => p[0]), ys: Float64Array.from(face.points, (p) => p[1]) };
}

/** A rectangle, a skew quadrilateral, an L or a U, up to 8 m, with none, one or two openings, 1 … 5 inserts, any turn. */
export function drawFace(random: () => number): Face {
  const within = (low: number, high: number): number => low + (high - low) * random();
  const w = within(400, 8000);
  const h = within(400, 4000);
  const skew = (): number => within(-0.15, 0.15) * Math.min(w, h);
  const kind = Math.floor(within(0, 4));
  const a = within(0.3, 0.45);
  const b = within(0.55, 0.7);
  const c = within(0.3, 0.7);
  let outline: Polygon;
  if (kind === 0) outline = box(0, 0, w, h);
  else if (kind === 1) {
    outline = box(0, 0, w, h).map(([x, y]): Point => [x + skew(), y + skew()]);
  } else if (kind === 2) {
    outline = [
      [0, 0],
      [w, 0],
      [w, c * h],
      [a * w, c * h],
      [a * w, h],
      [0, h],
    ];
  } else {
    outline = [
      [0, 0],
      [w, 0],
      [w, h],
      [b * w, h],
      [b * w, c * h],
      [a * w, c * h],
      [a * w, h],
      [0, h],
    ];
  }
  // Openings in the lower third, where every one of these outlines is whole.
  const openings: Polygon[] = [];
  const count = Math.floor(within(0, 3));
  for (let i = 0; i < count; i++) {
    const left = w * (0.2 + 0.3 * i + within(0, 0.08));
    const right = left + w * within(0.02, 0.18);
    const bottom = h * within(0.16, 0.19);
    const top = bottom + h * within(0.01, 0.09);
    openings.push(
      random() < 0.7
        ? box(left, bottom, right, top)
        : [
            [left, bottom],
            [right, bottom],
            [left, top],
          ],
    );
  }
  const region = prepareRegion(outline, openings);
  const points: Point[] = [];
  const n = 1 + Math.floor(within(0, 5));
  const half = within(60, 400);
  const [cx, cy] = [within(0, w), within(0, h)];
  for (let tries = 0; points.length < n; tries++) {
    const spread = tries < 200 ? 3 * half : w + h;
    const p: Point = [cx + within(-spread, spread), cy + within(-spread, spread)];
    if (isInside(region, p[0], p[1])) points.push(p);
  }
  const angle = within(0, Math.PI);
  const face = { outline, openings, points, half, ux: Math.cos(angle), uy: Math.sin(angle) };
  return moveFace(face, makeMove(within(0, 2 * Math.PI), random() < 0.5, within(-10000, 10000), within(-10000, 10000)));
}

/**
 * A face on a coarse grid (10 mm), squares and all, so that corners lie on the squares' sides and corners, in one line with
 * the inserts and with each other, and inserts coincide, in most cases.
 */
export function drawGridFace(random: () => number): Face {
  const pick = (low: number, high: number): number => 10 * Math.floor(low + (high - low + 1) * random());
  const outlines: readonly Polygon[] = [
    box(0, 0, 200, 200),
    [
      [0, 0],
      [200, 0],
      [200, 100],
      [100, 100],
      [100, 200],
      [0, 200],
    ],
    [
      [0, 0],
      [100, 0],
      [100, 60],
      [120, 60],
      [120, 0],
      [200, 0],
      [200, 200],
      [0, 200],
    ],
    [
      [0, 0],
      [200, 0],
      [200, 200],
      [100, 100],
      [0, 200],
    ],
  ];
  const outline = outlines[Math.floor(4 * random())]!;
  for (;;) {
    const openings = Array.from({ length: Math.floor(3 * random()) }, () => {
      const [x, y] = [pick(1, 18), pick(1, 18)];
      const [w, h] = [pick(1, 4), pick(1, 4)];
      return random() < 0.7
        ? box(x, y, x + w, y + h)
        : ([
            [x, y],
            [x + w, y],
            [x, y + h],
          ] as const);
    });
    const points = Array.from({ length: 1 + Math.floor(4 * random()) }, (): Point => [pick(1, 19), pick(1, 19)]);
    const half = pick(2, 12);
    const [ux, uy] = [
      [1, 0],
      [0, 1],
      [0.6, 0.8],
      [Math.SQRT1_2, Math.SQRT1_2],
    ][Math.floor(4 * random())]!;
    const face = { outline, openings, points, half, ux: ux!, uy: uy! };
    if (isSound(face)) return face;
  }
}

/** Whether the openings are apart and every insert lies in the concrete. */
function isSound(face: Face): boolean {
  try {
    const region = regionOf(face);
    return face.points.every(([x, y]) => isInside(region, x, y));
  } catch (error) {
    if (error instanceof GeometryError) return false;
    throw error;
  }
}

export function box(x0: number, y0: number, x1: number, y1: number): Polygon {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}

type Pair = [number, number];
type PeerPolygon = Pair[][];

function peerRing(polygon: Polygon): Pair[] {
  return [...polygon, polygon[0]!].map(([x, y]): Pair => [x, y]);
}

/** Everything shifted so that the first insert is the origin: the library rounds relative to the size of the numbers. */
function peerFace(face: Face): { readonly panel: PeerPolygon; readonly squares: PeerPolygon[]; readonly at: Point[] } {
  const [ox, oy] = face.points[0]!;
  const shift: Move = ([x, y]) => [x - ox, y - oy];
  const { half, ux, uy } = face;
  const at = face.points.map(shift);
  const squares = at.map(([x, y]): PeerPolygon => {
    const corner = (u: number, v: number): Point => [x + half * (u * ux - v * uy), y + half * (u * uy + v * ux)];
    return [peerRing([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)])];
  });
  const panel = [face.outline, ...face.openings].map((ring) => peerRing(ring.map(shift)));
  return { panel, squares, at };
}

function peerArea(polygons: readonly (readonly (readonly Pair[])[])[]): number {
  let area = 0;
  for (const polygon of polygons) {
    polygon.forEach((ring, r) => {
      area += ((r === 0 ? 1 : -1) * Math.abs(peerTwice(ring))) / 2;
    });
  }
  return area;
}

/**
 * The general library sometimes gives up with an error where sides lie on each other by rounding. The area does not depend
 * on the turn of the drawing, so it is asked again with the whole face turned; five refusals are a failure.
 */
function askTurned(face: Face, ask: (face: Face, move: Move) => number): number {
  for (let turn = 0; ; turn++) {
    try {
      const move = makeMove(0.37 * turn, false, 0, 0);
      return ask(moveFace(face, move), move);
    } catch (error) {
      if (turn === 4) throw error;
    }
  }
}

/** Union of the squares, then cut by the panel, with the general library. */
export function peerSquaresArea(face: Face): number {
  return askTurned(face, clipSquares);
}

function clipSquares(face: Face): number {
  const { panel, squares } = peerFace(face);
  return peerArea(polygonClipping.intersection(polygonClipping.union(squares[0]!, ...squares.slice(1)), panel));
}

/**
 * The same with sight: whatever a straight line from the insert cannot reach lies behind a side that faces the insert. So
 * from each insert's square the shadow of every such side is taken away: the side and its two ends thrown 100 m outward
 * from the insert (split at the insert's foot on it, so that a shadow is never wider than 90° and its far edge stays out of
 * the square). Then the union of what is left.
 */
export function peerVisibleArea(face: Face): number {
  return askTurned(face, clipVisible);
}

function clipVisible(face: Face): number {
  const { panel, squares, at } = peerFace(face);
  const seen = squares.map((square, i) => {
    const shadows = panel.flatMap((ring, r) => castShadows(ring, r === 0, at[i]!));
    return polygonClipping.difference(square, ...shadows);
  });
  return peerArea(polygonClipping.union(seen[0]!, ...seen.slice(1)));
}

/** The part of a convex polygon that is in sight of the face's first point, in the same way. */
export function peerVisibleWithin(face: Face, convex: Polygon): number {
  return askTurned(face, (turned, move) => {
    const [ox, oy] = turned.points[0]!;
    const { panel } = peerFace(turned);
    const shape: PeerPolygon = [peerRing(convex.map(move).map(([x, y]): Point => [x - ox, y - oy]))];
    const shadows = panel.flatMap((ring, r) => castShadows(ring, r === 0, [0, 0]));
    return peerArea(polygonClipping.difference(shape, ...shadows));
  });
}

function castShadows(ring: readonly Pair[], isOutline: boolean, [px, py]: Point): PeerPolygon[] {
  const throwOut = ([x, y]: Pair): Pair => {
    const far = 1e5 / Math.hypot(x - px, y - py);
    return [px + far * (x - px), py + far * (y - py)];
  };
  const sense = Math.sign(peerTwice(ring)) * (isOutline ? 1 : -1);
  const shadows: PeerPolygon[] = [];
  for (let k = 0; k + 1 < ring.length; k++) {
    const [a, b] = [ring[k]!, ring[k + 1]!];
    if (sense * ((a[0] - px) * (b[1] - py) - (a[1] - py) * (b[0] - px)) <= 0) continue;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = ((px - a[0]) * dx + (py - a[1]) * dy) / (dx * dx + dy * dy);
    const parts: Pair[] = t > 0.001 && t < 0.999 ? [a, [a[0] + t * dx, a[1] + t * dy], b] : [a, b];
    for (let m = 0; m + 1 < parts.length; m++) {
      const [from, to] = [parts[m]!, parts[m + 1]!];
      shadows.push([peerRing([from, to, throwOut(to), throwOut(from)])]);
    }
  }
  return shadows;
}

function peerTwice(ring: readonly Pair[]): number {
  let twice = 0;
  for (let i = 0; i + 1 < ring.length; i++) twice += ring[i]![0] * ring[i + 1]![1] - ring[i]![1] * ring[i + 1]![0];
  return twice;
}
