import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Polygon } from '../../../src/engine/geometry/point.ts';
import { distanceToBoundary, isInside, prepareRegion, type Region } from '../../../src/engine/geometry/region.ts';
import { isInSight, nearPoints, visibleSpan, visibleSpanAround } from '../../../src/engine/geometry/sight.ts';
import { box, drawFace, makeMove, moveFace, regionOf, scatter } from './faces.ts';

const L: Polygon = [
  [0, 0],
  [400, 0],
  [400, 200],
  [200, 200],
  [200, 400],
  [0, 400],
];

const faces = fc.integer({ min: 0, max: 2 ** 31 }).map((seed) => drawFace(scatter(seed)));

describe('isInSight', () => {
  const region = prepareRegion(box(0, 0, 1000, 1000), [box(400, 400, 600, 600)]);
  const cases: readonly [string, number, number, number, number, boolean][] = [
    ['over free concrete', 100, 100, 900, 100, true],
    ['to the outline', 100, 100, 100, 0, true],
    ['past the outline', 100, 100, 100, -1, false],
    ['to the near side of the opening', 500, 100, 500, 400, true],
    ['into the opening', 500, 100, 500, 401, false],
    ['to the far side of the opening', 500, 100, 500, 600, false],
    ['behind the opening', 500, 100, 520, 900, false],
    ['past its corner at 5 mm', 395, 100, 395, 900, true],
    ['grazing its side', 400, 100, 400, 900, true],
    ['grazing its corner', 300, 500, 500, 700, true],
    ['1 mm inside of its corner', 301, 500, 501, 700, false],
    ['within 1e-9 of grazing its corner', 300 + 1e-9, 500, 500 + 1e-9, 700, true],
    ['through two of its corners', 300, 300, 700, 700, false],
    ['to its corner', 300, 300, 400, 400, true],
    ['to its corner that lies behind', 300, 300, 600, 600, false],
    ['along its side to the corner', 400, 300, 400, 400, true],
    ['to itself', 300, 300, 300, 300, true],
    ['to a corner of the outline', 100, 100, 1000, 0, true],
  ];
  it.each(cases)('%s', (_, px, py, qx, qy, expected) => {
    expect(isInSight(region, px, py, qx, qy)).toBe(expected);
  });

  it('is hidden between two openings that leave no width', () => {
    // The line y = 500 grazes one opening from below and one from above; beyond each alone it would be in sight.
    const low = box(300, 400, 400, 500);
    const high = box(600, 500, 700, 600);
    expect(isInSight(prepareRegion(null, [low]), 100, 500, 900, 500)).toBe(true);
    expect(isInSight(prepareRegion(null, [high]), 100, 500, 900, 500)).toBe(true);
    expect(isInSight(prepareRegion(null, [low, high]), 100, 500, 900, 500)).toBe(false);
  });

  it('agrees with looking at 400 places on the way, and does not depend on the direction or turn', () => {
    fc.assert(
      fc.property(faces, fc.double({ min: 0, max: 6.28, noNaN: true }), (face, angle) => {
        if (face.points.length < 2) return;
        const region = regionOf(face);
        const [[px, py], [qx, qy]] = [face.points[0]!, face.points[1]!];
        const seen = isInSight(region, px, py, qx, qy);
        expect(isInSight(region, qx, qy, px, py)).toBe(seen);
        let allInside = true;
        for (let i = 1; i < 400; i++) {
          const t = i / 400;
          allInside &&= isInside(region, px + t * (qx - px), py + t * (qy - py));
        }
        // Seen is inside everywhere; hidden may be missed between two places, only where it grazes.
        if (seen) expect(allInside).toBe(true);
        if (!allInside) expect(seen).toBe(false);
        const moved = moveFace(face, makeMove(angle, true, 5000, -300));
        const [[mx, my], [nx, ny]] = [moved.points[0]!, moved.points[1]!];
        expect(isInSight(regionOf(moved), mx, my, nx, ny)).toBe(seen);
      }),
    );
  });
});

