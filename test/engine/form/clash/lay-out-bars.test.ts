import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOutBars } from '../../../../src/engine/form/clash/lay-out-bars.ts';
import type { Polygon } from '../../../../src/engine/geometry/point.ts';
import { prepareRegion } from '../../../../src/engine/geometry/region.ts';
import { makeBlock } from '../../../../src/engine/geometry/solid.ts';
import { measureSolids } from '../../../../src/engine/geometry/solid-distance.ts';
import { makeLayer, SQUARE } from './scenes.ts';

const ends = (bars: ReturnType<typeof layOutBars>) =>
  bars.map(({ id, solid: { from, to } }) =>
    [id, from, to].flat().map((v) => (typeof v === 'number' ? Math.round(v * 1e6) / 1e6 + 0 : v)),
  );

describe('bars of a layer, worked by hand', () => {
  it('along x, every 200 from y = 100, 20 mm from the ends', () => {
    const bars = layOutBars(makeLayer({}), prepareRegion(SQUARE, []));
    expect(bars).toHaveLength(10);
    expect(ends(bars.slice(0, 2))).toEqual([
      ['L/1', 20, 100, 40, 1980, 100, 40],
      ['L/2', 20, 300, 40, 1980, 300, 40],
    ]);
    expect(bars[0]).toMatchObject({ layer: 'L', kind: 'bars', spacing: 200, endCover: 20, across: [-0, 1, 0] });
    expect(bars[0]!.solid.radius).toBe(5);
  });
  it('through any point, on any line of the layer', () => {
    const region = prepareRegion(SQUARE, []);
    const bars = layOutBars(makeLayer({ through: [-700, 1300 + 5 * 200] }), region);
    expect(ends(bars)).toEqual(ends(layOutBars(makeLayer({}), region)));
  });
  it('along y', () => {
    const bars = layOutBars(makeLayer({ direction: Math.PI / 2, through: [150, 0] }), prepareRegion(SQUARE, []));
    // Across them is against x: the first is the one with the largest x.
    expect(ends(bars.slice(0, 1))).toEqual([['L/1', 1950, 20, 40, 1950, 1980, 40]]);
    expect(bars).toHaveLength(10);
  });
  it('keep their cover to sides along them: 25 mm from axis to side is enough, 24 is not', () => {
    const region = prepareRegion(SQUARE, []);
    expect(layOutBars(makeLayer({ through: [0, 25], spacing: 1950 }), region)).toHaveLength(2);
    expect(layOutBars(makeLayer({ through: [0, 24], spacing: 1950 }), region)).toHaveLength(1);
    expect(layOutBars(makeLayer({ through: [0, 24.9], spacing: 3000 }), region)).toHaveLength(0);
  });
  it('are cut by an opening, each piece with its letter', () => {
    const opening: Polygon = [
      [800, 200],
      [1200, 200],
      [1200, 400],
      [800, 400],
    ];
    const bars = layOutBars(makeLayer({}), prepareRegion(SQUARE, [opening]));
    // Line 1 at 100 passes 95 below it. Line 2 at 300 is cut.
    expect(ends(bars.slice(0, 3))).toEqual([
      ['L/1', 20, 100, 40, 1980, 100, 40],
      ['L/2a', 20, 300, 40, 780, 300, 40],
      ['L/2b', 1220, 300, 40, 1980, 300, 40],
    ]);
  });
  it('keep off the corner of an opening that they pass', () => {
    // The corner (1000, 307) lies 7 above the axis, 2 above the bar: the cover of 20 holds within sqrt(20² - 2²) along it.
    const opening: Polygon = [
      [1000, 307],
      [1005, 507],
      [995, 507],
    ];
    const bars = layOutBars(makeLayer({}), prepareRegion(SQUARE, [opening]));
    const off = Math.sqrt(400 - 4);
    expect(bars[1]!.solid.to[0]).toBeCloseTo(1000 - off, 6);
    expect(bars[2]!.solid.from[0]).toBeCloseTo(1000 + off, 6);
  });
  it('are cut square before a skew side: its cover is measured to the corner of the bar', () => {
    // Side at 45° through (2000, 0) and (1000, 1000): at y = 500 it stands at x = 1500. The end lies 20 √2 + 5 before.
    const bars = layOutBars(
      makeLayer({}),
      prepareRegion(
        [
          [0, 0],
          [2000, 0],
          [1000, 1000],
          [0, 1000],
        ],
        [],
      ),
    );
    expect(bars[2]!.solid.to[0]).toBeCloseTo(1500 - 20 * Math.SQRT2 - 5, 6);
  });
  it('leave out stubs no longer than they are thick', () => {
    const narrow = (gap: number): Polygon => [
      [0, 0],
      [40 + gap, 0],
      [40 + gap, 600],
      [0, 600],
    ];
    expect(layOutBars(makeLayer({}), prepareRegion(narrow(11), []))).toHaveLength(3);
    expect(layOutBars(makeLayer({}), prepareRegion(narrow(9), []))).toHaveLength(0);
  });
  it('refuse numbers that no layer has', () => {
    const region = prepareRegion(SQUARE, []);
    expect(() => layOutBars(makeLayer({ spacing: 0 }), region)).toThrow(
      'layer L: spacing is 0 mm; expected more than 0',
    );
    expect(() => layOutBars(makeLayer({ diameter: -1 }), region)).toThrow('layer L: diameter is -1 mm');
    expect(() => layOutBars(makeLayer({ through: [0, Number.NaN] }), region)).toThrow('layer L: y is NaN');
    expect(() => layOutBars(makeLayer({ endCover: -2 }), region)).toThrow(
      'layer L: end cover is -2 mm; expected 0 or more',
    );
  });
});

