import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { netSectionAtCrossHole } from '../../../src/engine/hardware/cross-hole.ts';

/** Second way of computing: thin strips along the hole, summed by the midpoint rule. */
function sumStrips(D: number, b: number, h: number) {
  const strips = 20_000;
  let area = 0;
  let acrossHole = 0;
  let alongHole = 0;
  for (let i = 0; i < strips; i++) {
    const x = -D / 2 + ((i + 0.5) * D) / strips;
    if (Math.abs(x) < h / 2) continue;
    const outer = Math.sqrt((D / 2) ** 2 - x * x);
    const inner = Math.sqrt(Math.max(0, (b / 2) ** 2 - x * x));
    area += (2 * (outer - inner) * D) / strips;
    acrossHole += ((2 / 3) * (outer ** 3 - inner ** 3) * D) / strips;
    alongHole += (2 * x * x * (outer - inner) * D) / strips;
  }
  return { area, sectionModulus: Math.min(acrossHole / Math.sqrt((D / 2) ** 2 - (h / 2) ** 2), alongHole / (D / 2)) };
}

describe('net section at the cross hole', () => {
  // Hand calculation: D 24, solid, hole 10: π·144 = 452.39; strip 2·(5·√119 + 144·asin(5/12)) = 2·(54.544 + 61.880) = 232.85; net 219.54.
  it('agrees with a hand calculation for a bar', () => {
    expect(netSectionAtCrossHole(24, 0, 10).area).toBeCloseTo(219.54, 1);
  });
  // Closed textbook values without a hole: π/4 (24² − 16²) = 251.33 mm², W = π/32 (24⁴ − 16⁴)/24 = 1089.09 mm³.
  it('is the plain tube when the hole is nothing', () => {
    const plain = netSectionAtCrossHole(24, 16, 0);
    expect(plain.area).toBeCloseTo(251.327, 3);
    expect(plain.sectionModulus).toBeCloseTo((Math.PI / 32) * ((24 ** 4 - 16 ** 4) / 24), 6);
  });
  it('agrees with summed strips for any tube', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (D, boreShare, holeShare) => {
          const exact = netSectionAtCrossHole(D, boreShare * D, holeShare * D);
          const summed = sumStrips(D, boreShare * D, holeShare * D);
          // Midpoint strips are 1/20 000 of the diameter; a strip at the hole's edge counts fully or not at all.
          expect(Math.abs(exact.area - summed.area)).toBeLessThan(3e-4 * D * D);
          expect(Math.abs(exact.sectionModulus - summed.sectionModulus)).toBeLessThan(3e-4 * D ** 3);
        },
      ),
      { numRuns: 40 },
    );
  });
});
