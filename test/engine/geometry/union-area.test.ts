import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../../src/engine/geometry/point.ts';
import { isInside, prepareRegion } from '../../../src/engine/geometry/region.ts';
import { rectangleArea, squaresArea } from '../../../src/engine/geometry/union-area.ts';
import {
  box,
  coordinates,
  drawFace,
  type Face,
  makeMove,
  moveFace,
  peerSquaresArea,
  regionOf,
  reorder,
  scatter,
} from './faces.ts';

/** 1e-9 of the expected area: doubles leave about 1e-14 (seen in the random cases), degenerate cuts a little more. */
const RELATIVE = 1e-9;

function area(face: Face): number {
  const { xs, ys } = coordinates(face);
  return squaresArea(regionOf(face), xs, ys, face.half, face.ux, face.uy);
}

function expectArea(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(RELATIVE * expected);
}

const faces = fc.integer({ min: 0, max: 2 ** 31 }).map((seed) => drawFace(scatter(seed)));

describe('squaresArea, worked by hand', () => {
  const panel = box(0, 0, 3000, 2000);
  const cases: readonly [string, Polygon | null, Polygon[], [number, number][], number, number, number][] = [
    // [what, outline, openings, points, half, turn in degrees, area]
    ['one square far from everything', panel, [], [[1500, 1000]], 150, 30, 300 * 300],
    ['one square on an infinite face', null, [], [[1500, 1000]], 150, 30, 300 * 300],
    ['no square', panel, [], [], 150, 0, 0],
    ['an edge 50 mm away', panel, [], [[50, 1000]], 150, 0, 200 * 300],
    ['a corner, 50 and 60 mm away', panel, [], [[50, 60]], 150, 0, 200 * 210],
    // Three in a row at 200: width 150 + 200 + 200 + 150 = 700, height 300.
    [
      'three squares in a row',
      panel,
      [],
      [
        [800, 900],
        [1000, 900],
        [1200, 900],
      ],
      150,
      0,
      700 * 300,
    ],
    // Shifted by 100 along and 50 up they share 200 × 250.
    [
      'two squares shifted both ways',
      panel,
      [],
      [
        [800, 900],
        [900, 950],
      ],
      150,
      0,
      2 * 90000 - 200 * 250,
    ],
    [
      'squares that share an edge',
      panel,
      [],
      [
        [800, 900],
        [1100, 900],
      ],
      150,
      0,
      2 * 90000,
    ],
    [
      'squares that share a corner',
      panel,
      [],
      [
        [800, 900],
        [1100, 1200],
      ],
      150,
      0,
      2 * 90000,
    ],
    [
      'squares apart',
      panel,
      [],
      [
        [800, 900],
        [1300, 900],
      ],
      150,
      0,
      2 * 90000,
    ],
    [
      'points that coincide',
      panel,
      [],
      [
        [800, 900],
        [800, 900],
        [800, 900],
      ],
      150,
      45,
      90000,
    ],
    // Eight squares of 250 edge to edge about a gap of one square.
    [
      'eight squares about a gap',
      panel,
      [],
      [
        [500, 500],
        [750, 500],
        [1000, 500],
        [500, 750],
        [1000, 750],
        [500, 1000],
        [750, 1000],
        [1000, 1000],
      ],
      125,
      0,
      750 * 750 - 250 * 250,
    ],
    // Squares of 200 round the middle (900, 900), each 200 off it: they touch at their corners round a gap of 200 × 200.
    [
      'four squares about a gap',
      panel,
      [],
      [
        [700, 900],
        [900, 700],
        [1100, 900],
        [900, 1100],
      ],
      100,
      0,
      4 * 40000,
    ],
    // Two squares of 200 at 150 left and right of x = 0, one above: the union is 350 × 200 plus 200 × (200 − 150).
    [
      'a T of squares',
      null,
      [],
      [
        [-75, 0],
        [75, 0],
        [0, 50],
      ],
      100,
      0,
      350 * 200 + 200 * 50,
    ],
    ['an opening within the square', panel, [box(1480, 1020, 1500, 1050)], [[1450, 1000]], 150, 0, 90000 - 600],
    ['an opening across the square', panel, [box(1490, 500, 1510, 1500)], [[1450, 1000]], 150, 0, 90000 - 20 * 300],
    ['an opening that touches the square', panel, [box(1600, 900, 1700, 950)], [[1450, 1000]], 150, 0, 90000],
    [
      'an opening with a side on the square',
      panel,
      [box(1550, 850, 1600, 950)],
      [[1450, 1000]],
      150,
      0,
      90000 - 50 * 100,
    ],
    [
      'an opening that fills a corner of it',
      panel,
      [box(1500, 1050, 1900, 1900)],
      [[1450, 1000]],
      150,
      0,
      90000 - 100 * 100,
    ],
    // A skew edge through two opposite corners of the square leaves half of it.
    [
      'a skew edge through two corners',
      [
        [-100, -100],
        [500, 500],
        [-500, 500],
      ],
      [],
      [[0, 0]],
      100,
      0,
      20000,
    ],
    // The edge x + y = 200 only touches the corner (100, 100); x + y = 150 cuts off a triangle with legs of 50.
    [
      'a skew edge that touches a corner',
      [
        [200, 0],
        [-300, 500],
        [-300, -500],
        [200, -500],
      ],
      [],
      [[0, 0]],
      100,
      0,
      40000,
    ],
    [
      'a skew edge off a corner',
      [
        [150, 0],
        [-350, 500],
        [-350, -500],
        [150, -500],
      ],
      [],
      [[0, 0]],
      100,
      0,
      40000 - 1250,
    ],
    // A square turned by 45° about (0, 0) is |x| + |y| ≤ 100·√2; the edge y = 0.5·x + … stays off: cut by x ≤ 100 it loses a
    // triangle of height 100·√2 − 100 and base twice that.
    [
      'a turned square cut near its corner',
      box(-500, -500, 100, 500),
      [],
      [[0, 0]],
      100,
      45,
      40000 - (100 * Math.SQRT2 - 100) ** 2,
    ],
    // Corners of the outline on the lines of the square's sides: an L whose re-entrant corner is the square's own corner.
    [
      'a re-entrant corner in the corner of the square',
      [
        [-500, -500],
        [500, -500],
        [500, 100],
        [100, 100],
        [100, 500],
        [-500, 500],
      ],
      [],
      [[0, 0]],
      100,
      0,
      40000,
    ],
    [
      'a re-entrant corner on the side of the square',
      [
        [-500, -500],
        [500, -500],
        [500, 30],
        [100, 30],
        [100, 500],
        [-500, 500],
      ],
      [],
      [[0, 0]],
      100,
      0,
      40000,
    ],
    // A comb with teeth 100 wide at 200: the square, 800 × 200 above the root line y = 0, keeps 4 teeth of 100 × 100.
    [
      'a saw of slots',
      [
        [-400, -500],
        [400, -500],
        [400, 300],
        [300, 300],
        [300, 0],
        [200, 0],
        [200, 300],
        [100, 300],
        [100, 0],
        [0, 0],
        [0, 300],
        [-100, 300],
        [-100, 0],
        [-200, 0],
        [-200, 300],
        [-300, 300],
        [-300, 0],
        [-400, 0],
      ],
      [],
      [[0, -50]],
      150,
      0,
      300 * 200 + 100 * (100 + 50),
    ],
  ];
  it.each(cases)('%s', (_, outline, openings, points, half, degrees, expected) => {
    const region = prepareRegion(outline, openings);
    const turn = (degrees * Math.PI) / 180;
    const xs = points.map((p) => p[0]);
    const ys = points.map((p) => p[1]);
    expectArea(squaresArea(region, xs, ys, half, Math.cos(turn), Math.sin(turn)), expected);
    // The other axis of the squares gives the same squares.
    expectArea(squaresArea(region, xs, ys, half, -Math.sin(turn), Math.cos(turn)), expected);
  });
});

