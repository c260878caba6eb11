import fc from 'fast-check';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { fitPoints } from '../../../src/engine/survey/fit-points.ts';
import { type Pose, rotationOf } from '../../../src/engine/survey/pose.ts';
import { type Control, registerControls } from '../../../src/engine/survey/register.ts';
import { SurveyError } from '../../../src/engine/survey/survey-error.ts';
import type { Vector } from '../../../src/engine/survey/vector.ts';
import { CORNERS, flat, flatPose, makeNormal, seenFrom, spacePose } from './poses.ts';

const point = (design: Vector, measured: Vector, deviation = 1): Control => ({
  kind: 'point',
  design,
  measured,
  deviation,
});

/** Kabsch by a library's singular value decomposition: R and t for equal weights, determinant +1. */
function kabsch(design: readonly Vector[], measured: readonly Vector[]): { rotation: number[][]; shift: number[] } {
  const [to, from] = [design, measured].map((points) => new Matrix(points.map((at) => [...at])));
  const [meanTo, meanFrom] = [to!.mean('column'), from!.mean('column')];
  const h = from!.clone().subRowVector(meanFrom).transpose().mmul(to!.clone().subRowVector(meanTo));
  const svd = new SingularValueDecomposition(h);
  const [u, v] = [svd.leftSingularVectors, svd.rightSingularVectors];
  const size = meanTo.length;
  const sign = Math.sign(determinantOf(v.mmul(u.transpose()).to2DArray()));
  const d = Matrix.eye(size);
  d.set(size - 1, size - 1, sign);
  const r = v.mmul(d).mmul(u.transpose());
  const moved = r.mmul(Matrix.columnVector(meanFrom)).to1DArray();
  return { rotation: r.to2DArray(), shift: meanTo.map((value, k) => value - moved[k]!) };
}

function determinantOf(m: readonly (readonly number[])[]): number {
  if (m.length === 2) return m[0]![0]! * m[1]![1]! - m[0]![1]! * m[1]![0]!;
  return [0, 1, 2].reduce((sum, k) => {
    const [i, j] = [(k + 1) % 3, (k + 2) % 3];
    return sum + m[0]![k]! * (m[1]![i]! * m[2]![j]! - m[1]![j]! * m[2]![i]!);
  }, 0);
}

function refusal(controls: readonly Control[]): string {
  try {
    registerControls(controls);
  } catch (error) {
    if (error instanceof SurveyError) return error.message;
    throw error;
  }
  throw new Error('expected a SurveyError');
}

