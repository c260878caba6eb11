import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  findStandardsWithLength,
  findThreadLength,
  listNominalLengths,
} from '../../../src/engine/hardware/bolt-dimensions.ts';
import {
  type BoltPath,
  chooseLength,
  findLengthLimits,
  placeBolt,
  splitPackerRange,
} from '../../../src/engine/hardware/bolt-length.ts';
import { findThread, threadNames } from '../../../src/engine/hardware/threads.ts';

const path: BoltPath = {
  thread: findThread('M16'),
  grip: 15,
  washer: 3,
  thickestWasher: 3,
  threadStart: 0,
  threadDepth: 40,
  minEngagement: 16,
};
const STOCK = [30, 35, 40, 45, 50, 55, 60];

describe('length of a bolt', () => {
  // By hand: 3 + 15 + 16 = 34 to 3 + 15 + 40 − 2 = 56; 35 leaves 35 − 18 = 17 in contact and 40 − 17 = 23 to the bottom.
  // By hand: a washer of up to 3.3 mm: 3.3 + 15 + 16 = 34.3 at least, so not 34; 35 leaves 35 − 18.3 = 16.7 with it and 17 with 3 mm.
  it('counts the thickest washer for the engagement, the nominal one for the bottom', () => {
    const thick = { ...path, thickestWasher: 3.3 };
    expect(findLengthLimits(thick, [0, 0])[0]).toBeCloseTo(34.3, 9);
    expect(findLengthLimits(thick, [0, 0])[1]).toBe(56);
    expect(chooseLength(thick, [34, 35], [0, 0])).toEqual({
      length: 35,
      engagement: { least: expect.closeTo(16.7, 9), greatest: 17 },
      clearToBottom: 23,
    });
  });
  it('is the shortest that engages enough', () => {
    expect(findLengthLimits(path, [0, 0])).toEqual([34, 56]);
    expect(chooseLength(path, STOCK, [0, 0])).toEqual({
      length: 35,
      engagement: { least: 17, greatest: 17 },
      clearToBottom: 23,
    });
    expect(chooseLength(path, [...STOCK].reverse(), [0, 0])?.length).toBe(35);
  });
  it('takes a length at either limit, none outside', () => {
    expect(chooseLength(path, [34], [0, 0])?.length).toBe(34);
    expect(chooseLength(path, [56], [0, 0])?.length).toBe(56);
    expect(chooseLength(path, [33.9, 56.1], [0, 0])).toBeNull();
    // 0.1 + 0.2 is a hair above 0.3: sums of decimals must not cost a length.
    expect(
      chooseLength({ ...path, grip: 0.1, washer: 0.2, thickestWasher: 0.2, minEngagement: 16 }, [16.3], [0, 0])?.length,
    ).toBe(16.3);
  });
  // A recess adds to the length as packers do: 12 mm more, 46 to 68.
  it('grows by the recess', () => {
    expect(findLengthLimits({ ...path, threadStart: 12 }, [0, 0])).toEqual([46, 68]);
    expect(chooseLength({ ...path, threadStart: 12 }, STOCK, [0, 0])?.length).toBe(50);
  });
  // Range 0 to 10: 34 + 10 = 44 to 56; 45 engages 17 with all packers, 27 with none, 13 to the bottom.
  it('serves a range of packers', () => {
    expect(chooseLength(path, STOCK, [0, 10])).toEqual({
      length: 45,
      engagement: { least: 17, greatest: 27 },
      clearToBottom: 13,
    });
    // 0 to 23 needs 57 to 56: none.
    expect(chooseLength(path, [...STOCK, 56.5], [0, 23])).toBeNull();
  });
});

