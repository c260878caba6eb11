import type { Vector } from './solid.ts';

/**
 * A convex solid as the loop below sees it: the point of it that lies farthest in a direction. The direction is not a unit vector.
 */
export type Support = (x: number, y: number, z: number) => Vector;

/** The loop goes on until the answer is proven to be at most this much above the true distance [mm]. */
const DISTANCE_GAP = 1e-7;

/**
 * Rounding keeps some pairs from being proven that closely: of 400,000 random pairs, with bars of 10 m and sides of 1.5 m, those above 1e-6 mm
 * from each other were all proven to 1e-6 mm, some that all but touch to 2e-6 mm. What is proven to this [mm] is still taken.
 */
const LARGEST_GAP = 1e-5;

/** Seen: below 40 for inserts and bars. */
const MOST_STEPS = 100;

/**
 * Distance of two convex solids [mm]; 0 where they touch or overlap.
 *
 * The method of Gilbert, Johnson and Keerthi: the point nearest to the origin of all differences a − b is closed in on by simplices of
 * such differences. Each step gives both a distance that some pair of points has (never below the true one) and the width of a slab
 * between the solids (never above it); the loop ends when the two are DISTANCE_GAP apart, so the result proves itself.
 *
 * E. G. Gilbert, D. W. Johnson, S. S. Keerthi, A fast procedure for computing the distance between complex objects in
 * three-dimensional space, IEEE Journal of Robotics and Automation 4 (1988) 193–203 (recalled).
 *
 * @param a, b farthest points of the solids; coordinates should be small, with an origin near both
 * @param start any difference of a point of a and a point of b
 * @throws Error when the two bounds stay more than 1e-5 mm apart
 */
export function measureConvex(a: Support, b: Support, start: Vector): number {
  let nearest = start;
  let simplex: readonly Vector[] = [];
  let proven = 0;
  let found = lengthOf(start);
  for (let step = 0; step < MOST_STEPS; step++) {
    const [x, y, z] = nearest;
    const length = lengthOf(nearest);
    if (length <= DISTANCE_GAP) return 0;
    found = Math.min(found, length);
    const p = a(-x, -y, -z);
    const q = b(x, y, z);
    const difference: Vector = [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
    proven = Math.max(proven, (x * difference[0] + y * difference[1] + z * difference[2]) / length);
    if (found - proven <= DISTANCE_GAP) return found;
    const next = reduceSimplex([...simplex, difference]);
    if (next === null) return 0;
    nearest = next.nearest;
    simplex = next.simplex;
  }
  if (found - proven <= LARGEST_GAP) return found;
  throw new Error(
    `the distance of two solids lies between ${proven} and ${found} mm; expected to know it to ${LARGEST_GAP} mm`,
  );
}

/** Lengths that differ by no more than this share of them are the same. */
const AS_SHORT = 1e-10;

interface Nearest {
  readonly nearest: Vector;
  readonly simplex: readonly Vector[];
}

/**
 * The point of a simplex (one to four points) nearest to the origin, and the corners that it lies between; null where the simplex holds the
 * origin. Every corner, side and face is looked at: slower than deciding by signs, and right for flat and tiny simplices too.
 *
 * Lengths alone do not tell which is nearest: a point off its place by d is longer by d² only, which rounding swallows. So of those that are as
 * short the one counts whose plane (square to its direction) leaves the corners farthest beyond it: at the nearest point none lies before it.
 */
function reduceSimplex(points: readonly Vector[]): Nearest | null {
  if (points.length === 4 && holdsOrigin(points)) return null;
  const found: Nearest[] = [];
  const offer = (nearest: Vector, simplex: readonly Vector[]) => {
    found.push({ nearest, simplex });
  };
  for (const point of points) offer(point, [point]);
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      const found = nearestOnSide(points[i]!, points[j]!);
      if (found !== null) offer(found, [points[i]!, points[j]!]);
    }
  }
  for (let i = 0; i < points.length; i++) {
    for (let j = i + 1; j < points.length; j++) {
      for (let k = j + 1; k < points.length; k++) {
        const found = nearestOnFace(points[i]!, points[j]!, points[k]!);
        if (found !== null) offer(found, [points[i]!, points[j]!, points[k]!]);
      }
    }
  }
  const lengths = found.map(({ nearest }) => lengthOf(nearest));
  const longest = Math.min(...lengths) * (1 + AS_SHORT);
  let best = found[0]!;
  let most = Number.NEGATIVE_INFINITY;
  found.forEach((one, i) => {
    if (lengths[i]! > longest) return;
    const beyond = Math.min(...points.map((point) => dot(one.nearest, point)));
    // Of equals the smaller simplex stays: it was found first.
    if (beyond <= most) return;
    most = beyond;
    best = one;
  });
  return best;
}

/** The foot of the perpendicular from the origin, where it falls between two points. */
function nearestOnSide(a: Vector, b: Vector): Vector | null {
  const side = minus(b, a);
  const square = dot(side, side);
  const along = -dot(a, side);
  if (!(along > 0 && along < square)) return null;
  const share = along / square;
  return [a[0] + share * side[0], a[1] + share * side[1], a[2] + share * side[2]];
}

/**
 * The foot of the perpendicular from the origin, where it falls within a triangle. It is found along the longest side and square to that:
 * by the normal, a triangle as long as a panel and a hair thin would lose the digits that count along it.
 */
function nearestOnFace(a: Vector, b: Vector, c: Vector): Vector | null {
  const [ab, bc, ca] = [lengthOf(minus(b, a)), lengthOf(minus(c, b)), lengthOf(minus(a, c))];
  if (ab >= bc && ab >= ca) return nearestAlong(a, b, c, ab);
  return bc >= ca ? nearestAlong(b, c, a, bc) : nearestAlong(c, a, b, ca);
}

/** The same for a triangle whose longest side runs from a to b. */
function nearestAlong(a: Vector, b: Vector, c: Vector, length: number): Vector | null {
  const [ux, uy, uz] = minus(b, a).map((v) => v / length) as [number, number, number];
  const toC = minus(c, a);
  const along = toC[0] * ux + toC[1] * uy + toC[2] * uz;
  const off: Vector = [toC[0] - along * ux, toC[1] - along * uy, toC[2] - along * uz];
  const height = lengthOf(off);
  if (!(height > 0)) return null;
  const [vx, vy, vz] = off.map((v) => v / height) as [number, number, number];
  const s = -(a[0] * ux + a[1] * uy + a[2] * uz);
  const t = -(a[0] * vx + a[1] * vy + a[2] * vz);
  const ofC = t / height;
  const ofB = (s - ofC * along) / length;
  if (ofC < 0 || ofB < 0 || ofB + ofC > 1) return null;
  return [a[0] + s * ux + t * vx, a[1] + s * uy + t * vy, a[2] + s * uz + t * vz];
}

/** Whether the origin lies within a tetrahedron: on the inner side of each face. A flat one holds nothing. */
function holdsOrigin(points: readonly Vector[]): boolean {
  for (let i = 0; i < 4; i++) {
    const apex = points[i]!;
    const [a, b, c] = points.filter((_, j) => j !== i) as [Vector, Vector, Vector];
    const normal = cross(minus(b, a), minus(c, a));
    const ofApex = dot(normal, minus(apex, a));
    const ofOrigin = -dot(normal, a);
    if (ofApex === 0 || ofApex > 0 !== ofOrigin > 0) return false;
  }
  return true;
}

function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function lengthOf(v: Vector): number {
  return Math.sqrt(dot(v, v));
}