describe('rectangleArea', () => {
  it('takes different widths to the four sides, in the turned frame', () => {
    // Panel 1000 × 600; u points up (0, 1), v points left (−1, 0). From (900, 500): u −50 … 200 is y 450 … 700, cut at 600;
    // v −300 … 40 is x 860 … 1200, cut at 1000: 150 × 140.
    const region = prepareRegion(box(0, 0, 1000, 600), []);
    expectArea(rectangleArea(region, 900, 500, 0, 1, -50, 200, -300, 40), 150 * 140);
    expect(rectangleArea(region, 900, 500, 0, 1, 200, 300, 0, 40)).toBe(0);
    expect(rectangleArea(region, 900, 500, 0, 1, 20, 20, 0, 40)).toBe(0);
  });
});

describe('squaresArea against a general polygon library', () => {
  it('is the same in 3000 random cases', () => {
    const random = scatter(20260101);
    for (let i = 0; i < 3000; i++) {
      const face = drawFace(random);
      expectArea(area(face), peerSquaresArea(face));
    }
  });

  it('is the same for grids of squares that share lines, and for nine at random', () => {
    const random = scatter(7);
    for (let i = 0; i < 150; i++) {
      const face = drawFace(random);
      const [x, y] = face.points[0]!;
      const step = face.half * (0.5 + 2 * random());
      const grid = [0, 1, 2].flatMap((a) => [0, 1, 2].map((b) => [a, b] as const));
      const region = regionOf(face);
      const wanted = grid.map(([a, b]) =>
        i % 2 === 0
          ? ([x + step * (a * face.ux - b * face.uy), y + step * (a * face.uy + b * face.ux)] as const)
          : ([x + 3 * step * random(), y + 3 * step * random()] as const),
      );
      const points = wanted.filter(([px, py]) => isInside(region, px, py));
      if (points.length === 0) continue;
      expectArea(area({ ...face, points }), peerSquaresArea({ ...face, points }));
    }
  });
});

