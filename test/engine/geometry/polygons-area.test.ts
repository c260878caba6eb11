import { describe, expect, it } from 'vitest';
import { unionOfPolygonsArea } from '../../../src/engine/geometry/polygons-area.ts';

const box = (x0: number, y0: number, x1: number, y1: number): number[] => [x0, y0, x1, y0, x1, y1, x0, y1];

describe('unionOfPolygonsArea, worked by hand', () => {
  const cases: readonly [string, number[][], number][] = [
    ['nothing', [], 0],
    ['one box', [box(1, 2, 5, 4)], 8],
    ['a box twice', [box(1, 2, 5, 4), box(1, 2, 5, 4)], 8],
    ['a box in a box', [box(0, 0, 9, 9), box(1, 2, 5, 4)], 81],
    ['boxes side by side', [box(0, 0, 4, 4), box(4, 0, 8, 4)], 32],
    ['boxes on each other', [box(0, 0, 4, 4), box(0, 4, 4, 8)], 32],
    ['boxes apart', [box(0, 0, 4, 4), box(6, 5, 7, 7)], 18],
    ['boxes that cross', [box(0, 3, 10, 6), box(3, 0, 6, 10)], 30 + 30 - 9],
    // Triangles with legs of 6 from opposite corners of a square of 6: they share the diagonal only.
    [
      'two halves of a square',
      [
        [0, 0, 6, 0, 0, 6],
        [6, 0, 6, 6, 0, 6],
      ],
      36,
    ],
    // Legs on the same base, leaning both ways: their sides cross at (3, 3); the shared triangle is 6 · 3 / 2 = 9.
    [
      'triangles that cross',
      [
        [0, 0, 6, 0, 0, 6],
        [0, 0, 6, 0, 6, 6],
      ],
      18 + 18 - 9,
    ],
    // An arrow head with a dent: (0,0), (4,4), (0,8), (2,4): 16 − 8 = 8.
    ['a dented polygon', [[0, 0, 4, 4, 0, 8, 2, 4]], 8],
    // The box fills the dent and more: x 0 … 1 of the arrow's two prongs stay: each the triangle between y = x and y = 2x, ½.
    ['a box over a dented polygon', [[0, 0, 4, 4, 0, 8, 2, 4], box(1, 0, 5, 8)], 32 + 2 * 0.5],
  ];
  it.each(cases)('%s', (_, polygons, expected) => {
    expect(unionOfPolygonsArea(polygons)).toBeCloseTo(expected, 10);
    expect(unionOfPolygonsArea([...polygons].reverse())).toBeCloseTo(expected, 10);
    // Turned by the angle of the 3-4-5 triangle the cuts fall elsewhere.
    const turned = polygons.map((polygon) =>
      polygon.map((value, k) =>
        k % 2 === 0 ? 0.6 * value - 0.8 * polygon[k + 1]! : 0.8 * polygon[k - 1]! + 0.6 * value,
      ),
    );
    expect(unionOfPolygonsArea(turned)).toBeCloseTo(expected, 10);
  });
});
