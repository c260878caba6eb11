import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseChair, type StackQuestion, sinkOnly, sumMovements } from '../../../src/engine/form/chair-stack.ts';

/** Common practice, as the section adds up: 180 thick, insert 95, aimed 1 below the face, allowed 0 to 3. */
const stack: StackQuestion = {
  thickness: 180,
  insertLength: 95,
  aim: 1,
  allowed: { least: 0, greatest: 3 },
  chairs: [75, 80, 84, 90],
  movements: sinkOnly(0),
};
const one = (value: number) => ({ least: value, greatest: value });

describe('an insert on a chair, where nothing but the chair moves', () => {
  // By hand: 180 − 84 − 95 = 1; 84 + 95 + 0 = 179 and 84 + 95 + 3 = 182.
  it('meets the aim, and tells for which thickness it stays right', () => {
    const answer = chooseChair(stack);
    expect(answer.chairNeeded).toBe(84);
    expect(answer.chosen).toEqual({ chair: 84, topBelowFace: one(1), verdict: 'fits' });
    expect(answer.thicknessRange).toEqual({ least: 179, greatest: 182 });
  });

  // By hand: 80 leaves 5, 90 leaves −5, 75 leaves 10; off the aim by 4, 6 and 9.
  it('lists the rest of the stock, nearest to the aim first', () => {
    expect(chooseChair(stack).others).toEqual([
      { chair: 80, topBelowFace: one(5), verdict: 'too deep' },
      { chair: 90, topBelowFace: one(-5), verdict: 'proud' },
      { chair: 75, topBelowFace: one(10), verdict: 'too deep' },
    ]);
  });

  // By hand: a chair that sinks by 2 needs 86; on 84 the top lies 3 below, on 86 1.
  it('counts the sink', () => {
    const answer = chooseChair({ ...stack, chairs: [84, 86], movements: sinkOnly(2) });
    expect(answer.chairNeeded).toBe(86);
    expect(answer.chosen).toMatchObject({ chair: 86, topBelowFace: one(1) });
    expect(answer.others[0]).toMatchObject({ chair: 84, topBelowFace: one(3), verdict: 'fits' });
    expect(answer.thicknessRange).toEqual({ least: 179, greatest: 182 });
  });

  it('takes the lower of two chairs as near to the aim', () => {
    expect(chooseChair({ ...stack, chairs: [85, 83] }).chosen.chair).toBe(83);
    expect(chooseChair({ ...stack, chairs: [83, 85] }).chosen.chair).toBe(83);
  });

  it('allows exactly the limits', () => {
    expect(chooseChair({ ...stack, chairs: [82] }).chosen.verdict).toBe('fits');
    expect(chooseChair({ ...stack, chairs: [85] }).chosen.verdict).toBe('fits');
    expect(chooseChair({ ...stack, chairs: [81.99] }).chosen.verdict).toBe('too deep');
    expect(chooseChair({ ...stack, chairs: [85.01] }).chosen.verdict).toBe('proud');
    expect(chooseChair({ ...stack, allowed: { least: 1, greatest: 3 }, chairs: [84.5] }).chosen.verdict).toBe(
      'too shallow',
    );
  });

  // 180.3 − 84.2 − 95.1 is a hair above 1 in floating point.
  it('is not led astray by the last figures', () => {
    const answer = chooseChair({
      ...stack,
      thickness: 180.3,
      insertLength: 95.1,
      allowed: one(1),
      chairs: [84.2],
    });
    expect(answer.chosen.verdict).toBe('fits');
  });

  it('never allows a top above the face, whatever is allowed', () => {
    const answer = chooseChair({ ...stack, allowed: { least: -10, greatest: 3 }, chairs: [86, 90] });
    expect(answer.chosen.verdict).toBe('proud');
    expect(answer.thicknessRange?.least).toBe(86 + 95);
  });

  // By hand: allowed 0 to 3 leaves chairs of 82 to 85, and on 70 inserts of 107 to 110.
  it('says what would fit when the stock does not', () => {
    const answer = chooseChair({ ...stack, chairs: [90, 70] });
    expect(answer.chosen).toMatchObject({ chair: 70, verdict: 'too deep' });
    expect(answer.fittingChairs).toEqual({ least: 82, greatest: 85 });
    expect(answer.fittingLengths).toEqual([
      { chair: 70, lengths: { least: 107, greatest: 110 } },
      { chair: 90, lengths: { least: 87, greatest: 90 } },
    ]);
  });

  it('knows no insert for a chair as high as the panel, and none without chairs', () => {
    expect(chooseChair({ ...stack, chairs: [180] }).fittingLengths).toEqual([{ chair: 180, lengths: null }]);
    expect(() => chooseChair({ ...stack, chairs: [] })).toThrow(/expected at least one height/);
  });
});

