import { expect, it } from 'vitest';
import { CalcError } from '../../src/calc/calc-error.ts';
import { calculate } from '../../src/calc/calculation.ts';

/** What is wrong, the input, the key that must be named, and words that must follow it. */
export type WrongInput = readonly [what: string, input: unknown, key: string, words: RegExp];

/** Wants one line with the key and what was expected for each of at least twenty wrong inputs; the right one must be answered. */
export function refuseAll(right: object, wrong: readonly WrongInput[]): void {
  it('is answered where nothing is wrong', () => {
    expect(() => calculate(right)).not.toThrow();
    expect(wrong.length).toBeGreaterThanOrEqual(20);
  });

  it.each(wrong)('%s', (_, input, key, words) => {
    const caught = catchError(input);
    expect(caught.key).toBe(key);
    expect(caught.message).toMatch(words);
    expect(caught.message).toContain('expected');
    expect(caught.message).not.toContain('\n');
  });
}

function catchError(input: unknown): CalcError {
  try {
    calculate(input);
  } catch (error) {
    if (error instanceof CalcError) return error;
    throw error;
  }
  throw new Error('expected a CalcError');
}
