import { describe, expect, it } from 'vitest';
import {
  findAisc360Kind,
  findBasePlateHole,
  findEn1090Kind,
  findIso273Fit,
  findWidestHole,
} from '../../../src/engine/hardware/clearance-holes.ts';
import { findThread, threadNames } from '../../../src/engine/hardware/threads.ts';
import { chooseWasher } from '../../../src/engine/hardware/washer-choice.ts';
import { listWashers } from '../../../src/engine/hardware/washers.ts';

const m16 = findThread('M16');
const round = (diameter: number) => ({ diameter, slot: 0 });

describe('a hole beside the tables', () => {
  // ISO 273, M16: 17, 17.5, 18.5. EN 1090-2: 18, 20. AISC: 18, 20.
  it('has the finest fit, the least kind', () => {
    expect([17, 17.1, 17.5, 18.5, 18.6].map((d) => findIso273Fit(m16, round(d)))).toEqual([
      'fine',
      'medium',
      'medium',
      'coarse',
      'wider than coarse',
    ]);
    expect([18, 20, 20.1].map((d) => findEn1090Kind(m16, round(d)))).toEqual([
      'normal',
      'oversize',
      'beyond the table',
    ]);
    expect([18, 20, 20.1].map((d) => findAisc360Kind(m16, round(d)))).toEqual([
      'normal',
      'oversize',
      'beyond the table',
    ]);
  });
  // Slots of M16, width 18. EN 1090-2: over all 22, then 16 + 24 = 40. A wider slot is in no table; ISO 273 has none.
  it('is a slot by its length over all', () => {
    const kinds = [4, 4.1, 22, 22.1].map((slot) => findEn1090Kind(m16, { diameter: 18, slot }));
    expect(kinds).toEqual(['short slot', 'long slot', 'long slot', 'beyond the table']);
    expect(findEn1090Kind(m16, { diameter: 20, slot: 2 })).toBe('beyond the table');
    expect(findAisc360Kind(m16, { diameter: 18, slot: 22 })).toBe('long slot');
    expect(findIso273Fit(m16, { diameter: 17, slot: 5 })).toBeNull();
  });
  it('has no kind where the table lacks the size, which is not the same as beyond it', () => {
    expect(findEn1090Kind(findThread('M10'), round(11))).toBeNull();
    expect(findAisc360Kind(findThread('M12'), round(14))).toBeNull();
    expect(findBasePlateHole(findThread('M12'))).toBeNull();
  });
  // The normal holes of EN 1090-2 and the coarse ones of ISO 273 share a shear by EN 1992-4, Table 6.1; its own example: M16, 18.
  it('shares a shear up to the width of EN 1992-4', () => {
    expect(findWidestHole(m16)).toBe(18);
    for (const name of threadNames) expect(findWidestHole(findThread(name))).toBeGreaterThan(findThread(name).diameter);
  });
});

describe('the washer over a hole', () => {
  // By hand, M16: 2 · 18 − 16 = 20, below 30: normal. Slot of 18 × 28 over all: 2 · 28 − 16 = 40, below 50: large. 18 × 34: 52 → plate.
  // 22 is wider than d + 3 → plate 50 × 6 of the base plate table. M12 in 16: plate, 2 · 16 − 12 = 20, at least 4 thick.
  it('covers it wherever the bolt stands', () => {
    expect(chooseWasher(m16, round(18))).toEqual({ kind: 'ISO 7089', outside: 30, thickness: 3 });
    expect(chooseWasher(m16, { diameter: 18, slot: 10 })).toEqual({ kind: 'ISO 7093-1', outside: 50, thickness: 3 });
    expect(chooseWasher(m16, { diameter: 18, slot: 16 })).toEqual({ kind: 'plate', outside: 52, thickness: 6 });
    expect(chooseWasher(m16, round(19))).toMatchObject({ kind: 'ISO 7089' });
    expect(chooseWasher(m16, round(22))).toEqual({ kind: 'plate', outside: 50, thickness: 6 });
    expect(chooseWasher(findThread('M12'), round(16))).toEqual({ kind: 'plate', outside: 20, thickness: 4 });
  });
  it('is larger in the large series', () => {
    for (const name of threadNames) {
      const [normal, large] = listWashers(findThread(name));
      expect(large.outside).toBeGreaterThan(normal.outside);
      expect(large.thicknessMax).toBeGreaterThan(large.thickness);
      expect(normal.thicknessMax).toBeGreaterThan(normal.thickness);
    }
  });
});