describe('nearPoints', () => {
  const shorten = (region: Region, x: number, y: number, reach: number): (string | number)[][] =>
    nearPoints(region, x, y, reach).map((n) => [n.kind, n.side, Math.round(n.distance * 1e6) / 1e6, n.x, n.y]);

  it('finds the feet on the sides of a rectangle, nearest first', () => {
    const region = prepareRegion(box(0, 0, 1000, 600), []);
    expect(shorten(region, 120, 100, 900)).toEqual([
      ['side', 0, 100, 120, 0],
      ['side', 3, 120, 0, 100],
      ['side', 2, 500, 120, 600],
      ['side', 1, 880, 1000, 100],
    ]);
    expect(nearPoints(region, 120, 100, 119)).toEqual([
      { kind: 'side', side: 0, distance: 100, x: 120, y: 0, nx: 0, ny: -1 },
    ]);
    // Reach counts to the last: exactly 120 mm away is near.
    expect(nearPoints(region, 120, 100, 120)).toHaveLength(2);
  });

  it('takes a re-entrant corner where both feet fall beyond it, and a side where one foot lies on it', () => {
    const region = prepareRegion(L, []);
    // (150, 150) is 50·√2 from the corner (200, 200), where side 3 starts; the feet on sides 2 and 3 are off them.
    expect(shorten(region, 150, 150, 200)).toEqual([
      ['corner', 3, 70.710678, 200, 200],
      ['side', 0, 150, 150, 0],
      ['side', 5, 150, 0, 150],
    ]);
    const corner = nearPoints(region, 150, 150, 100)[0]!;
    expect(corner.nx).toBeCloseTo(Math.SQRT1_2, 14);
    expect(corner.ny).toBeCloseTo(Math.SQRT1_2, 14);
    // (150, 200): the foot on side 3 (x = 200) is its very start: a side, once.
    expect(shorten(region, 150, 200, 60)).toEqual([['side', 3, 50, 200, 200]]);
    expect(shorten(region, 150, 200 - 1e-9, 60).map((n) => n.slice(0, 3))).toEqual([['side', 3, 50]]);
    expect(shorten(region, 150, 199, 60).map((n) => n[0])).toEqual(['corner']);
    expect(shorten(region, 150, 201, 60).map((n) => n[0])).toEqual(['side']);
  });

  it('leaves out what an opening hides', () => {
    // From (500, 700) the opening hides the foot (500, 0); its own top is nearest. Sides 4 … 7: top, right, bottom, left.
    const region = prepareRegion(box(0, 0, 1000, 1000), [box(450, 300, 700, 400)]);
    expect(shorten(region, 500, 700, 1000)).toEqual([
      ['side', 2, 300, 500, 1000],
      ['side', 4, 300, 500, 400],
      ['side', 1, 500, 1000, 700],
      ['side', 3, 500, 0, 700],
    ]);
    // From (440, 700) the foot on the bottom is free, 10 mm past the opening; its corner (450, 400) is near too.
    expect(shorten(region, 440, 700, 1000).map((n) => n.slice(0, 2))).toEqual([
      ['side', 2],
      ['corner', 4],
      ['side', 3],
      ['side', 1],
      ['side', 0],
    ]);
  });

  it('starts with the nearest place of the whole boundary', () => {
    fc.assert(
      fc.property(faces, (face) => {
        const region = regionOf(face);
        const [x, y] = face.points[0]!;
        const nearest = nearPoints(region, x, y, 1e5)[0]!;
        expect(nearest.distance).toBeCloseTo(distanceToBoundary(region, x, y), 8);
        expect(Math.hypot(nearest.x - x, nearest.y - y)).toBeCloseTo(nearest.distance, 8);
      }),
    );
  });

  it('agrees with walking along the boundary in small steps', () => {
    fc.assert(
      fc.property(faces, (face) => {
        const region = regionOf(face);
        const [x, y] = face.points[0]!;
        const found = nearPoints(region, x, y, 1e5);
        for (const walked of walkForMinima(region, x, y)) {
          const gaps = found.map((n) => Math.hypot(n.x - walked.x, n.y - walked.y) / walked.step);
          expect(Math.min(...gaps)).toBeLessThan(1.01);
        }
        for (const near of found) {
          const side = region.sides[near.side]!;
          const before = region.sides[near.kind === 'corner' ? side.previous : near.side]!;
          for (const [dx, dy] of [[side.ux, side.uy] as const, [-before.ux, -before.uy] as const]) {
            expect(Math.hypot(near.x + dx - x, near.y + dy - y)).toBeGreaterThan(near.distance);
          }
          expect(Math.hypot(near.nx, near.ny)).toBeCloseTo(1, 12);
        }
      }),
    );
  });
});

/** Places in sight, 50 a side, that are nearer than both their neighbours, these in sight as well. */
function walkForMinima(region: Region, px: number, py: number): { x: number; y: number; step: number }[] {
  const minima: { x: number; y: number; step: number }[] = [];
  const rings = new Set(region.sides.map((side) => side.ring));
  for (const ring of rings) {
    const places = region.sides
      .filter((side) => side.ring === ring)
      .flatMap((side) =>
        Array.from({ length: 50 }, (_, i) => {
          const step = side.length / 50;
          const [x, y] = [side.fromX + i * step * side.ux, side.fromY + i * step * side.uy];
          return { x, y, step, distance: Math.hypot(x - px, y - py), seen: isInSight(region, px, py, x, y) };
        }),
      );
    places.forEach((place, i) => {
      const before = places[(i + places.length - 1) % places.length]!;
      const after = places[(i + 1) % places.length]!;
      if (!place.seen || !before.seen || !after.seen) return;
      if (place.distance >= before.distance || place.distance >= after.distance) return;
      minima.push({ ...place, step: Math.max(place.step, before.step) });
    });
  }
  return minima;
}

