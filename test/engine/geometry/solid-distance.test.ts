import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Cylinder,
  makeBlock,
  makeCylinder,
  type Solid,
  shiftSolid,
  turnSolid,
  type Vector,
} from '../../../src/engine/geometry/solid.ts';
import { measureBounds, measureSolids, measureWithin } from '../../../src/engine/geometry/solid-distance.ts';
import { add, box, cylinder, direction, dot, lengthOf, point, projectOnCylinder, reachOfCylinder } from './solids.ts';

const EXACT = 1e-6;
const up = (x: number, y: number, from: number, to: number, radius: number) =>
  makeCylinder([x, y, from], [x, y, to], radius);
const bar = (y: number, z: number, from: number, to: number, diameter: number) =>
  makeCylinder([from, y, z], [to, y, z], diameter / 2);
const cube = (x: number, y: number, z: number, size: number) =>
  makeBlock([0, size].flatMap((i) => [0, size].flatMap((j) => [0, size].map((k): Vector => [x + i, y + j, z + k]))));
const anySolid: fc.Arbitrary<Solid> = fc.oneof(cylinder(90, 200), box, cylinder(90, 6000));

describe('distances of solids, worked by hand', () => {
  const cases: readonly [string, Solid, Solid, number][] = [
    ['a bar beside a body', up(0, 0, 0, 96, 11), bar(30, 40, -2000, 2000, 10), 30 - 11 - 5],
    ['a bar against a body: touching', up(0, 0, 0, 96, 11), bar(16, 40, -2000, 2000, 10), 0],
    ['a bar through a body', up(0, 0, 0, 96, 11), bar(3, 40, -2000, 2000, 10), 0],
    ['a bar across the middle of a body', up(0, 0, 0, 96, 11), bar(0, 40, -2000, 2000, 10), 0],
    // The end of the foot is flat: a bar below it over the disc is as far as the planes are.
    ['a bar below a foot', up(0, 0, 90, 98, 20), bar(0, 120, -2000, 2000, 12), 120 - 98 - 6],
    ['a bar below a foot, to one side, over the disc', up(0, 0, 90, 98, 20), bar(15, 120, -2000, 2000, 12), 16],
    // Beyond the disc: 30 across and 22 down from the bar's axis, less the rim 20 away: (10, 22).
    ['a bar below and beside a foot', up(0, 0, 90, 98, 20), bar(30, 120, -2000, 2000, 12), Math.hypot(10, 22) - 6],
    ['two bars end to end', bar(0, 0, 0, 500, 10), bar(0, 0, 530, 900, 10), 30],
    ['two bars end to end, 40 aside: rim to rim', bar(0, 0, 0, 500, 10), bar(40, 0, 530, 900, 10), Math.hypot(30, 30)],
    ['parallel bars side by side', bar(0, 0, 0, 500, 10), bar(40, 0, 300, 900, 12), 40 - 11],
    [
      'bars crossing at their own height',
      bar(0, 0, -500, 500, 10),
      makeCylinder([7, -400, 30], [7, 400, 30], 6),
      30 - 11,
    ],
    // A bar that ends before a body: its flat end, 10 wide, faces the round side.
    ['a bar that ends before a body', up(0, 0, 0, 96, 11), bar(0, 40, 20, 900, 10), 9],
    // The end's rim, 3 ± 5 across: its nearest point to the axis lies on the flat end at y = 0, as the end covers it.
    ['a bar that ends before a body, 3 aside', up(0, 0, 0, 96, 11), bar(3, 40, 20, 900, 10), 9],
    // 20 aside: the nearest point of the end is its rim at y = 15: hypot(20, 15) = 25.
    ['a bar that ends beside a body', up(0, 0, 0, 96, 11), bar(20, 40, 20, 900, 10), 25 - 11],
    ['a cylinder above another, discs overlapping', up(0, 0, 0, 10, 20), up(25, 0, 17, 30, 10), 7],
    [
      'a cylinder above another, rims apart',
      up(0, 0, 0, 10, 20),
      up(36, 8, 17, 30, 10),
      Math.hypot(7, Math.hypot(36, 8) - 30),
    ],
    ['a cylinder within another', up(0, 0, 0, 90, 20), up(3, 0, 20, 30, 5), 0],
    ['two cubes by their sides', cube(0, 0, 0, 10), cube(14, 3, -2, 5), 4],
    ['two cubes by their edges', cube(0, 0, 0, 10), cube(13, 14, 3, 5), 5],
    ['two cubes by their corners', cube(0, 0, 0, 10), cube(11, 12, 12, 5), 3],
    ['a cylinder and a cube', up(0, 0, 0, 50, 8), cube(20, -5, 10, 10), 12],
    ['a cylinder and the edge of a cube', up(0, 0, 0, 50, 8), cube(12, 16, 10, 10), 12],
    [
      'a flat piece of a side',
      up(0, 0, 5, 50, 8),
      makeBlock([
        [30, -200, 0],
        [30, 200, 0],
        [30, 200, 150],
        [30, -200, 150],
      ]),
      22,
    ],
  ];
  it.each(cases)('%s', (_, a, b, expected) => {
    expect(measureSolids(a, b)).toBeCloseTo(expected, 6);
    expect(measureSolids(b, a)).toBeCloseTo(expected, 6);
  });

  // A cylinder tilted by 30° whose lower rim comes nearest to a plane side: its middle at x = 0, the rim at 10 sin 60° … by hand:
  // the end's middle lies at 40 sin 30° = 20, the rim 10 cos 30° farther.
  it('a tilted cylinder and a side', () => {
    const tilted = makeCylinder([0, 0, 50], [20, 0, 50 + 40 * Math.cos(Math.PI / 6)], 10);
    const side = makeBlock([
      [60, -200, 0],
      [60, 200, 0],
      [60, 200, 200],
      [60, -200, 200],
    ]);
    expect(measureSolids(tilted, side)).toBeCloseTo(60 - 20 - 10 * Math.cos(Math.PI / 6), 6);
  });
});

