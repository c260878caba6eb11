import { describe, expect, it } from 'vitest';
import { leastGalvanising, PLATINGS, thickestPlating } from '../../../src/engine/material/zinc-coatings.ts';

describe('least hot-dip galvanising', () => {
  // ISO 1461:2009, Tables 3 and 4 (H6-05, H6-06 in test/published), at the limits of its rows.
  it.each([
    ['not centrifuged', 6.1, 70, 85],
    ['not centrifuged', 6, 55, 70],
    ['not centrifuged', 3, 45, 55],
    ['not centrifuged', 1.5, 45, 55],
    ['not centrifuged', 1.4, 35, 45],
    ['thread', 6.1, 40, 50],
    ['thread', 6, 20, 25],
    ['centrifuged', 3, 45, 55],
    ['centrifuged', 2.9, 35, 45],
  ] as const)('%s, %d mm', (kind, size, local, mean) => {
    expect(leastGalvanising(kind, size)).toEqual({ local, mean });
  });
});

describe('electroplated zinc', () => {
  it('averages less than the local least and ends at 28 µm', () => {
    for (const { nominal, localMin, meanMin, meanMax } of PLATINGS) {
      expect(localMin).toBe(nominal);
      expect(meanMin).toBeLessThan(nominal);
      expect(meanMax).toBeGreaterThan(nominal);
    }
    // ISO 4042, batch average of the thickest coating (H6-08).
    expect(thickestPlating()).toBe(28);
  });
});
