import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../../src/engine/geometry/point.ts';
import { fitBoxInZone } from '../../../src/engine/tolerance/fit-box.ts';
import { drawJointly, listJointCorners, listSingleCorners } from '../../../src/engine/tolerance/joint-draws.ts';
import { traceByMargin } from '../../../src/engine/tolerance/trace-by-margin.ts';
import { type TracedZone, traceZone } from '../../../src/engine/tolerance/trace-zone.ts';

const GRID = { window: 20, step: 1, within: 0.1 };

function areaOf(ring: Polygon): number {
  return ring.reduce((sum, [x, y], k) => {
    const [nx, ny] = ring[(k + 1) % ring.length]!;
    return sum + (x * ny - nx * y) / 2;
  }, 0);
}

function mustTrace(passes: (x: number, y: number) => boolean, grid = GRID): TracedZone {
  const zone = traceZone(passes, grid);
  if (zone === null) throw new Error('nothing at the origin');
  return zone;
}

const farthest = (ring: Polygon, off: (x: number, y: number) => number) =>
  Math.max(...ring.map(([x, y]) => Math.abs(off(x, y))));

describe('tracing a region', () => {
  it('a circle comes out within what is asked, every corner in it', () => {
    const { boundary, holes, isCut } = mustTrace((x, y) => Math.hypot(x, y) <= 7.3);
    expect(holes).toEqual([]);
    expect(isCut).toEqual({ left: false, right: false, down: false, up: false });
    expect(boundary.every(([x, y]) => Math.hypot(x, y) <= 7.3)).toBe(true);
    expect(farthest(boundary, (x, y) => Math.hypot(x, y) - 7.3)).toBeLessThan(0.2);
    expect(areaOf(boundary)).toBeCloseTo(Math.PI * 7.3 ** 2, -1);
  });

  it('a corner between the nodes, and a notch, are found', () => {
    const square = mustTrace((x, y) => Math.max(Math.abs(x), Math.abs(y)) <= 5.5);
    expect(areaOf(square.boundary)).toBeGreaterThan(121 - 0.3);
    expect(areaOf(square.boundary)).toBeLessThanOrEqual(121);
    // A notch of 4 by 3 in the upper side.
    const notched = mustTrace((x, y) => Math.max(Math.abs(x), Math.abs(y)) <= 5.5 && !(Math.abs(x) < 2 && y > 2.5));
    expect(areaOf(notched.boundary)).toBeGreaterThan(121 - 12 - 0.6);
    expect(areaOf(notched.boundary)).toBeLessThanOrEqual(121 - 12 + 1);
  });

  it('reports each hole, and not what lies in one', () => {
    const ring = (x: number, y: number, cx: number) => Math.hypot(x - cx, y);
    // A hole about (6, 0) with an island in its middle, another about (-6, 0).
    const passes = (x: number, y: number) =>
      Math.hypot(x, y) <= 12 && !(ring(x, y, 6) < 3 && ring(x, y, 6) > 1) && ring(x, y, -6) >= 2;
    const { boundary, holes } = mustTrace(passes);
    expect(holes.length).toBe(2);
    expect(areaOf(boundary)).toBeGreaterThan(0);
    const sizes = holes.map((hole) => -areaOf(hole)).sort((a, b) => a - b);
    expect(sizes[0]).toBeCloseTo(Math.PI * 4, -1);
    expect(sizes[1]).toBeCloseTo(Math.PI * 9, -1);
  });

  it('takes the part that hangs together with the origin only, and says where the window cut it', () => {
    const { boundary, isCut } = mustTrace((x, y) => Math.abs(y) <= 3 && Math.abs(x - 9) > 2);
    expect(Math.max(...boundary.map(([x]) => x))).toBeLessThanOrEqual(7);
    expect(isCut).toEqual({ left: true, right: false, down: false, up: false });
    expect(traceZone((x) => x > 1, GRID)).toBeNull();
  });

  it('parts that touch over a corner of the nodes alone are two', () => {
    const { boundary } = mustTrace((x, y) => (x <= 0.4 && y <= 0.4) || (x >= 0.6 && y >= 0.6));
    expect(Math.max(...boundary.map(([x]) => x))).toBeLessThanOrEqual(0.4);
  });
});

