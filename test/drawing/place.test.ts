import fc from 'fast-check';
import pc from 'polygon-clipping';
import { describe, expect, it } from 'vitest';
import { boxOfMarks, textCorners } from '../../src/drawing/boxes.ts';
import type { Mark, SymbolMark } from '../../src/drawing/drawing.ts';
import { hatchArea } from '../../src/drawing/hatch.ts';
import { drawBox, drawLine, drawText, drawTextLines } from '../../src/drawing/marks.ts';
import { circleRing, expandSymbols, findSweep, placeMarks, placePoint } from '../../src/drawing/place.ts';
import { writeCoordinate } from '../../src/drawing/write-number.ts';

describe('placing marks', () => {
  it('scales, then turns, then moves, worked by hand', () => {
    const point = placePoint([100, 40], { scale: 1 / 20, turn: Math.PI / 2, move: [10, 30] });
    expect(point[0]).toBeCloseTo(10 - 2, 9);
    expect(point[1]).toBeCloseTo(30 + 5, 9);
    expect(placePoint([3, 4], {})).toEqual([3, 4]);
  });

  it('keeps sizes of text, scales radii, turns arcs and texts with their drawing', () => {
    const marks: readonly Mark[] = [
      { kind: 'circle', layer: 'insert', at: [20, 0], radius: 10, pen: 'thin', fill: 'none' },
      { kind: 'arc', layer: 'datum', at: [0, 0], radius: 40, from: 0, to: 1, pen: 'thin' },
      drawText([0, 20], 'M16', 3, { turn: 0.25 }),
    ];
    const [circle, arc, text] = placeMarks(marks, { scale: 0.1, turn: 0.5, move: [1, 2] });
    expect(circle).toMatchObject({ radius: 1 });
    expect(arc).toMatchObject({ radius: 4, from: 0.5, to: 1.5, at: [1, 2] });
    expect(text).toMatchObject({ size: 3, turn: 0.75 });
  });

  it('never mirrors: corners that run counter-clockwise still do', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.double({ min: -7, max: 7, noNaN: true }),
        fc.tuple(fc.integer({ min: -999, max: 999 }), fc.integer({ min: -999, max: 999 })),
        (scale, turn, move) => {
          const [a, b, c] = [
            [0, 0],
            [10, 0],
            [0, 10],
          ].map(([x, y]) => placePoint([x!, y!], { scale, turn, move }));
          const twice = (b![0] - a![0]) * (c![1] - a![1]) - (b![1] - a![1]) * (c![0] - a![0]);
          expect(twice / (100 * scale * scale)).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  it('puts the shape of a symbol where the symbol lies, through symbols within it', () => {
    const dot: SymbolMark = {
      kind: 'symbol',
      layer: 'insert',
      name: 'DOT',
      at: [10, 0],
      turn: Math.PI / 2,
      scale: 2,
      shape: [drawLine('insert', [0, 0], [1, 0], 'thin')],
      attributes: [],
    };
    const pair: SymbolMark = { ...dot, name: 'PAIR', at: [100, 50], turn: Math.PI / 2, scale: 3, shape: [dot] };
    const [line, ...others] = expandSymbols([pair]);
    expect(others).toEqual([]);
    // By hand: (0,0) → (10,0) → turned (0,10) × 3 + (100,50) = (100,80); (1,0) → (10,2) → (−2,10) × 3 → (94,80).
    const { from, to } = line as { from: readonly number[]; to: readonly number[] };
    for (const [point, wanted] of [
      [from, [100, 80]],
      [to, [94, 80]],
    ] as const)
      for (const axis of [0, 1]) expect(point[axis]).toBeCloseTo(wanted[axis]!, 9);
  });

  it('finds the box around marks, texts and symbols with what they take', () => {
    expect(boxOfMarks([])).toBeNull();
    expect(boxOfMarks([drawBox('outline', [5, 6], 10, 20, 'thin'), drawLine('bar', [0, 7], [2, 40], 'thin')])).toEqual({
      x: 0,
      y: 6,
      width: 15,
      height: 34,
    });
    const corners = textCorners(drawText([0, 0], 'xx', 10, { turn: Math.PI / 2 }));
    expect(Math.min(...corners.map(([x]) => x))).toBeCloseTo(-9.4, 9);
    expect(Math.max(...corners.map(([x]) => x))).toBeCloseTo(2.4, 9);
  });

  it('goes round an arc counter-clockwise, past the whole turn too', () => {
    expect(findSweep({ from: 0, to: 1 })).toBeCloseTo(1, 9);
    expect(findSweep({ from: 6, to: 0.5 })).toBeCloseTo(0.5 - 6 + 2 * Math.PI, 9);
    expect(findSweep({ from: 1, to: 0 })).toBeCloseTo(2 * Math.PI - 1, 9);
  });

  it('sets lines of text below each other, turned with them, and leaves room for an empty one', () => {
    const lines = drawTextLines([10, 50], ['a', '', 'b'], 4, { turn: Math.PI / 2 });
    expect(lines.map(({ text }) => text)).toEqual(['a', 'b']);
    // Two steps of 1.3 × 4 mm below a line that runs upward: toward greater x.
    expect(lines[1]!.at[0]).toBeCloseTo(10 + 10.4, 9);
    expect(lines[1]!.at[1]).toBeCloseTo(50, 9);
  });
});

describe('hatching', () => {
  const total = (pieces: readonly (readonly [readonly number[], readonly number[]])[]) =>
    pieces.reduce((sum, [a, b]) => sum + Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!), 0);

  it('lies inside the area and outside its holes, and is as long as area by spacing', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }));
    const box = fc.tuple(corner, fc.integer({ min: 10, max: 40 }), fc.integer({ min: 10, max: 40 }));
    fc.assert(
      fc.property(box, box, fc.constantFrom(1, -1 as const), ([[x, y], w, h], [[u, v], p, q], direction) => {
        const ring = (a: number, b: number, c: number, d: number): [number, number][] => [
          [a, b],
          [a + c, b],
          [a + c, b + d],
          [a, b + d],
        ];
        const rings = [ring(x, y, w, h), ring(u, v, p, q)];
        const pieces = hatchArea(rings, 0.5, direction);
        // The even-odd rule keeps what lies in one of them only: an independent library's symmetric difference.
        const kept = pc.xor([rings[0]!], [rings[1]!]);
        const area = kept.reduce((sum, polygon) => sum + polygon.reduce((part, each) => part + areaOf(each), 0), 0);
        expect(total(pieces) * 0.5).toBeGreaterThan(area * 0.9 - 40);
        expect(total(pieces) * 0.5).toBeLessThan(area * 1.1 + 40);
        for (const [a, b] of pieces) {
          const [mx, my] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
          const isIn = ([left, below]: readonly number[], width: number, height: number) =>
            mx > left! - 1e-9 && mx < left! + width + 1e-9 && my > below! - 1e-9 && my < below! + height + 1e-9;
          expect(isIn([x, y], w, h) || isIn([u, v], p, q)).toBe(true);
          expect(b[0]).toBeGreaterThan(a[0]);
          expect((b[1] - a[1]) / (b[0] - a[0])).toBeCloseTo(direction, 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('leaves a hole open', () => {
    const square = (at: number, side: number): [number, number][] => [
      [at, at],
      [at + side, at],
      [at + side, at + side],
      [at, at + side],
    ];
    const pieces = hatchArea([square(0, 40), square(10, 20)], 1);
    for (const [a, b] of pieces) {
      const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      expect(middle.every((value) => value > 10 && value < 30)).toBe(false);
    }
    expect(total(pieces)).toBeGreaterThan(1100);
    expect(total(pieces)).toBeLessThan(1300);
  });

  it('lies on the same lines in neighbouring areas', () => {
    const pieces = hatchArea(
      [
        [
          [3, 3],
          [9, 3],
          [9, 9],
          [3, 9],
        ],
      ],
      1.6,
    );
    for (const [a] of pieces) expect(((a[1] - a[0]) / (1.6 * Math.SQRT2)) % 1).toBeCloseTo(0, 9);
  });

  it('keeps a line that runs through corners', () => {
    // The line through the origin joins two corners of this square: 40 × √2 long.
    const corners: [number, number][] = [
      [0, 0],
      [40, 0],
      [40, 40],
      [0, 40],
    ];
    const through = hatchArea([corners], 3).filter(([a]) => a[0] === a[1]);
    expect(total(through)).toBeCloseTo(40 * Math.SQRT2, 9);
    // The same below the origin, falling.
    const below: [number, number][] = corners.map(([x, y]) => [x, y - 40]);
    expect(
      total(hatchArea([below], 3, -1).filter(([a, b]) => Math.abs(a[0] + a[1]) < 1e-9 && a[0] !== b[0])),
    ).toBeCloseTo(40 * Math.SQRT2, 9);
  });

  it('is nothing for no rings', () => {
    expect(hatchArea([], 1)).toEqual([]);
  });
});

/** Signed area of a ring that repeats its first point: holes run the other way round. */
function areaOf(ring: readonly (readonly number[])[]): number {
  return ring.slice(1).reduce((sum, [x, y], k) => sum + (ring[k]![0]! * y! - x! * ring[k]![1]!) / 2, 0);
}

describe('numbers in files', () => {
  it('have no exponent, no zeros at the end and no sign at zero', () => {
    expect([1e-9, -1e-9, 1.5, 100, 2.0004, -3.45678, 1e6].map((value) => writeCoordinate(value, 3))).toEqual([
      '0',
      '0',
      '1.5',
      '100',
      '2',
      '-3.457',
      '1000000',
    ]);
    expect(writeCoordinate(1200, 0)).toBe('1200');
    for (const value of [Number.NaN, Infinity]) expect(() => writeCoordinate(value, 3)).toThrow(RangeError);
  });

  it('make circles of sides that leave them by 0.01 mm at most', () => {
    for (const radius of [0.5, 2, 15, 400]) {
      const ring = circleRing([0, 0], radius);
      // The middle of a side is nearest to the centre.
      const [a, b] = [ring[0]!, ring[1]!];
      expect(radius - Math.hypot((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)).toBeLessThan(0.0101);
    }
  });
});
