// Ratios whose crossing is known by hand: smooth, bent, jumping, endless, and none at all.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Crossing, findCrossing } from '../../../src/engine/checks/find-crossing.ts';

type Ratio = (multiplier: number) => number;

/** The crossing and how many tries it took. */
function count(ratio: Ratio, start: number): Crossing & { readonly tries: number } {
  let tries = 0;
  const crossing = findCrossing((multiplier) => {
    tries += 1;
    return ratio(multiplier);
  }, start);
  return { ...crossing, tries };
}

const USED_UP: Ratio = (m) => (m < 5 ? m / (10 * (1 - m / 5)) : Number.POSITIVE_INFINITY);

const STARTS = [1, 1e-6, 1e6, 5];

/** The crossing lies on the passing side, at most 1e-9 below the true one. */
function expectAt(ratio: Ratio, start: number, crossing: number): void {
  const { kind, at } = findCrossing(ratio, start);
  expect(kind).toBe('found');
  expect(ratio(at)).toBeLessThanOrEqual(1);
  expect(ratio(at * (1 + 1.001e-9))).toBeGreaterThan(1);
  expect(Math.abs(at / crossing - 1)).toBeLessThan(1.001e-9);
}

describe('where a ratio crosses 1', () => {
  it.each<[what: string, crossing: number, ratio: Ratio]>([
    // m/7 = 1
    ['in step with the load', 7, (m) => m / 7],
    // m²/50 = 1
    ['a square', Math.sqrt(50), (m) => (m * m) / 50],
    // (m/9)^(2/3) = 1
    ['slower than the load', 9, (m) => (m / 9) ** (2 / 3)],
    // (m/5)^40 = 1
    ['very steep', 5, (m) => (m / 5) ** 40],
    // The square is the first of the three to reach 1.
    ['the largest of three', 8, (m) => Math.max(m / 9, (m / 8) ** 2, (m / 8.5) ** 3)],
    // m/10 = 1 − m/5 → 3 m = 10
    ['an arm that the tension uses up', 10 / 3, USED_UP],
    // 0.5 + m/10⁶ = 1
    ['nearly level', 5e5, (m) => 0.5 + m * 1e-6],
    ['a jump across 1', 5, (m) => (m < 5 ? m / 10 : m / 2)],
    ['a jump from nothing', 5, (m) => (m < 5 ? 0 : 3)],
    ['a jump to no resistance', 5, (m) => (m < 5 ? 0.5 : Number.POSITIVE_INFINITY)],
    ['a jump to exactly 1, then beyond', 5, (m) => (m < 5 ? 0.5 : m / 5)],
  ])('%s: %d', (_, crossing, ratio) => {
    for (const start of STARTS) expectAt(ratio, start, crossing);
  });
  it('ratios of nearly nothing and of nearly no resistance', () => {
    // Below 5 next to nothing, above it next to no resistance: 10^-318 and 10^300.
    for (const start of STARTS) expectAt((m) => (m < 5 ? m * 1e-318 : m * 1e300), start, 5);
    for (const start of STARTS) expectAt((m) => (m < 5 ? m * 1e-318 : Number.POSITIVE_INFINITY), start, 5);
  });
  it('any start, any growth, any jump', () => {
    const powers = fc.array(fc.double({ min: 0.3, max: 6, noNaN: true }), { minLength: 1, maxLength: 3 });
    const anyJump = fc.double({ min: 0.5, max: 2, noNaN: true });
    fc.assert(
      fc.property(powers, fc.integer({ min: -6, max: 6 }), anyJump, (growths, digits, jump) => {
        const [unit, start] = [10 ** digits, 10 ** -digits];
        const ratio = (m: number) =>
          growths.reduce((sum, power) => sum + (m / unit) ** power, 0) + (m > jump * unit ? 0.7 : 0);
        const { kind, at } = findCrossing(ratio, start);
        expect(kind).toBe('found');
        expect(ratio(at)).toBeLessThanOrEqual(1);
        expect(ratio(at * (1 + 1.001e-9))).toBeGreaterThan(1);
      }),
      { numRuns: 2000, seed: 3 },
    );
  });
  it.each<[what: string, kind: Crossing['kind'], ratio: Ratio]>([
    ['0 for any load', 'nothing limits', () => 0],
    ['below 1 for any load', 'nothing limits', (m) => m / (1 + m)],
    ['no resistance for any load', 'nothing resists', () => Number.POSITIVE_INFINITY],
    ['above 1 for any load', 'nothing resists', () => 3],
  ])('none: %s', (_, kind, ratio) => {
    for (const start of STARTS) expect(count(ratio, start)).toMatchObject({ kind, at: start });
  });
  it('in few tries: three where the ratio is in step with the load', () => {
    for (const start of STARTS) {
      expect(count((m) => m / 7, start).tries).toBe(3);
      expect(count((m) => (m * m) / 50, start).tries).toBeLessThanOrEqual(5);
      // The growth seen between two tries is taken for the next.
      expect(count((m) => (m / 9) ** (2 / 3), start).tries).toBeLessThanOrEqual(6);
      // An arm that the tension uses up, and a jump, which only halving finds.
      expect(count(USED_UP, start).tries).toBeLessThanOrEqual(12);
      expect(count((m) => (m < 5 ? m / 10 : m / 2), start).tries).toBeLessThan(60);
    }
  });
});
