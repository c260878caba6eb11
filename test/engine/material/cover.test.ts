import { describe, expect, it } from 'vitest';
import {
  bringsSalt,
  type ExposureClass,
  findDurabilityCover,
  isWet,
  nominalCover,
  type StructuralClass,
} from '../../../src/engine/material/cover.ts';

const EXPOSURES: readonly ExposureClass[] = [
  'X0',
  'XC1',
  'XC2',
  'XC3',
  'XC4',
  'XD1',
  'XD2',
  'XD3',
  'XS1',
  'XS2',
  'XS3',
];
const CLASSES: readonly StructuralClass[] = ['S1', 'S2', 'S3', 'S4', 'S5', 'S6'];

describe('cover by exposure', () => {
  // EN 1992-1-1, Table 4.4N, row S4 (H6-14 in test/published): 10, 15, 25, 25, 30, 35, 40, 45, 35, 40, 45 mm.
  it('has the row of 50 years', () => {
    expect(EXPOSURES.map((exposure) => findDurabilityCover(exposure, 'S4'))).toEqual([
      10, 15, 25, 25, 30, 35, 40, 45, 35, 40, 45,
    ]);
  });

  it('steps by 5 mm or not at all from class to class, and never below 10 mm', () => {
    for (const exposure of EXPOSURES)
      CLASSES.forEach((structuralClass, i) => {
        const cover = findDurabilityCover(exposure, structuralClass);
        expect(cover).toBeGreaterThanOrEqual(10);
        if (i > 0) expect([0, 5]).toContain(cover - findDurabilityCover(exposure, CLASSES[i - 1]!));
      });
  });

  // By hand: max(20, 15, 10) + 10; never below 10 + 10.
  it('is nominal with the allowance', () => {
    expect(nominalCover(20, 15, 10)).toBe(30);
    expect(nominalCover(0, 35, 10)).toBe(45);
    expect(nominalCover(0, 5, 10)).toBe(20);
  });

  it('knows where it is wet, and where salt comes', () => {
    expect(EXPOSURES.filter(isWet)).toEqual(['XC4', 'XD1', 'XD2', 'XD3', 'XS1', 'XS2', 'XS3']);
    expect(EXPOSURES.filter(bringsSalt)).toEqual(['XD1', 'XD2', 'XD3', 'XS1', 'XS2', 'XS3']);
  });
});