describe('distances of any solids', () => {
  it('lie between what two other methods allow', () => {
    // Points thrown from one cylinder to the other and back come ever nearer; the slab between the last two bounds it from below.
    let narrow = 0;
    let apart = 0;
    fc.assert(
      fc.property(cylinder(90, 150), cylinder(90, 400), (a, b) => {
        const found = measureSolids(a, b);
        const [p, q] = throwBetween(a, b);
        const most = lengthOf(add(q, p, -1));
        expect(found).toBeLessThanOrEqual(most + EXACT);
        if (most < 1e-3) return;
        const n = add([0, 0, 0], add(q, p, -1), 1 / most);
        const opposite = add([0, 0, 0], n, -1);
        const least = -reachOfCylinder(b, opposite) - reachOfCylinder(a, n);
        expect(found).toBeGreaterThanOrEqual(least - EXACT);
        apart += 1;
        if (most - least < 2 * EXACT) narrow += 1;
      }),
      { numRuns: 600 },
    );
    // Else the two bounds would prove nothing.
    expect(narrow).toBeGreaterThan(0.75 * apart);
  });

  it('are never above that of two points of them', () => {
    fc.assert(
      fc.property(cylinder(90, 150), cylinder(90, 3000), point(1), point(1), (a, b, f, g) => {
        const inA = takePoint(a, f);
        const inB = takePoint(b, g);
        expect(measureSolids(a, b)).toBeLessThanOrEqual(lengthOf(add(inA, inB, -1)) + EXACT);
      }),
      { numRuns: 2000 },
    );
  });

  it('are the same both ways round', () => {
    fc.assert(
      fc.property(anySolid, anySolid, (a, b) => {
        expect(Math.abs(measureSolids(a, b) - measureSolids(b, a))).toBeLessThanOrEqual(EXACT);
      }),
    );
  });

  it('stay when both are moved, turned or mirrored', () => {
    const angle = fc.integer({ min: -180, max: 180 }).map((deg) => (deg * Math.PI) / 180);
    fc.assert(
      fc.property(anySolid, anySolid, point(3000), direction, angle, (a, b, by, about, turn) => {
        const distance = measureSolids(a, b);
        const move = (solid: Solid) => shiftSolid(turnSolid(solid, [10, 20, 30], about, turn), by);
        expect(Math.abs(measureSolids(move(a), move(b)) - distance)).toBeLessThanOrEqual(EXACT);
        expect(Math.abs(measureSolids(mirror(a), mirror(b)) - distance)).toBeLessThanOrEqual(EXACT);
      }),
      { numRuns: 300 },
    );
  });

  it('change by no more than one of them is moved', () => {
    fc.assert(
      fc.property(anySolid, anySolid, direction, fc.integer({ min: 1, max: 1000 }), (a, b, along, step) => {
        const way = step / 1000;
        const moved = shiftSolid(a, add([0, 0, 0], along, way));
        expect(Math.abs(measureSolids(moved, b) - measureSolids(a, b))).toBeLessThanOrEqual(way + EXACT);
      }),
    );
  });

  it('are never below that of the boxes around them', () => {
    fc.assert(
      fc.property(anySolid, anySolid, (a, b) => {
        expect(measureSolids(a, b)).toBeGreaterThanOrEqual(measureBounds(a, b) - EXACT);
      }),
    );
  });

  it('are left out at and above a limit, and only there', () => {
    fc.assert(
      fc.property(anySolid, anySolid, fc.integer({ min: 0, max: 60 }), (a, b, limit) => {
        const distance = measureSolids(a, b);
        const within = measureWithin(a, b, limit);
        if (distance < limit - EXACT) expect(within).toBe(distance);
        else if (distance > limit + EXACT) expect(within).toBe(Number.POSITIVE_INFINITY);
      }),
    );
  });

  it('of a bar that is cut far away stay the same', () => {
    fc.assert(
      fc.property(cylinder(60, 100), point(60), fc.integer({ min: 0, max: 359 }), (a, at, deg) => {
        const along: Vector = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180), 0];
        const long = makeCylinder(add(at, along, -9000), add(at, along, 9000), 6);
        const short = makeCylinder(add(at, along, -600), add(at, along, 600), 6);
        expect(Math.abs(measureSolids(a, long) - measureSolids(a, short))).toBeLessThanOrEqual(EXACT);
      }),
    );
  });
});