describe('tracing by a margin', () => {
  it('gives the same region as asking for each place, at a fraction of the questions', () => {
    // Smooth, with a kink where two limits meet, and an end that is no number.
    const margin = (x: number, y: number) =>
      y < -30 ? Number.NaN : Math.min(1 - (x * x) / 900 - (y * y) / 400, 0.9 - x / 40);
    const found = traceByMargin({ window: 50, canBe: () => true, margin });
    if (found === null) throw new Error('nothing at the origin');
    const plain = mustTrace((x, y) => margin(x, y) > 0, { window: 50, step: 1, within: 0.1 });
    // On the safe side, and by no more than what the boundary is known to.
    const share = areaOf(found.zone.boundary) / areaOf(plain.boundary);
    expect(share).toBeGreaterThan(0.985);
    expect(share).toBeLessThanOrEqual(1.001);
    expect(found.zone.boundary.every(([x, y]) => margin(x, y) > -1e-6)).toBe(true);
    expect(found.countAsked()).toBeLessThan(1500);
  });

  it('a margin far from its limit is asked for at few places', () => {
    const found = traceByMargin({ window: 50, canBe: (x, y) => Math.hypot(x, y) < 20, margin: (x) => 0.5 + x / 1000 });
    expect(found?.countAsked()).toBeLessThan(30);
  });

  it('what fails by no number is left out though the ratio alone would hold, as far as the origin', () => {
    const margin = (x: number, y: number) => (x < 0 ? Number.NaN : 1 - Math.hypot(x, y) / 10);
    const found = traceByMargin({ window: 50, canBe: () => true, margin });
    if (found === null) throw new Error('nothing at the origin');
    expect(Math.min(...found.zone.boundary.map(([x]) => x))).toBeGreaterThanOrEqual(0);
    expect(areaOf(found.zone.boundary)).toBeCloseTo((Math.PI * 100) / 2, -1);
  });
});

describe('boxes and draws', () => {
  it('the largest box in a region, in whole mm', () => {
    expect(fitBoxInZone((x, y) => Math.abs(x) <= 9.5 && Math.abs(y) <= 3.2, 50)).toEqual({ along: 9, across: 3 });
    expect(fitBoxInZone((x, y) => Math.abs(x) <= 2 && y <= 8 && y >= -6.9, 50)).toEqual({ along: 2, across: 6 });
    expect(fitBoxInZone((x, y) => Math.hypot(x, y) <= 0.9, 50)).toEqual({ along: 0, across: 0 });
    const cross = (x: number, y: number) =>
      (Math.abs(x) <= 9 && Math.abs(y) <= 3) || (Math.abs(x) <= 3 && Math.abs(y) <= 6);
    expect(fitBoxInZone(cross, 50)).toEqual({ along: 9, across: 3 });
    expect(fitBoxInZone(() => true, 25)).toEqual({ along: 25, across: 25 });
  });

  it('all corners of up to four points at once, each once; of more a stated number', () => {
    expect(new Set(listJointCorners(4, 1).map((shares) => shares.join())).size).toBe(256);
    expect(listJointCorners(6, 1).length).toBe(16 + 512);
    expect(listSingleCorners(3).every((shares) => shares.filter((share) => share !== 0).length === 2)).toBe(true);
    expect(new Set(listSingleCorners(3).map((shares) => shares.join())).size).toBe(12);
  });

  it('draws fill the box evenly, and are the same for the same seed', () => {
    const draws = drawJointly(2, 500, 9);
    expect(drawJointly(2, 500, 9)).toEqual(draws);
    expect(drawJointly(2, 500, 10)).not.toEqual(draws);
    const all = draws.flatMap((shares) => [...shares]);
    expect(Math.min(...all)).toBeGreaterThanOrEqual(-1);
    expect(Math.max(...all)).toBeLessThan(1);
    // Of 2000 even draws the mean has a standard deviation of 0.013.
    expect(Math.abs(all.reduce((sum, share) => sum + share, 0) / all.length)).toBeLessThan(0.1);
    expect(Math.min(...all)).toBeLessThan(-0.95);
    expect(Math.max(...all)).toBeGreaterThan(0.95);
  });
});
