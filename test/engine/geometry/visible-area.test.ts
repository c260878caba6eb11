import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../../src/engine/geometry/point.ts';
import { prepareRegion } from '../../../src/engine/geometry/region.ts';
import { groupArea, visibleSquaresArea } from '../../../src/engine/geometry/sight.ts';
import { squaresArea } from '../../../src/engine/geometry/union-area.ts';
import { tries } from '../../long.ts';
import {
  box,
  coordinates,
  drawFace,
  drawGridFace,
  type Face,
  makeMove,
  moveFace,
  peerVisibleArea,
  regionOf,
  reorder,
  scatter,
} from './faces.ts';

const RELATIVE = 1e-9;

function area(face: Face): number {
  const { xs, ys } = coordinates(face);
  return groupArea(regionOf(face), xs, ys, face.half, face.ux, face.uy);
}

function plainArea(face: Face): number {
  const { xs, ys } = coordinates(face);
  return squaresArea(regionOf(face), xs, ys, face.half, face.ux, face.uy);
}

function expectArea(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(RELATIVE * expected);
}

const faces = fc.integer({ min: 0, max: 2 ** 31 }).map((seed) => drawFace(scatter(seed)));

const L: Polygon = [
  [0, 0],
  [400, 0],
  [400, 200],
  [200, 200],
  [200, 400],
  [0, 400],
];

describe('groupArea, worked by hand', () => {
  it('an opening casts a shadow', () => {
    // Insert at (0, 0), half side 150, opening x 50 … 100, y −20 … 20.
    // Its front face x = 50 is 40 wide; the rays through its ends climb 20/50 = 0.4, so at the square's side x = 150 the
    // shadow is 2 · 0.4 · 150 = 120 wide. At x = 100 it is 80 wide: the rest of the opening lies in it.
    // Hidden: (40 + 120)/2 · 100 = 8000. Seen: 300² − 8000 = 82000. (Without sight: 300² − 50·40 = 88000.)
    const region = prepareRegion(null, [box(50, -20, 100, 20)]);
    expectArea(groupArea(region, [0], [0], 150, 1, 0), 82000);
    expectArea(squaresArea(region, [0], [0], 150, 1, 0), 88000);
  });

  it('two inserts light up most of each other’s shadow', () => {
    // The same opening, a second insert at (200, 0), so its square is x 50 … 350; the union of the squares is 500 × 300.
    // Dark to A is |y| ≤ 0.4·x from x = 50 on. Dark to B is |y| ≤ 20·(200 − x)/100 = 40 − 0.2·x from x = 100 back to 50.
    // Dark to both: 50 ≤ x ≤ 100 under the lower of the two lines, which meet at 0.6·x = 40, x = 66.667, y = 26.667:
    //   50 … 66.667: heights 20 and 26.667 → 23.3333 · 16.6667 = 388.8889
    //   66.667 … 100: heights 26.667 and 20 → 23.3333 · 33.3333 = 777.7778
    // both halves: 2 · 1166.6667 = 2333.3333. Seen: 150000 − 2333.3333 = 147666.6667.
    const region = prepareRegion(null, [box(50, -20, 100, 20)]);
    expectArea(groupArea(region, [0, 200], [0, 0], 150, 1, 0), 150000 - 7000 / 3);
  });

  it('a re-entrant corner casts a shadow', () => {
    // Insert at (100, 300) in the upper leg of the L, half 250: in the square lie x 0 … 350, y 50 … 400. The upper leg
    // x ≤ 200 is seen whole: 200 · 350 = 70000. Of the right leg x 200 … 350, y 50 … 200 (22500) the ray through (200, 200),
    // falling 1 per 1 to (350, 50), leaves the half below: 11250. Seen 81250, without sight 92500.
    const region = prepareRegion(L, []);
    expectArea(groupArea(region, [100], [300], 250, 1, 0), 81250);
    expectArea(squaresArea(region, [100], [300], 250, 1, 0), 92500);
  });

  it('the far side of a slot is dark though no corner lies within the square', () => {
    // A slot x 60 … 80 from the top edge down; insert at (0, 0), half 100: seen is x ≤ 60, 160 × 200. Without sight the strip
    // x 80 … 100 would be counted too.
    const outline: Polygon = [
      [-500, -900],
      [500, -900],
      [500, 900],
      [80, 900],
      [80, -700],
      [60, -700],
      [60, 900],
      [-500, 900],
    ];
    const region = prepareRegion(outline, []);
    expectArea(groupArea(region, [0], [0], 100, 1, 0), 160 * 200);
    expectArea(squaresArea(region, [0], [0], 100, 1, 0), 160 * 200 + 20 * 200);
  });

  it('a turned square in front of an opening', () => {
    // Square of half 100 turned by 45°: |x| + |y| ≤ 100·√2 = 141.4214. Opening x 50 … 60, y −10 … 10: rays y = ±0.2·x meet
    // x + y = 141.4214 at x = 141.4214/1.2 = 117.8511, y = 23.5702. Hidden above the axis: the triangle (0, 0), (141.4214, 0),
    // (117.8511, 23.5702) = 141.4214 · 23.5702 / 2 = 1666.6667, less the seen one before x = 50: 50 · 10 / 2 = 250 → 1416.6667;
    // both halves 2833.3333.
    const region = prepareRegion(null, [box(50, -10, 60, 10)]);
    expectArea(groupArea(region, [0], [0], 100, Math.SQRT1_2, Math.SQRT1_2), 40000 - 8500 / 3);
    expectArea(groupArea(region, [0], [0], 100, -Math.SQRT1_2, Math.SQRT1_2), 40000 - 8500 / 3);
  });
});

