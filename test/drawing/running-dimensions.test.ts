import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxAround, doBoxesOverlap, textCorners } from '../../src/drawing/boxes.ts';
import type { Mark, TextMark } from '../../src/drawing/drawing.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import { drawRunningDimensions, lengthForFigures, type RunningRow } from '../../src/drawing/running-dimensions.ts';
import { spreadPlaces } from '../../src/drawing/spread.ts';
import { measureText } from '../../src/drawing/text-size.ts';

const isText = (mark: Mark): mark is TextMark => mark.kind === 'text';

function row(over: Partial<RunningRow>): RunningRow {
  return { side: '-y', line: 100, from: 0, to: 300, datum: 0, size: 2.8, dimensions: [], ...over };
}

/** Spread evenly, in hundredths of a mm: fast-check's own doubles are nearly all next to their limits. */
const length = (max: number) => fc.integer({ min: 0, max: 100 * max }).map((hundredths) => hundredths / 100);
const places = fc.array(length(200), { maxLength: 40 });
const rising = places.map((list) => [...list].sort((a, b) => a - b));

describe('spreading places', () => {
  it('keeps order, distance and limits', () => {
    fc.assert(
      fc.property(rising, (list) => {
        const spread = spreadPlaces(list, 4, -10, 210);
        expect(spread.length).toBe(list.length);
        for (const [k, place] of spread.entries()) {
          expect(place).toBeGreaterThanOrEqual(-10 - 1e-9);
          expect(place).toBeLessThanOrEqual(210 + 1e-9);
          if (k > 0) expect(place - spread[k - 1]!).toBeGreaterThanOrEqual(4 - 1e-9);
        }
      }),
    );
  });

  it('leaves alone what is apart already', () => {
    expect(spreadPlaces([3, 7, 20], 4, 0, 100)).toEqual([3, 7, 20]);
  });

  it('moves as little as possible: no other places have a smaller sum of squares', () => {
    // The constraints are convex, so a spread is the best one when the slope toward every other allowed one is not downhill:
    // the sum of (spread − wanted) × (other − spread) is never negative (any text on convex optimisation).
    fc.assert(
      fc.property(rising, fc.array(length(6), { minLength: 41, maxLength: 41 }), (list, gaps) => {
        const [pitch, from, to] = [4, -10, 450];
        const spread = spreadPlaces(list, pitch, from, to);
        let at = from + gaps[40]!;
        const other = list.map((_, k) => {
          at += k === 0 ? 0 : pitch + gaps[k]!;
          return at;
        });
        const slope = spread.reduce((sum, place, k) => sum + (place - list[k]!) * (other[k]! - place), 0);
        expect(slope).toBeGreaterThanOrEqual(-1e-6);
      }),
    );
  });

  it('shares a move between neighbours, worked by hand', () => {
    // Two at 10, 4 apart: 8 and 12. Three at 10, 10, 13: means of 10, 6, 5 = 7, hence 7, 11, 15.
    expect(spreadPlaces([10, 10], 4, 0, 100)).toEqual([8, 12]);
    expect(spreadPlaces([10, 10, 13], 4, 0, 100)).toEqual([7, 11, 15]);
    expect(spreadPlaces([1, 1], 4, 0, 100)).toEqual([0, 4]);
    expect(spreadPlaces([99, 100], 4, 0, 100)).toEqual([96, 100]);
  });
});

