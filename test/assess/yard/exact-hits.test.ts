import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceOfExact,
  exactHits,
  judgeExactHits,
  listReadings,
  normalShare,
  tailOfHits,
} from '../../../src/assess/yard/exact-hits.ts';
import { tellExactHits } from '../../../src/say/piece-words.ts';
import { demoFile, PEOPLE, PieceTablet, pieceOf, taped } from './yard-sample.ts';

const sample = pieceOf(demoFile(), 'P13', '1');

/** Binomial upper tail by the formula, as an independent way. */
function binomialTail(n: number, p: number, hits: number): number {
  let sum = 0;
  for (let k = hits; k <= n; k += 1) {
    let choose = 1;
    for (let i = 1; i <= k; i += 1) choose *= (n - k + i) / i;
    sum += choose * p ** k * (1 - p) ** (n - k);
  }
  return sum;
}

describe('chance of an exact reading', () => {
  it('is the table of the normal distribution', () => {
    // Printed to five places in any table: Φ(0), Φ(0.25), Φ(1), Φ(1.96), Φ(−1), Φ(3).
    expect([0, 0.25, 1, 1.96, -1, 3].map((z) => normalShare(z).toFixed(5))).toEqual([
      ...['0.50000', '0.59871', '0.84134', '0.97500', '0.15866', '0.99865'],
    ]);
  });
  it('is one in five at a scatter of 2 mm', () => {
    expect(chanceOfExact(0, 2)).toBeCloseTo(0.1974, 4);
    expect(chanceOfExact(0, 2)).toBeGreaterThan(chanceOfExact(0.5, 2));
    expect(chanceOfExact(0, 0)).toBeLessThan(0.7);
  });
  it('adds up to the binomial tail where all chances are equal', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.double({ min: 0.02, max: 0.9, noNaN: true }),
        fc.nat(40),
        (n, p, hits) => {
          const tail = tailOfHits(new Array<number>(n).fill(p), Math.min(hits, n));
          expect(tail).toBeCloseTo(binomialTail(n, p, Math.min(hits, n)), 9);
        },
      ),
    );
    expect(tailOfHits([0.5, 0.25], 2)).toBe(0.125);
    expect(tailOfHits([0.5, 0.25], 1)).toBe(0.625);
    expect(tailOfHits([], 0)).toBe(1);
  });
});

describe('exact hits of a person', () => {
  const tapedBy = (who: 'checker' | 'setter', off: (number: number) => number) => {
    const tablet = new PieceTablet(1, sample);
    for (const { number } of sample.plan.setOut.items)
      tablet.write(who, number, taped(sample.plan, number, { x: off(number), y: off(number) }));
    return tablet;
  };
  it('are far too many where all were copied', () => {
    const [hits] = exactHits(tapedBy('checker', () => 0).known.values(), sample.plan);
    expect(hits).toMatchObject({
      person: PEOPLE.checker.id,
      readings: 40,
      exact: 40,
      verdict: 'far more than by taping',
    });
    expect(tellExactHits(hits!)).toMatch(
      /^40 of 40 readings are the printed length to the millimetre; honest taping gives about \d+: look whether/,
    );
  });
  it('are as they should be where one in five is exact', () => {
    const [hits] = exactHits(
      tapedBy('checker', (number) => (number % 5 === 0 ? 0 : (number % 5) - 5)).known.values(),
      sample.plan,
    );
    expect(hits).toMatchObject({ readings: 40, exact: 8, verdict: 'as by taping' });
  });
  it('say nothing of fewer than 20 readings', () => {
    const readings = (count: number) =>
      Array.from({ length: count }, () => ({ person: 'a', isExact: true, chance: 0.2 }));
    expect(judgeExactHits(readings(19))[0]?.verdict).toBe('too few to say');
    expect(judgeExactHits(readings(20))[0]?.verdict).toBe('far more than by taping');
  });
  it('count for whoever measured, by the lengths that hold now, and not for choices', () => {
    const tablet = tapedBy('setter', () => 0);
    tablet.write('checker', 1, {
      kind: 'measured',
      body: { stage: 1, x_mm: 100, y_mm: 100, level_mm: null, basis: 'chosen' },
    });
    const records = [...tablet.known.values()];
    expect(new Set(listReadings(records, sample.plan).map(({ person }) => person))).toEqual(
      new Set([PEOPLE.setter.id]),
    );
    const forAnother = records.map((record) => ({ ...record, measuredBy: PEOPLE.checker.id }));
    expect(exactHits(forAnother, sample.plan).map(({ person }) => person)).toEqual([PEOPLE.checker.id]);
    const old = records.map((record) => ({ ...record, checkKey: 'c'.repeat(64) }));
    expect(exactHits(old, sample.plan)).toEqual([]);
  });
});
