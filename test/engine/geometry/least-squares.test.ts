import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjust } from '../../../src/engine/geometry/least-squares.ts';

const number = fc.integer({ min: -500, max: 500 }).map((n) => n / 10);
const deviation = fc.integer({ min: 2, max: 40 }).map((n) => n / 10);
/** A few more observations than two to four unknowns. */
const anySystem = fc.integer({ min: 2, max: 4 }).chain((count) =>
  fc
    .array(fc.tuple(fc.array(number, { minLength: count, maxLength: count }), number, deviation), {
      minLength: count,
      maxLength: count + 5,
    })
    .map((lines) => ({
      rows: lines.map(([row]) => row),
      observed: lines.map(([, value]) => value),
      deviations: lines.map(([, , sigma]) => sigma),
    })),
);

describe('weighted least squares', () => {
  // By hand: the line through (1, 6), (2, 5), (3, 7), (4, 10): means 2.5 and 7, Sxy = 7, Sxx = 5, slope 1.4, at zero 3.5.
  it('fits a line', () => {
    const fit = adjust(
      [1, 2, 3, 4].map((x) => [1, x]),
      [6, 5, 7, 10],
      [1, 1, 1, 1],
    )!;
    expect(fit.unknowns[0]).toBeCloseTo(3.5, 12);
    expect(fit.unknowns[1]).toBeCloseTo(1.4, 12);
    [1.1, -1.3, -0.7, 0.9].forEach((residual, i) => {
      expect(fit.residuals[i]).toBeCloseTo(residual, 12);
    });
    // Covariance of slope and start: 1/Sxx = 0.2; 1/n + mean²/Sxx = 1.5; −mean/Sxx = −0.5.
    expect(fit.covariance[1]![1]).toBeCloseTo(0.2, 12);
    expect(fit.covariance[0]![0]).toBeCloseTo(1.5, 12);
    expect(fit.covariance[0]![1]).toBeCloseTo(-0.5, 12);
    // Residual variance 1 − (1/n + (x − mean)²/Sxx): 0.3 at the ends.
    expect(fit.residualCovariance[0]![0]).toBeCloseTo(0.3, 12);
  });

  // By hand: 10 ± 1 and 13 ± 2 have weights 1 and 1/4: (10 + 3.25)/1.25 = 10.6, variance 1/1.25 = 0.8; residual variances 0.2 and 3.2.
  it('weights a mean', () => {
    const mean = adjust([[1], [1]], [10, 13], [1, 2])!;
    expect(mean.unknowns[0]).toBeCloseTo(10.6, 12);
    expect(mean.covariance[0]![0]).toBeCloseTo(0.8, 12);
    expect(mean.residuals[1]).toBeCloseTo(2.4, 12);
    expect(mean.residualCovariance[0]![0]).toBeCloseTo(0.2, 12);
    expect(mean.residualCovariance[1]![1]).toBeCloseTo(3.2, 12);
    expect(mean.residualCovariance[0]![1]).toBeCloseTo(-0.8, 12);
  });

  it('gives nothing where an unknown, or a combination of them, stays open', () => {
    expect(adjust([[1, 0]], [3], [1])).toBeNull();
    expect(
      adjust(
        [
          [1, -1],
          [2, -2],
        ],
        [1, 2],
        [1, 1],
      ),
    ).toBeNull();
    expect(adjust([], [], [])?.unknowns).toEqual([]);
  });

  it('does not mind the units of a column', () => {
    const rows = [
      [1, 1e-9],
      [1, 2e-9],
      [1, 4e-9],
    ];
    expect(adjust(rows, [3, 5, 9], [1, 1, 1])!.unknowns[1]! / 1e9).toBeCloseTo(2, 9);
  });

  it('leaves residuals that stand square on every column, weighted', () => {
    fc.assert(
      fc.property(anySystem, ({ rows, observed, deviations }) => {
        const fit = adjust(rows, observed, deviations);
        fc.pre(fit !== null && Math.max(...fit.unknowns.map(Math.abs)) < 1e4);
        rows[0]!.forEach((_, k) => {
          const sum = fit!.residuals.reduce((part, v, i) => part + (v * rows[i]![k]!) / deviations[i]! ** 2, 0);
          expect(Math.abs(sum)).toBeLessThan(1e-4);
        });
      }),
    );
  });

  it('shares the observations out: redundancy shares add up to what is more than needed', () => {
    fc.assert(
      fc.property(anySystem, ({ rows, observed, deviations }) => {
        const fit = adjust(rows, observed, deviations);
        fc.pre(fit !== null && Math.max(...fit.unknowns.map(Math.abs)) < 1e4);
        const shares = deviations.reduce((sum, sigma, i) => sum + fit!.residualCovariance[i]![i]! / sigma ** 2, 0);
        expect(shares).toBeCloseTo(rows.length - rows[0]!.length, 5);
      }),
    );
  });
});