describe('bars of any layer', () => {
  it('keep their cover exactly: no end could be longer, no point is nearer', () => {
    const outline: Polygon = [
      [0, 0],
      [1500, -180],
      [1330, 700],
      [900, 760],
      [850, 1100],
      [0, 1000],
    ];
    const opening: Polygon = [
      [500, 300],
      [800, 330],
      [700, 600],
      [520, 640],
    ];
    const region = prepareRegion(outline, [opening]);
    const walls = region.sides.map(({ fromX, fromY, toX, toY }) =>
      makeBlock([
        [fromX, fromY, 0],
        [toX, toY, 0],
        [toX, toY, 150],
        [fromX, fromY, 150],
      ]),
    );
    const clear = (solid: ReturnType<typeof layOutBars>[number]['solid']) =>
      Math.min(...walls.map((wall) => measureSolids(solid, wall)));
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 179 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 0, max: 40 }),
        fc.constantFrom(6, 16, 32),
        (deg, x, endCover, diameter) => {
          const direction = (deg * Math.PI) / 180;
          const bars = layOutBars(makeLayer({ direction, diameter, through: [x, 0], endCover, spacing: 130 }), region);
          expect(bars.length).toBeGreaterThan(3);
          for (const { solid } of bars) {
            expect(clear(solid)).toBeGreaterThanOrEqual(endCover - 1e-5);
            const { from, to, axis } = solid;
            for (const [end, sign] of [
              [from, -1],
              [to, 1],
            ] as const) {
              // The last micrometre stands exactly at its cover: a thin slice of it is as near to a side as may be.
              const slice = { ...solid, ...sliceAt(end, axis, sign) };
              expect(clear(slice)).toBeLessThanOrEqual(endCover + 1e-2);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

/** The last hundredth of a millimetre of a bar. */
function sliceAt(end: readonly number[], axis: readonly number[], sign: number) {
  const inner = end.map((v, i) => v - sign * 0.01 * axis[i]!) as [number, number, number];
  const outer = [...end] as [number, number, number];
  return sign < 0 ? { from: outer, to: inner, length: 0.01 } : { from: inner, to: outer, length: 0.01 };
}