describe('a range of packers split by the stock', () => {
  const shallow: BoltPath = { ...path, threadDepth: 25 };
  // By hand: a length L serves packers from L − 18 − 23 to L − 18 − 16: 35 to 1; 40 from 0 (−1) to 6; 45 from 4 to 11.
  it('takes the length that reaches farthest, and says where none serves', () => {
    const rows = splitPackerRange(shallow, [35, 40, 45], [0, 15]);
    expect(rows.map(({ packers, choice }) => [...packers, choice?.length ?? null])).toEqual([
      [0, 6, 40],
      [6, 11, 45],
      [11, 15, null],
    ]);
  });
  it('leaves a gap between lengths that do not meet', () => {
    // 40 serves −1 to 6, 50 serves 9 to 16: nothing from 6 to 9.
    const rows = splitPackerRange(shallow, [40, 50], [0, 12]);
    expect(rows.map(({ packers, choice }) => [...packers, choice?.length ?? null])).toEqual([
      [0, 6, 40],
      [6, 9, null],
      [9, 12, 50],
    ]);
  });
  it('takes one length where one serves all, the shortest', () => {
    expect(splitPackerRange(path, STOCK, [0, 10]).map(({ choice }) => choice?.length)).toEqual([45]);
    expect(splitPackerRange(path, STOCK, [5, 5]).map(({ choice }) => choice?.length)).toEqual([40]);
    expect(splitPackerRange(shallow, [40], [6, 6]).map(({ choice }) => choice?.length)).toEqual([40]);
    expect(splitPackerRange(shallow, [40], [6, 8]).map(({ choice }) => choice)).toEqual([null]);
  });

  const anyPath = fc
    .record({
      thread: fc.constantFrom(...threadNames).map(findThread),
      grip: fc.integer({ min: 0, max: 40 }),
      washer: fc.constantFrom(0, 1.6, 2.5, 3, 6),
      threadStart: fc.integer({ min: 0, max: 20 }),
      threadDepth: fc.integer({ min: 5, max: 80 }),
      minEngagement: fc.integer({ min: 4, max: 40 }),
    })
    .map((one): BoltPath => ({ ...one, thickestWasher: one.washer }));
  const anyStock = fc.array(fc.integer({ min: 10, max: 160 }), { minLength: 1, maxLength: 12 });
  const anyRange = fc
    .tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }))
    .map(([a, b]): [number, number] => [a, a + b]);

  it('covers the range without gaps or overlap, and every length in it is safe at both ends', () => {
    fc.assert(
      fc.property(anyPath, anyStock, anyRange, (one, stock, range) => {
        const rows = splitPackerRange(one, stock, range);
        expect(rows[0]!.packers[0]).toBe(range[0]);
        expect(rows.at(-1)!.packers[1]).toBe(range[1]);
        for (const [i, row] of rows.entries()) {
          if (i > 0) expect(row.packers[0]).toBe(rows[i - 1]!.packers[1]);
          if (row.choice === null) continue;
          expect(stock).toContain(row.choice.length);
          expect(row.choice.engagement.least).toBeGreaterThanOrEqual(one.minEngagement - 1e-6);
          expect(row.choice.clearToBottom).toBeGreaterThanOrEqual(one.thread.pitch - 1e-6);
        }
      }),
    );
  });
  it('leaves out no packers that some length would serve', () => {
    fc.assert(
      fc.property(anyPath, anyStock, anyRange, (one, stock, range) => {
        for (const { packers, choice } of splitPackerRange(one, stock, range)) {
          if (choice !== null) continue;
          const middle = (packers[0] + packers[1]) / 2;
          expect(chooseLength(one, stock, [middle, middle])).toBeNull();
        }
      }),
    );
  });
  it('more packers never need a shorter bolt, and a deeper thread never refuses one', () => {
    fc.assert(
      fc.property(anyPath, anyStock, anyRange, (one, stock, [few, many]) => {
        const [a, b] = [few, many].map((p) => chooseLength(one, stock, [p, p]));
        if (a !== null && b !== null) expect(b!.length).toBeGreaterThanOrEqual(a!.length);
        const deeper = chooseLength({ ...one, threadDepth: one.threadDepth + 7 }, stock, [few, few]);
        if (a !== null) expect(deeper).toMatchObject({ length: a!.length, engagement: a!.engagement });
      }),
    );
  });
  it('what is placed adds up: washer, grip, packers, recess and engagement make the length', () => {
    const { engagement, clearToBottom } = placeBolt({ ...path, threadStart: 4 }, 60, [2, 9]);
    // 60 − 3 − 15 − 4 = 38; less 9: 29, less 2: 36; 40 − 36 = 4.
    expect(engagement).toEqual({ least: 29, greatest: 36 });
    expect(clearToBottom).toBe(4);
  });
});

describe('bolts as made', () => {
  // ISO 4014: b = 2 · 16 + 6 = 38 at 125 mm, 44 above, 57 above 200; a short bolt is all thread.
  it('have a thread of a length of its own', () => {
    const m16 = findThread('M16');
    expect([30, 125, 126, 200, 201].map((length) => findThreadLength(m16, length))).toEqual([30, 38, 44, 44, 57]);
  });
  it('have nominal lengths, in order', () => {
    expect(findStandardsWithLength(35)).toEqual(['ISO 4017', 'ISO 4014']);
    expect(findStandardsWithLength(220)).toEqual(['ISO 4014']);
    expect([75, 85, 95].flatMap(findStandardsWithLength)).toEqual([]);
    for (const standard of ['ISO 4014', 'ISO 4017'] as const) {
      const lengths = listNominalLengths(standard);
      expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
    }
  });
});
