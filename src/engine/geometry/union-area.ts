import type { Region } from './region.ts';

/**
 * Area [mm²] of the part of a rectangle that lies in the concrete, whatever is in sight.
 *
 * Exact: for a line across the rectangle, the concrete on it is the sum over the sides that it meets of ±(their height,
 * held between the rectangle's bottom and top); integrated over a straight side that is a trapezoid with at most two kinks.
 *
 * @param x, y the point that the rectangle is measured from [mm]
 * @param ux, uy unit vector u of the rectangle's first axis; the second, v, is u turned by +90°
 * @param fromU, toU, fromV, toV the rectangle in that frame [mm], fromU ≤ toU, fromV ≤ toV
 */
export function rectangleArea(
  region: Region,
  x: number,
  y: number,
  ux: number,
  uy: number,
  fromU: number,
  toU: number,
  fromV: number,
  toV: number,
): number {
  const ends = region.ends;
  const height = toV - fromV;
  let area = region.outline === null ? (toU - fromU) * height : 0;
  for (let k = 0; k < ends.length; k += 4) {
    const ax = ends[k]! - x;
    const ay = ends[k + 1]! - y;
    const bx = ends[k + 2]! - x;
    const by = ends[k + 3]! - y;
    const au = ax * ux + ay * uy;
    const bu = bx * ux + by * uy;
    const left = Math.max(fromU, Math.min(au, bu));
    const right = Math.min(toU, Math.max(au, bu));
    if (right <= left) continue;
    const av = ay * ux - ax * uy - fromV;
    const bv = by * ux - bx * uy - fromV;
    // The concrete is on the left: a side that runs forward is below it and takes area away.
    const width = au > bu ? right - left : left - right;
    if (av <= 0 && bv <= 0) continue;
    if (av >= height && bv >= height) {
      area += width * height;
      continue;
    }
    const slope = (bv - av) / (bu - au);
    const p = av + (left - au) * slope;
    const q = av + (right - au) * slope;
    area += width * meanHeld(Math.min(p, q), Math.max(p, q), height);
  }
  return area;
}

/** Mean over low … high of a height held between 0 and `most`; every term is positive, so nothing cancels. */
function meanHeld(low: number, high: number, most: number): number {
  if (high <= 0) return 0;
  if (low >= most) return most;
  if (low >= 0 && high <= most) return (low + high) / 2;
  const from = Math.max(0, low);
  const to = Math.min(most, high);
  return (((to - from) * (from + to)) / 2 + (high - to) * most) / (high - low);
}

/**
 * Area [mm²] of the union of equal squares that lies in the concrete, whatever is in sight.
 *
 * The union is cut into disjoint rectangles, by slabs between the squares' sides with equal neighbours joined, and each
 * rectangle is measured with `rectangleArea`.
 *
 * @param xs, ys centres of the squares [mm]
 * @param half half a side of the squares [mm]
 * @param ux, uy unit vector along one axis of the squares
 */
export function squaresArea(
  region: Region,
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  half: number,
  ux: number,
  uy: number,
): number {
  const n = xs.length;
  if (n === 0) return 0;
  const x = xs[0]!;
  const y = ys[0]!;
  if (n === 1) return rectangleArea(region, x, y, ux, uy, -half, half, -half, half);

  // Centres in the squares' frame, sorted by v, so that the squares of a slab come in order of their lower sides.
  const us: number[] = [];
  const vs: number[] = [];
  const cuts: number[] = [];
  for (let i = 0; i < n; i++) {
    const u = (xs[i]! - x) * ux + (ys[i]! - y) * uy;
    const v = (ys[i]! - y) * ux - (xs[i]! - x) * uy;
    let j = i;
    for (; j > 0 && vs[j - 1]! > v; j--) {
      us[j] = us[j - 1]!;
      vs[j] = vs[j - 1]!;
    }
    us[j] = u;
    vs[j] = v;
    insertSorted(cuts, 2 * i, u - half);
    insertSorted(cuts, 2 * i + 1, u + half);
  }

  // Slabs thinner than this are rounding; leaving them out changes the area by less than 1e-12 of it.
  const thin = 1e-13 * half;
  let area = 0;
  let open: number[] = [];
  let next: number[] = [];
  let openCount = 0;
  for (let k = 0; k < 2 * n; k++) {
    const left = cuts[k]!;
    const right = k + 1 < 2 * n ? cuts[k + 1]! : Number.POSITIVE_INFINITY;
    if (right - left <= thin) continue;
    const nextCount = right === Number.POSITIVE_INFINITY ? 0 : fillSlab(next, us, vs, half, left, right);
    // Rectangles that go on keep their start; the others end here.
    for (let i = 0; i < openCount; i++) {
      let goesOn = false;
      for (let j = 0; j < nextCount && !goesOn; j++) {
        if (
          Math.abs(open[3 * i + 1]! - next[3 * j + 1]!) <= thin &&
          Math.abs(open[3 * i + 2]! - next[3 * j + 2]!) <= thin
        ) {
          next[3 * j] = open[3 * i]!;
          goesOn = true;
        }
      }
      if (!goesOn) {
        area += rectangleArea(region, x, y, ux, uy, open[3 * i]!, left, open[3 * i + 1]!, open[3 * i + 2]!);
      }
    }
    const spare = open;
    open = next;
    next = spare;
    openCount = nextCount;
  }
  return area;
}

/** Puts the joined spans of a slab into `slab` as start, bottom, top; gives their number. */
function fillSlab(slab: number[], us: number[], vs: number[], half: number, left: number, right: number): number {
  const middle = (left + right) / 2;
  let count = 0;
  for (let i = 0; i < us.length; i++) {
    if (Math.abs(us[i]! - middle) > half) continue;
    const bottom = vs[i]! - half;
    const top = vs[i]! + half;
    if (count > 0 && bottom <= slab[3 * count - 1]!) {
      slab[3 * count - 1] = top;
      continue;
    }
    slab[3 * count] = left;
    slab[3 * count + 1] = bottom;
    slab[3 * count + 2] = top;
    count++;
  }
  return count;
}

function insertSorted(values: number[], count: number, value: number): void {
  let j = count;
  for (; j > 0 && values[j - 1]! > value; j--) values[j] = values[j - 1]!;
  values[j] = value;
}
