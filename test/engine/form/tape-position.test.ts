import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FormError } from '../../../src/engine/form/form-error.ts';
import { tapeDeviation } from '../../../src/engine/form/tape-error.ts';
import { findTapedPosition } from '../../../src/engine/form/tape-position.ts';
import type { TapedDistance } from '../../../src/engine/form/taped-distance.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';

const toEdge = (from: Point, end: Point, distance: number, deviation = 1): TapedDistance => ({
  to: { kind: 'edge', from, end },
  distance,
  deviation,
});
const toPoint = (at: Point, distance: number, deviation = 1): TapedDistance => ({
  to: { kind: 'point', at },
  distance,
  deviation,
});

const START: readonly [Point, Point] = [
  [0, 0],
  [0, 2000],
];
const RAIL: readonly [Point, Point] = [
  [0, 0],
  [3000, 0],
];
const CORNERS: readonly Point[] = [
  [0, 0],
  [3000, 0],
  [3000, 2000],
  [0, 2000],
];

const apart = ([x, y]: Point, [u, v]: Point) => Math.hypot(x - u, y - v);

const inPanel: fc.Arbitrary<Point> = fc.tuple(fc.integer({ min: 200, max: 2800 }), fc.integer({ min: 200, max: 1800 }));
const nearby: fc.Arbitrary<Point> = fc.tuple(fc.integer({ min: -150, max: 150 }), fc.integer({ min: -150, max: 150 }));
const add = ([x, y]: Point, [u, v]: Point): Point => [x + u, y + v];
const sigma = fc.integer({ min: 5, max: 40 }).map((n) => n / 10);

/** Exact distances of a place to the four corners and two edges of a panel. */
const measureAll = (at: Point, sigmas: readonly number[]): TapedDistance[] => [
  ...CORNERS.map((corner, i) => toPoint(corner, apart(at, corner), sigmas[i]!)),
  toEdge(...START, at[0], sigmas[4]!),
  toEdge(...RAIL, at[1], sigmas[5]!),
];
const sixSigmas = fc.array(sigma, { minLength: 6, maxLength: 6 });

function refusal(measured: readonly TapedDistance[], guess: Point): FormError {
  try {
    findTapedPosition(measured, guess);
  } catch (error) {
    if (error instanceof FormError) return error;
    throw error;
  }
  throw new Error('expected a FormError');
}

