// Coefficients and factors of ACI 318-19 and 318M-19. Expected numbers: the printed coefficients, and their conversion by
// hand with 1 lb = 4.4482216152605 N, 1 in = 25.4 mm, so 1 psi = 0.006894757293168 MPa and √psi = 0.083034675… √MPa.

import { describe, expect, it } from 'vitest';
import { BREAKOUT_CRACKING } from '../../../../src/engine/standards/aci-318-19/breakout.ts';
import { INCH_POUND, SI } from '../../../../src/engine/standards/aci-318-19/coefficients.ts';
import { PULL_OUT_CRACKING } from '../../../../src/engine/standards/aci-318-19/pull-out.ts';
import { GROUT_PAD_FACTOR } from '../../../../src/engine/standards/aci-318-19/steel-shear.ts';
import {
  CONCRETE_PHI,
  PULL_OUT_PHI,
  STEEL_PHI,
} from '../../../../src/engine/standards/aci-318-19/strength-reduction.ts';

describe('coefficients of ACI 318', () => {
  it('in inch-pound are converted exactly', () => {
    // 25.4^1.5 = 128.0120, 25.4^(5/3) = 219.4773, 25.4² = 645.16.
    // 24 · 4.448222/(0.08303467 · 128.0120) = 10.0436; 16 · 4.448222/(0.08303467 · 219.4773) = 3.90533;
    // 160 · 4.448222/(0.08303467 · 645.16) = 13.2855; the same with 7: 0.581243; 9 as 24: 3.76633.
    expect(INCH_POUND.breakout).toBeCloseTo(10.0436, 4);
    expect(INCH_POUND.deepBreakout).toBeCloseTo(3.90533, 5);
    expect(INCH_POUND.blowOut).toBeCloseTo(13.2855, 4);
    expect(INCH_POUND.edge).toBeCloseTo(0.581243, 6);
    expect(INCH_POUND.edgeCap).toBeCloseTo(3.76633, 5);
    // 125 000 · 0.006894757293 = 861.8447; 11, 25 and 2.5 · 25.4.
    expect(INCH_POUND.highestUltimate).toBeCloseTo(861.8447, 4);
    expect(INCH_POUND.deepFrom).toBeCloseTo(279.4, 9);
    expect(INCH_POUND.deepTo).toBeCloseTo(635, 9);
    expect(INCH_POUND.pryOutDepth).toBeCloseTo(63.5, 9);
  });

  it('in SI are those that the edition prints', () => {
    expect(SI).toEqual({
      breakout: 10,
      deepBreakout: 3.9,
      deepFrom: 280,
      deepTo: 635,
      blowOut: 13,
      edge: 0.6,
      edgeCap: 3.7,
      highestUltimate: 860,
      pryOutDepth: 65,
      widestStirrups: 100,
    });
  });

  it('that both share are those that two secondary sources print', () => {
    // The entry aci-coefficients of test/published/data: ψ_c,N, ψ_c,P and φ; the grout pad stands in dg1-4.7-7.
    expect(BREAKOUT_CRACKING).toEqual({ cracked: 1, uncracked: 1.25 });
    expect(PULL_OUT_CRACKING).toEqual({ cracked: 1, uncracked: 1.4 });
    expect(GROUT_PAD_FACTOR).toBe(0.8);
    expect(STEEL_PHI.ductile).toEqual({ tension: 0.75, shear: 0.65 });
    expect(STEEL_PHI.brittle).toEqual({ tension: 0.65, shear: 0.6 });
    expect(CONCRETE_PHI).toEqual({ plain: 0.7, supplementary: 0.75 });
    expect(PULL_OUT_PHI).toBe(0.7);
  });
});
