import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CORROSION_CATEGORIES,
  coatingLife,
  describeLife,
  findSteelLoss,
  findZincLoss,
  judgeLife,
} from '../../../src/engine/material/corrosion.ts';

const thickness = fc.double({ min: 0, max: 300, noNaN: true });
const longestOf = (life: { readonly longest: number | null }) => life.longest ?? Number.POSITIVE_INFINITY;

describe('losses by category', () => {
  // ISO 9223: a category begins where the one before ends. The values themselves: H6-01 to H6-03 in test/published.
  it('join without a gap', () => {
    for (const find of [findZincLoss, findSteelLoss])
      CORROSION_CATEGORIES.slice(1).forEach((category, i) => {
        expect(find(category).low).toBe(find(CORROSION_CATEGORIES[i]!).high);
        expect(find(category).high).toBeGreaterThan(find(category).low);
      });
  });
});

describe('life of a zinc coating', () => {
  // By hand: 55 µm in C5: 55/8.4 = 6.548, 55/4.2 = 13.095 years; in C3 55/2.1 = 26.19, 55/0.7 = 78.57.
  it('by hand', () => {
    expect(coatingLife(55, 'C5')).toEqual({ shortest: expect.closeTo(6.548, 3), longest: expect.closeTo(13.095, 3) });
    expect(coatingLife(55, 'C3')).toEqual({ shortest: expect.closeTo(26.19, 2), longest: expect.closeTo(78.57, 2) });
  });

  it('has no longest in C1, whose lowest loss is nothing, and is nothing without zinc', () => {
    expect(coatingLife(5, 'C1')).toEqual({ shortest: expect.closeTo(50, 9), longest: null });
    for (const category of CORROSION_CATEGORIES) expect(coatingLife(0, category)).toEqual({ shortest: 0, longest: 0 });
  });

  it('grows with the coating and falls with the category', () => {
    fc.assert(
      fc.property(thickness, thickness, fc.nat(5), fc.nat(5), (a, b, i, j) => {
        const [thin, thick] = [Math.min(a, b), Math.max(a, b)];
        const [mild, harsh] = [CORROSION_CATEGORIES[Math.min(i, j)]!, CORROSION_CATEGORIES[Math.max(i, j)]!];
        const [most, least] = [coatingLife(thick, mild), coatingLife(thin, harsh)];
        expect(most.shortest).toBeGreaterThanOrEqual(least.shortest);
        expect(longestOf(most)).toBeGreaterThanOrEqual(longestOf(least));
        expect(longestOf(least)).toBeGreaterThanOrEqual(least.shortest);
      }),
    );
  });
});

describe('a life beside the wanted one', () => {
  it('lasts only where even the shortest is enough', () => {
    expect(judgeLife({ shortest: 50, longest: 60 }, 50)).toBe('lasts');
    expect(judgeLife({ shortest: 49.9, longest: 60 }, 50)).toBe('may fall short');
    expect(judgeLife({ shortest: 20, longest: 50 }, 50)).toBe('may fall short');
    expect(judgeLife({ shortest: 20, longest: 49.9 }, 50)).toBe('falls short');
    expect(judgeLife({ shortest: 20, longest: null }, 50)).toBe('may fall short');
  });

  it('is told in years cut off, never rounded up', () => {
    expect(describeLife({ shortest: 6.58, longest: 13.97 })).toBe('6.5 to 13 years');
    expect(describeLife({ shortest: 9.99, longest: 10.9 })).toBe('9.9 to 10 years');
    expect(describeLife({ shortest: 550, longest: null })).toBe('550 years or more');
    expect(describeLife({ shortest: 0, longest: 0 })).toBe('0 years');
  });
});
