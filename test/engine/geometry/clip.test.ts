import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { visibleAreaWithin } from '../../../src/engine/geometry/clip.ts';
import { GeometryError } from '../../../src/engine/geometry/geometry-error.ts';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import { prepareRegion } from '../../../src/engine/geometry/region.ts';
import { groupArea } from '../../../src/engine/geometry/sight.ts';
import { box, drawFace, makeMove, moveFace, peerVisibleWithin, regionOf, scatter } from './faces.ts';

const RELATIVE = 1e-9;

function expectArea(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(RELATIVE * expected);
}

const faces = fc.integer({ min: 0, max: 2 ** 31 }).map((seed) => drawFace(scatter(seed)));
const turns = fc.double({ min: 0, max: 6.28, noNaN: true });

/** The corners of the square about the face's first point. */
function squareOf(face: ReturnType<typeof drawFace>): Polygon {
  const [x, y] = face.points[0]!;
  const { half, ux, uy } = face;
  return box(-half, -half, half, half).map(([u, v]): Point => [x + u * ux - v * uy, y + u * uy + v * ux]);
}

describe('visibleAreaWithin, worked by hand', () => {
  const panel = box(0, 0, 1000, 600);
  const cases: readonly [string, Polygon | null, Polygon[], Point, Polygon, number][] = [
    ['a rectangle inside the panel', panel, [], [200, 200], box(100, 100, 400, 300), 300 * 200],
    ['cut by the panel', panel, [], [50, 50], box(-100, -100, 200, 300), 200 * 300],
    [
      'a triangle over the corner',
      panel,
      [],
      [50, 50],
      [
        [-100, -100],
        [300, -100],
        [-100, 300],
      ],
      (200 * 200) / 2,
    ],
    ['all of the panel', panel, [], [50, 50], box(-1, -1, 1001, 601), 1000 * 600],
    ['none of it', panel, [], [50, 50], box(1100, 0, 1200, 100), 0],
    // From (0, 0) past an opening x 50 … 100, |y| ≤ 20 the shadow is |y| ≤ 0.4·x; within x ≤ 150, |y| ≤ 150: 8000 dark, as
    // worked out for the squares. Within x 0 … 80 only: (40 + 64)/2 · 30 = 1560.
    ['behind an opening', null, [box(50, -20, 100, 20)], [0, 0], box(-150, -150, 150, 150), 82000],
    ['half-way into an opening', null, [box(50, -20, 100, 20)], [0, 0], box(0, -150, 80, 150), 80 * 300 - 1560],
    // Not around the point: x 100 … 200, y −100 … 0 behind the same opening: dark from y = 0 down to −0.4·x, 40 … 80 high.
    ['away from the point', null, [box(50, -20, 100, 20)], [0, 0], box(100, -100, 200, 0), 10000 - 6000],
    ['wholly dark', null, [box(50, -20, 100, 20)], [0, 0], box(100, -30, 200, 30), 0],
  ];
  it.each(cases)('%s', (_, outline, openings, [px, py], convex, expected) => {
    const region = prepareRegion(outline, openings);
    expect(visibleAreaWithin(region, px, py, convex)).toBeCloseTo(expected, 6);
    expect(visibleAreaWithin(region, px, py, [...convex].reverse())).toBeCloseTo(expected, 6);
  });

  it('refuses a polygon that is not convex', () => {
    const region = prepareRegion(null, []);
    const dent: Polygon = [
      [0, 0],
      [10, 0],
      [10, 10],
      [5, 5],
      [0, 10],
    ];
    expect(() => visibleAreaWithin(region, 1, 1, dent)).toThrow(
      new GeometryError('the polygon turns both ways at corner 4 (5, 5); expected a convex one', 'shape', 3),
    );
    expect(() => visibleAreaWithin(region, 1, 1, dent.slice(0, 2))).toThrow(/has 2 corners; expected at least 3/);
    expect(() =>
      visibleAreaWithin(region, 1, 1, [
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toThrow(/encloses no area/);
  });
});

describe('visibleAreaWithin, by other ways', () => {
  it('is the area of one square where the polygon is that square', () => {
    fc.assert(
      fc.property(faces, (face) => {
        const [x, y] = face.points[0]!;
        const region = regionOf(face);
        expectArea(
          visibleAreaWithin(region, x, y, squareOf(face)),
          groupArea(region, [x], [y], face.half, face.ux, face.uy),
        );
      }),
    );
  });

  it('is what a general polygon library finds for polygons of 3 … 8 corners, around the point or beside it', () => {
    const random = scatter(31);
    for (let i = 0; i < 500; i++) {
      const face = drawFace(random);
      const [x, y] = face.points[0]!;
      const [cx, cy] = [x + 1.5 * face.half * (random() - 0.5), y + 1.5 * face.half * (random() - 0.5)];
      const n = 3 + Math.floor(6 * random());
      const start = random();
      const convex = Array.from({ length: n }, (_, k): Point => {
        const angle = (2 * Math.PI * (k + 0.4 * random() + start)) / n;
        return [cx + face.half * Math.cos(angle), cy + face.half * Math.sin(angle)];
      });
      const expected = peerVisibleWithin(face, convex);
      const found = visibleAreaWithin(regionOf(face), x, y, convex);
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(RELATIVE * face.half * face.half);
    }
  });

  it('is the same turned and mirrored, and the halves of a cut polygon add up', () => {
    fc.assert(
      fc.property(faces, turns, fc.boolean(), (face, angle, mirrored) => {
        const region = regionOf(face);
        const [x, y] = face.points[0]!;
        const square = squareOf(face);
        const whole = visibleAreaWithin(region, x, y, square);
        const move = makeMove(angle, mirrored, 3000, -8000);
        const [mx, my] = move([x, y]);
        expectArea(visibleAreaWithin(regionOf(moveFace(face, move)), mx, my, square.map(move)), whole);
        const [a, b, c, d] = [square[0]!, square[1]!, square[2]!, square[3]!];
        const parts = visibleAreaWithin(region, x, y, [a, b, c]) + visibleAreaWithin(region, x, y, [a, c, d]);
        expectArea(parts, whole);
      }),
    );
  });
});
