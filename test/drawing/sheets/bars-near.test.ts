import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanBar } from '../../../src/assess/set-out/lay-bars.ts';
import { listBarsNear } from '../../../src/drawing/sheets/bars-near.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';

const bar = (from: Point, to: Point): PlanBar => ({ from, to, diameter: 8, face: 'mould face', kind: 'bars' });

describe('bars near inserts', () => {
  it('is the chord of a circle of 200 mm: at 120 mm aside 160 mm to both sides', () => {
    expect(listBarsNear([bar([0, 0], [1000, 0])], [[500, 120]])).toEqual([
      [
        [340, 0],
        [660, 0],
      ],
    ]);
  });

  it('ends with the bar, joins what touches, and leaves out what is far', () => {
    expect(
      listBarsNear(
        [bar([0, 0], [1000, 0])],
        [
          [100, 0],
          [400, 0],
          [900, 0],
          [500, 200],
        ],
      ),
    ).toEqual([
      [
        [0, 0],
        [600, 0],
      ],
      [
        [700, 0],
        [1000, 0],
      ],
    ]);
  });

  it('shows a point of a bar exactly where an insert is nearer than 200 mm (property)', () => {
    const coordinate = fc.integer({ min: 0, max: 2000 });
    const place = fc.tuple(coordinate, coordinate);
    fc.assert(
      fc.property(
        place,
        place,
        fc.array(place, { maxLength: 6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, places, share) => {
          fc.pre(Math.hypot(a[0] - b[0], a[1] - b[1]) > 1);
          const at: Point = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
          const nearest = Math.min(...places.map(([x, y]) => Math.hypot(x - at[0], y - at[1])));
          fc.pre(Math.abs(nearest - 200) > 1e-3);
          const isShown = listBarsNear([bar(a, b)], places).some(
            ([from, to]) =>
              Math.hypot(at[0] - from[0], at[1] - from[1]) + Math.hypot(at[0] - to[0], at[1] - to[1]) <
              Math.hypot(from[0] - to[0], from[1] - to[1]) + 1e-6,
          );
          expect(isShown).toBe(nearest < 200);
        },
      ),
    );
  });
});
