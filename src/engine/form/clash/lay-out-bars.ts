import type { Point } from '../../geometry/point.ts';
import { isInside, type Region } from '../../geometry/region.ts';
import { makeCylinder } from '../../geometry/solid.ts';
import type { BarKind, ClashBar } from './clash-scene.ts';

/** Parallel bars at one depth. */
export interface BarLayer {
  readonly id: string;
  readonly kind: BarKind;
  /** On the drawn face, from x towards y [rad]. */
  readonly direction: number;
  /** [mm] */
  readonly diameter: number;
  /** From axis to axis [mm]. */
  readonly spacing: number;
  /** Of the axes, below the outside face [mm]. */
  readonly depth: number;
  /** A point that the axis of one bar passes. */
  readonly through: Point;
  /** Concrete between a bar and the sides of the panel and its openings [mm]. */
  readonly endCover: number;
}

/**
 * The single bars of a layer, cut so that no point of a bar is nearer to a side than the end cover: at the outline, at openings, square or skew;
 * a bar that would run too near along a side is left out over that length. Cut by the drawn outline; the lean of battered sides is
 * left to the clash search.
 *
 * Bars are numbered from 1 in the direction square to them (their own direction turned from x towards y by a right angle); pieces of one line
 * by letters along it.
 *
 * @throws RangeError when diameter or spacing is not above zero or a number is not finite
 */
export function layOutBars(layer: BarLayer, region: Region): readonly ClashBar[] {
  refuseUnusable(layer);
  const { direction, diameter, spacing, depth, through, endCover } = layer;
  const [ux, uy] = [Math.cos(direction), Math.sin(direction)];
  const radius = diameter / 2;
  // Sides in the axes of the bars: along them, and across from the bar through the given point.
  const along = (x: number, y: number) => (x - through[0]) * ux + (y - through[1]) * uy;
  const across = (x: number, y: number) => (y - through[1]) * ux - (x - through[0]) * uy;
  const sides = region.sides.map((side) => ({
    t1: along(side.fromX, side.fromY),
    s1: across(side.fromX, side.fromY),
    t2: along(side.toX, side.toY),
    s2: across(side.toX, side.toY),
  }));
  const first = Math.ceil(Math.min(...sides.map(({ s1 }) => s1)) / spacing);
  const last = Math.floor(Math.max(...sides.map(({ s1 }) => s1)) / spacing);
  const bars: ClashBar[] = [];
  let number = 0;
  for (let line = first; line <= last; line++) {
    const off = line * spacing;
    const place = (t: number): Point => [through[0] + t * ux - off * uy, through[1] + t * uy + off * ux];
    const blocked = sides
      .map(({ t1, s1, t2, s2 }) => findBlocked(t1, s1 - off, t2, s2 - off, radius, endCover))
      .filter((range) => range !== null);
    const pieces = findGaps(blocked).filter(([from, to]) => {
      const [x, y] = place((from + to) / 2);
      // What is shorter than it is thick is no bar.
      return to - from > diameter && isInside(region, x, y);
    });
    if (pieces.length > 0) number += 1;
    pieces.forEach(([from, to], i) => {
      const [ax, ay] = place(from);
      const [bx, by] = place(to);
      bars.push({
        id: `${layer.id}/${number}${pieces.length > 1 ? nameLetter(i) : ''}`,
        layer: layer.id,
        kind: layer.kind,
        solid: makeCylinder([ax, ay, depth], [bx, by, depth], radius),
        across: [-uy, ux, 0],
        spacing,
        endCover,
      });
    });
  }
  return bars;
}

/** A bar that keeps its cover but for this [mm] keeps it: rounding of its place. */
const EXACT = 1e-6;

type Range = readonly [from: number, to: number];

/**
 * Where along a bar's axis (t, at s = 0) a square cut through the bar would come nearer to a side than its cover: the points of the axis
 * within the cover of the side spread by the bar's radius either way, a parallelogram. It is convex, so these points are one range.
 */
function findBlocked(t1: number, s1: number, t2: number, s2: number, radius: number, cover: number): Range | null {
  const far = radius + cover;
  if (Math.min(s1, s2) >= far - EXACT || Math.max(s1, s2) <= EXACT - far) return null;
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  const reach = (t: number) => {
    from = Math.min(from, t);
    to = Math.max(to, t);
  };
  const corners = [
    [t1, s1 - radius],
    [t2, s2 - radius],
    [t2, s2 + radius],
    [t1, s1 + radius],
  ] as const;
  corners.forEach(([t, s], i) => {
    // Within the cover of a corner.
    if (Math.abs(s) <= cover) {
      const half = Math.sqrt(cover * cover - s * s);
      reach(t - half);
      reach(t + half);
    }
    // Where a line along a side of the parallelogram, set off by the cover either way, crosses the axis.
    const [u, r] = corners[(i + 1) % 4]!;
    const length = Math.hypot(u - t, r - s);
    if (length === 0) return;
    for (const sign of [-1, 1]) {
      const dt = (sign * cover * (s - r)) / length;
      const ds = (sign * cover * (u - t)) / length;
      const [a, b] = [s + ds, r + ds];
      if (a * b > 0 || a === b) continue;
      reach(t + dt + (a / (a - b)) * (u - t));
    }
  });
  return from <= to ? [from, to] : null;
}

/** The ranges between some that may overlap, from the first to the last. */
function findGaps(ranges: readonly Range[]): readonly Range[] {
  const gaps: Range[] = [];
  let reached: number | null = null;
  for (const [from, to] of [...ranges].sort((a, b) => a[0] - b[0])) {
    if (reached !== null && from > reached) gaps.push([reached, from]);
    reached = reached === null ? to : Math.max(reached, to);
  }
  return gaps;
}

/** a, b … z, aa, ab … */
function nameLetter(index: number): string {
  const rest = Math.floor(index / 26);
  return (rest === 0 ? '' : nameLetter(rest - 1)) + String.fromCharCode(97 + (index % 26));
}

function refuseUnusable({ id, direction, diameter, spacing, depth, through, endCover }: BarLayer): void {
  for (const [name, value] of Object.entries({ diameter, spacing }))
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new RangeError(`layer ${id}: ${name} is ${value} mm; expected more than 0`);
  for (const [name, value] of Object.entries({ direction, depth, x: through[0], y: through[1], endCover }))
    if (!Number.isFinite(value)) throw new RangeError(`layer ${id}: ${name} is ${value}; expected a finite number`);
  if (endCover < 0) throw new RangeError(`layer ${id}: end cover is ${endCover} mm; expected 0 or more`);
}
