import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { findHoleFit, findRoundSlackNeeded, prepareHoles } from '../../../src/engine/tolerance/hole-fit.ts';
import type { PlateHole } from '../../../src/engine/tolerance/plate-hole.ts';
import { IS_LONG } from '../../long.ts';
import { clearancesOf, type HoleCase, makeCase, makeRandom, middleOf, searchDensely, turnPoint } from './hole-cases.ts';

const hole = (x: number, y: number, slack = 1, slot = 0, angle = 0): PlateHole => ({ at: [x, y], slack, slot, angle });
const solve = ({ holes, bolts }: HoleCase) => findHoleFit(holes, bolts);
const asFlat = (bolts: readonly Point[]) => Float64Array.from(bolts.flat());
const many = (count: number, seed: number): readonly HoleCase[] => {
  const random = makeRandom(seed);
  return Array.from({ length: count }, (_, i) => makeCase(random, i));
};

describe('the best movement of a plate', () => {
  it('is proven within 0.001 mm in every one of 10,000 random cases, and has the clearances that it tells', () => {
    const worst = { proof: 0, told: 0, move: 0 };
    for (const one of many(10_000, 1)) {
      const { margin, provenWithin, move, clearances, fits } = solve(one);
      const told = clearancesOf(one, move.turn, move.shift);
      worst.proof = Math.max(worst.proof, provenWithin);
      worst.told = Math.max(worst.told, Math.abs(Math.min(...told) - margin));
      worst.move = Math.max(worst.move, ...told.map((value, i) => Math.abs(value - clearances[i]!)));
      expect(fits).toBe(margin >= 0);
    }
    expect(worst.proof).toBeLessThan(0.001);
    expect(worst.told).toBeLessThan(2e-6);
    expect(worst.move).toBeLessThan(1e-8);
  });

  it('is never beaten by a dense search, by more than it says', () => {
    const random = makeRandom(5);
    let [beaten, near] = [0, 0];
    const cases = many(IS_LONG ? 10_000 : 60, 2);
    for (const one of cases) {
      const { margin, provenWithin } = solve(one);
      const found = searchDensely(one, random);
      if (found > margin + provenWithin + 1e-8) beaten += 1;
      if (found > margin - 0.05) near += 1;
    }
    expect(beaten).toBe(0);
    // The search comes near often enough for its silence to mean something.
    expect(near).toBeGreaterThan(cases.length / 2);
    // All cases take two minutes.
  }, 600_000);

  it('is the same for a plate and its bolts turned, mirrored and shifted together', () => {
    for (const one of many(400, 3)) {
      const { margin } = solve(one);
      const by = 1.234;
      const turned = {
        holes: one.holes.map((h) => ({ ...h, at: turnPoint(h.at, by), angle: h.angle + by })),
        bolts: one.bolts.map((bolt) => turnPoint(bolt, by)),
      };
      const mirrored = {
        holes: one.holes.map((h) => ({ ...h, at: [-h.at[0], h.at[1]] as const, angle: -h.angle })),
        bolts: one.bolts.map(([x, y]) => [-x, y] as const),
      };
      const shifted = {
        holes: one.holes.map((h) => ({ ...h, at: [h.at[0] + 3000, h.at[1] - 500] as const })),
        bolts: one.bolts.map(([x, y]) => [x + 3000, y - 500] as const),
      };
      for (const other of [turned, mirrored, shifted])
        expect(Math.abs(solve(other).margin - margin)).toBeLessThan(3e-6);
      // Bolts moved as a whole need the same movement of the plate on top.
      const bolts = one.bolts.map((bolt): Point => {
        const [x, y] = turnPoint(bolt, 0.3);
        return [x + 7, y - 9];
      });
      expect(Math.abs(solve({ holes: one.holes, bolts }).margin - margin)).toBeLessThan(3e-6);
    }
  });

  it('is no better with one more hole, and no worse with wider holes, longer slots or a larger turn', () => {
    for (const { holes, bolts } of many(400, 4)) {
      const { margin } = findHoleFit(holes, bolts);
      if (holes.length > 2) expect(findHoleFit(holes.slice(1), bolts.slice(1)).margin).toBeGreaterThan(margin - 3e-6);
      const wider = holes.map((h, i) => (i === 0 ? { ...h, slack: h.slack + 0.7 } : h));
      const longer = holes.map((h, i) => (i === 1 ? { ...h, slot: h.slot + 5 } : h));
      for (const more of [wider, longer]) expect(findHoleFit(more, bolts).margin).toBeGreaterThan(margin - 3e-6);
      const held = findHoleFit(holes, bolts, 0.01);
      expect(held.margin).toBeLessThan(margin + 3e-6);
      expect(Math.abs(held.move.turn)).toBeLessThanOrEqual(0.01);
      expect(held.provenWithin).toBeLessThan(0.001);
    }
  });
});

