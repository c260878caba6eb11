import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { printGroup, wholeMillimetres } from '../../../src/engine/form/whole-millimetres.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';

/** Thousandths of a millimetre: spread evenly, where doubles would crowd about zero. */
const exact = fc.integer({ min: -8_000_000, max: 8_000_000 }).map((n) => n / 1000);
/** Half a millimetre, and what floating point leaves. */
const HALF = 0.5 + 1e-8;

describe('whole millimetres', () => {
  it('round halves up on both sides of zero, without a negative zero', () => {
    expect([1.4, 1.5, 2.5, -0.5, -1.5, -0.4].map(wholeMillimetres)).toEqual([1, 2, 3, 0, -1, 0]);
    expect(Object.is(wholeMillimetres(-0.2), 0)).toBe(true);
  });

  // 1.005 · 100 is a hair below 100.5 in floating point.
  it('take a half as a half where floating point falls short of it', () => {
    expect(1.005 * 100).toBeLessThan(100.5);
    expect(wholeMillimetres(1.005 * 100)).toBe(101);
  });

  it('are at most half a millimetre off', () => {
    fc.assert(
      fc.property(exact, (length) => {
        expect(Math.abs(wholeMillimetres(length) - length)).toBeLessThanOrEqual(HALF);
        expect(Number.isInteger(wholeMillimetres(length))).toBe(true);
      }),
    );
  });
});

describe('a group from its centre', () => {
  it('is printed so that centre and offset give each place', () => {
    // By hand: the middle of 1000.4 and 1150.4 is 1075.4; 1000 − 1075 = −75, 1150 − 1075 = 75.
    const places: readonly Point[] = [
      [1000.4, 200],
      [1150.4, 300],
    ];
    expect(printGroup(places)).toEqual({
      centre: [1075, 250],
      offsets: [
        [-75, -50],
        [75, 50],
      ],
    });
    expect(printGroup(places, [1000.4, 200]).offsets[1]).toEqual([150, 100]);
  });

  it('never adds errors up: each place comes out within half a millimetre, wherever the centre is put', () => {
    const place = fc.tuple(exact, exact);
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 1, maxLength: 20 }),
        fc.option(place, { nil: undefined }),
        (places, at) => {
          const { centre, offsets } = printGroup(places, at);
          places.forEach(([x, y], i) => {
            expect(centre[0] + offsets[i]![0]).toBe(wholeMillimetres(x));
            expect(centre[1] + offsets[i]![1]).toBe(wholeMillimetres(y));
            expect(Math.abs(centre[0] + offsets[i]![0] - x)).toBeLessThanOrEqual(HALF);
          });
        },
      ),
    );
  });

  it('keeps a pattern that is symmetric about a whole or half millimetre symmetric', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9000 }), fc.integer({ min: 1, max: 400 }), (twiceCentre, half) => {
        const centre = twiceCentre / 2;
        const { offsets } = printGroup([
          [centre - half, 0],
          [centre + half, 0],
        ]);
        expect(offsets.map(([x]) => x)).toEqual([-half, half]);
      }),
    );
  });
});
