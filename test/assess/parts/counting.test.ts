import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../src/assess/parts/calendar.ts';
import { crossBarKind, holdingKind, otherKind } from '../../../src/assess/parts/part-kind.ts';
import { followUses } from '../../../src/assess/parts/reuse.ts';
import { countPacks, countSpares, roundShareUp } from '../../../src/assess/parts/spares.ts';
import { holdingPart } from '../../../src/job/documents/holding-parts.ts';
import { parts } from './parts-job.ts';

const partOf = (id: string) => holdingKind(holdingPart.parse(parts.find((part) => part.id === id)));
const bar = crossBarKind(10, 250);

describe('days', () => {
  // Gregorian calendar: 2028 is a leap year, 2100 is none (divisible by 100 and not by 400).
  it.each([
    ['2028-02-28', 1, '2028-02-29'],
    ['2028-02-28', 2, '2028-03-01'],
    ['2100-02-28', 1, '2100-03-01'],
    ['2027-01-01', -1, '2026-12-31'],
    ['2026-03-29', 1, '2026-03-30'],
    ['2026-12-14', 0, '2026-12-14'],
  ])('%s and %i days give %s', (day, days, expected) => {
    expect(addDays(day, days)).toBe(expected);
  });
});

describe('spares', () => {
  // By hand, 5 % and at least 2.
  it.each([
    [1, 2],
    [12, 2],
    [40, 2],
    [41, 3],
    [60, 3],
    [61, 4],
    [0, 0],
  ])('of %i used up are %i', (count, spares) => {
    expect(countSpares(bar, count, { share: 0.05, atLeast: 2 })).toBe(spares);
  });

  it('are none where the yard takes none', () => {
    expect(countSpares(bar, 500, { share: 0, atLeast: 0 })).toBe(0);
  });

  it('are none of what comes back from the pour, or is made for its place', () => {
    expect(countSpares(partOf('PLATE-16'), 100, { share: 0.05, atLeast: 2 })).toBe(0);
    expect(countSpares(otherKind({ role: 'plate', description: null }), 100, { share: 0.05, atLeast: 2 })).toBe(0);
    expect(countSpares(partOf('NAIL'), 100, { share: 0.05, atLeast: 2 })).toBe(5);
  });

  // 0.07 * 100 is 7.000000000000001 and 0.1 * 30 is 3 in double precision (IEEE 754).
  it('are not one more for a rounding error', () => {
    expect(0.07 * 100).toBeGreaterThan(7);
    expect(roundShareUp(0.07, 100)).toBe(7);
    expect(roundShareUp(0.07, 101)).toBe(8);
  });

  it('lie between the share and one more than it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1000 }), fc.nat(100_000), (thousandths, count) => {
        // Whole-number arithmetic, as an exact second way.
        const exact = Math.floor((thousandths * count + 999) / 1000);
        expect(roundShareUp(thousandths / 1000, count)).toBe(exact);
      }),
    );
  });
});

describe('packs', () => {
  it.each([
    [0, 50, 0],
    [1, 50, 1],
    [50, 50, 1],
    [51, 50, 2],
    [101, 50, 3],
    [7, 1, 7],
  ])('for %i in packs of %i are %i', (count, size, packs) => {
    expect(countPacks(count, size)).toBe(packs);
  });

  it('cover what is needed, and one fewer would not', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.integer({ min: 1, max: 500 }), (count, size) => {
        const packs = countPacks(count, size);
        expect(packs * size).toBeGreaterThanOrEqual(count);
        expect((packs - 1) * size).toBeLessThan(count);
      }),
    );
  });
});

const MONDAY = '2026-12-14';
const series = (...counts: readonly number[]) => counts.map((count, i) => ({ date: addDays(MONDAY, i), count }));

describe('reusable parts', () => {
  // By hand in the docstring: turn-round 2 days, loss 10 %.
  it('of Monday are back on Wednesday where they take two days', () => {
    expect(followUses(series(8, 6, 8), { turnRound: 2, lossPerUse: 0.1 }, MONDAY)).toEqual([
      { inUse: 8, lost: 1 },
      { inUse: 14, lost: 2 },
      { inUse: 14, lost: 3 },
    ]);
  });

  it('are back the next day where they take one', () => {
    const inUse = followUses(series(8, 6, 8), { turnRound: 1, lossPerUse: 0 }, MONDAY).map((step) => step.inUse);
    expect(inUse).toEqual([8, 6, 8]);
  });

  it('of two pours of one day never stand in for one another, even where they are back that day', () => {
    const uses = [
      { date: MONDAY, count: 5 },
      { date: MONDAY, count: 4 },
    ];
    expect(followUses(uses, { turnRound: 0, lossPerUse: 0 }, MONDAY).at(-1)!.inUse).toBe(9);
  });

  it('that were lost before today are not lost again, and those still out are out', () => {
    const steps = followUses(series(10, 10), { turnRound: 2, lossPerUse: 0.2 }, addDays(MONDAY, 1));
    expect(steps.at(-1)).toEqual({ inUse: 20, lost: 2 });
  });

  it('in use are those of a slow count, day by day', () => {
    const use = fc.record({ day: fc.nat(20), count: fc.nat(30) });
    fc.assert(
      fc.property(fc.array(use, { maxLength: 12 }), fc.nat(5), (drawn, turnRound) => {
        const uses = drawn
          .toSorted((a, b) => a.day - b.day)
          .map(({ day, count }) => ({ day, date: addDays(MONDAY, day), count }));
        const steps = followUses(uses, { turnRound, lossPerUse: 0 }, MONDAY);
        const slow = uses.map(({ day }, i) =>
          uses
            .slice(0, i + 1)
            .filter((earlier) => day - earlier.day < Math.max(1, turnRound))
            .reduce((sum, { count }) => sum + count, 0),
        );
        expect(steps.map(({ inUse }) => inUse)).toEqual(slow);
      }),
    );
  });
});
