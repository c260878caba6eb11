import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ageFromIndex,
  agingRate,
  sumArrheniusAge,
  sumMaturity,
  type TemperatureReading,
} from '../../../src/engine/material/maturity.ts';

const E = 33_500;
const log = (...readings: readonly (readonly [hours: number, temperature: number])[]): TemperatureReading[] =>
  readings.map(([hours, temperature]) => ({ hours, temperature }));

const temperature = fc.double({ min: -20, max: 90, noNaN: true });
const anyLog = fc
  .array(fc.tuple(fc.double({ min: 0.1, max: 30, noNaN: true }), temperature), { minLength: 2, maxLength: 12 })
  .map((steps) => {
    let hours = 0;
    return steps.map(([step, degrees]) => {
      hours += step;
      return { hours, temperature: degrees };
    });
  });

/** Every maturity that the tests below ask for. */
const MEASURES = [
  ['index', (readings: readonly TemperatureReading[]) => sumMaturity(readings, 0)],
  ['index from -10 °C', (readings: readonly TemperatureReading[]) => sumMaturity(readings, -10)],
  ['Arrhenius', (readings: readonly TemperatureReading[]) => sumArrheniusAge(readings, E, 20)],
] as const;

/** Second way of computing: the middle of many thin slices. */
function sumSlices(readings: readonly TemperatureReading[], give: (degrees: number) => number): number {
  const slices = 4000;
  let sum = 0;
  for (let i = 1; i < readings.length; i++) {
    const [a, b] = [readings[i - 1]!, readings[i]!];
    const width = (b.hours - a.hours) / slices;
    for (let k = 0; k < slices; k++)
      sum += width * give(a.temperature + ((k + 0.5) / slices) * (b.temperature - a.temperature));
  }
  return sum;
}

describe('the Nurse–Saul index', () => {
  // By hand: 24 h from 20 to 40 °C is 24 · 30 = 720; over the reference of 20 °C: 36 h.
  it('is the area above the datum', () => {
    expect(sumMaturity(log([0, 20], [24, 40]), 0)).toBe(720);
    expect(ageFromIndex(720, 20, 0)).toBe(36);
  });

  // Published: H7-05, 28 days at 15 °C above −11 °C: 728 °C days.
  it('is exact at a steady temperature', () => {
    expect(sumMaturity(log([0, 15], [28 * 24, 15]), -11) / 24).toBe(728);
  });

  // By hand: from −10 to 20 °C in 6 h, above 0 °C for the last 4 h: 4 · 20/2 = 40; and the way back the same.
  it('counts nothing below the datum, cut where a segment crosses it', () => {
    expect(sumMaturity(log([0, -10], [6, 20]), 0)).toBeCloseTo(40, 12);
    expect(sumMaturity(log([0, 20], [6, -10]), 0)).toBeCloseTo(40, 12);
    expect(sumMaturity(log([0, -10], [6, -1]), 0)).toBe(0);
    expect(sumMaturity(log([0, -10], [6, 0]), 0)).toBe(0);
    expect(sumMaturity(log([0, 0], [6, 10]), 0)).toBe(30);
  });

  it('counts from the first reading on, wherever its clock stands', () => {
    expect(sumMaturity(log([100, 20], [124, 40]), 0)).toBe(720);
  });
});

describe('the Arrhenius age', () => {
  // By hand: E/R = 4029.12 K; 1/313.15 − 1/293.15 = −2.178651e-4; exp(0.877806) = 2.405615.
  it('runs faster in the heat, by hand', () => {
    expect(agingRate(E, 40, 20)).toBeCloseTo(2.4056, 4);
    expect(sumArrheniusAge(log([0, 40], [10, 40]), E, 20)).toBeCloseTo(24.056, 3);
    expect(agingRate(E, 20, 40)).toBeCloseTo(1 / 2.405615, 4);
  });

  it('is the clock at the reference temperature', () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 0.1, max: 1000, noNaN: true }), (degrees, hours) => {
        expect(sumArrheniusAge(log([0, degrees], [hours, degrees]), E, degrees)).toBeCloseTo(hours, 9);
      }),
    );
  });

  // The widest span that the calculation takes: cut into 200 short ones, each of which is nearly straight, it must stay the same.
  it('keeps its digits over any span', () => {
    const [hot, from, to] = [200_000, -50, 150];
    const cuts = Array.from({ length: 201 }, (_, i) => ({
      hours: i / 20,
      temperature: from + (i * (to - from)) / 200,
    }));
    const whole = sumArrheniusAge(log([0, from], [10, to]), hot, 20);
    expect(Math.abs(sumArrheniusAge(cuts, hot, 20) / whole - 1)).toBeLessThan(1e-11);
  });

  it('counts cold concrete too, ever more slowly', () => {
    const cold = sumArrheniusAge(log([0, -5], [10, -5]), E, 20);
    expect(cold).toBeGreaterThan(0);
    expect(cold).toBeLessThan(sumArrheniusAge(log([0, 0], [10, 0]), E, 20));
  });
});

describe.each(MEASURES)('any maturity: %s', (name, measure) => {
  it('agrees with thin slices', () => {
    const give =
      name === 'Arrhenius'
        ? (degrees: number) => agingRate(E, degrees, 20)
        : (degrees: number) => Math.max(0, degrees - (name === 'index' ? 0 : -10));
    fc.assert(
      fc.property(anyLog, (readings) => {
        const slices = sumSlices(readings, give);
        // The middle rule errs by 1/4000² of the curvature, and where the datum is crossed by an eighth of a slice, 0.0075 h by
        // 0.0275 °C, in each of at most 11 segments: 3e-4.
        expect(Math.abs(measure(readings) - slices)).toBeLessThanOrEqual(1e-5 * slices + 3e-4);
      }),
      { numRuns: 30 },
    );
  });

  it('stays the same when a reading on the line is put in', () => {
    fc.assert(
      fc.property(anyLog, fc.nat(), fc.double({ min: 0.01, max: 0.99, noNaN: true }), (readings, pick, share) => {
        const i = 1 + (pick % (readings.length - 1));
        const [a, b] = [readings[i - 1]!, readings[i]!];
        const between = {
          hours: a.hours + share * (b.hours - a.hours),
          temperature: a.temperature + share * (b.temperature - a.temperature),
        };
        const split = [...readings.slice(0, i), between, ...readings.slice(i)];
        const [whole, parts] = [measure(readings), measure(split)];
        expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * (1 + whole));
      }),
    );
  });

  it('is never less in warmer concrete', () => {
    fc.assert(
      fc.property(
        anyLog,
        fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (readings, more) => {
          const warmer = readings.map((reading, i) => ({ ...reading, temperature: reading.temperature + more[i]! }));
          expect(measure(warmer)).toBeGreaterThanOrEqual(measure(readings) * (1 - 1e-12));
        },
      ),
    );
  });
});