describe('a taped position by hand', () => {
  it('is x and y from two edges', () => {
    const found = findTapedPosition([toEdge(...START, 300), toEdge(...RAIL, 400, 2)], [280, 410]);
    expect(found.at[0]).toBeCloseTo(300, 9);
    expect(found.at[1]).toBeCloseTo(400, 9);
    expect(found.sigmaX).toBeCloseTo(1, 12);
    expect(found.sigmaY).toBeCloseTo(2, 12);
    expect(found.redundancy).toBe(0);
    expect(found.normalised).toEqual([null, null]);
    expect(found.blunder).toEqual({ kind: 'none' });
  });

  // By hand: 300 ± 1 from one end and 1000 − 702 = 298 ± 2 from the other: weighted mean 299.6, variance 0.8, residuals 0.4 and 1.6.
  it('is the weighted mean of two distances between parallel edges', () => {
    const found = findTapedPosition(
      [toEdge(...START, 300), toEdge([1000, 0], [1000, 2000], 702, 2), toEdge(...RAIL, 400)],
      [310, 390],
    );
    expect(found.at[0]).toBeCloseTo(299.6, 9);
    expect(found.sigmaX).toBeCloseTo(Math.sqrt(0.8), 12);
    // Measured less adjusted: 300 − 299.6 and 702 − 700.4.
    expect(found.residuals[0]).toBeCloseTo(0.4, 9);
    expect(found.residuals[1]).toBeCloseTo(1.6, 9);
  });

  // By hand: directions (1, 0), (0, 1) and (0.6, 0.8): N = [1.36 0.48; 0.48 1.64], its determinant 2, Q = [0.82 −0.24; −0.24 0.68].
  // The third distance 503 in place of 500 moves the place by Q (1.8, 2.4) = (0.9, 1.2), straight away from the point, so that the
  // residuals −0.9, −1.2 and 1.5 hold without a linear approximation; w = 0.9/√0.18 = 1.2/√0.32 = 1.5/√0.5 = 2.1213.
  it('shares a misfit between two edges and a point', () => {
    const measured = [toEdge(...START, 300), toEdge(...RAIL, 400), toPoint([0, 0], 503)];
    const found = findTapedPosition(measured, [250, 450]);
    expect(found.at[0]).toBeCloseTo(300.9, 8);
    expect(found.at[1]).toBeCloseTo(401.2, 8);
    expect(found.sigmaX).toBeCloseTo(Math.sqrt(0.82), 8);
    expect(found.sigmaY).toBeCloseTo(Math.sqrt(0.68), 8);
    expect(found.covariance).toBeCloseTo(-0.24, 8);
    [-0.9, -1.2, 1.5].forEach((residual, i) => {
      expect(found.residuals[i]).toBeCloseTo(residual, 8);
    });
    [-2.12132, -2.12132, 2.12132].forEach((w, i) => {
      expect(found.normalised[i]).toBeCloseTo(w, 5);
    });
    expect(found.blunder).toEqual({ kind: 'none' });
  });

  it('does not say which of three distances is wrong, only that one is', () => {
    const found = findTapedPosition([toEdge(...START, 300), toEdge(...RAIL, 400), toPoint([0, 0], 506)], [250, 450]);
    expect(found.blunder).toEqual({ kind: 'one of', indices: [0, 1, 2] });
  });

  // By hand, with edges only: x from three edges 300, 300 and 300 + d with σ 1: w of the odd one is (2/3 d)/√(2/3) = 0.8165 d.
  // The limit 3.29 (standard normal, two-sided, level 0.001; any table) is passed at d = 4.0294.
  it('suspects a distance just beyond the limit, and none just below', () => {
    const three = (d: number) =>
      findTapedPosition(
        [toEdge(...START, 300), toEdge(...START, 300), toEdge(...START, 300 + d), toEdge(...RAIL, 400)],
        [310, 390],
      );
    expect(three(4.02).blunder).toEqual({ kind: 'none' });
    expect(three(4.04).blunder).toEqual({ kind: 'at', index: 2 });
    expect(three(-4.04).blunder).toEqual({ kind: 'at', index: 2 });
    expect(three(4.04).normalised[3]).toBeNull();
  });

  // By hand: circles of 500 about (0, 0) and (800, 0) meet at (400, ±300).
  it('lets the guess choose between the two places where circles meet', () => {
    const measured = [toPoint([0, 0], 500), toPoint([800, 0], 500)];
    expect(findTapedPosition(measured, [100, 20]).at[1]).toBeCloseTo(300, 6);
    expect(findTapedPosition(measured, [700, -20]).at[1]).toBeCloseTo(-300, 6);
    // Directions (0.8, 0.6) and (−0.8, 0.6): variances 1/(2 · 0.64) and 1/(2 · 0.36).
    expect(findTapedPosition(measured, [100, 20]).sigmaX).toBeCloseTo(Math.sqrt(1 / 1.28), 8);
    expect(findTapedPosition(measured, [100, 20]).sigmaY).toBeCloseTo(Math.sqrt(1 / 0.72), 8);
  });

  it('lets the guess choose the side of an edge, whichever way the edge is given', () => {
    const [a, b] = RAIL;
    for (const edge of [RAIL, [b, a]] as const) {
      expect(findTapedPosition([toEdge(...START, 300), toEdge(...edge, 400)], [10, 10]).at[1]).toBeCloseTo(400, 9);
      expect(findTapedPosition([toEdge(...START, 300), toEdge(...edge, 400)], [10, -10]).at[1]).toBeCloseTo(-400, 9);
    }
  });
});

