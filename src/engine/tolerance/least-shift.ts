import type { Point } from '../geometry/point.ts';
import type { PlateHole } from './plate-hole.ts';

/** A place counts as within a hole's reach where it is out of it by less [mm]. */
const WITHIN = 1e-9;

/** Shifts that let a bolt into its hole: those within a distance of the middle line of the hole, as moved onto the bolt. */
interface Reach {
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
}

/**
 * The least shift of a plate that leaves no hole a lack above a level.
 *
 * The shifts that do are where the reaches of all holes overlap, which is convex. Of it the place nearest to no shift at all is that place itself, or
 * the nearest of one side or end of a reach, or lies where two of them meet: all of these are tried.
 *
 * @param offsets of the bolts from their holes, in the axes of the plate [mm]
 * @param level lack that is allowed [mm]
 * @param known a shift that is known to do, as found by search
 */
export function findLeastShift(
  holes: readonly PlateHole[],
  offsets: readonly Point[],
  level: number,
  known: Point,
): Point {
  const reaches = holes.map(({ slot, angle, slack }, i): Reach => {
    const [x, y] = offsets[i]!;
    const [hx, hy] = [(slot / 2) * Math.cos(angle), (slot / 2) * Math.sin(angle)];
    return { from: [x - hx, y - hy], to: [x + hx, y + hy], radius: Math.max(0, slack + level) };
  });
  if (reaches.every((reach) => isWithin(reach, [0, 0]))) return [0, 0];
  const circles = reaches.flatMap(({ from, to, radius }): readonly Circle[] => [
    { at: from, radius },
    ...(from[0] === to[0] && from[1] === to[1] ? [] : [{ at: to, radius }]),
  ]);
  const lines = reaches.flatMap(listSides);
  let best = known;
  let shortest = Math.hypot(...known);
  const tryPlace = (place: Point): void => {
    const length = Math.hypot(...place);
    if (length >= shortest || !reaches.every((reach) => isWithin(reach, place))) return;
    best = place;
    shortest = length;
  };
  for (const line of lines) tryPlace(nearestOnLine(line));
  for (const circle of circles) tryPlace(nearestOnCircle(circle));
  circles.forEach((circle, i) => {
    for (let j = i + 1; j < circles.length; j++) meetCircles(circle, circles[j]!).forEach(tryPlace);
    for (const line of lines) meetLineAndCircle(line, circle).forEach(tryPlace);
  });
  lines.forEach((line, i) => {
    for (let j = i + 1; j < lines.length; j++) meetLines(line, lines[j]!).forEach(tryPlace);
  });
  return best;
}

interface Circle {
  readonly at: Point;
  readonly radius: number;
}

/** A straight line n·x = d. */
interface Line {
  readonly n: Point;
  readonly d: number;
}

function isWithin({ from, to, radius }: Reach, [x, y]: Point): boolean {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - from[0]) * dx + (y - from[1]) * dy) / squared));
  return Math.hypot(x - from[0] - share * dx, y - from[1] - share * dy) <= radius + WITHIN;
}

function listSides({ from, to, radius }: Reach): readonly Line[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length === 0) return [];
  const n: Point = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
  const d = n[0] * from[0] + n[1] * from[1];
  return [
    { n, d: d + radius },
    { n, d: d - radius },
  ];
}

function nearestOnLine({ n, d }: Line): Point {
  return [n[0] * d, n[1] * d];
}

function nearestOnCircle({ at, radius }: Circle): Point {
  const away = Math.hypot(...at);
  if (away === 0) return [radius, 0];
  const share = 1 - radius / away;
  return [at[0] * share, at[1] * share];
}

function meetLines(one: Line, other: Line): readonly Point[] {
  const size = one.n[0] * other.n[1] - one.n[1] * other.n[0];
  if (size === 0) return [];
  return [[(one.d * other.n[1] - other.d * one.n[1]) / size, (other.d * one.n[0] - one.d * other.n[0]) / size]];
}

/** Where circles only touch, or miss by rounding, the place between them. */
function meetCircles(one: Circle, other: Circle): readonly Point[] {
  const [dx, dy] = [other.at[0] - one.at[0], other.at[1] - one.at[1]];
  const apart = Math.hypot(dx, dy);
  if (apart === 0) return [];
  const along = (apart * apart + one.radius ** 2 - other.radius ** 2) / (2 * apart);
  const across = Math.sqrt(Math.max(0, one.radius ** 2 - along ** 2));
  return [across, -across].map((side) => [
    one.at[0] + (along * dx - side * dy) / apart,
    one.at[1] + (along * dy + side * dx) / apart,
  ]);
}

function meetLineAndCircle({ n, d }: Line, { at, radius }: Circle): readonly Point[] {
  const off = d - n[0] * at[0] - n[1] * at[1];
  const along = Math.sqrt(Math.max(0, radius ** 2 - off ** 2));
  return [along, -along].map((side) => [at[0] + off * n[0] - side * n[1], at[1] + off * n[1] + side * n[0]]);
}
