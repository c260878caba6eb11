import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoltInHole, findBestShift, fitPlate } from '../../../src/assess/yard/fit-plate.ts';
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

const offset = fc.double({ min: -20, max: 20, noNaN: true });
const anyBolts = fc.array(
  fc.record({
    x: fc.integer({ min: -200, max: 200 }),
    y: fc.integer({ min: -200, max: 200 }),
    dx: offset,
    dy: offset,
    slot_mm: fc.constantFrom(0, 0, 20),
    slotAngle_deg: fc.constantFrom(0, 90, 30),
    diameter_mm: fc.constantFrom(18, 20, 22),
  }),
  { minLength: 1, maxLength: 6 },
);

function make(parts: typeof anyBolts extends fc.Arbitrary<infer T> ? T : never): readonly BoltInHole[] {
  return parts.map(({ x, y, dx, dy, ...hole }, i) => bolt(String(i), [x, y], [dx, dy], hole));
}

/** The greatest lack at a shift, written out once more from what a slotted hole is. */
function lackAt(bolts: readonly BoltInHole[], [sx, sy]: readonly [number, number]): number {
  return Math.max(
    ...bolts.map(({ bolt: [x, y], hole, boltDiameter }) => {
      const angle = (hole.slotAngle_deg * Math.PI) / 180;
      const [dx, dy] = [x - hole.at_mm[0] - sx, y - hole.at_mm[1] - sy];
      const along = dx * Math.cos(angle) + dy * Math.sin(angle);
      const end = Math.max(-hole.slot_mm / 2, Math.min(hole.slot_mm / 2, along));
      return Math.hypot(dx - end * Math.cos(angle), dy - end * Math.sin(angle)) - (hole.diameter_mm - boltDiameter) / 2;
    }),
  );
}

describe('the best shift of a plate', () => {
  it('is never beaten by a grid of shifts', () => {
    fc.assert(
      fc.property(anyBolts, (parts) => {
        const bolts = make(parts);
        const { shift, lack } = findBestShift(bolts);
        expect(lackAt(bolts, shift)).toBeCloseTo(lack, 6);
        for (let x = -24; x <= 24; x += 2)
          for (let y = -24; y <= 24; y += 2) expect(lackAt(bolts, [x, y])).toBeGreaterThan(lack - 0.01);
        for (let k = 0; k < 24; k++) {
          const [dx, dy] = turnVector([0.05, 0], 15 * k);
          expect(lackAt(bolts, [shift[0] + dx, shift[1] + dy])).toBeGreaterThan(lack - 0.01);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('of two bolts that are apart by 9 mm more lies midway: each lacks 4.5 mm less its clearance of 1 mm', () => {
    const { shift, lack } = findBestShift([bolt('1', [0, 0], [0, 0]), bolt('2', [200, 0], [9, 0])]);
    expect(shift[0]).toBeCloseTo(4.5, 3);
    expect(shift[1]).toBeCloseTo(0, 3);
    expect(lack).toBeCloseTo(3.5, 3);
  });

  it('moves with the bolts, and lacks no less when one bolt is more', () => {
    fc.assert(
      fc.property(anyBolts, offset, offset, (parts, sx, sy) => {
        const bolts = make(parts);
        const moved = bolts.map((one): BoltInHole => ({ ...one, bolt: [one.bolt[0] + sx, one.bolt[1] + sy] }));
        expect(findBestShift(moved).lack).toBeCloseTo(findBestShift(bolts).lack, 2);
        expect(findBestShift(bolts).lack).toBeGreaterThan(findBestShift(bolts.slice(0, 1)).lack - 0.001);
      }),
      { numRuns: 60 },
    );
  });
});

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
    // 9 mm apart across, 1 and 2 mm of clearance: 6 mm are left to two holes.
    expect(plate).toEqual({
      kind: 'does not go on',
      lacks: expect.closeTo(3, 3) as number,
      hole: expect.any(String) as string,
    });
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
      const { lack } = findBestShift(
        turnedBy(by).map((one) => ({ ...one, bolt: turnVector(one.bolt, -Math.sign(by) * plate.turn_deg) })),
      );
      expect(lack).toBeLessThan(0.001);
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