describe('squaresArea, degenerate within 1e-9 mm', () => {
  it('does not jump where a side, corner or point is moved by a hair', () => {
    // The square about (0, 0) with half 100 has the area 40000 less the opening's 10 × 20; an offset of d shifts it by at
    // most the length that it acts on (20 mm, or 200 mm for a square's side) times d; a turn by d sweeps eight triangles
    // of 100 × 100·d / 2.
    for (const d of [0, 1e-9, -1e-9, 1e-12, -1e-12]) {
      const region = prepareRegion(
        [
          [-500, -500],
          [100 + d, -500],
          [100 + d, 500],
          [-500, 500],
        ],
        [
          [
            [90 - d, 0],
            [80, d],
            [80, -20],
            [90, -20 + d],
          ],
        ],
      );
      const found = squaresArea(region, [0, d, 0], [0, 0, -d], 100, 1, 0);
      expect(Math.abs(found - (40000 - 200))).toBeLessThanOrEqual(500 * Math.abs(d) + 1e-9);
      const turned = squaresArea(region, [0, d, 0], [0, 0, -d], 100, Math.cos(d), Math.sin(d));
      expect(Math.abs(turned - (40000 - 200))).toBeLessThanOrEqual(40500 * Math.abs(d) + 1e-9);
    }
  });
});

describe('squaresArea, properties', () => {
  it('is the same turned, mirrored and shifted, up to 20 m away', () => {
    fc.assert(
      fc.property(
        faces,
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.boolean(),
        fc.integer({ min: -20000, max: 20000 }),
        fc.integer({ min: -20000, max: 20000 }),
        (face, angle, mirrored, dx, dy) => {
          expectArea(area(moveFace(face, makeMove(angle, mirrored, dx, dy))), area(face));
        },
      ),
    );
  });

  it('is the same with corners, openings and points in another order', () => {
    fc.assert(
      fc.property(faces, fc.nat(20), (face, k) => {
        expectArea(area(reorder(face, k)), area(face));
      }),
    );
  });

  it('grows with the half side, stays below n·(2·half)² and below the sum of its squares, above each of them', () => {
    fc.assert(
      fc.property(faces, fc.double({ min: 1, max: 1.5, noNaN: true }), (face, more) => {
        const found = area(face);
        const side = 2 * face.half;
        const single = face.points.map((point) => area({ ...face, points: [point] }));
        const sum = single.reduce((a, b) => a + b, 0);
        expect(area({ ...face, half: face.half * more })).toBeGreaterThanOrEqual(found * (1 - RELATIVE));
        expect(found).toBeLessThanOrEqual(face.points.length * side * side * (1 + RELATIVE));
        expect(found).toBeLessThanOrEqual(sum * (1 + RELATIVE));
        expect(found).toBeGreaterThanOrEqual(Math.max(...single) * (1 - RELATIVE));
      }),
    );
  });

  it('never falls while a square moves away from a straight edge', () => {
    const halfPlane = prepareRegion(box(-1e4, 0, 1e4, 1e4), []);
    const turn = fc.double({ min: 0, max: Math.PI, noNaN: true });
    const length = fc.double({ min: 0.01, max: 400, noNaN: true });
    fc.assert(
      fc.property(turn, length, length, (angle, distance, step) => {
        const at = (y: number): number => squaresArea(halfPlane, [0], [y], 150, Math.cos(angle), Math.sin(angle));
        expect(at(distance + step)).toBeGreaterThanOrEqual(at(distance) * (1 - RELATIVE));
      }),
    );
  });

  it('is continuous: a shift by d changes it by no more than the squares’ sides times d', () => {
    fc.assert(
      fc.property(faces, fc.double({ min: 0, max: 7, noNaN: true }), (face, angle) => {
        const d = 1e-4;
        const points = face.points.map(([x, y]) => [x + d * Math.cos(angle), y + d * Math.sin(angle)] as const);
        const change = Math.abs(area({ ...face, points }) - area(face));
        expect(change).toBeLessThanOrEqual(8 * face.half * d * face.points.length);
      }),
    );
  });
});
