import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DrawnEdgePlace, placeOnEdge } from '../../../src/engine/form/edge-place.ts';
import { FormError } from '../../../src/engine/form/form-error.ts';
import { type Lay, mouldView } from '../../../src/engine/form/mould-view.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { ALL_LAYS, anyOutline } from './lays.ts';

const sheet: readonly Point[] = [
  [0, 0],
  [3000, 0],
  [3000, 2000],
  [0, 2000],
];
const up: Lay = { outline: sheet, drawnFace: 'outside', faceDown: 'inside', turn: 0, datum: 'bottom-left' };

function refusal(place: DrawnEdgePlace): FormError {
  try {
    placeOnEdge(mouldView(up), place, 180);
  } catch (error) {
    if (error instanceof FormError) return error;
    throw error;
  }
  throw new Error('expected a FormError');
}

describe('a place on the side of a panel', () => {
  // By hand: side 1 runs up the far end, x = 3000; 600 along it; 60 from the outside face of 180.
  it('lies along the side and above the form', () => {
    const place = placeOnEdge(mouldView(up), { edge: 1, along: 600, fromOutside: 60 }, 180);
    expect(place).toEqual({
      drawing: [3000, 600],
      form: [3000, 600],
      plan: [3000, 600],
      aboveForm: 120,
      inward: [-1, 0],
      side: [
        [3000, 0],
        [3000, 2000],
      ],
    });
  });

  // By hand: the same with the outside down: mirrored to x = 0, 60 above the form.
  it('is mirrored with its panel', () => {
    const place = placeOnEdge(mouldView({ ...up, faceDown: 'outside' }), { edge: 1, along: 600, fromOutside: 60 }, 180);
    expect(place.form).toEqual([0, 600]);
    expect(place.aboveForm).toBe(60);
    expect(place.inward).toEqual([1, 0]);
  });

  // By hand: a side of 3-4-5 from (600, 0) to (0, 800); 500 along it: half way.
  it('follows a skew side', () => {
    const outline: readonly Point[] = [
      [600, 0],
      [0, 800],
      [-2000, 800],
      [-2000, 0],
    ];
    const place = placeOnEdge(mouldView({ ...up, outline }), { edge: 0, along: 500, fromOutside: 0 }, 180);
    expect(place.drawing[0]).toBeCloseTo(300, 9);
    expect(place.drawing[1]).toBeCloseTo(400, 9);
    expect(place.inward[0]).toBeCloseTo(-0.8, 12);
    expect(place.inward[1]).toBeCloseTo(-0.6, 12);
  });

  it('takes both ends of a side and both faces', () => {
    const view = mouldView(up);
    expect(placeOnEdge(view, { edge: 3, along: 0, fromOutside: 0 }, 180).form).toEqual([0, 2000]);
    const last = placeOnEdge(view, { edge: 3, along: 2000, fromOutside: 180 }, 180);
    expect(last.form).toEqual([0, 0]);
    expect(last.aboveForm).toBe(0);
  });

  it('refuses what lies beyond the outline, the side or the thickness', () => {
    expect(refusal({ edge: 4, along: 10, fromOutside: 60 })).toMatchObject({ about: 'edge' });
    expect(refusal({ edge: 4, along: 10, fromOutside: 60 }).message).toMatch(/4 is no side .* expected 0 to 3/);
    expect(refusal({ edge: 1, along: 2000.1, fromOutside: 60 })).toMatchObject({ about: 'along' });
    expect(refusal({ edge: 1, along: -0.1, fromOutside: 60 }).message).toMatch(/expected 0 to its length of 2000 mm/);
    expect(refusal({ edge: 1, along: 10, fromOutside: 180.1 })).toMatchObject({ about: 'fromOutside' });
    expect(refusal({ edge: 1, along: 10, fromOutside: -1 }).message).toMatch(/expected 0 to its thickness of 180 mm/);
  });

  it('points into the concrete and keeps heights, however the panel lies and the outline runs', () => {
    fc.assert(
      fc.property(
        anyOutline,
        fc.constantFrom(...ALL_LAYS),
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 100, max: 900 }).map((n) => n / 1000),
        fc.integer({ min: 0, max: 180 }),
        (outline, way, edge, share, fromOutside) => {
          const view = mouldView({ ...way, outline });
          const [a, b] = [outline[edge]!, outline[(edge + 1) % 4]!];
          const along = share * Math.hypot(b[0] - a[0], b[1] - a[1]);
          const place = placeOnEdge(view, { edge, along, fromOutside }, 180);
          const [x, y] = place.plan;
          const middle: Point = [view.length / 2, view.width / 2];
          const toMiddle = (middle[0] - x) * place.inward[0] + (middle[1] - y) * place.inward[1];
          expect(toMiddle).toBeGreaterThan(0);
          const { side } = place;
          expect(Math.hypot(x - side[0][0], y - side[0][1])).toBeCloseTo(along, 7);
          const across = (side[1][0] - side[0][0]) * place.inward[0] + (side[1][1] - side[0][1]) * place.inward[1];
          expect(across).toBeCloseTo(0, 7);
          expect(place.aboveForm).toBe(way.faceDown === 'outside' ? fromOutside : 180 - fromOutside);
        },
      ),
    );
  });
});
