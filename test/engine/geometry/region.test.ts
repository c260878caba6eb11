import { describe, expect, it } from 'vitest';
import { GeometryError } from '../../../src/engine/geometry/geometry-error.ts';
import type { Polygon } from '../../../src/engine/geometry/point.ts';
import { distanceToBoundary, isInside, prepareRegion } from '../../../src/engine/geometry/region.ts';
import { box, makeMove } from './faces.ts';

const L: Polygon = [
  [0, 0],
  [400, 0],
  [400, 200],
  [200, 200],
  [200, 400],
  [0, 400],
];

describe('prepareRegion', () => {
  it('turns the outline counter-clockwise and openings clockwise, whichever way they come', () => {
    for (const outline of [box(0, 0, 4, 3), [...box(0, 0, 4, 3)].reverse()]) {
      for (const opening of [box(1, 1, 2, 2), [...box(1, 1, 2, 2)].reverse()]) {
        const region = prepareRegion(outline, [opening]);
        for (const side of region.sides) {
          // A step to the left of each side is concrete, a step to its right (along the normal) is not.
          const [mx, my] = [(side.fromX + side.toX) / 2, (side.fromY + side.toY) / 2];
          expect(isInside(region, mx - 0.1 * side.nx, my - 0.1 * side.ny)).toBe(true);
          expect(isInside(region, mx + 0.1 * side.nx, my + 0.1 * side.ny)).toBe(false);
          expect([side.nx, side.ny]).toEqual([side.uy, -side.ux]);
        }
      }
    }
  });

  it('gives each side its ring, length, neighbours and the angles of the concrete at its ends', () => {
    const region = prepareRegion(L, [box(50, 50, 80, 90)]);
    expect(region.sides.map((s) => [s.index, s.ring, s.previous, s.next])).toEqual([
      [0, 'outline', 5, 1],
      [1, 'outline', 0, 2],
      [2, 'outline', 1, 3],
      [3, 'outline', 2, 4],
      [4, 'outline', 3, 5],
      [5, 'outline', 4, 0],
      [6, 0, 9, 7],
      [7, 0, 6, 8],
      [8, 0, 7, 9],
      [9, 0, 8, 6],
    ]);
    expect(region.sides.map((s) => s.length)).toEqual([400, 200, 200, 200, 200, 400, 30, 40, 30, 40]);
    // By eye: right angles all round the L but 270° at (200, 200), where side 2 ends and side 3 starts; 270° round an opening.
    const quarters = (angle: number): number => Math.round((angle / Math.PI) * 2 * 1e9) / 1e9;
    expect(region.sides.map((s) => quarters(s.angleAtFrom))).toEqual([1, 1, 1, 3, 1, 1, 3, 3, 3, 3]);
    expect(region.sides.map((s) => quarters(s.angleAtTo))).toEqual([1, 1, 3, 1, 1, 1, 3, 3, 3, 3]);
    expect(region.hasReentrantCorner).toBe(true);
    expect([region.minX, region.minY, region.maxX, region.maxY]).toEqual([0, 0, 400, 400]);
  });

  it('knows a face without re-entrant corners and an infinite one', () => {
    expect(prepareRegion(box(0, 0, 4, 3), []).hasReentrantCorner).toBe(false);
    const infinite = prepareRegion(null, []);
    expect(infinite.sides).toEqual([]);
    expect(infinite.maxX).toBe(Number.POSITIVE_INFINITY);
    expect(infinite.minY).toBe(Number.NEGATIVE_INFINITY);
    expect(isInside(infinite, 1e6, -1e6)).toBe(true);
    expect(distanceToBoundary(infinite, 0, 0)).toBe(Number.POSITIVE_INFINITY);
  });

  it('merges double corners and drops collinear ones within 1e-7 mm, no more', () => {
    const region = prepareRegion(
      [
        [0, 0],
        [500, 0.9e-7],
        [1000, 0],
        [1000, 0.5e-7],
        [1000, 800],
        [0, 800],
        [0, 400],
        [0, 100],
        [0, 0.5e-7],
      ],
      [],
    );
    expect(region.sides).toHaveLength(4);
    const bent = prepareRegion(
      [
        [0, 0],
        [500, 2e-7],
        [1000, 0],
        [1000, 800],
        [0, 800],
      ],
      [],
    );
    expect(bent.sides).toHaveLength(5);
    expect(bent.hasReentrantCorner).toBe(true);
  });

  it('takes sides on one line that are far apart, also where the panel is turned', () => {
    const u: Polygon = [
      [0, 0],
      [893.7, 0],
      [893.7, 701.3],
      [611.3, 701.3],
      [611.3, 300],
      [300, 300],
      [300, 701.3],
      [0, 701.3],
    ];
    for (let angle = 0; angle < 6; angle += 0.005) {
      expect(prepareRegion(u.map(makeMove(angle, false, 0, 0)), []).sides).toHaveLength(8);
    }
  });
});