describe('registration by points', () => {
  // By hand: turned by a quarter: (0,0)→(10,20), (0,100)→(-90,20) ; a third 6 mm off along the panel's y.
  it('brings a quarter turn back, and shares out what two points disagree by', () => {
    const found = registerControls([point([0, 0], [10, 20]), point([0, 106], [-90, 20])]);
    expect(found.place([-40, 20], 0).at).toEqual([expect.closeTo(0, 9), expect.closeTo(53, 9)]);
    expect(found.residuals.map(([, y]) => y)).toEqual([expect.closeTo(-3, 9), expect.closeTo(3, 9)]);
    expect(found.rms).toBeCloseTo(3, 9);
    expect(found.redundancy).toBe(1);
  });

  it.each([
    ['2D', CORNERS.slice(0, 4).map(flat), flatPose],
    ['3D', CORNERS, spacePose],
    ['3D, one plane', CORNERS.slice(0, 4), spacePose],
  ] as const)('brings any movement back: %s', (_, corners, poses) => {
    fc.assert(
      fc.property(poses, (pose: Pose) => {
        const found = registerControls(corners.map((at) => point(at, seenFrom(pose, at))));
        expect(found.rms).toBeLessThan(1e-6);
        expect(determinantOf(found.pose.rotation)).toBeCloseTo(1, 9);
        const inside = corners[0]!.map((value, k) => 0.3 * value + 0.7 * corners[2]![k]!);
        found.place(seenFrom(pose, inside), 1).at.forEach((value, k) => {
          expect(Math.abs(value - inside[k]!)).toBeLessThan(1e-6);
        });
      }),
      { seed: 1, numRuns: 60 },
    );
  });

  it.each([
    ['2D', CORNERS.slice(0, 4).map(flat), flatPose],
    ['3D', CORNERS, spacePose],
    ['3D, one plane', CORNERS.slice(0, 4), spacePose],
  ] as const)('agrees with a singular value decomposition of a library: %s', (_, corners, poses) => {
    fc.assert(
      fc.property(poses, fc.integer({ min: 1, max: 1e6 }), (pose: Pose, seed) => {
        const chance = makeNormal(seed);
        const measured = corners.map((at) => seenFrom(pose, at).map((value) => value + 8 * chance()));
        const found = registerControls(corners.map((at, i) => point(at, measured[i]!)));
        const other = kabsch(corners, measured);
        expect(found.pose.rotation.flat()).toEqual(other.rotation.flat().map((value) => expect.closeTo(value, 9)));
        expect(determinantOf(found.pose.rotation)).toBeCloseTo(1, 9);
      }),
      { seed: 2, numRuns: 40 },
    );
  });

  it('lets weights decide: what counts for nothing moves nothing', () => {
    const square = CORNERS.slice(0, 4).map(flat);
    const exact = square.slice(0, 3).map((at) => point(at, at, 0.1));
    const slipped = point(square[3]!, [0, 2030], 1000);
    const found = registerControls([...exact, slipped]);
    expect(found.place([1500, 600], 0).at[1]).toBeCloseTo(600, 4);
    expect(found.residuals[3]![1]).toBeCloseTo(-30, 3);
  });

  // By hand: two points 1 ± σ each apart by L: shift σ/√2 along and across at the middle, turn σ√2/L.
  it('says how sure a place is', () => {
    const found = registerControls([point([0, 0], [0, 0], 2), point([1000, 0], [1000, 0], 2)]);
    const middle = found.place([500, 0], 1).covariance;
    expect(middle[0]![0]).toBeCloseTo(2 + 1, 9);
    expect(middle[1]![1]).toBeCloseTo(2 + 1, 9);
    // At 1500 the turn adds (σ √2/1000 · 1000)² = 8 across.
    expect(found.place([1500, 0], 1).covariance[1]![1]).toBeCloseTo(2 + 8 + 1, 6);
    expect(found.place([1500, 0], 0).covariance[0]![0]).toBeCloseTo(2, 6);
  });

  it('is as sure as it says', () => {
    const chance = makeNormal(7);
    const pose: Pose = { rotation: rotationOf([0.2, -0.4, 1]), shift: [500, -900, 40] };
    const place = [900, 1700, -90];
    const offs = Array.from({ length: 400 }, () => {
      const measured = (at: Vector, sigma: number) => seenFrom(pose, at).map((value) => value + sigma * chance());
      const found = registerControls(CORNERS.map((at, i) => point(at, measured(at, i < 2 ? 1 : 4), i < 2 ? 1 : 4)));
      const { at, covariance } = found.place(measured(place, 2), 2);
      return at.map((value, k) => (value - place[k]!) / Math.sqrt(covariance[k]![k]!));
    });
    for (const axis of [0, 1, 2]) {
      const variance = offs.reduce((sum, off) => sum + off[axis]! ** 2, 0) / offs.length;
      // 400 draws: standard deviation of the variance √(2/400) = 0.07; the seed is fixed.
      expect(variance).toBeGreaterThan(0.75);
      expect(variance).toBeLessThan(1.3);
    }
  });

  it('never mirrors: the mirror image of a set in space is fitted by a rotation, badly', () => {
    const mirrored = CORNERS.map(([x, y, z]) => [0 - x!, y!, z!]);
    const found = registerControls(CORNERS.map((at, i) => point(at, mirrored[i]!)));
    expect(determinantOf(found.pose.rotation)).toBeCloseTo(1, 9);
    expect(found.rms).toBeGreaterThan(20);
    const square = [
      [0, 0],
      [2000, 0],
      [2000, 2000],
      [0, 2000],
    ];
    // Mirrored in the diagonal: any turn leaves the same sum.
    expect(refusal(square.map(([x, y]) => point([x!, y!], [y!, x!])))).toMatch(/^several turns .*east and north/);
  });

  it.each([
    ['one point in 2D', [point([0, 0], [0, 0])], /^1 control point, expected at least two/],
    [
      'two points in 3D',
      [point([0, 0, 0], [0, 0, 0]), point([9, 0, 0], [9, 0, 0])],
      /^2 control points, expected .*three/,
    ],
    ['one place twice', [point([5, 5], [0, 0]), point([5, 5], [10, 0])], /in one place as designed/],
    ['measured in one place', [point([0, 0], [3, 3]), point([5, 5], [3, 3])], /in one place as measured/],
    [
      'three in one line',
      [0, 1, 2].map((k) => point([k * 1000, 50, 0], [k * 1000, 51 + (k % 2), 3])),
      /in one line as designed, expected three that do not/,
    ],
  ])('refuses %s', (_, controls, words) => {
    expect(refusal(controls)).toMatch(words);
  });
});

