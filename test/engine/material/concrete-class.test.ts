import { describe, expect, it } from 'vitest';
import {
  elasticModulus,
  lowTensileStrength,
  meanStrength,
  meanTensileStrength,
} from '../../../src/engine/material/concrete-class.ts';

describe('concrete by its class', () => {
  // Published: EN 1992-1-1, Table 3.1 (H7-02 in test/published), printed to 0.1 MPa and 1 GPa; C55/67 and C90/105 recalled.
  it.each([
    [20, 28, 2.2, 1.5, 30],
    [40, 48, 3.5, 2.5, 35],
    [50, 58, 4.1, 2.9, 37],
    [55, 63, 4.2, 3.0, 38],
    [90, 98, 5.0, 3.5, 44],
  ])('C%i has the values of the table', (f_ck, f_cm, f_ctm, f_ctk, E_cm) => {
    expect(meanStrength(f_ck)).toBe(f_cm);
    expect(Math.abs(meanTensileStrength(f_ck) - f_ctm)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(lowTensileStrength(f_ck) - f_ctk)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(elasticModulus(f_ck) / 1000 - E_cm)).toBeLessThanOrEqual(0.5);
  });

  // By hand: 0.3 · 50^(2/3) = 4.0716, 2.12 · ln(1 + 5.9) of a hair more: f_cm = 58 → 2.12 · 1.9169 = 4.0639.
  it('changes its tensile formula above 50 MPa', () => {
    expect(meanTensileStrength(50)).toBeCloseTo(4.0716, 4);
    expect(meanTensileStrength(50 + 1e-9)).toBeCloseTo(4.0639, 4);
  });
});
