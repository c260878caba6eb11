import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareMarks, findNextSerial } from '../../../src/web/yard/state/pieces/list-heads.ts';
import { spellMark } from '../../../src/web/yard/state/pieces/spell-mark.ts';

const MARKS = ['P01', 'P02', 'P03', 'P10', 'P11', 'P12', 'P13', 'P13-H'];

describe('spelling a mark', () => {
  it('passes over what all marks share, and has keys for signs that lead somewhere', () => {
    expect(spellMark(MARKS, '').next).toEqual(['P0', 'P1']);
    expect(spellMark(MARKS, 'P0')).toEqual({ found: ['P01', 'P02', 'P03'], next: [] });
  });

  it('leads to every mark, however many there are, in as many taps as it has signs at most', () => {
    const mark = fc.string({ minLength: 1, maxLength: 5, unit: fc.constantFrom('A', 'B', '1', '2', '-') });
    fc.assert(
      fc.property(fc.uniqueArray(mark, { minLength: 1, maxLength: 60 }), fc.nat(), (marks, pick) => {
        const wanted = marks[pick % marks.length]!;
        let spelled = '';
        for (let tap = 0; tap <= wanted.length; tap += 1) {
          const { found, next } = spellMark(marks, spelled);
          expect(found).toContain(wanted);
          const way = next.find((start) => wanted.startsWith(start));
          // It ends where no key leads on to it: then it is shown itself.
          if (way === undefined) return;
          expect(way.length).toBeGreaterThan(spelled.length);
          spelled = way;
        }
      }),
    );
  });
});

describe('marks and serials', () => {
  it('are in the order of their numbers', () => {
    expect(['P10', 'P2', 'P1'].sort(compareMarks)).toEqual(['P1', 'P2', 'P10']);
  });

  it('gives the next casting one more than the greatest of its mark', () => {
    const heads = [
      { mark: 'P1', serial: '1' },
      { mark: 'P1', serial: '10' },
      { mark: 'P2', serial: '40' },
      { mark: 'P1', serial: 'trial' },
    ];
    expect(findNextSerial(heads, 'P1')).toBe('11');
    expect(findNextSerial(heads, 'P9')).toBe('1');
  });
});