describe('a taped position whose distances disagree much', () => {
  // A planted case with residuals up to 264 mm; its minimum by a separate program (Newton with the whole Hessian in double precision, numpy).
  const far = [
    toPoint([-2678.2893349854944, -548.721736673977], 5646, tapeDeviation('I', 5646)),
    toPoint([-2249.1645577627332, 292.5297575156511], 5086.97688004353, tapeDeviation('I', 5086.97688004353)),
    toPoint([-1655.0425901208469, 1645.807756504415], 4539, tapeDeviation('I', 4539)),
    toPoint([0, 1631.7072825308082], 2956.332672556203, tapeDeviation('I', 2956.332672556203)),
    toPoint([-2654.025959775487, 835.3526559257197], 5472, 0.5),
  ];

  it('is the minimum itself, however large the sum of squares', () => {
    const { at } = findTapedPosition(far, [2814.393063243484, 739.1501266352877]);
    expect(Math.abs(at[0] - 2814.7075653359834)).toBeLessThan(1e-9);
    expect(Math.abs(at[1] - 760.2114441619095)).toBeLessThan(1e-9);
  });

  // Near a corner, with slips of some 280 mm: Gauss–Newton steps alone swing to and fro without end.
  it('comes to rest where the distances bend much', () => {
    const slips = [0, -296, 0, -275, 225, 106];
    const measured = measureAll([1338, 209], [1.9, 0.7, 3.6, 0.5, 3.9, 2.7]).map((one, i) => ({
      ...one,
      distance: Math.max(50, one.distance + slips[i]!),
    }));
    expect(findTapedPosition(measured, [1338, 209]).redundancy).toBe(4);
  });

  // At a minimum of Σ(v/σ)² its slope Σ u v/σ² is nothing; here it is a sum of terms up to 1000, of which rounding leaves about 1e-12.
  it('has no slope left in its sum of squares, and residuals that are those of its place', () => {
    const slip = fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(inPanel, sixSigmas, slip, (at, sigmas, errors) => {
        const measured = measureAll(at, sigmas).map((one, i) => ({
          ...one,
          distance: Math.max(50, one.distance + errors[i]!),
        }));
        const found = findTapedPosition(measured, at);
        const [x, y] = found.at;
        const slope = [0, 0];
        measured.forEach(({ distance, deviation }, i) => {
          const [cx, cy] = i < 4 ? CORNERS[i]! : i === 4 ? [0, y] : [x, 0];
          const reckoned = apart([x, y], [cx, cy]);
          const miss = distance - reckoned;
          expect(Math.abs(found.residuals[i]! - miss)).toBeLessThan(1e-11);
          slope[0]! += ((x - cx) / reckoned) * (miss / deviation ** 2);
          slope[1]! += ((y - cy) / reckoned) * (miss / deviation ** 2);
        });
        expect(Math.hypot(slope[0]!, slope[1]!)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('a guess on the wrong side of an edge', () => {
  const END: readonly [Point, Point] = [
    [3000, 0],
    [3000, 2000],
  ];
  // By hand: 15 before the edge x = 3000 and 2985 from x = 0 say x = 2985; (2985, 600) is √(2985² + 600²) = 3044.7044 from the corner, taped 3045.
  const atEnd = [toEdge(...END, 15), toEdge(...RAIL, 600), toPoint([0, 0], 3045), toEdge(...START, 2985)];

  it.each([[3005], [3002], [3050], [2990]])('does not blame a distance for it: guess at x = %d', (x) => {
    const found = findTapedPosition(atEnd, [x, 600]);
    expect(apart(found.at, [2985, 600])).toBeLessThan(0.3);
    expect(found.blunder).toEqual({ kind: 'none' });
    expect(found.notOnSideOfGuess).toEqual(x > 3000 ? [0] : []);
  });

  it('turns all distances to one edge, and two edges at once', () => {
    const twice = [...atEnd, toEdge([3000, 2000], [3000, 900], 15), toEdge([0, 2000], [3000, 2000], 1400)];
    const at: Point = [2985, 600];
    expect(findTapedPosition(twice, [3004, 600]).notOnSideOfGuess).toEqual([0, 4]);
    expect(apart(findTapedPosition(twice, [3004, 600]).at, at)).toBeLessThan(0.3);
    const low = [
      toEdge(...END, 15),
      toEdge(...RAIL, 12),
      toPoint([0, 1500], apart([2985, 12], [0, 1500])),
      toPoint([1000, 2000], apart([2985, 12], [1000, 2000])),
    ];
    const found = findTapedPosition(low, [3006, -5]);
    expect(apart(found.at, [2985, 12])).toBeLessThan(1e-6);
    expect(found.notOnSideOfGuess).toEqual([0, 1]);
  });

  // Redundant or not, nothing speaks against the side of the guess: (3015, ±600) fits as well.
  it('leaves it where places fit equally', () => {
    expect(findTapedPosition(atEnd.slice(0, 2), [3005, 600]).at[0]).toBeCloseTo(3015, 9);
    const alike = [toEdge(...RAIL, 600), toPoint([0, 0], 1000), toPoint([2000, 0], apart([800, 600], [2000, 0]))];
    expect(apart(findTapedPosition(alike, [790, -5]).at, [800, -600])).toBeLessThan(1e-6);
    // A slip of 60 mm in the edge does not make one side better than the other.
    const slipped = [toEdge(...RAIL, 660), ...alike.slice(1), toPoint([3000, 0], apart([800, 600], [3000, 0]))];
    expect(findTapedPosition(slipped, [790, -500]).notOnSideOfGuess).toEqual([]);
  });

  // By hand: x = −1 ± 0.4 on the side of the guess or 1 on the other, against 100 − 96 = 4 ± 1.36: 5²/2.01 = 12.4 or 3²/2.01 = 4.5; the sum
  // falls by 8, less than 3.29² = 10.8. At 100 − 95.2 = 4.8 it is 16.7 less 7.2, still less; −2.8 or 2.8 against 3.2 is 17.9 or 0.1: more.
  it('needs more than chance to leave the side of the guess', () => {
    const across = (taped: number, other: number) =>
      findTapedPosition(
        [toEdge(...START, taped, 0.4), toEdge([100, 0], [100, 2000], other, 1.36), toEdge(...RAIL, 400)],
        [-1, 390],
      ).notOnSideOfGuess;
    expect(across(1, 96)).toEqual([]);
    expect(across(1, 95.2)).toEqual([]);
    expect(across(2.8, 96.8)).toEqual([0]);
  });

  // A slip of about 100 mm among three: 7 m away, across an edge, they contradict each other a fifth less. The insert is not there.
  it('does not leave its side for a place where the distances do not agree either', () => {
    const three = [
      toEdge([48658.57103212316, 17586.019530299895], [46750.18008126213, 15255.229497090968], 2685.1969812634925, 2),
      toEdge([52005.131315006714, 13262.134827041604], [50439.03974044182, 14396.985484904653], 2090.110418389723, 0.7),
      toPoint([47703.01040194677, 15431.439558677002], 3534.1874146234627, 0.7),
    ];
    const found = findTapedPosition(three, [51185.96399162979, 16395.108233298975]);
    expect(found.notOnSideOfGuess).toEqual([]);
    expect(found.blunder.kind).toBe('one of');
    expect(apart(found.at, [51099, 16480])).toBeLessThan(5);
  });

  it('comes to the same place from either side, wherever it is beside an edge', () => {
    const off = fc.integer({ min: 6, max: 60 });
    fc.assert(
      fc.property(off, fc.integer({ min: 200, max: 1800 }), off, sixSigmas, (inside, y, outside, sigmas) => {
        const at: Point = [3000 - inside, y];
        const measured = [...measureAll(at, sigmas), toEdge(...END, inside)];
        const found = findTapedPosition(measured, [3000 + outside, y]);
        expect(apart(found.at, at)).toBeLessThan(1e-6);
        expect(found.notOnSideOfGuess).toEqual([6]);
      }),
    );
  });
});

describe('distances that fix no position', () => {
  it.each([
    ['one distance', [toPoint([0, 0], 500)], [100, 100], 'measured', /one distance fixes no position/],
    [
      'parallel edges',
      [toEdge(...START, 300), toEdge([1000, 0], [1000, 500], 700)],
      [300, 100],
      'measured',
      /all edges run the same way/,
    ],
    [
      'edges less than 0.003° from parallel',
      [toEdge(...RAIL, 300), toEdge([0, 0], [3000, 0.15], 400)],
      [300, 100],
      'measured',
      /all edges run the same way/,
    ],
    [
      'the same point twice',
      [toPoint([0, 0], 500), toPoint([0, 0], 501)],
      [300, 100],
      'measured',
      /all distances run the same way/,
    ],
    [
      'a guess in line with the points',
      [toPoint([0, 0], 500), toPoint([800, 0], 500)],
      [300, 0],
      'guess',
      /in line with the points; expected a guess beside/,
    ],
    [
      'a guess straight above the point, with an edge',
      [toEdge(...RAIL, 300), toPoint([500, 900], 700)],
      [500, 200],
      'guess',
      /expected a guess beside/,
    ],
    [
      'a guess on the point',
      [toPoint([0, 0], 500), toPoint([800, 0], 500)],
      [0, 0],
      'guess',
      /distance 0 \(counted from 0\)/,
    ],
    [
      'a guess on the edge',
      [toEdge(...START, 300), toEdge(...RAIL, 300)],
      [50, 0],
      'guess',
      /distance 1 \(counted from 0\)/,
    ],
    [
      'circles that do not reach each other',
      [toPoint([0, 0], 300), toPoint([800, 0], 300)],
      [300, 100],
      'measured',
      /where they lead/,
    ],
  ] as const)('%s', (_, measured, guess, about, words) => {
    const error = refusal(measured, guess);
    expect(error.about).toBe(about);
    expect(error.message).toMatch(words);
    expect(error.message).toContain('expected');
  });
});

describe('properties of a taped position', () => {
  it('is where exact distances were measured from', () => {
    fc.assert(
      fc.property(inPanel, nearby, sixSigmas, (at, off, sigmas) => {
        const found = findTapedPosition(measureAll(at, sigmas), add(at, off));
        expect(apart(found.at, at)).toBeLessThan(1e-6);
        expect(Math.max(...found.residuals.map(Math.abs))).toBeLessThan(1e-6);
        expect(found.blunder.kind).toBe('none');
      }),
    );
  });

  // A guess so far off that the steps jump across the line through both points, to (100, −50).
  it('comes back to the side of the guess when its steps jump across', () => {
    const at: Point = [100, 50];
    const measured = [toPoint([0, 0], apart(at, [0, 0])), toPoint([3000, 0], apart(at, [3000, 0]))];
    for (const guess of [
      [2600, 1850],
      [2700, 1300],
      [2700, 1650],
    ] as const) {
      const found = findTapedPosition(measured, guess);
      expect(apart(found.at, at)).toBeLessThan(1e-6);
      expect(apart(findTapedPosition(measured, [guess[0], -guess[1]]).at, [100, -50])).toBeLessThan(1e-6);
    }
  });

  // Two circles meet at two places, a circle and a line at two: each other's image in the line through the points, or square to the edge.
  it('lies on the side of the guess, however far the guess is, where two places fit alike', () => {
    const anywhere: fc.Arbitrary<Point> = fc.tuple(
      fc.integer({ min: 100, max: 2900 }),
      fc.integer({ min: 100, max: 1900 }),
    );
    fc.assert(
      fc.property(inPanel, anywhere, fc.boolean(), (at, guess, isBelow) => {
        const flip = ([x, y]: Point): Point => [x, isBelow ? -y : y];
        const two = [toPoint(CORNERS[0]!, apart(at, CORNERS[0]!)), toPoint(CORNERS[1]!, apart(at, CORNERS[1]!))];
        expect(apart(findTapedPosition(two, flip(guess)).at, flip(at))).toBeLessThan(1e-5);
        const withEdge = [toEdge(...START, at[0]), toPoint([0, 0], apart(at, [0, 0]), 2)];
        expect(apart(findTapedPosition(withEdge, flip(guess)).at, flip(at))).toBeLessThan(1e-5);
      }),
      { numRuns: 300 },
    );
  });

  it('has the least weighted sum of squares: a search by steps finds none less', () => {
    fc.assert(
      fc.property(
        inPanel,
        sixSigmas,
        fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 6, maxLength: 6 }),
        (at, sigmas, errors) => {
          const measured = measureAll(at, sigmas).map((one, i) => ({ ...one, distance: one.distance + errors[i]! }));
          const sum = ([x, y]: Point) =>
            measured.reduce((part, { distance, deviation }, i) => {
              const reckoned = i < 4 ? apart([x, y], CORNERS[i]!) : i === 4 ? x : y;
              return part + ((distance - reckoned) / deviation) ** 2;
            }, 0);
          let best = at;
          for (let step = 8; step > 1e-7; ) {
            const next = [
              [step, 0],
              [-step, 0],
              [0, step],
              [0, -step],
            ]
              .map((move): Point => add(best, [move[0]!, move[1]!]))
              .find((place) => sum(place) < sum(best));
            if (next === undefined) step /= 2;
            else best = next;
          }
          const found = findTapedPosition(measured, at);
          expect(apart(found.at, best)).toBeLessThan(1e-4);
          expect(sum(found.at)).toBeLessThanOrEqual(sum(best) + 1e-9);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('finds a single gross error among six distances', () => {
    fc.assert(
      fc.property(inPanel, fc.integer({ min: 0, max: 5 }), fc.constantFrom(-60, 60), (at, index, slip) => {
        const measured = measureAll(at, [1, 1, 1, 1, 1, 1]).map((one, i) =>
          i === index ? { ...one, distance: Math.max(1, one.distance + slip) } : one,
        );
        expect(findTapedPosition(measured, at).blunder).toEqual({ kind: 'at', index });
      }),
    );
  });

  // Identity of linear models: w² is what leaving the observation out takes from the sum of squares.
  it('has normalised residuals that say what leaving a distance out would save', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.integer({ min: 0, max: 3000 }).map((n) => n / 1000),
            fc.integer({ min: -9, max: 9 }),
            sigma,
          ),
          {
            minLength: 5,
            maxLength: 8,
          },
        ),
        fc.integer({ min: 0, max: 4 }),
        (lines, left) => {
          const at: Point = [500, 400];
          const measured = lines.map(([angle, error, deviation]) => {
            const along: Point = [Math.cos(angle), Math.sin(angle)];
            const distance = Math.abs(along[0] * (at[1] + 3000) - along[1] * (at[0] + 3000));
            return toEdge([-3000, -3000], add([-3000, -3000], along), distance + error, deviation);
          });
          const sides = lines.map(([angle]) => Math.abs(Math.cos(angle) * 3400 - Math.sin(angle) * 3500));
          const angles = lines.map(([angle]) => angle);
          fc.pre(Math.min(...sides) > 100);
          const rest = angles.filter((_, i) => i !== left);
          fc.pre(Math.max(...rest) - Math.min(...rest) > 0.5 && Math.max(...rest) - Math.min(...rest) < 2.6);
          const squares = (list: readonly TapedDistance[]) =>
            findTapedPosition(list, at).residuals.reduce((sum, v, i) => sum + (v / list[i]!.deviation) ** 2, 0);
          const w = findTapedPosition(measured, at).normalised[left];
          fc.pre(w !== null && w !== undefined);
          expect(w! ** 2).toBeCloseTo(squares(measured) - squares(measured.filter((_, i) => i !== left)), 4);
        },
      ),
    );
  });

  it('turns and mirrors with its panel: so does its ellipse', () => {
    fc.assert(
      fc.property(
        inPanel,
        sixSigmas,
        fc.integer({ min: 0, max: 359 }),
        fc.boolean(),
        (at, sigmas, degrees, mirrored) => {
          const angle = (degrees * Math.PI) / 180;
          const [c, s] = [Math.cos(angle), Math.sin(angle)];
          const turn = ([x, y]: Point): Point => {
            const u = mirrored ? -x : x;
            return [c * u - s * y, s * u + c * y];
          };
          const measured = measureAll(at, sigmas);
          const turned = measured.map((one): TapedDistance => {
            const { to } = one;
            return to.kind === 'point'
              ? { ...one, to: { kind: 'point', at: turn(to.at) } }
              : { ...one, to: { kind: 'edge', from: turn(to.from), end: turn(to.end) } };
          });
          const before = findTapedPosition(measured, at);
          const after = findTapedPosition(turned, turn(at));
          expect(apart(after.at, turn(before.at))).toBeLessThan(1e-6);
          const [xx, yy, xy] = [
            before.sigmaX ** 2,
            before.sigmaY ** 2,
            mirrored ? -before.covariance : before.covariance,
          ];
          expect(after.sigmaX ** 2).toBeCloseTo(c * c * xx - 2 * c * s * xy + s * s * yy, 7);
          expect(after.sigmaY ** 2).toBeCloseTo(s * s * xx + 2 * c * s * xy + c * c * yy, 7);
          expect(after.covariance).toBeCloseTo(c * s * (xx - yy) + (c * c - s * s) * xy, 7);
        },
      ),
    );
  });

  it('swaps σ of x and y when the panel is turned by 90°', () => {
    const at: Point = [700, 500];
    const quarter = ([x, y]: Point): Point => [-y, x];
    const before = findTapedPosition([toPoint([0, 0], apart(at, [0, 0]), 2), toEdge(...RAIL, 500)], at);
    const after = findTapedPosition(
      [toPoint([0, 0], apart(at, [0, 0]), 2), toEdge(quarter(RAIL[0]), quarter(RAIL[1]), 500)],
      quarter(at),
    );
    expect(after.sigmaX).toBeCloseTo(before.sigmaY, 9);
    expect(after.sigmaY).toBeCloseTo(before.sigmaX, 9);
    expect(before.sigmaX).not.toBeCloseTo(before.sigmaY, 1);
  });

  // Second way of computing σ: 6000 sets of distances with normal errors (seeded); 3 % is three times the error of such an estimate.
  it('scatters as its σ says', () => {
    const at: Point = [900, 1400];
    const sigmas = [1, 2, 1.5, 0.8, 2.5, 3];
    const exact = measureAll(at, sigmas);
    const { sigmaX, sigmaY, covariance } = findTapedPosition(exact, at);
    let state = 20_240_917;
    const uniform = () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return (state + 0.5) / 2 ** 32;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const runs = 6000;
    const sums = { xx: 0, yy: 0, xy: 0 };
    for (let k = 0; k < runs; k += 1) {
      const measured = exact.map((one) => ({ ...one, distance: one.distance + normal() * one.deviation }));
      const [x, y] = findTapedPosition(measured, at).at;
      sums.xx += (x - at[0]) ** 2 / runs;
      sums.yy += (y - at[1]) ** 2 / runs;
      sums.xy += ((x - at[0]) * (y - at[1])) / runs;
    }
    expect(Math.abs(Math.sqrt(sums.xx) / sigmaX - 1)).toBeLessThan(0.03);
    expect(Math.abs(Math.sqrt(sums.yy) / sigmaY - 1)).toBeLessThan(0.03);
    expect(Math.abs((sums.xy - covariance) / (sigmaX * sigmaY))).toBeLessThan(0.04);
  });
});

describe('a guess just across an edge', () => {
  // By hand: three distances say x = 2999; read from the wrong side the first says 3001, which pulls the mean to 2999.67 and stands out nowhere.
  it('does not pull the place toward it, though no distance stands out', () => {
    const far: readonly [Point, Point] = [
      [3000, 0],
      [3000, 2000],
    ];
    const measured = [toEdge(...far, 1), toEdge(...START, 2999), toPoint([0, 600], 2999), toEdge(...RAIL, 600)];
    const { at, notOnSideOfGuess } = findTapedPosition(measured, [3002, 600]);
    expect(at[0]).toBeCloseTo(2999, 3);
    expect(notOnSideOfGuess).toEqual([0]);
  });
});
