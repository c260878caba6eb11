import { describe, expect, it } from 'vitest';
import { type BoltInHole, fitPlate } from '../../../src/assess/yard/fit-plate.ts';
import { turnVector } from '../../../src/job/face-frame.ts';

function bolt(
  id: string,
  at: readonly [number, number],
  off: readonly [number, number],
  more: object = {},
): BoltInHole {
  const hole = { id, at_mm: at, diameter_mm: 18, slot_mm: 0, slotAngle_deg: 0, ...more };
  return { bolt: [at[0] + off[0], at[1] + off[1]], hole, boltDiameter: 16 };
}

describe('a plate on its bolts', () => {
  it('goes on as designed within its holes, to the very clearance', () => {
    expect(fitPlate([bolt('1', [0, 0], [1, 0]), bolt('2', [200, 0], [-1, 0])])).toEqual({ kind: 'as designed' });
    expect(fitPlate([bolt('1', [0, 0], [1.01, 0])]).kind).toBe('shifted');
    expect(fitPlate([])).toEqual({ kind: 'no plate' });
  });

  it('goes on shifted by no more than is needed', () => {
    const plate = fitPlate([bolt('1', [0, 0], [9, 0])]);
    expect(plate).toEqual({ kind: 'shifted', by: expect.closeTo(8, 3) as number });
  });

  it('does not go on where no shift lets every bolt in, and says which hole lacks how much', () => {
    const plate = fitPlate([bolt('a', [0, 0], [0, 0]), bolt('b', [200, 0], [0, 9], { diameter_mm: 20 })]);
    // 9 mm apart across, of which a turn of 1° over 200 mm takes 3.49; 1 and 2 mm of clearance: 2.51 mm are left to two holes.
    expect(plate).toEqual({
      kind: 'does not go on',
      lacks: expect.closeTo((9 - 200 * Math.sin(Math.PI / 180) - 3) / 2, 3) as number,
      hole: expect.stringMatching(/^[ab]$/) as string,
    });
    // A hole that its bolt does not go through is the one that lacks, however the plate lies.
    const narrow = fitPlate([bolt('a', [0, 0], [0, 0]), bolt('b', [200, 0], [0, 0], { diameter_mm: 15 })]);
    expect(narrow).toEqual({ kind: 'does not go on', lacks: expect.closeTo(0.5, 3) as number, hole: 'b' });
  });

  it('uses a slot along it and not across it', () => {
    const slot = { slot_mm: 20, slotAngle_deg: 90 };
    const fixed = bolt('1', [0, 0], [0, 0]);
    expect(fitPlate([fixed, bolt('2', [200, 0], [0, 10.9], slot)]).kind).toBe('as designed');
    expect(fitPlate([fixed, bolt('2', [200, 0], [10.9, 0], slot)]).kind).toBe('does not go on');
  });
});

describe('a plate that is turned', () => {
  const corners = [
    ['1', [-150, -50]],
    ['2', [150, -50]],
    ['3', [150, 50]],
    ['4', [-150, 50]],
  ] as const;
  const turnedBy = (turn_deg: number) =>
    corners.map(([id, at]) => {
      const [x, y] = turnVector(at, turn_deg);
      return bolt(id, at, [x - at[0], y - at[1]]);
    });

  it('goes on where its bolts lie turned together, by no more than it must', () => {
    // 0.7° at 158 mm from the middle is 1.93 mm, of which the holes take up 1 mm: what is left is about 0.34°.
    for (const by of [0.7, -0.7]) {
      const plate = fitPlate(turnedBy(by));
      expect(plate.kind).toBe('turned');
      if (plate.kind !== 'turned') continue;
      expect(plate.turn_deg).toBeCloseTo(0.7 - (Math.asin(0.5 / Math.hypot(150, 50)) * 360) / Math.PI, 2);
      expect(plate.by).toBeCloseTo(0, 1);
      // Turned by that much by hand it goes on by a shift at most.
      const byHand = turnedBy(by).map((one) => ({
        ...one,
        bolt: turnVector(one.bolt, -Math.sign(by) * (plate.turn_deg + 0.001)),
      }));
      expect(['as designed', 'shifted']).toContain(fitPlate(byHand).kind);
    }
  });

  it('does not go on where it would have to stand askew by more than a degree, or where bolts are too far apart', () => {
    expect(fitPlate(turnedBy(2.5)).kind).toBe('does not go on');
    expect(fitPlate([bolt('1', [0, 0], [0, 0]), bolt('2', [200, 0], [9, 0])])).toMatchObject({
      kind: 'does not go on',
      lacks: expect.closeTo(3.5, 2) as number,
    });
  });

  it('is shifted only where that is enough', () => {
    expect(fitPlate(turnedBy(0.3).map((one) => ({ ...one, bolt: [one.bolt[0] + 4, one.bolt[1]] }))).kind).toBe(
      'shifted',
    );
  });
});
