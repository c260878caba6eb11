import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ACI_CURINGS,
  CEMENT_CLASSES,
  findAciConstants,
  findCementCoefficient,
  judgeTestedStrength,
  strengthByAci,
  strengthByEurocode,
} from '../../../src/engine/material/strength-at-age.ts';

/** Two ages a hair apart may come out the wrong way round in the last digit. */
const ROUNDING = 1e-12;
const days = fc.double({ min: 0.25, max: 2000, noNaN: true });
const strengths = fc.double({ min: 12, max: 90, noNaN: true });

describe('strength at an age by EN 1992-1-1', () => {
  // By hand, C40/50, f_cm = 48: t = 7: √(28/7) = 2, so β = exp(−s): R 0.81873, N 0.77880, S 0.68386; f_cm(7) = 39.299, 37.382, 32.825.
  it.each([
    ['R', 0.81873, 39.299],
    ['N', 0.7788, 37.382],
    ['S', 0.68386, 32.825],
  ] as const)('by hand, cement %s', (cement, ratio, mean) => {
    const aged = strengthByEurocode(40, cement, 7);
    expect(aged.ratio).toBeCloseTo(ratio, 5);
    expect(aged.mean).toBeCloseTo(mean, 3);
    expect(aged.characteristic).toBeCloseTo(mean - 8, 3);
  });

  it('gives a characteristic strength after 3 days only, and asks for a test before', () => {
    for (const t of [0.5, 2, 3]) {
      const { characteristic, mean, notes } = strengthByEurocode(40, 'R', t);
      expect(characteristic).toBeNull();
      expect(mean).toBeGreaterThan(0);
      expect(notes.join()).toContain('needs a test');
    }
    const { characteristic, notes } = strengthByEurocode(40, 'R', 3.001);
    expect(characteristic).toBeGreaterThan(0);
    expect(notes.join()).not.toContain('needs a test');
  });

  it('is f_ck from 28 days on, and says that it is not raised', () => {
    expect(strengthByEurocode(40, 'N', 28)).toMatchObject({ ratio: 1, mean: 48, characteristic: 40, notes: [] });
    const old = strengthByEurocode(40, 'N', 365);
    expect(old.characteristic).toBe(40);
    // 48 · exp(0.25 (1 − √(28/365))) = 48 · 1.198125 (published ratio: H7-01).
    expect(old.mean).toBeCloseTo(57.51, 2);
    expect(old.notes.join()).toContain('not raised');
  });

  it('grows with age, and a faster cement is ahead before 28 days and behind after', () => {
    fc.assert(
      fc.property(days, days, strengths, fc.constantFrom(...CEMENT_CLASSES), (a, b, f_ck, cement) => {
        const [young, old] = [Math.min(a, b), Math.max(a, b)];
        const [first, second] = [strengthByEurocode(f_ck, cement, young), strengthByEurocode(f_ck, cement, old)];
        expect(second.ratio).toBeGreaterThanOrEqual(first.ratio - ROUNDING);
        if (first.characteristic !== null && second.characteristic !== null)
          expect(second.characteristic).toBeGreaterThanOrEqual(first.characteristic - 100 * ROUNDING);
        const [rapid, slow] = [strengthByEurocode(f_ck, 'R', a).ratio, strengthByEurocode(f_ck, 'S', a).ratio];
        expect(a < 28 ? rapid - slow : slow - rapid).toBeGreaterThanOrEqual(-ROUNDING);
      }),
    );
  });

  it('never gives a negative strength in the range of the standard', () => {
    for (const cement of CEMENT_CLASSES)
      expect(strengthByEurocode(12, cement, 3 + 1e-9).characteristic).toBeGreaterThan(0);
  });
});

