import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findFormCheck } from '../../../src/assess/set-out/form-check.ts';
import { findDatumSides, nameDatum } from '../../../src/assess/set-out/form-words.ts';
import { writeLetter } from '../../../src/assess/set-out/letter-assemblies.ts';
import { orderWalk } from '../../../src/assess/set-out/walking-order.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';

const words = { start: 'fixed stop end', finish: 'loose stop end', railA: 'wall rail', railB: 'gangway rail' };

describe('the walk round the form', () => {
  const stop = (name: string, x: number, y: number, stage: 1 | 2 = 1) => [{ what: name, at: [x, y] as Point, stage }];

  it('goes out along the rail of the datum corner and back along the other, stage by stage', () => {
    const walk = orderWalk(
      [
        stop('far back', 5000, 2800),
        stop('near', 500, 300),
        stop('back', 700, 2600),
        stop('far', 5200, 200),
        stop('with the cage', 100, 100, 2),
      ],
      3000,
    );
    expect(walk).toEqual(['near', 'far', 'far back', 'back', 'with the cage']);
  });

  it('keeps a group together, in the direction of the walk', () => {
    const group = (y: number) =>
      ['a', 'b', 'c'].map((what, i) => ({
        what: `${what}${y}`,
        at: [1000 + 100 * i, y] as Point,
        stage: 1 as const,
      }));
    expect(orderWalk([group(2500), stop('between', 1100, 400), group(300)], 3000)).toEqual([
      'a300',
      'b300',
      'c300',
      'between',
      'c2500',
      'b2500',
      'a2500',
    ]);
  });

  it('meets a group of two stages twice, so that no number of the first comes after one of the second', () => {
    const group = [...stop('on the form', 1000, 300), ...stop('under the open face', 1100, 300, 2)];
    const walk = orderWalk([group, stop('later', 3000, 300), stop('with the cage', 200, 300, 2)], 3000);
    expect(walk).toEqual(['on the form', 'later', 'with the cage', 'under the open face']);
  });

  it('meets everything once (property)', () => {
    const place = fc.record({
      x: fc.integer({ min: 0, max: 6000 }),
      y: fc.integer({ min: 0, max: 3000 }),
      stage: fc.constantFrom(1 as const, 2 as const),
    });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 30 }), (places) => {
        const walk = orderWalk(
          places.map(({ x, y, stage }, i) => [{ what: i, at: [x, y] as Point, stage }]),
          3000,
        );
        expect([...walk].sort((a, b) => a - b)).toEqual(places.map((_, i) => i));
        const stages = walk.map((i) => places[i]!.stage);
        expect(stages).toEqual([...stages].sort());
      }),
    );
  });
});

describe('the check of the form', () => {
  it('has length, width, depth and two equal diagonals for a rectangle: 3000 and 4000 give 5000', () => {
    const outline: Point[] = [
      [0, 0],
      [4000, 0],
      [4000, 3000],
      [0, 3000],
    ];
    const form = findFormCheck(outline, 4000, 3000, 179.6, [0, 0], 3);
    expect(form).toMatchObject({ length: 4000, width: 3000, depth: 180, isRectangle: true, sides: [], tolerance: 3 });
    expect(form.diagonals.map(({ length }) => length)).toEqual([5000, 5000]);
  });

  it('fixes the shape of any other outline: its sides, and lines from the corner at the datum', () => {
    const outline: Point[] = [
      [0, 0],
      [5200, 0],
      [5200, 2200],
      [0, 3600],
    ];
    const form = findFormCheck(outline, 5200, 3600, 180, [5200, 0], 3);
    expect(form.sides.map(({ length }) => length)).toEqual([5200, 2200, 5385, 3600]);
    // Corner 2 lies at the datum; across from it is corner 4: √(5200² + 3600²) = 6324.6.
    expect(form.diagonals).toEqual([{ from: 'corner 2', to: 'corner 4', length: 6325 }]);
  });

  it('takes a parallelogram for what it is', () => {
    const outline: Point[] = [
      [0, 0],
      [4000, 0],
      [4100, 3000],
      [100, 3000],
    ];
    expect(findFormCheck(outline, 4100, 3000, 180, [0, 0], 3).isRectangle).toBe(false);
  });
});

describe('words and letters', () => {
  it('names the end and the rail of each datum corner', () => {
    expect(nameDatum(words, 'bottom-left')).toBe('fixed stop end / wall rail');
    expect(nameDatum(words, 'top-right')).toBe('loose stop end / gangway rail');
    expect(findDatumSides(words, 'bottom-right')).toEqual({
      end: 'loose stop end',
      otherEnd: 'fixed stop end',
      rail: 'wall rail',
      otherRail: 'gangway rail',
    });
  });

  it('goes on after Z as a spreadsheet does', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(writeLetter)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
  });
});