describe('groupArea, degenerate', () => {
  // Insert at (0, 0), half 100. The opening x 50 … 70, y 0 … 10 is seen end-on along y = 0: dark 50 ≤ x, 0 ≤ y ≤ 0.2·x:
  // (10 + 20)/2 · 50 = 750. A second one x 80 … 90, y 16 … 30 has its corner (80, 16) on the same ray y = 0.2·x and is dark up
  // to y = 0.375·x: from x = 80 on (14 + 17.5)/2 · 20 = 315 more.
  const first = (d: number): Polygon => [
    [50, d],
    [70, -d],
    [70, 10],
    [50, 10 + d],
  ];
  const second = (d: number): Polygon => [
    [80, 16 + d],
    [90, 16],
    [90, 30],
    [80, 30 - d],
  ];

  it.each([0, 1e-9, -1e-9, 1e-12, -1e-12, 1e-7, -1e-7])('corners in one line with the insert, off by %d mm', (d) => {
    // An offset of d at 50 mm or more turns a ray by at most d/50 over 150 mm: 150²/2 · d/50 = 225·d for each corner.
    const slack = 2000 * Math.abs(d) + 1e-9;
    const one = groupArea(prepareRegion(null, [first(d)]), [0], [0], 100, 1, 0);
    expect(Math.abs(one - (40000 - 750))).toBeLessThanOrEqual(slack);
    const two = groupArea(prepareRegion(null, [first(d), second(d)]), [0], [0], 100, 1, 0);
    expect(Math.abs(two - (40000 - 750 - 315))).toBeLessThanOrEqual(slack);
    const twice = groupArea(prepareRegion(null, [first(d), second(d)]), [0, d, 0], [0, 0, -d], 100, 1, 0);
    expect(Math.abs(twice - (40000 - 750 - 315))).toBeLessThanOrEqual(2 * slack);
  });

  const cases: readonly [string, Polygon[], number][] = [
    ['an opening that touches the square', [box(100, -30, 150, 30)], 40000],
    ['an opening that touches it at a corner', [box(100, 100, 150, 130)], 40000],
    // Dark: x 90 … 100, |y| ≤ x/3: (60 + 66.667)/2 · 10.
    ['an opening that sticks out of it', [box(90, -30, 150, 30)], 40000 - (60 + 200 / 3) * 5],
    ['an opening with its back on the square’s side', [box(90, -30, 100, 30)], 40000 - (60 + 200 / 3) * 5],
  ];
  it.each(cases)('%s', (_, openings, expected) => {
    expectArea(groupArea(prepareRegion(null, openings), [0], [0], 100, 1, 0), expected);
  });

  it('an opening with a corner on the diagonal of the square', () => {
    // Opening (60, 40), (80, 40), (80, 60), (60, 60): two faces are lit, x = 60 and y = 40. Its outline as seen: corners
    // (80, 40) (ray y = x/2) and (60, 60) (ray y = x, into the square's corner). Dark: triangle (0,0), (100, 50), (100, 100) =
    // 100 · 50/2 = 2500, less the lit part before the faces: triangle (0,0), (80,40), (60,40) = 40 · 20/2 = 400 and triangle
    // (0,0), (60,40), (60,60) = 60 · 20/2 = 600. Dark 1500.
    const region = prepareRegion(null, [box(60, 40, 80, 60)]);
    expectArea(groupArea(region, [0], [0], 100, 1, 0), 40000 - 1500);
    expectArea(groupArea(region, [0, 0], [0, 0], 100, 1, 0), 40000 - 1500);
  });
});