describe('cases worked by hand', () => {
  it('leaves the plate where it was drawn when nothing is gained by moving it', () => {
    const plate = [hole(0, 0), hole(200, 0), hole(0, 100, 1, 20), hole(200, 100, 3)];
    expect(
      findHoleFit(
        plate,
        plate.map(({ at }) => at),
      ),
    ).toMatchObject({
      fits: true,
      margin: 1,
      provenWithin: 0,
      move: { turn: 0, shift: [0, 0] },
    });
  });

  it('puts one hole onto its bolt without a turn, one slot by the least shift', () => {
    expect(findHoleFit([hole(5, 5)], [[8, 1]])).toMatchObject({ fits: true, move: { turn: 0 } });
    const { move, margin } = findHoleFit([hole(5, 5)], [[8, 1]]);
    expect(margin).toBeCloseTo(1, 6);
    expect(move.shift[0]).toBeCloseTo(3, 6);
    expect(move.shift[1]).toBeCloseTo(-4, 6);
    // 2 mm across the slot, 3 mm along it where it has 5 each way: only across must it go.
    const slot = findHoleFit([hole(0, 0, 1, 10)], [[3, 2]]);
    expect(slot.move.shift[0]).toBeCloseTo(0, 6);
    expect(slot.move.shift[1]).toBeCloseTo(2, 6);
  });

  it('halves what two bolts are too far apart, whatever the turn', () => {
    // 201.5 apart over holes 200 apart: each stands 0.75 off, of a slack of 1.
    const { margin, move } = findHoleFit(
      [hole(-100, 0), hole(100, 0)],
      [
        [-100, 0],
        [101.5, 0],
      ],
    );
    expect(margin).toBeCloseTo(0.25, 5);
    expect(move.shift[0]).toBeCloseTo(0.75, 5);
    // A quarter turn of bolts that stand right is followed exactly: turn 90°, nothing lost.
    const quarter = findHoleFit(
      [hole(-100, 0), hole(100, 0)],
      [
        [0, -100],
        [0, 100],
      ],
    );
    expect(quarter.margin).toBeCloseTo(1, 5);
    expect(quarter.move.turn).toBeCloseTo(Math.PI / 2, 6);
  });

  it('takes up a length in a slot along it and not across it', () => {
    const bolts: readonly Point[] = [
      [-100, 0],
      [105, 0],
    ];
    expect(findHoleFit([hole(-100, 0), hole(100, 0, 1, 10, 0)], bolts)).toMatchObject({ fits: true, margin: 1 });
    const across = findHoleFit([hole(-100, 0), hole(100, 0, 1, 10, Math.PI / 2)], bolts, 0.001);
    expect(across.margin).toBeCloseTo(-1.5, 3);
  });

  it('counts a plate that only just touches as going on, one that lacks a thousandth of a mm as not', () => {
    const plate = [hole(-100, 0), hole(100, 0)];
    expect(
      findHoleFit(plate, [
        [-101, 0],
        [101, 0],
      ]),
    ).toMatchObject({ fits: true, margin: 0 });
    expect(
      findHoleFit(plate, [
        [-101, 0],
        [101.001, 0],
      ]).fits,
    ).toBe(false);
  });

  it('needs, in round holes, half of what the bolts are apart too far, whatever slots there are', () => {
    expect(
      findRoundSlackNeeded(
        [
          [-100, 0],
          [100, 0],
        ],
        [
          [-100, 0],
          [103, 0],
        ],
      ),
    ).toBeCloseTo(1.5, 5);
    expect(
      findRoundSlackNeeded(
        [
          [-100, 0],
          [100, 0],
        ],
        [
          [-100, 0],
          [100, 0],
        ],
      ),
    ).toBe(0);
    expect(findRoundSlackNeeded([[7, 7]], [[-100, 0]])).toBeCloseTo(0, 6);
  });
});