describe('a row of running dimensions', () => {
  const side = fc.constantFrom('+x', '-x', '+y', '-y' as const);

  it('has every figure once, none on another, in order, within its limits', () => {
    fc.assert(
      fc.property(places, side, (list, toSide) => {
        const dimensions = list.map((at) => ({ at, text: String(Math.round(at * 20)) }));
        const drawn = drawRunningDimensions(row({ side: toSide, dimensions }));
        const figures = drawn.marks.filter(isText);
        const wanted = new Set(list.map((at) => `${at.toFixed(3)} ${Math.round(at * 20)}`));
        expect(figures.length).toBe(wanted.size);
        const isAlongX = toSide.endsWith('y');
        const numbers = figures.map(({ text }) => Number(text));
        expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
        const boxes = figures.map((figure) => boxAround(textCorners(figure)));
        for (const [k, box] of boxes.entries()) {
          for (const other of boxes.slice(k + 1)) expect(doBoxesOverlap(box, other)).toBe(false);
          const [low, high] = isAlongX ? [box.x, box.x + box.width] : [box.y, box.y + box.height];
          expect(low).toBeGreaterThanOrEqual(-0.5);
          expect(high).toBeLessThanOrEqual(300.5);
          const out = isAlongX ? [box.y, box.y + box.height] : [box.x, box.x + box.width];
          const [near, far] = toSide.startsWith('+') ? [out[0]! - 100, out[1]! - 100] : [100 - out[1]!, 100 - out[0]!];
          expect(near).toBeGreaterThan(0);
          expect(far).toBeLessThanOrEqual(drawn.depth + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('has a tick at the true place of each figure, and its leader begins there', () => {
    const dimensions = [40, 41, 42, 160].map((at) => ({ at, text: String(at * 20) }));
    const { marks } = drawRunningDimensions(row({ dimensions }));
    const ticks = marks.flatMap((mark) => (mark.kind === 'line' && mark.pen === 'medium' ? [mark] : []));
    expect(ticks.map(({ from, to }) => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2])).toEqual([
      [40, 100],
      [41, 100],
      [42, 100],
      [160, 100],
    ]);
    const leaders = marks.flatMap((mark) => (mark.kind === 'polyline' ? [mark.points] : []));
    expect(leaders.map((points) => points[0])).toEqual([
      [40, 100],
      [41, 100],
      [42, 100],
      [160, 100],
    ]);
    const figures = marks.filter(isText);
    expect(leaders.map((points) => points.at(-1)![0])).toEqual(figures.map(({ at }) => at[0]));
  });

  it('has a circle at the datum and lines to what is dimensioned', () => {
    const { marks } = drawRunningDimensions(
      row({
        datum: 20,
        dimensions: [
          { at: 20, text: '0' },
          { at: 80, text: '1200', feature: 130 },
        ],
      }),
    );
    expect(marks.filter((mark) => mark.kind === 'circle').map(({ at }) => at)).toEqual([[20, 100]]);
    const lines = marks.flatMap((mark) => (mark.kind === 'line' && mark.pen === 'hair' ? [[mark.from, mark.to]] : []));
    expect(lines).toEqual([
      [
        [80, 130],
        [80, 100],
      ],
    ]);
  });

  it('writes one figure for two things at one place, with a line to each', () => {
    const dimensions = [
      { at: 60, text: '900', feature: 120 },
      { at: 60, text: '900', feature: 180 },
    ];
    const { marks, depth } = drawRunningDimensions(row({ dimensions }));
    expect(marks.filter(isText).map(({ text }) => text)).toEqual(['900']);
    expect(marks.filter((mark) => mark.kind === 'line' && mark.pen === 'hair').length).toBe(2);
    // Stub, slant, end and gap: 1.4 + 2.6 + 0.8 + 0.6 mm; then the figure.
    expect(depth).toBeCloseTo(5.4 + measureText('900', 2.8), 9);
  });

  it('says when the figures do not fit at all', () => {
    const dimensions = Array.from({ length: 12 }, (_, k) => ({ at: k, text: `${k}` }));
    const length = lengthForFigures(12, 2.8);
    expect(() => drawRunningDimensions(row({ to: length + 0.01, dimensions }))).not.toThrow();
    expect(() => drawRunningDimensions(row({ to: length - 0.01, dimensions }))).toThrow(DrawingError);
    expect(() => drawRunningDimensions(row({ to: length - 0.01, dimensions }))).toThrow(
      '12 running dimensions of size 2.8 mm need 43.7 mm',
    );
  });
});
