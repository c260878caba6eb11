import { describe, expect, it } from 'vitest';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import { outlineUnion } from '../../../src/engine/geometry/union-outline.ts';
import { findVisiblePolygon } from '../../../src/engine/geometry/visible-polygon.ts';
import { drawFace, drawGridFace, type Face, peerVisibleArea, regionOf, scatter } from './faces.ts';

function measureRings(rings: readonly Polygon[]): number {
  let twice = 0;
  for (const ring of rings)
    ring.forEach(([x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length]!;
      twice += x * ny - y * nx;
    });
  return twice / 2;
}

/** How often rings go round a point, counter-clockwise. */
function countTurns(rings: readonly Polygon[], [x, y]: Point): number {
  let turns = 0;
  for (const ring of rings)
    ring.forEach(([ax, ay], i) => {
      const [bx, by] = ring[(i + 1) % ring.length]!;
      const side = (bx - ax) * (y - ay) - (x - ax) * (by - ay);
      if (ay <= y && by > y && side > 0) turns += 1;
      if (ay > y && by <= y && side < 0) turns -= 1;
    });
  return turns;
}

/** What each insert of a face sees of its square, in the axes of the squares about the first insert. */
function seeSquares(face: Face): readonly (readonly number[])[] {
  const { points, half, ux, uy } = face;
  const box = { minU: -half, maxU: half, minV: -half, maxV: half };
  const [x0, y0] = points[0]!;
  return points.map(([x, y]) => {
    const [u, v] = [(x - x0) * ux + (y - y0) * uy, (y - y0) * ux - (x - x0) * uy];
    return findVisiblePolygon(regionOf(face), x, y, ux, uy, box).map((value, k) => value + (k % 2 === 0 ? u : v));
  });
}

const pairUp = (flat: readonly number[]): Polygon =>
  Array.from({ length: flat.length / 2 }, (_, k): Point => [flat[2 * k]!, flat[2 * k + 1]!]);

const square = (x: number, y: number, side: number) => [x, y, x + side, y, x + side, y + side, x, y + side];

describe('the outline of a union', () => {
  it('is a square again for two equal ones, and one ring for two that touch along a side', () => {
    expect(outlineUnion([square(0, 0, 10), square(0, 0, 10)])).toEqual([pairUp(square(0, 0, 10))].map(expectSameRing));
    for (const beside of [square(10, 0, 10), square(0, 10, 10)]) {
      const [ring, ...more] = outlineUnion([square(0, 0, 10), beside]);
      expect(more).toEqual([]);
      expect(ring).toHaveLength(4);
      expect(measureRings([ring!])).toBeCloseTo(200, 9);
    }
  });

  it('has a hole, walked clockwise, where four bars leave one open', () => {
    const bar = (x: number, y: number, w: number, h: number) => [x, y, x + w, y, x + w, y + h, x, y + h];
    const rings = outlineUnion([bar(0, 0, 30, 10), bar(0, 20, 30, 10), bar(0, 0, 10, 30), bar(20, 0, 10, 30)]);
    expect(rings).toHaveLength(2);
    expect(rings.map((ring) => Math.sign(measureRings([ring]))).sort()).toEqual([-1, 1]);
    expect(measureRings(rings)).toBeCloseTo(800, 9);
  });

  it('is two rings where nothing touches, and none of nothing', () => {
    expect(outlineUnion([square(0, 0, 10), square(20, 5, 10)])).toHaveLength(2);
    expect(outlineUnion([])).toEqual([]);
  });

  it.each(['any', 'grid'])('has the area that polygon-clipping finds, and holds the same points: %s faces', (kind) => {
    const random = scatter(kind === 'any' ? 11 : 12);
    for (let n = 0; n < 150; n++) {
      const face = kind === 'any' ? drawFace(random) : drawGridFace(random);
      const seen = seeSquares(face);
      const rings = outlineUnion(seen);
      const area = measureRings(rings);
      expect(Math.abs(area - peerVisibleArea(face))).toBeLessThan(1e-6 * area);
      const polygons = seen.map(pairUp);
      for (let k = 0; k < 20; k++) {
        const reach = 3 * face.half;
        const at: Point = [(random() - 0.5) * reach, (random() - 0.5) * reach];
        const isCovered = polygons.some((polygon) => countTurns([polygon], at) > 0);
        expect(countTurns(rings, at)).toBe(isCovered ? 1 : 0);
      }
    }
  });
});

/** A ring may begin at any corner. */
function expectSameRing(ring: Polygon): unknown {
  return expect.toSatisfy(
    (found: Polygon) =>
      found.length === ring.length && found.every(([x, y]) => ring.some(([rx, ry]) => rx === x && ry === y)),
  );
}