// Source: data/hardware.json of test/published, H9-01 (a textbook of 2021, p. 308) and H9-02, after ASME Y14.5, Appendix B.
describe('floating and fixed fasteners of ASME Y14.5', () => {
  const [H, F] = [6.44, 6];
  const places: readonly Point[] = [
    [-40, -25],
    [40, -25],
    [40, 25],
    [-40, 25],
  ];
  const random = makeRandom(21);
  /** Off by half of a position tolerance, the worst that it allows, whichever way. */
  const offBy = ([x, y]: Point, tolerance: number): Point => {
    const way = 2 * Math.PI * random();
    return [x + (tolerance / 2) * Math.cos(way), y + (tolerance / 2) * Math.sin(way)];
  };
  const plateOf = (tolerance: number) => places.map((at) => hole(...offBy(at, tolerance), (H - F) / 2));

  it('always go together within T = H − F, floating, and T = (H − F)/2 in each part, fixed', () => {
    for (let i = 0; i < 500; i++) {
      expect(findHoleFit(plateOf(H - F), places).fits).toBe(true);
      const studs = places.map((at) => offBy(at, (H - F) / 2));
      expect(findHoleFit(plateOf((H - F) / 2), studs).fits).toBe(true);
    }
  });

  it('do not at the worst places just beyond: two holes pulled apart', () => {
    for (const [tolerance, fits] of [
      [H - F, true],
      [H - F + 0.001, false],
    ] as const) {
      const pulled = [hole(-40 - tolerance / 2, 0, (H - F) / 2), hole(40 + tolerance / 2, 0, (H - F) / 2)];
      expect(
        findHoleFit(pulled, [
          [-40, 0],
          [40, 0],
        ]).fits,
      ).toBe(fits);
      const half = tolerance / 4;
      const fixed = [hole(-40 - half, 0, (H - F) / 2), hole(40 + half, 0, (H - F) / 2)];
      expect(
        findHoleFit(fixed, [
          [-40 + half, 0],
          [40 - half, 0],
        ]).fits,
      ).toBe(fits);
    }
  });
});

describe('a plate that is prepared for many sets of bolts', () => {
  it('decides as the margin says, at every enlargement', () => {
    for (const { holes, bolts } of many(600, 6)) {
      const prepared = prepareHoles(holes);
      const flat = asFlat(bolts);
      const margin = prepared.margin(flat);
      expect(margin).toBeLessThan(solve({ holes, bolts }).margin + 3e-6);
      expect(margin).toBeGreaterThan(solve({ holes, bolts }).margin - 2e-5);
      for (const more of [0, 0.5, -margin + 1e-4, -margin - 1e-4, 10])
        expect(prepared.decide(flat, more)).toBe(margin + more >= -1e-6);
    }
  });

  it('answers the same whatever it was asked before', () => {
    const [one] = many(9, 8).slice(8);
    const prepared = prepareHoles(one!.holes);
    const random = makeRandom(3);
    const sets = Array.from({ length: 200 }, () =>
      Float64Array.from(one!.holes.flatMap(({ at }) => [at[0] + 4 * random() - 2, at[1] + 4 * random() - 2])),
    );
    const first = sets.map((set) => prepared.margin(set));
    const fresh = sets.map((set) => prepareHoles(one!.holes).margin(set));
    expect(Math.max(...first.map((value, i) => Math.abs(value - fresh[i]!)))).toBeLessThan(1.1e-5);
    expect(first.filter((value) => value >= 0).length).toBeGreaterThan(0);
    expect(first.filter((value) => value < 0).length).toBeGreaterThan(0);
  });

  it('reads bolts in the axes of the plate, wherever its middle lies', () => {
    const plate = [hole(500, 300), hole(700, 300)];
    expect(middleOf(plate)).toEqual([600, 300]);
    expect(
      prepareHoles(plate).margin(
        asFlat([
          [500, 300],
          [700, 300],
        ]),
      ),
    ).toBe(1);
    expect(
      prepareHoles(plate, 0).decide(
        asFlat([
          [500, 300.5],
          [700, 303],
        ]),
      ),
    ).toBe(false);
    expect(
      prepareHoles(plate).decide(
        asFlat([
          [500, 300.5],
          [700, 303],
        ]),
      ),
    ).toBe(true);
  });
});