describe('visibleSpan', () => {
  const square = box(0, 0, 1000, 1000);

  it('is the whole side where nothing is in the way', () => {
    const region = prepareRegion(square, []);
    expect(visibleSpan(region, 0, 300, 200)).toEqual({ from: 0, to: 1000 });
    expect(visibleSpan(region, 2, 300, 200)).toEqual({ from: 0, to: 1000 });
  });

  it('ends where the shadow of an opening starts, worked by hand', () => {
    // p = (500, 700); the opening's corners lie 200 … 300 below p and 100 … 200 right of the foot. Thrown on the side y = 0,
    // 700 below p: (600, 400) → 100·700/300 = 233.333 right of the foot, (700, 500) → 200·700/200 = 700. So x ≤ 733.333.
    const region = prepareRegion(square, [box(600, 400, 700, 500)]);
    const span = visibleSpan(region, 0, 500, 700)!;
    expect(span.from).toBe(0);
    expect(span.to).toBeCloseTo(500 + 700 / 3, 10);
    // The mirror image: the opening left of the foot.
    const mirror = visibleSpan(prepareRegion(square, [box(300, 400, 400, 500)]), 0, 500, 700)!;
    expect(mirror.from).toBeCloseTo(500 - 700 / 3, 10);
    expect(mirror.to).toBe(1000);
  });

  it('lies between two shadows, and is null in a shadow', () => {
    const region = prepareRegion(square, [box(600, 400, 700, 500), box(300, 340, 400, 350)]);
    const span = visibleSpan(region, 0, 500, 700)!;
    // The second opening's corner nearest to the line p-foot is (400, 340): 100·700/360 = 194.444 left of the foot.
    expect(span.from).toBeCloseTo(500 - 70000 / 360, 10);
    expect(span.to).toBeCloseTo(500 + 700 / 3, 10);
    expect(visibleSpan(region, 0, 650, 700)).toBeNull();
    // In the shadow to the last 1e-3 mm, then out of it.
    expect(visibleSpan(region, 0, 600.001, 700)).toBeNull();
    expect(visibleSpan(region, 0, 600, 700)!.to).toBeCloseTo(600, 10);
  });

  it('is null for a foot off the side or a side seen from behind', () => {
    const region = prepareRegion(L, []);
    expect(visibleSpan(region, 2, 100, 300)).toBeNull(); // y = 200 from the upper leg: behind and off
    expect(visibleSpan(region, 3, 300, 100)).toBeNull(); // x = 200 from the right leg
    expect(visibleSpan(region, 1, 100, 300)).toBeNull(); // x = 400, foot (400, 300) above its end
    expect(visibleSpan(prepareRegion(square, [box(400, 400, 600, 600)]), 4, 500, 200)).toBeNull(); // its far side
  });

  it('is cut by a re-entrant corner', () => {
    // From (100, 300) in the upper leg of the L to the bottom y = 0: the ray through (200, 200) drops 1 per 1: x = 400 at y = 0.
    expect(visibleSpan(prepareRegion(L, []), 0, 100, 300)!.to).toBeCloseTo(400, 10);
    // From (100, 350): 150 down over 100 right; 350 down is 233.333 right: x = 333.333.
    expect(visibleSpan(prepareRegion(L, []), 0, 100, 350)!.to).toBeCloseTo(100 + 35000 / 150, 10);
  });

  it('leans on walls that stand over the side', () => {
    // A trapezoid, narrow at the top: its skew walls never hide its bottom. Upside down they are past its ends.
    const trapezoid: Polygon = [
      [0, 0],
      [1000, 0],
      [700, 400],
      [300, 400],
    ];
    const region = prepareRegion(trapezoid, []);
    expect(visibleSpan(region, 0, 400, 300)).toEqual({ from: 0, to: 1000 });
    expect(visibleSpan(region, 2, 400, 100)).toEqual({ from: 0, to: 400 });
  });

  it('agrees with looking at 300 places along the side, whatever the turn', () => {
    fc.assert(
      fc.property(faces, fc.nat(20), fc.double({ min: 0, max: 6.28, noNaN: true }), (face, k, angle) => {
        const region = regionOf(face);
        const [x, y] = face.points[0]!;
        const side = region.sides[k % region.sides.length]!;
        const span = visibleSpan(region, side.index, x, y);
        const foot = (x - side.fromX) * side.ux + (y - side.fromY) * side.uy;
        const ahead = (side.fromX - x) * side.nx + (side.fromY - y) * side.ny;
        const sees = (s: number): boolean =>
          isInSight(region, x, y, side.fromX + s * side.ux, side.fromY + s * side.uy);
        const mirrored = regionOf(moveFace(face, makeMove(angle, false, 900, 4000)));
        const [mx, my] = makeMove(angle, false, 900, 4000)([x, y]);
        const turned = visibleSpan(mirrored, side.index, mx, my);
        if (span === null) {
          expect(turned).toBeNull();
          expect(ahead > 0 && foot >= 0 && foot <= side.length && sees(foot)).toBe(false);
          return;
        }
        expect(Math.abs(turned!.from - span.from) + Math.abs(turned!.to - span.to)).toBeLessThan(1e-6);
        for (let i = 0; i <= 300; i++) {
          const s = (i / 300) * side.length;
          if (s > span.from + 1e-6 && s < span.to - 1e-6) expect(sees(s)).toBe(true);
        }
        // Just past an end that is not the end of the side it is dark.
        if (span.from > 1e-3) expect(sees(span.from - 1e-3)).toBe(false);
        if (span.to < side.length - 1e-3) expect(sees(span.to + 1e-3)).toBe(false);
      }),
    );
  });
});

