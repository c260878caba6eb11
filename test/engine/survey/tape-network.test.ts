import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findTapedPosition } from '../../../src/engine/form/tape-position.ts';
import type { TapedDistance } from '../../../src/engine/form/taped-distance.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { adjustNetwork, type NetworkDistance } from '../../../src/engine/survey/tape-network.ts';
import { makeNormal } from './poses.ts';

const RAIL: TapedDistance['to'] = { kind: 'edge', from: [0, 0], end: [3000, 0] };
const START: TapedDistance['to'] = { kind: 'edge', from: [0, 0], end: [0, 2000] };

const toEdge = (of: number, to: TapedDistance['to'], distance: number, deviation = 1): NetworkDistance => ({
  of,
  to,
  distance,
  deviation,
});
const between = (of: number, other: number, distance: number, deviation = 1): NetworkDistance => ({
  of,
  to: { kind: 'insert', other },
  distance,
  deviation,
});
const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const allPairs = (places: readonly Point[], deviation = 1) =>
  places.flatMap((a, i) => places.slice(i + 1).map((b, k) => between(i, i + 1 + k, apart(a, b), deviation)));

const FOUR: readonly Point[] = [
  [500, 400],
  [650, 400],
  [650, 600],
  [500, 600],
];
const moved = (by: readonly Point[]) => FOUR.map(([x, y], i): Point => [x + by[i]![0], y + by[i]![1]]);
const off = fc.tuple(fc.integer({ min: -25, max: 25 }), fc.integer({ min: -25, max: 25 }));
const fourOffs = fc.tuple(off, off, off, off);

