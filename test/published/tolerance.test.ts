// Tolerances from printed digits. Source of the expected numbers: hand calculation, half a unit of the last digit.

import { describe, expect, it } from 'vitest';
import { findEntry } from './entry.ts';
import { runCase } from './published.ts';
import { toleranceOf } from './tolerance.ts';

const value = (number: number, rounding: string) =>
  ({ name: 'x', value: number, unit: '-', kind: 'final', rounding }) as const;

describe('tolerance', () => {
  it.each([
    // 48.3: third figure is the tenth; 256: the unit; 25 with three figures is 25.0; 0.188: the thousandth; 2400: ten.
    [48.3, '3 significant figures', 0.05],
    [256, '3 significant figures', 0.5],
    [25, '3 significant figures', 0.05],
    [0.188, '3 significant figures', 0.0005],
    [2400, '3 significant figures', 5],
    [484, '3 figures', 0.5],
    [145, 'whole kN', 0.5],
    [8.9, '1 decimal', 0.05],
    [0.714286, '6 decimals', 0.0000005],
    [8.376, '0.001', 0.0005],
    [58, '0.01 (M10 printed 58.00)', 0.005],
    [58598.4, '0.1 lb', 0.05],
    // Written 10, 3.9 and 0.66: the unit, the tenth, the hundredth.
    [10, 'code rounding', 0.5],
    [3.9, 'code rounding', 0.05],
    [0.66, 'code rounding; SI value from memory', 0.005],
    [13000, '3 significant figures as printed', 50],
    [28, '1', 0.5],
    [9.5, '0.5', 0.25],
    [2.2, '0.1 MPa, 1 GPa', 0.05],
    // Compared at three figures, whatever is written: 12.7627 → tenth.
    [12.7627, 'as in the test, 5 or more figures', 0.05],
    // Derived values are written with four: 1.667 → thousandth.
    [1.667, 'derived', 0.0005],
  ])('of %d, %s, is %d', (number, rounding, expected) => {
    expect(toleranceOf(value(number, rounding))).toBeCloseTo(expected, 12);
  });

  it('of an exact number is rounding only', () => {
    for (const rounding of ['exact', '', 'as quoted', 'double precision'])
      expect(toleranceOf(value(80, rounding))).toBeLessThan(1e-6);
  });

  it('refuses a rounding that it does not know', () => {
    expect(() => toleranceOf(value(80, 'about'))).toThrow('no tolerance is known for the rounding "about"');
  });

  it('can fail: a number one unit off in the last digit is outside, half a unit is within', () => {
    const { value: printed } = findEntry('b19-n0-195').published[0]!;
    const judge = (computed: number) =>
      runCase({ entry: 'b19-n0-195', how: 'given', values: { 'N0_Rd,c': () => computed } })[0]!.isWithin;
    expect([printed - 1, printed - 0.5, printed, printed + 0.5, printed + 0.51].map(judge)).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
  });

  it('is not widened without a reason in the entry', () => {
    const widened = { 'N0_Rd,c': { by: 10, because: 'it would pass' } };
    expect(() => runCase({ entry: 'b19-n0-195', how: 'given', values: { 'N0_Rd,c': () => 150 }, widened })).toThrow(
      'only with a reason',
    );
  });
});
