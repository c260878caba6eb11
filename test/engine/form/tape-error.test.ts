import { describe, expect, it } from 'vitest';
import { permissibleTapeError, tapeDeviation, uniformDeviation } from '../../../src/engine/form/tape-error.ts';

describe('the permissible error of a tape', () => {
  // Published: a + b L of OIML R 35-1; the values at 3, 5, 8 and 10 m are H11-01 and H11-02 of test/published.
  it('counts a begun metre as a whole one', () => {
    expect(permissibleTapeError('II', 2001)).toBeCloseTo(0.9, 12);
    expect(permissibleTapeError('II', 3000)).toBeCloseTo(0.9, 12);
    expect(permissibleTapeError('II', 3001)).toBeCloseTo(1.1, 12);
    expect(permissibleTapeError('I', 1)).toBeCloseTo(0.2, 12);
    expect(permissibleTapeError('III', 500)).toBeCloseTo(1, 12);
  });

  it('is not led a metre further by the last figure of a length', () => {
    expect(permissibleTapeError('II', 3000 + 1e-9)).toBeCloseTo(0.9, 12);
    expect(permissibleTapeError('II', 3000.01)).toBeCloseTo(1.1, 12);
  });

  it('has no begun metre at no length', () => {
    expect(permissibleTapeError('II', 0)).toBe(0.3);
  });
});

describe('the standard deviation of a taped length', () => {
  // Published: GUM, a uniform spread of half-width a has a/√3. Variance of the uniform distribution on [−a, a]: a²/3.
  it('is half the width over √3', () => {
    expect(uniformDeviation(Math.sqrt(3))).toBeCloseTo(1, 12);
    expect(uniformDeviation(0.5)).toBeCloseTo(0.288675, 6);
  });

  // By hand: (0.9² + 0.5² + 1²)/3 = 0.686667; its root 0.828654.
  it('adds tape, reading and hook as variances', () => {
    expect(tapeDeviation('II', 2400)).toBeCloseTo(0.828654, 6);
    // (0.4² + 0.25 + 1)/3 = 0.47; its root 0.685565.
    expect(tapeDeviation('I', 2400)).toBeCloseTo(0.685565, 6);
  });
});