describe('a set of inserts by taped distances', () => {
  // By hand: 150 between two that lie 152 apart by the edges, σ 1 each: the middle takes 2/3 of the 2 mm, each end a third of it.
  it('shares out what edges and a distance disagree by', () => {
    const found = adjustNetwork(
      [toEdge(0, START, 500), toEdge(0, RAIL, 400), toEdge(1, START, 652), toEdge(1, RAIL, 400), between(0, 1, 149)],
      FOUR.slice(0, 2),
    );
    expect(found.places[0]!.at[0]).toBeCloseTo(501, 6);
    expect(found.places[1]!.at[0]).toBeCloseTo(651, 6);
    expect(found.residuals[4]).toBeCloseTo(-1, 6);
    // Two unknowns along x, three observations: (AᵀA)⁻¹ = [[2, 1], [1, 2]]/3.
    expect(found.places[0]!.sigmaX).toBeCloseTo(Math.sqrt(2 / 3), 6);
    expect(found).toMatchObject({ redundancy: 1, freeMoves: 0, isMirrorOpen: false });
  });

  it('gives each insert what it has alone where nothing joins them', () => {
    const measured: TapedDistance[] = [
      { to: START, distance: 503, deviation: 1 },
      { to: RAIL, distance: 398, deviation: 2 },
      { to: { kind: 'point', at: [0, 0] }, distance: 640, deviation: 1.5 },
    ];
    const alone = findTapedPosition(measured, [500, 400]);
    const set = adjustNetwork(
      [...measured.map((one) => ({ ...one, of: 0 })), toEdge(1, START, 650), toEdge(1, RAIL, 400)],
      FOUR.slice(0, 2),
    );
    expect(set.places[0]!.at[0]).toBeCloseTo(alone.at[0], 6);
    expect(set.places[0]!.at[1]).toBeCloseTo(alone.at[1], 6);
    expect(set.places[0]!.sigmaX).toBeCloseTo(alone.sigmaX, 6);
    expect(set.places[0]!.covariance).toBeCloseTo(alone.covariance, 6);
  });

  it('brings any set back: all pairs, one edge and one length along it', () => {
    fc.assert(
      fc.property(fourOffs, (offs) => {
        const places = moved(offs);
        const found = adjustNetwork(
          [
            ...allPairs(places),
            toEdge(0, RAIL, places[0]![1]),
            toEdge(1, RAIL, places[1]![1]),
            toEdge(0, START, places[0]![0]),
          ],
          FOUR,
        );
        const misses = found.places.map(({ at }, i) => apart(at, places[i]!));
        expect(Math.max(...misses)).toBeLessThan(1e-4);
        expect(found.freeMoves).toBe(0);
      }),
      { seed: 6, numRuns: 40 },
    );
  });

  it('gives the shape alone where distances run between inserts only, and says that it may be mirrored', () => {
    fc.assert(
      fc.property(fourOffs, (offs) => {
        const places = moved(offs);
        const found = adjustNetwork(allPairs(places), FOUR);
        expect(found).toMatchObject({ freeMoves: 3, isMirrorOpen: true, redundancy: 1 });
        expect(allPairs(found.places.map(({ at }) => at)).map(({ distance }) => distance)).toEqual(
          allPairs(places).map(({ distance }) => expect.closeTo(distance, 4)),
        );
        // Laid where it is nearest to the guesses: the middle does not move.
        const middle = (points: readonly Point[], axis: 0 | 1) => points.reduce((sum, at) => sum + at[axis], 0) / 4;
        expect(
          middle(
            found.places.map(({ at }) => at),
            0,
          ),
        ).toBeCloseTo(middle(FOUR, 0), 2);
      }),
      { seed: 7, numRuns: 40 },
    );
  });

  it('slides along one edge, and may be mirrored along it', () => {
    const found = adjustNetwork([...allPairs(FOUR), toEdge(0, RAIL, 403), toEdge(2, RAIL, 603)], FOUR);
    expect(found).toMatchObject({ freeMoves: 1, isMirrorOpen: true });
    expect(found.places[0]!.at[1]).toBeCloseTo(403, 4);
    expect(found.places[0]!.at[0]).toBeCloseTo(500, 2);
  });

  it('is as sure as it says', () => {
    const chance = makeNormal(21);
    const measure = () => [
      ...allPairs(FOUR, 1).map((one) => ({ ...one, distance: one.distance + chance() })),
      ...[0, 1].flatMap((i) => [
        toEdge(i, RAIL, FOUR[i]![1] + 2 * chance(), 2),
        toEdge(i, START, FOUR[i]![0] + 2 * chance(), 2),
      ]),
    ];
    const offs = Array.from({ length: 300 }, () => {
      const { at, sigmaX, sigmaY } = adjustNetwork(measure(), FOUR).places[2]!;
      return [(at[0] - 650) / sigmaX, (at[1] - 600) / sigmaY];
    });
    for (const axis of [0, 1]) {
      const variance = offs.reduce((sum, one) => sum + one[axis]! ** 2, 0) / offs.length;
      expect(variance).toBeGreaterThan(0.7);
      expect(variance).toBeLessThan(1.4);
    }
  });

  it('names a distance that was misread, and does not guess where it cannot tell', () => {
    const edges = FOUR.flatMap(([x, y], i) => [toEdge(i, START, x), toEdge(i, RAIL, y)]);
    const slipped = allPairs(FOUR).map((one, i) => (i === 2 ? { ...one, distance: one.distance + 30 } : one));
    expect(adjustNetwork([...edges, ...slipped], FOUR).blunder).toEqual({ kind: 'at', index: 10 });
    const short = [
      toEdge(0, START, 500),
      toEdge(0, RAIL, 400),
      toEdge(1, START, 650),
      toEdge(1, RAIL, 400),
      between(0, 1, 180),
    ];
    expect(adjustNetwork(short, FOUR.slice(0, 2)).blunder).toEqual({ kind: 'one of', indices: [0, 2, 4] });
  });

  it.each([
    ['no distance', [], /have fewer than two distances/],
    [
      'an insert that hangs on one distance',
      [...allPairs(FOUR.slice(0, 3)), between(3, 0, 200)],
      /insert 3 .* has fewer than two/,
    ],
    [
      'a set that folds',
      [between(0, 1, 150), between(1, 2, 200), between(2, 3, 150), between(3, 0, 200)],
      /free to move against each other/,
    ],
    ['a distance to itself', [between(1, 1, 150)], /to itself/],
  ])('refuses %s', (_, measured, words) => {
    expect(() => adjustNetwork(measured, FOUR)).toThrow(words);
  });

  it('refuses a set that is too large, and guesses in one place', () => {
    const many = Array.from({ length: 21 }, (_, i): Point => [i * 100, 500]);
    expect(() => adjustNetwork([between(0, 1, 100)], many)).toThrow(/21 inserts, expected 1 to 20/);
    expect(() =>
      adjustNetwork(
        [between(0, 1, 100)],
        [
          [5, 5],
          [5, 5],
        ],
      ),
    ).toThrow(/one place/);
  });
});