describe('strength at an age by ACI 209', () => {
  // By hand, t = 7: moist I 7/(4 + 5.95) = 0.70352, III 7/(2.3 + 6.44) = 0.80092; steam I 7/(1 + 6.65) = 0.91503, III 7/(0.7 + 6.86) = 0.92593.
  it.each([
    ['ACI type I moist', 0.70352],
    ['ACI type III moist', 0.80092],
    ['ACI type I steam', 0.91503],
    ['ACI type III steam', 0.92593],
  ] as const)('by hand, %s', (curing, ratio) => {
    const aged = strengthByAci(40, curing, 7);
    expect(aged.ratio).toBeCloseTo(ratio, 5);
    expect(aged.mean).toBeNull();
    expect(aged.characteristic).toBeCloseTo(40 * ratio, 3);
  });

  it('grows with age toward 1/b', () => {
    fc.assert(
      fc.property(days, days, fc.constantFrom(...ACI_CURINGS), (a, b, curing) => {
        const [young, old] = [Math.min(a, b), Math.max(a, b)];
        const ratio = (t: number) => strengthByAci(30, curing, t).ratio;
        expect(ratio(old)).toBeGreaterThanOrEqual(ratio(young) - ROUNDING);
        expect(ratio(old)).toBeLessThan(1 / findAciConstants(curing)[1]);
      }),
    );
  });

  it('says that it is a prediction, and above the specified strength beyond 28 days', () => {
    expect(strengthByAci(40, 'ACI type I moist', 28).notes).toHaveLength(1);
    expect(strengthByAci(40, 'ACI type I moist', 29).notes.join()).toContain('above the specified strength');
  });
});

describe('a tested mean strength beside that at 28 days', () => {
  // By hand, C40/50, 7 days: f_cm(t) of S and R: 32.825 and 39.299.
  it('is judged between the means of the slowest and the fastest cement', () => {
    expect(judgeTestedStrength(40, 7, 36)).toEqual({
      kind: 'plausible',
      low: expect.closeTo(32.825, 3),
      high: expect.closeTo(39.299, 3),
      characteristic: 28,
    });
    expect(judgeTestedStrength(40, 7, 32.8).kind).toBe('low');
    expect(judgeTestedStrength(40, 7, 39.3).kind).toBe('high');
  });

  // By hand, C40/50, 1 day: √28 = 5.2915; S exp(−0.38 · 4.2915) = 0.19579 → 9.398; R exp(−0.2 · 4.2915) = 0.42390 → 20.347.
  it('has no characteristic strength up to 3 days', () => {
    expect(judgeTestedStrength(40, 1, 20)).toEqual({
      kind: 'plausible',
      low: expect.closeTo(9.398, 2),
      high: expect.closeTo(20.347, 2),
      characteristic: null,
    });
    expect(judgeTestedStrength(40, 3, 28).characteristic).toBeNull();
    expect(judgeTestedStrength(40, 3.1, 28).characteristic).toBe(20);
  });

  it('is exactly f_cm at 28 days; what follows is never above f_ck nor below nothing', () => {
    expect(judgeTestedStrength(40, 28, 48)).toEqual({ kind: 'plausible', low: 48, high: 48, characteristic: 40 });
    expect(judgeTestedStrength(40, 28, 55).characteristic).toBe(40);
    expect(judgeTestedStrength(40, 28, 8).characteristic).toBeNull();
  });

  it('holds the mean that the engine itself gives for any class of cement', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 100, noNaN: true }),
        strengths,
        fc.constantFrom(...CEMENT_CLASSES),
        (t, f_ck, cement) => {
          expect(judgeTestedStrength(f_ck, t, strengthByEurocode(f_ck, cement, t).mean!).kind).toBe('plausible');
        },
      ),
    );
  });
});

describe('coefficients', () => {
  // EN 1992-1-1, 3.1.2(6); ACI 209R-92, Table 2.2.1 (recalled).
  it('are those of the documents', () => {
    expect(CEMENT_CLASSES.map(findCementCoefficient)).toEqual([0.2, 0.25, 0.38]);
    expect(ACI_CURINGS.map(findAciConstants)).toEqual([
      [4, 0.85],
      [2.3, 0.92],
      [1, 0.95],
      [0.7, 0.98],
    ]);
  });
});