describe('a face that cannot be is refused with ring, corner, value and what was expected', () => {
  const square = box(0, 0, 1000, 1000);
  // The last column is the corner (from 0) where the first side found at fault starts. Openings are turned clockwise, so
  // that their first side is the top one, from corner 3 to corner 2.
  const cases: readonly [string, Polygon | null, readonly Polygon[], RegExp, 'outline' | number, number | null][] = [
    ['two corners', square.slice(0, 2), [], /^outline has 2 corners; expected at least 3/, 'outline', null],
    [
      'no number',
      [
        [0, 0],
        [9, Number.NaN],
        [9, 9],
      ],
      [],
      /^outline, corner 2: y is NaN; expected a finite/,
      'outline',
      1,
    ],
    [
      'endless',
      square,
      [
        [
          [1, 1],
          [2, 2],
          [Number.POSITIVE_INFINITY, 1],
        ],
      ],
      /^opening 1, corner 3: x is Infinity/,
      0,
      2,
    ],
    [
      'on one line',
      [
        [0, 0],
        [5, 5],
        [9, 9],
        [7, 7],
      ],
      [],
      /^outline encloses no area: of its 4 corners/,
      'outline',
      null,
    ],
    [
      'one place',
      [
        [1, 1],
        [1, 1],
        [1, 1],
      ],
      [],
      /^outline encloses no area/,
      'outline',
      null,
    ],
    [
      'a sliver',
      [
        [0, 0],
        [1000, 0],
        [500, 1.5e-7],
      ],
      [],
      /^outline (encloses|touches)/,
      'outline',
      null,
    ],
    [
      'a bow tie',
      [
        [0, 0],
        [9, 9],
        [9, 0],
        [0, 9],
      ],
      [],
      /^outline touches or crosses itself: .* corner 1 \(0, 0\)/,
      'outline',
      0,
    ],
    [
      'a spike',
      [
        [0, 0],
        [9, 0],
        [20, 0],
        [9, 0],
        [9, 9],
      ],
      [],
      /^outline touches or crosses itself/,
      'outline',
      0,
    ],
    [
      'a pinched waist',
      [
        [0, 0],
        [4, 0],
        [2, 2],
        [4, 4],
        [0, 4],
        [2, 2],
      ],
      [],
      /itself/,
      'outline',
      1,
    ],
    [
      'an opening across the outline',
      square,
      [box(900, 100, 1100, 200)],
      /^opening 1 touches or crosses outline/,
      0,
      3,
    ],
    ['an opening on the outline', square, [box(900, 100, 1000, 200)], /^opening 1 touches or crosses outline/, 0, 3],
    ['an opening at a hair', square, [box(5, 5, 6, 6), box(900, 100, 1000 - 5e-8, 200)], /^opening 2 touches/, 1, 3],
    [
      'an opening outside',
      square,
      [box(1200, 0, 1300, 50)],
      /^opening 1, corner 4 \(1200, 50\) lies outside the outline/,
      0,
      3,
    ],
    ['an opening around', square, [box(-5, -5, 1005, 1005)], /^opening 1, corner \d .* lies outside the outline/, 0, 3],
    ['openings that cross', null, [box(0, 0, 9, 9), box(5, 5, 15, 6)], /^opening 2 touches or crosses opening 1/, 1, 3],
    ['openings that touch', null, [box(0, 0, 9, 9), box(9, 0, 15, 6)], /^opening 2 touches or crosses opening 1/, 1, 3],
    [
      'an opening in an opening',
      null,
      [box(4, 4, 5, 5), box(0, 0, 9, 9)],
      /^opening 1, corner \d .* within opening 2/,
      0,
      3,
    ],
  ];
  it.each(cases)('%s', (_, outline, openings, message, ring, corner) => {
    let error: unknown;
    try {
      prepareRegion(outline, openings);
    } catch (caught) {
      error = caught;
    }
    expect(error).toBeInstanceOf(GeometryError);
    expect(error).toMatchObject({ name: 'GeometryError', message: expect.stringMatching(message), ring, corner });
  });
});

describe('isInside and distanceToBoundary', () => {
  const region = prepareRegion(L, [box(50, 50, 80, 90)]);
  it.each([
    [20, 20, true, 20],
    [65, 70, false, 15], // in the opening, its nearest sides left and right
    [65, 85, false, 5], // in the opening; (85, 65) is not
    [85, 65, true, 5],
    [300, 300, false, 100], // beyond the re-entrant corner
    [150, 150, true, Math.hypot(50, 50)], // to the corner (200, 200)
    [-30, -40, false, 50],
    [0, 100, false, 0], // on the boundary
    [5e-8, 100, false, 5e-8],
    [2e-7, 100, true, 2e-7],
  ])('(%d, %d): inside %s, %d mm from the boundary', (x, y, inside, distance) => {
    expect(isInside(region, x, y)).toBe(inside);
    expect(distanceToBoundary(region, x, y)).toBeCloseTo(distance, 12);
  });
});
