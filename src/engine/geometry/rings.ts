import { GeometryError } from './geometry-error.ts';
import type { Point, Polygon } from './point.ts';

/**
 * Two corners closer than this [mm] are one; a corner that leaves the line between its neighbours by no more than this is
 * dropped; rings closer than this touch. A ten-thousandth of a micrometre: far below anything that is set out or cast, and
 * some ten thousand times the rounding of a coordinate at 20 m (4e-12 mm). A dropped corner changes the area of a square
 * of 100 mm by less than 1e-9 of it.
 */
export const TOLERANCE = 1e-7;

/** A ring without double or needless corners; `given[i]` is the index of corner i in the polygon as it was given. */
export interface Ring {
  readonly ring: 'outline' | number;
  readonly points: readonly Point[];
  readonly given: readonly number[];
}

/**
 * The ring of a polygon: checked, cleaned of double and collinear corners (within TOLERANCE) and turned so that the
 * concrete lies on the left of every side (outline counter-clockwise, openings clockwise).
 *
 * @throws GeometryError for non-finite numbers, fewer than 3 corners, no area, or a ring that touches or crosses itself.
 */
export function prepareRing(polygon: Polygon, ring: 'outline' | number): Ring {
  const name = nameRing(ring);
  for (let i = 0; i < polygon.length; i++) {
    const [x, y] = polygon[i]!;
    for (const [axis, value] of [['x', x] as const, ['y', y] as const]) {
      if (!Number.isFinite(value)) {
        throw new GeometryError(
          `${name}, corner ${i + 1}: ${axis} is ${value}; expected a finite number of mm`,
          ring,
          i,
        );
      }
    }
  }
  if (polygon.length < 3) {
    throw new GeometryError(`${name} has ${polygon.length} corners; expected at least 3`, ring, null);
  }
  const given = dropNeedlessCorners(polygon);
  if (given.length < 3) {
    throw new GeometryError(
      `${name} encloses no area: of its ${polygon.length} corners only ${given.length} are distinct and off one line; ` +
        'expected at least 3',
      ring,
      null,
    );
  }
  refuseSelfContact(polygon, given, ring);
  let area = 0;
  let perimeter = 0;
  for (let i = 0; i < given.length; i++) {
    const [ax, ay] = polygon[given[i]!]!;
    const [bx, by] = polygon[given[(i + 1) % given.length]!]!;
    const [ox, oy] = polygon[0]!;
    area += ((ax - ox) * (by - oy) - (bx - ox) * (ay - oy)) / 2;
    perimeter += measureLength(bx - ax, by - ay);
  }
  if (Math.abs(area) <= TOLERANCE * perimeter) {
    throw new GeometryError(`${name} encloses ${Math.abs(area)} mm²; expected an area above zero`, ring, null);
  }
  if (area > 0 !== (ring === 'outline')) given.reverse();
  return { ring, points: given.map((i) => polygon[i]!), given };
}

/** @throws GeometryError when the two rings touch or cross (come within TOLERANCE of each other). */
export function refuseContact(a: Ring, b: Ring): void {
  for (let i = 0; i < a.points.length; i++) {
    for (let j = 0; j < b.points.length; j++) {
      const from = a.points[i]!;
      const to = a.points[(i + 1) % a.points.length]!;
      const other = b.points[j]!;
      const otherTo = b.points[(j + 1) % b.points.length]!;
      if (measureSegments(from, to, other, otherTo) > TOLERANCE) continue;
      throw new GeometryError(
        `${nameRing(a.ring)} touches or crosses ${nameRing(b.ring)}: its side from ${showPoint(from)} to ${showPoint(to)} ` +
          `meets the side from ${showPoint(other)} to ${showPoint(otherTo)}; expected concrete between them`,
        a.ring,
        a.given[i]!,
      );
    }
  }
}

/** How a ring is called in messages. */
export function nameRing(ring: 'outline' | number): string {
  return ring === 'outline' ? 'outline' : `opening ${ring + 1}`;
}

/** A point as it is written in messages. */
export function showPoint(point: Point): string {
  return `(${point[0]}, ${point[1]})`;
}