describe('an insert on a chair in a form that gives way', () => {
  const movements = {
    chairSink: { least: 0, greatest: 2 },
    formSag: { least: 0, greatest: 1 },
    screedDeflection: { least: 0, greatest: 3 },
    thicknessDeviation: { least: -5, greatest: 5 },
  };

  // By hand: at least 0 + 0 − 5 − 3 = −8, at most 2 + 1 + 5 − 0 = 8.
  it('adds the movements up: sink and sag lower the top, a bent screed board lowers the face', () => {
    expect(sumMovements(movements)).toEqual({ least: -8, greatest: 8 });
    expect(sumMovements({ ...movements, thicknessDeviation: one(0) })).toEqual({ least: -3, greatest: 3 });
    expect(sumMovements({ ...movements, screedDeflection: { least: 1, greatest: 3 } }).greatest).toBe(7);
    expect(sumMovements({ ...movements, formSag: one(1) }).least).toBe(-7);
    expect(sumMovements({ ...movements, chairSink: one(2) }).least).toBe(-6);
  });

  // By hand: chair 77: 180 − 77 − 95 = 8, from 0 to 16. Chair 80: from −3 to 13.
  it('never takes a chair that may come out proud while another does not', () => {
    const answer = chooseChair({
      ...stack,
      aim: 2,
      allowed: { least: 0, greatest: 5 },
      chairs: [84, 80, 77, 60],
      movements,
    });
    expect(answer.chosen).toMatchObject({ chair: 77, topBelowFace: { least: 0, greatest: 16 }, verdict: 'too deep' });
    expect(answer.fittingChairs).toBeNull();
    expect(answer.thicknessRange).toBeNull();
    expect(answer.fittingLengths.every(({ lengths }) => lengths === null)).toBe(true);
  });

  // By hand: ±1.5 and +1 within 0 to 5: chairs of 85 − (5 − 2.5) = 82.5 down to 85 − (0 + 1.5) = 83.5 high.
  it('finds the chairs that fit whatever moves', () => {
    const answer = chooseChair({
      ...stack,
      aim: 2,
      allowed: { least: 0, greatest: 5 },
      chairs: [80, 83, 85],
      movements: {
        chairSink: { least: 0, greatest: 1 },
        formSag: one(0),
        screedDeflection: one(0),
        thicknessDeviation: { least: -1.5, greatest: 1.5 },
      },
    });
    expect(answer.fittingChairs).toEqual({ least: 82.5, greatest: 83.5 });
    expect(answer.chosen).toEqual({ chair: 83, topBelowFace: { least: 0.5, greatest: 4.5 }, verdict: 'fits' });
    // Drawn 179.5 to 180.5 thick, all movements stay within 0 to 5.
    expect(answer.thicknessRange).toEqual({ least: 179.5, greatest: 180.5 });
  });
});

const halves = (low: number, high: number) => fc.integer({ min: 2 * low, max: 2 * high }).map((n) => n / 2);
const anySpan = (low: number, high: number) =>
  fc.tuple(halves(low, high), halves(low, high)).map(([a, b]) => ({ least: Math.min(a, b), greatest: Math.max(a, b) }));
const anyStack: fc.Arbitrary<StackQuestion> = fc.record({
  thickness: halves(120, 250),
  insertLength: halves(60, 110),
  aim: halves(0, 5),
  allowed: anySpan(0, 8),
  chairs: fc.uniqueArray(halves(20, 150), { minLength: 1, maxLength: 8 }),
  movements: fc.record({
    chairSink: anySpan(0, 3),
    formSag: anySpan(0, 2),
    screedDeflection: anySpan(0, 3),
    thicknessDeviation: anySpan(-3, 3),
  }),
});

describe('properties of the stack', () => {
  it('asks for a taller chair by what a panel is thicker, and gives the same tops on chairs raised with it', () => {
    fc.assert(
      fc.property(anyStack, halves(1, 40), (question, thicker) => {
        const before = chooseChair(question);
        const after = chooseChair({
          ...question,
          thickness: question.thickness + thicker,
          chairs: question.chairs.map((chair) => chair + thicker),
        });
        expect(after.chairNeeded).toBe(before.chairNeeded + thicker);
        expect(after.chosen).toEqual({ ...before.chosen, chair: before.chosen.chair + thicker });
      }),
    );
  });

  it('never chooses what does not fit while something does, nor what may be proud while something is not', () => {
    fc.assert(
      fc.property(anyStack, (question) => {
        const { chosen, others } = chooseChair(question);
        if (chosen.verdict !== 'fits') expect(others.every(({ verdict }) => verdict !== 'fits')).toBe(true);
        if (chosen.verdict === 'proud') expect(others.every(({ verdict }) => verdict === 'proud')).toBe(true);
        if (chosen.verdict !== 'proud') expect(chosen.topBelowFace.least).toBeGreaterThanOrEqual(0);
        expect([...others, chosen].map(({ chair }) => chair).sort()).toEqual([...question.chairs].sort());
      }),
    );
  });

  it('keeps its word about chairs, lengths and thickness that fit', () => {
    fc.assert(
      fc.property(anyStack, halves(-4, 4), (question, off) => {
        const { fittingChairs, chosen, thicknessRange, fittingLengths } = chooseChair(question);
        const verdictOf = (changes: Partial<StackQuestion>) => chooseChair({ ...question, ...changes }).chosen.verdict;
        if (fittingChairs !== null) {
          const chair = fittingChairs.least + off;
          const isInside = off >= 0 && chair <= fittingChairs.greatest;
          if (chair > 0 && fittingChairs.least > 0) expect(verdictOf({ chairs: [chair] }) === 'fits').toBe(isInside);
        }
        if (thicknessRange !== null) {
          const thickness = thicknessRange.greatest + off;
          const isInside = off <= 0 && thickness >= thicknessRange.least;
          expect(verdictOf({ thickness, chairs: [chosen.chair] }) === 'fits').toBe(isInside);
        }
        for (const { chair, lengths } of fittingLengths) {
          if (lengths === null) continue;
          expect(verdictOf({ chairs: [chair], insertLength: lengths.greatest })).toBe('fits');
          expect(verdictOf({ chairs: [chair], insertLength: lengths.greatest + 0.5 })).not.toBe('fits');
        }
      }),
    );
  });
});