/** Far more than a fault of the sight needs to show; the peer takes most of the time. */
const CASES = tries(600, 200);

describe('sight against a general polygon library', () => {
  it(`is the same in ${CASES} random cases with shadows`, () => {
    const random = scatter(20260202);
    for (let hidden = 0; hidden < CASES; ) {
      const face = drawFace(random);
      const found = area(face);
      if (found > plainArea(face) * (1 - 1e-6)) continue;
      hidden++;
      expectArea(found, peerVisibleArea(face));
    }
  });
});

describe('groupArea, properties', () => {
  it('is the same by both ways where nothing is hidden, never more than without sight where something is', () => {
    let free = 0;
    fc.assert(
      fc.property(faces, (face) => {
        const { xs, ys } = coordinates(face);
        const region = regionOf(face);
        const plain = plainArea(face);
        const visible = visibleSquaresArea(region, xs, ys, face.half, face.ux, face.uy);
        expectArea(area(face), visible);
        expect(visible).toBeLessThanOrEqual(plain * (1 + RELATIVE));
        if (!region.hasReentrantCorner) {
          free++;
          expectArea(visible, plain);
        }
      }),
      { numRuns: 500 },
    );
    expect(free).toBeGreaterThan(3);
  });

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
      { numRuns: 300 },
    );
  });

  it('is the same where corners, squares and inserts lie in line as where a turn has blurred it', () => {
    const grid = fc.integer({ min: 0, max: 2 ** 31 }).map((seed) => drawGridFace(scatter(seed)));
    fc.assert(
      fc.property(grid, fc.double({ min: 0.01, max: 6, noNaN: true }), fc.boolean(), (face, angle, mirrored) => {
        const moved = moveFace(face, makeMove(angle, mirrored, 123.4, -567.8));
        expectArea(area(moved), area(face));
        expectArea(plainArea(moved), plainArea(face));
      }),
      { numRuns: 1000 },
    );
  });

  it('is the same with corners, openings and points in another order', () => {
    fc.assert(
      fc.property(faces, fc.nat(20), (face, k) => {
        expectArea(area(reorder(face, k)), area(face));
      }),
    );
  });

  it('grows with the half side, stays below the sum of its squares and above each of them', () => {
    fc.assert(
      fc.property(faces, fc.double({ min: 1, max: 1.5, noNaN: true }), (face, more) => {
        const found = area(face);
        const single = face.points.map((point) => area({ ...face, points: [point] }));
        const sum = single.reduce((a, b) => a + b, 0);
        expect(area({ ...face, half: face.half * more })).toBeGreaterThanOrEqual(found * (1 - RELATIVE));
        expect(found).toBeLessThanOrEqual(sum * (1 + RELATIVE));
        expect(found).toBeGreaterThanOrEqual(Math.max(...single) * (1 - RELATIVE));
        expect(sum).toBeLessThanOrEqual(face.points.length * (2 * face.half) ** 2 * (1 + RELATIVE));
      }),
    );
  });

  it('is continuous: a shift by d sweeps its sides, and each corner’s ray by d over the distance to the corner', () => {
    fc.assert(
      fc.property(faces, fc.double({ min: 0, max: 7, noNaN: true }), (face, angle) => {
        const d = 1e-5;
        const points = face.points.map(([x, y]) => [x + d * Math.cos(angle), y + d * Math.sin(angle)] as const);
        const corners = [face.outline, ...face.openings].flat();
        const bound = face.points.map(([x, y]) => {
          const rays = corners.map(([cx, cy]) => (face.half ** 2 * d) / (Math.hypot(cx - x, cy - y) - d));
          return 8 * face.half * d + rays.reduce((a, b) => a + b, 0);
        });
        const change = Math.abs(area({ ...face, points }) - area(face));
        expect(change).toBeLessThanOrEqual(bound.reduce((a, b) => a + b, 0));
      }),
    );
  });
});