/** Whether (x, y) lies within the ring, by the number of sides to its right. On the boundary the answer is either. */
export function isWithinRing(points: readonly Point[], x: number, y: number): boolean {
  let within = false;
  for (let i = 0; i < points.length; i++) {
    const [ax, ay] = points[i]!;
    const [bx, by] = points[(i + 1) % points.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) within = !within;
  }
  return within;
}

/** The indices of the corners that count. A pass is repeated until nothing more falls away. */
function dropNeedlessCorners(polygon: Polygon): number[] {
  let kept = polygon.map((_, i) => i);
  for (let before = -1; before !== kept.length && kept.length > 2; ) {
    before = kept.length;
    const next: number[] = [];
    for (let k = 0; k < kept.length; k++) {
      const previous = polygon[next.length > 0 ? next[next.length - 1]! : kept[kept.length - 1]!]!;
      const corner = polygon[kept[k]!]!;
      const following = polygon[k + 1 < kept.length ? kept[k + 1]! : (next[0] ?? kept[0]!)]!;
      if (!isNeedless(previous, corner, following)) next.push(kept[k]!);
    }
    kept = next;
  }
  return kept;
}

function isNeedless(previous: Point, corner: Point, following: Point): boolean {
  const ax = corner[0] - previous[0];
  const ay = corner[1] - previous[1];
  if (measureLength(ax, ay) <= TOLERANCE) return true;
  const bx = following[0] - corner[0];
  const by = following[1] - corner[1];
  // A double corner is dropped when the second of the two is looked at; a spike folds back and is refused later.
  if (measureLength(bx, by) <= TOLERANCE || ax * bx + ay * by <= 0) return false;
  return Math.abs(ax * by - ay * bx) <= TOLERANCE * measureLength(ax + bx, ay + by);
}

function refuseSelfContact(polygon: Polygon, given: readonly number[], ring: 'outline' | number): void {
  const n = given.length;
  const at = (i: number): Point => polygon[given[i % n]!]!;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      let gap: number;
      if (j === i + 1) {
        gap = Math.min(measureToSegment(at(j + 1), at(i), at(j)), measureToSegment(at(i), at(j), at(j + 1)));
      } else if ((j + 1) % n === i) {
        gap = Math.min(measureToSegment(at(i + 1), at(j), at(i)), measureToSegment(at(j), at(i), at(i + 1)));
      } else {
        gap = measureSegments(at(i), at(i + 1), at(j), at(j + 1));
      }
      if (gap > TOLERANCE) continue;
      throw new GeometryError(
        `${nameRing(ring)} touches or crosses itself: the side from corner ${given[i]! + 1} ${showPoint(at(i))} meets the ` +
          `side from corner ${given[j]! + 1} ${showPoint(at(j))}; expected a simple polygon`,
        ring,
        given[i]!,
      );
    }
  }
}

/** Distance between two segments [mm], 0 where they cross. */
function measureSegments(a: Point, b: Point, c: Point, d: Point): number {
  if (isCutApart(a, b, c, d) && isCutApart(c, d, a, b)) return 0;
  return Math.min(
    measureToSegment(a, c, d),
    measureToSegment(b, c, d),
    measureToSegment(c, a, b),
    measureToSegment(d, a, b),
  );
}

/** Whether c and d lie clearly (by more than TOLERANCE) on different sides of the line a-b; nearer ones show in the distances. */
function isCutApart(a: Point, b: Point, c: Point, d: Point): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const margin = TOLERANCE * measureLength(dx, dy);
  const ofC = dx * (c[1] - a[1]) - dy * (c[0] - a[0]);
  const ofD = dx * (d[1] - a[1]) - dy * (d[0] - a[0]);
  return (ofC > margin && ofD < -margin) || (ofC < -margin && ofD > margin);
}

function measureToSegment(p: Point, a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const along = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy);
  const t = Math.min(1, Math.max(0, along));
  return measureLength(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy);
}

/** Distance of two points [mm]. */
export function measureDistance(a: Point, b: Point): number {
  return measureLength(b[0] - a[0], b[1] - a[1]);
}

/** Length of a vector [mm]; Math.hypot guards against overflow, which no panel comes near, at several times the cost. */
function measureLength(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}
