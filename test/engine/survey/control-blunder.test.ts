import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkControls, chiSquareLimit } from '../../../src/engine/survey/control-blunder.ts';
import { type Control, registerControls } from '../../../src/engine/survey/register.ts';
import type { Vector } from '../../../src/engine/survey/vector.ts';
import { CORNERS, flat, flatPose, makeNormal, seenFrom, spacePose } from './poses.ts';

const check = (controls: readonly Control[]) => checkControls(controls, registerControls(controls));
const point = (design: Vector, measured: Vector, deviation = 1): Control => ({
  kind: 'point',
  design,
  measured,
  deviation,
});
const shifted = (at: Vector, axis: number, by: number): Vector =>
  at.map((value, k) => (k === axis ? value + by : value));

describe('a blunder in a control point', () => {
  // From tables: 0.1 % of chi-square with 5 and 10 degrees of freedom is 20.515 and 29.588 (recalled).
  it('is judged by chi-square', () => {
    expect(chiSquareLimit(2)).toBeCloseTo(-2 * Math.log(0.001), 3);
    for (const [freedom, table] of [
      [5, 20.515],
      [10, 29.588],
    ] as const)
      expect(Math.abs(chiSquareLimit(freedom) / table - 1)).toBeLessThan(0.015);
  });

  it.each([
    ['2D', CORNERS.slice(0, 4).map(flat), flatPose],
    ['3D', CORNERS, spacePose],
  ] as const)('is named, wherever it is: %s', (_, corners, poses) => {
    fc.assert(
      fc.property(
        poses,
        fc.nat(corners.length - 1),
        fc.nat(1),
        fc.constantFrom(-40, -25, 25, 40, 500),
        fc.integer({ min: 1, max: 1e6 }),
        (pose, which, axis, slip, seed) => {
          const chance = makeNormal(seed);
          const controls = corners.map((at, i) => {
            const noisy = at.map((value) => value + 0.7 * chance());
            return point(at, seenFrom(pose, i === which ? shifted(noisy, axis, slip) : noisy));
          });
          const { blunder, leftOut } = check(controls);
          expect(blunder).toEqual({ kind: 'at', index: which });
          expect(Math.abs(leftOut[which]!.misses! - Math.abs(slip))).toBeLessThan(8);
        },
      ),
      { seed: 4, numRuns: 40 },
    );
  });

  it('is not seen where there is none', () => {
    const chance = makeNormal(11);
    const named = Array.from({ length: 200 }, () => {
      const controls = CORNERS.map((at) =>
        point(
          at,
          at.map((value) => value + 2 * chance()),
          2,
        ),
      );
      return check(controls).blunder.kind;
    }).filter((kind) => kind !== 'none');
    // Six points at a level of 0.001 each: about one in 200; the seed is fixed.
    expect(named.length).toBeLessThanOrEqual(6);
  });

  it('is one of several where nothing tells which', () => {
    // Two points: the distance between them is wrong, and nobody can say at which end.
    const two = [point([0, 0], [0, 0]), point([1000, 0], [1030, 0])];
    expect(check(two).blunder).toEqual({ kind: 'one of', indices: [0, 1] });
    expect(check(two).leftOut[0]).toEqual({ fall: null, misses: null });
    // Three in a row, the middle one aside: leaving out any of them leaves two that agree.
    const row = [point([0, 0], [0, 0]), point([1000, 0], [1000, 30]), point([2000, 0], [2000, 0])];
    expect(check(row).blunder).toEqual({ kind: 'one of', indices: [0, 1, 2] });
  });

  it('is found in an edge too', () => {
    const edge = (measured: Vector): Control => ({
      kind: 'edge',
      through: [0, 0],
      across: [0, 1],
      measured,
      deviation: 3,
    });
    const corners = CORNERS.slice(0, 4).map((at) => point(flat(at), flat(at)));
    const { blunder, leftOut } = check([...corners, edge([700, 1]), edge([1900, 25])]);
    expect(blunder).toEqual({ kind: 'at', index: 5 });
    expect(leftOut[5]!.misses).toBeCloseTo(25, 0);
  });

  it('weighs what is known badly less: 12 mm at a panel edge is no blunder, at a drilled mark it is', () => {
    const slipped = (sigma: number) =>
      CORNERS.slice(0, 4).map((at, i) => point(flat(at), i === 2 ? shifted(flat(at), 0, 12) : flat(at), sigma));
    expect(check(slipped(5)).blunder.kind).toBe('none');
    expect(check(slipped(1)).blunder).toEqual({ kind: 'at', index: 2 });
  });
});