describe('solids', () => {
  it('refuse what has no size or place', () => {
    expect(() => makeCylinder([0, 0, 0], [0, 0, 9], 0)).toThrow(
      'the radius of a cylinder is 0 mm; expected more than 0',
    );
    expect(() => makeCylinder([0, 0, 0], [0, 0, 9], Number.NaN)).toThrow('expected more than 0');
    expect(() => makeCylinder([0, 0, 0], [0, 0, 0], 5)).toThrow('a cylinder is 0 mm long');
    expect(() => makeCylinder([0, Number.NaN, 0], [0, 0, 9], 5)).toThrow(
      'at (0, NaN, 0); expected finite numbers of mm',
    );
    expect(() => makeBlock([])).toThrow('a block has no corners');
    expect(() => makeBlock([[0, 0, Number.POSITIVE_INFINITY]])).toThrow('expected finite numbers of mm');
  });

  it('are just filled by their bounds', () => {
    fc.assert(
      fc.property(cylinder(90, 200), (solid) => {
        const axes: readonly Vector[] = [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ];
        const [x, y, z] = axes.map((n) => reachOfCylinder(solid, n));
        expect([solid.maxX, solid.maxY, solid.maxZ].map((v, i) => v - [x, y, z][i]!)).toEqual(
          [0, 0, 0].map(() => expect.closeTo(0, 6)),
        );
      }),
    );
  });

  it('turn from x towards y about z', () => {
    const turned = turnSolid(makeCylinder([10, 0, 5], [20, 0, 5], 1), [10, 0, 5], [0, 0, 1], Math.PI / 2);
    expect(turned.kind === 'cylinder' && turned.to).toEqual([expect.closeTo(10, 9), expect.closeTo(10, 9), 5]);
  });
});

/** The nearest points that are found by projecting on one cylinder and the other in turn. */
function throwBetween(a: Cylinder, b: Cylinder): [Vector, Vector] {
  let p: Vector = a.from;
  let q: Vector = b.from;
  for (let i = 0; i < 20_000; i++) {
    const next = projectOnCylinder(a, q);
    const moved = lengthOf(add(next, p, -1));
    p = next;
    q = projectOnCylinder(b, p);
    if (i > 5 && moved < 1e-12) break;
  }
  return [p, q];
}

/** A point within a cylinder; f holds three numbers between -1 and 1. */
function takePoint(solid: Cylinder, f: Vector): Vector {
  const on = add(solid.from, solid.axis, ((f[0] + 1) / 2) * solid.length);
  const across = add([f[1], f[2], f[0]], solid.axis, -dot([f[1], f[2], f[0]], solid.axis));
  const r = lengthOf(across);
  return r < 1e-9 ? on : add(on, across, (solid.radius * Math.abs(f[1])) / r);
}

function mirror(solid: Solid): Solid {
  const flip = ([x, y, z]: Vector): Vector => [-x, y, z];
  return solid.kind === 'cylinder'
    ? makeCylinder(flip(solid.from), flip(solid.to), solid.radius)
    : makeBlock(solid.corners.map(flip));
}
