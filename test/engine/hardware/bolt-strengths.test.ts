import { describe, expect, it } from 'vitest';
import { findBoltLoads, findLeastStrengths, nominalStressArea } from '../../../src/engine/hardware/bolt-strengths.ts';
import { findBoltSteel, propertyClasses } from '../../../src/engine/hardware/property-classes.ts';
import { findThread, threadNames } from '../../../src/engine/hardware/threads.ts';

const [M16, M18, M20] = [findThread('M16'), findThread('M18'), findThread('M20')];

describe('loads of a bolt', () => {
  // By hand: 157 · 580 = 91 060, 157 · 800 = 125 600; 245 · 600 = 147 000, 245 · 830 = 203 350.
  it('are the nominal area times the least stresses', () => {
    expect(findBoltLoads('8.8', M16)).toEqual({ proof: 91_060, breaking: 125_600, isProofLoad: true });
    expect(findBoltLoads('8.8', M20)).toEqual({ proof: 147_000, breaking: 203_350, isProofLoad: true });
  });
  // ISO 3506-1 has no proof load; 157 · 450 = 70 650 at the 0.2 % stress, 157 · 700 = 109 900.
  it('take the 0.2 % stress for stainless steel and say so', () => {
    expect(findBoltLoads('A4-70', M16)).toEqual({ proof: 70_650, breaking: 109_900, isProofLoad: false });
  });
  // ISO 898-1 prints 20.1, 36.6, 58.0, 84.3, 115, 157, 192, 245, 303, 353 (recalled for the sizes between).
  it('use areas of three figures', () => {
    expect(threadNames.map((name) => nominalStressArea(findThread(name)))).toEqual([
      20.1, 36.6, 58, 84.3, 115, 157, 192, 245, 303, 353,
    ]);
  });
});

describe('least strengths', () => {
  it('are never below the nominal ones of the class', () => {
    for (const name of propertyClasses)
      for (const thread of [M16, M18]) {
        const [least, nominal] = [findLeastStrengths(name, thread), findBoltSteel(name)];
        expect(least.ultimate).toBeGreaterThanOrEqual(nominal.ultimate);
        expect(least.yield).toBeGreaterThanOrEqual(nominal.yield);
        expect(least.proof ?? least.yield).toBeLessThanOrEqual(least.yield);
      }
  });
  // ISO 898-1, Table 3, and ISO 3506-1 (no proof load).
  it('are those of the standards', () => {
    expect(findLeastStrengths('4.6', M16)).toEqual({ ultimate: 400, yield: 240, proof: 225 });
    expect(findLeastStrengths('5.8', M16)).toEqual({ ultimate: 520, yield: 420, proof: 380 });
    expect(findLeastStrengths('10.9', M16)).toEqual({ ultimate: 1040, yield: 940, proof: 830 });
    expect(findLeastStrengths('A2-50', M16)).toEqual({ ultimate: 500, yield: 210, proof: null });
  });
  // ISO 898-1: 5.6 500/300/280 (recalled); 8.8 steps above 16 mm.
  it('step for 8.8 above 16 mm only', () => {
    expect(findLeastStrengths('8.8', M16)).toEqual({ ultimate: 800, yield: 640, proof: 580 });
    expect(findLeastStrengths('8.8', M18)).toEqual({ ultimate: 830, yield: 660, proof: 600 });
    for (const name of propertyClasses.filter((c) => c !== '8.8'))
      expect(findLeastStrengths(name, M18)).toEqual(findLeastStrengths(name, M16));
    expect(findLeastStrengths('5.6', M16)).toEqual({ ultimate: 500, yield: 300, proof: 280 });
  });
});