describe('visibleSpanAround', () => {
  it('is the part on either hand of a shadow, worked by hand', () => {
    // p = (500, 700), 700 above the side y = 0. The opening is seen between its corners (600, 400), 100·700/300 = 233.333 right
    // of the foot, and (640, 420), 140·700/280 = 350 right of it: dark is x = 733.333 … 850.
    const region = prepareRegion(box(0, 0, 1000, 1000), [box(600, 400, 640, 420)]);
    for (const place of [0, 500, 733]) {
      const before = visibleSpanAround(region, 0, 500, 700, place)!;
      expect(before.from).toBe(0);
      expect(before.to).toBeCloseTo(500 + 700 / 3, 10);
    }
    for (const place of [850, 900, 1000]) {
      const behind = visibleSpanAround(region, 0, 500, 700, place)!;
      expect(behind.from).toBeCloseTo(850, 10);
      expect(behind.to).toBe(1000);
    }
    for (const place of [734, 800, 849]) expect(visibleSpanAround(region, 0, 500, 700, place)).toBeNull();
  });

  it('does not ask for the foot to lie on the side', () => {
    // From (100, 210) in the upper leg of the L the foot on x = 400, y 0 … 200, would be y = 210. The ray through the corner
    // (200, 200) falls 10 in 100: y = 180 at x = 400.
    const region = prepareRegion(L, []);
    expect(visibleSpan(region, 1, 100, 210)).toBeNull();
    const low = visibleSpanAround(region, 1, 100, 210, 0)!;
    expect(low.from).toBe(0);
    expect(low.to).toBeCloseTo(180, 10);
    expect(visibleSpanAround(region, 1, 100, 210, 200)).toBeNull();
    // From (100, 300) the ray meets the lower end (400, 0): nothing but that end is in sight.
    expect(visibleSpanAround(region, 1, 100, 300, 0)).toBeNull();
  });

  it('agrees with looking along the side, from any place on it', () => {
    fc.assert(
      fc.property(faces, fc.nat(20), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (face, k, share) => {
        const region = regionOf(face);
        const [x, y] = face.points[0]!;
        const side = region.sides[k % region.sides.length]!;
        const place = share * side.length;
        const sees = (s: number): boolean =>
          isInSight(region, x, y, side.fromX + s * side.ux, side.fromY + s * side.uy);
        const span = visibleSpanAround(region, side.index, x, y, place);
        if (span === null) {
          const ahead = (side.fromX - x) * side.nx + (side.fromY - y) * side.ny;
          expect(ahead > 0 && sees(place)).toBe(false);
          return;
        }
        expect(span.from <= place && place <= span.to).toBe(true);
        for (let i = 0; i <= 100; i++) {
          const s = (i / 100) * side.length;
          if (s > span.from + 1e-6 && s < span.to - 1e-6) expect(sees(s)).toBe(true);
        }
        if (span.from > 1e-3) expect(sees(span.from - 1e-3)).toBe(false);
        if (span.to < side.length - 1e-3) expect(sees(span.to + 1e-3)).toBe(false);
      }),
    );
  });
});
