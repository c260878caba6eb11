import type { Region } from './region.ts';

/** A rectangle about a point, in a frame turned to the unit vector u with its origin in the point [mm]. */
export interface Box {
  readonly minU: number;
  readonly maxU: number;
  readonly minV: number;
  readonly maxV: number;
}

/**
 * Whether a part of the concrete within the box may be hidden from its origin.
 *
 * A line from the origin to a point of the concrete that leaves the concrete comes back in through a side that turns its
 * back to the origin. So where no such side passes through the box, all concrete in it is in sight.
 */
export function hasHiddenPart(region: Region, x: number, y: number, ux: number, uy: number, box: Box): boolean {
  const ends = region.ends;
  for (let k = 0; k < ends.length; k += 4) {
    const ax = ends[k]! - x;
    const ay = ends[k + 1]! - y;
    const bx = ends[k + 2]! - x;
    const by = ends[k + 3]! - y;
    if (ax * by - ay * bx >= 0) continue;
    if (clipToBox(null, ax * ux + ay * uy, ay * ux - ax * uy, bx * ux + by * uy, by * ux - bx * uy, box)) return true;
  }
  return false;
}

/**
 * The part of a box that lies in the concrete and in sight of the box's origin: a polygon, star-shaped about the origin,
 * counter-clockwise, as u, v, u, v … [mm]. The origin must lie in the concrete and within the box.
 *
 * The sides that face the origin are cut to the box; with the box's own sides they are looked at from the origin, between
 * one direction in which one of them ends and the next, where the nearest stays the nearest.
 */
export function findVisiblePolygon(
  region: Region,
  x: number,
  y: number,
  ux: number,
  uy: number,
  box: Box,
): readonly number[] {
  const { minU, maxU, minV, maxV } = box;
  const segments = [
    ...[maxU, minV, maxU, maxV],
    ...[maxU, maxV, minU, maxV],
    ...[minU, maxV, minU, minV],
    ...[minU, minV, maxU, minV],
  ];
  const ends = region.ends;
  for (let k = 0; k < ends.length; k += 4) {
    const ax = ends[k]! - x;
    const ay = ends[k + 1]! - y;
    const bx = ends[k + 2]! - x;
    const by = ends[k + 3]! - y;
    if (ax * by - ay * bx <= 0) continue;
    clipToBox(segments, ax * ux + ay * uy, ay * ux - ax * uy, bx * ux + by * uy, by * ux - bx * uy, box);
  }
  return walkNearest(segments, sortDirections(segments));
}

/** Area [mm²] of a polygon given as u, v, u, v …; positive counter-clockwise. */
export function measureFlatPolygon(polygon: readonly number[]): number {
  let twice = 0;
  const n = polygon.length;
  for (let i = 0, j = n - 2; i < n; j = i, i += 2) {
    twice += polygon[j]! * polygon[i + 1]! - polygon[j + 1]! * polygon[i]!;
  }
  return twice / 2;
}

/** Cuts a segment to the box; appends what is left to `out`, if given. False when nothing of some length is left. */
function clipToBox(out: number[] | null, au: number, av: number, bu: number, bv: number, box: Box): boolean {
  const { minU, maxU, minV, maxV } = box;
  if (Math.max(au, bu) <= minU || Math.min(au, bu) >= maxU || Math.max(av, bv) <= minV || Math.min(av, bv) >= maxV) {
    return false;
  }
  const du = bu - au;
  const dv = bv - av;
  let from = 0;
  let to = 1;
  if (du !== 0) {
    const p = (minU - au) / du;
    const q = (maxU - au) / du;
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  if (dv !== 0) {
    const p = (minV - av) / dv;
    const q = (maxV - av) / dv;
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  if (from >= to) return false;
  if (out !== null) {
    out.push(from === 0 ? au : au + from * du, from === 0 ? av : av + from * dv);
    out.push(to === 1 ? bu : au + to * du, to === 1 ? bv : av + to * dv);
  }
  return true;
}

/** The directions of all segment ends as angle (0 … 4, growing with the true angle), u, v, angle, u, v …, sorted. */
function sortDirections(segments: readonly number[]): number[] {
  const sorted: number[] = [];
  for (let k = 0; k < segments.length; k += 2) {
    const u = segments[k]!;
    const v = segments[k + 1]!;
    const cosine = u / (Math.abs(u) + Math.abs(v));
    const angle = v >= 0 ? 1 - cosine : 3 + cosine;
    let j = sorted.length;
    for (; j > 0 && sorted[j - 3]! > angle; j -= 3) {
      sorted[j] = sorted[j - 3]!;
      sorted[j + 1] = sorted[j - 2]!;
      sorted[j + 2] = sorted[j - 1]!;
    }
    sorted[j] = angle;
    sorted[j + 1] = u;
    sorted[j + 2] = v;
  }
  return sorted;
}

/** Directions closer than this are one: the wedge between them is less than 1e-13 of any area about the origin. */
const SAME_DIRECTION = 1e-13;

function walkNearest(segments: readonly number[], directions: readonly number[]): readonly number[] {
  const polygon: number[] = [];
  const n = directions.length;
  let current = -1;
  let lastU = directions[n - 2]!;
  let lastV = directions[n - 1]!;
  let lastAngle = directions[n - 3]! - 4;
  for (let k = 0; k < n; k += 3) {
    const angle = directions[k]!;
    if (angle - lastAngle <= SAME_DIRECTION) continue;
    const u = directions[k + 1]!;
    const v = directions[k + 2]!;
    const here = Math.abs(u) + Math.abs(v);
    const there = Math.abs(lastU) + Math.abs(lastV);
    const nearest = findNearest(segments, u / here + lastU / there, v / here + lastV / there);
    if (nearest !== current) {
      if (current >= 0) appendAlong(polygon, segments, current, lastU, lastV);
      appendAlong(polygon, segments, nearest, lastU, lastV);
      current = nearest;
    }
    lastU = u;
    lastV = v;
    lastAngle = angle;
  }
  appendAlong(polygon, segments, current, lastU, lastV);
  return polygon;
}

/** The segment that a ray from the origin along (mu, mv) meets first. */
function findNearest(segments: readonly number[], mu: number, mv: number): number {
  let least = Number.POSITIVE_INFINITY;
  let nearest = 0;
  for (let s = 0; s < segments.length; s += 4) {
    const au = segments[s]!;
    const av = segments[s + 1]!;
    const before = au * mv - av * mu;
    if (before < 0) continue;
    const bu = segments[s + 2]!;
    const bv = segments[s + 3]!;
    const after = mu * bv - mv * bu;
    if (after < 0) continue;
    const distance = (au * bv - av * bu) / (before + after);
    if (distance < least) {
      least = distance;
      nearest = s;
    }
  }
  return nearest;
}

/** Appends the point where the ray along (du, dv) meets segment s, held on the segment; not twice the same. */
function appendAlong(polygon: number[], segments: readonly number[], s: number, du: number, dv: number): void {
  const au = segments[s]!;
  const av = segments[s + 1]!;
  const bu = segments[s + 2]!;
  const bv = segments[s + 3]!;
  const before = au * dv - av * du;
  const after = du * bv - dv * bu;
  const t = before <= 0 ? 0 : after <= 0 ? 1 : before / (before + after);
  const u = t === 1 ? bu : au + t * (bu - au);
  const v = t === 1 ? bv : av + t * (bv - av);
  const n = polygon.length;
  if (n > 0 && polygon[n - 2] === u && polygon[n - 1] === v) return;
  polygon.push(u, v);
}