describe('registration by edges', () => {
  const edge = (through: Vector, across: Vector, measured: Vector, deviation = 5): Control => ({
    kind: 'edge',
    through,
    across,
    measured,
    deviation,
  });

  it('takes only the distance across an edge', () => {
    fc.assert(
      fc.property(flatPose, fc.integer({ min: -400, max: 400 }), (pose, slide) => {
        const along = (x: number, y: number) => seenFrom(pose, [x, y]);
        const controls = [
          point([0, 0], seenFrom(pose, [0, 0]), 5),
          point([3000, 2000], seenFrom(pose, [3000, 2000]), 5),
          // The measured points lie anywhere along the edges.
          edge([0, 0], [0, 1], along(700 + slide, 0)),
          edge([0, 0], [0, 1], along(2100 + slide, 0)),
          edge([0, 0], [1, 0], along(0, 900 + slide)),
        ];
        expect(registerControls(controls).rms).toBeLessThan(1e-6);
        expect(registerControls(controls).redundancy).toBe(4);
      }),
      { seed: 3, numRuns: 40 },
    );
  });

  it('is fixed by three points on two edges alone, from a start', () => {
    const pose: Pose = { rotation: rotationOf([0.7]), shift: [100, 50] };
    const start: Pose = { rotation: rotationOf([0.72]), shift: [130, 20] };
    const controls = [
      edge([0, 0], [0, 1], seenFrom(pose, [300, 0])),
      edge([0, 0], [0, 1], seenFrom(pose, [2700, 0])),
      edge([0, 0], [1, 0], seenFrom(pose, [0, 1200])),
    ];
    const found = registerControls(controls, start);
    expect(found.place(seenFrom(pose, [1500, 600]), 0).at).toEqual([expect.closeTo(1500, 6), expect.closeTo(600, 6)]);
    expect(found.redundancy).toBe(0);
    expect(() => registerControls(controls.slice(0, 2), start)).toThrow(/leave the panel free to move or turn/);
  });

  it('is fixed by a face and two edges in space', () => {
    const pose: Pose = { rotation: rotationOf([0.5, 1, -0.3]), shift: [10, 20, 30] };
    const start: Pose = { rotation: rotationOf([0.51, 0.99, -0.3]), shift: [0, 0, 0] };
    const controls = [
      ...[
        [200, 200],
        [2800, 300],
        [1500, 1900],
      ].map(([x, y]) => edge([0, 0, 0], [0, 0, 1], seenFrom(pose, [x!, y!, 0]))),
      ...[400, 2500].map((x) => edge([0, 0, 0], [0, 1, 0], seenFrom(pose, [x, 0, -60]))),
      edge([0, 0, 0], [1, 0, 0], seenFrom(pose, [0, 700, -50])),
    ];
    const found = registerControls(controls, start);
    found.place(seenFrom(pose, [900, 800, -180]), 0).at.forEach((value, k) => {
      expect(value).toBeCloseTo([900, 800, -180][k]!, 5);
    });
  });
});

describe('the closed form', () => {
  // Points of Umeyama 1991: see test/published/registration.ts for the values printed there.
  it('turns as the paper does', () => {
    const pairs = [
      { measured: [0, 0], design: [0, 0], weight: 1 },
      { measured: [1, 0], design: [-1, 0], weight: 1 },
      { measured: [0, 2], design: [0, 2], weight: 1 },
    ];
    expect(fitPoints(pairs).rotation[0]).toEqual([expect.closeTo(0.832, 3), expect.closeTo(0.555, 3)]);
  });
});
