// Supplementary reinforcement against hand calculations. f_ck 32: f_ctm = 0.3 · 32^(2/3) = 3.023811 MPa,
// f_bd = 2.25 · 0.7 · 3.023811/1.5 = 3.175 MPa; a bar of 10 mm has 78.5398 mm².
import { describe, expect, it } from 'vitest';
import { checkAnchorage, explainAnchorage, prepare } from '../../../src/engine/checks/anchorage.ts';
import type { GroupActions, SupplementaryBar } from '../../../src/engine/checks/anchorage-group.ts';
import type { AnchorageResult } from '../../../src/engine/checks/result.ts';
import { type Changes, HAIRPIN, HANGER, load, makeGroup, rectangle, rowOf, rowToward } from './groups.ts';

const check = (changes: Changes, actions: GroupActions): AnchorageResult =>
  explainAnchorage(prepare(makeGroup(changes)), actions, true);

const CONE = 8.9 * Math.sqrt(32) * 1000;
const BOND = (2.25 * 0.7 * 0.3 * 32 ** (2 / 3)) / 1.5;
const AREA = 25 * Math.PI;
const withHangers = (...hangers: SupplementaryBar[]): Changes => ({ other: { hangers } });

describe('hangers', () => {
  // Six legs, 80 mm bonded, hooked: 6 · 80 · π · 10 · 3.175/0.7 = 68 397 N; steel 6 · 78.54 · 500 = 235 619 N over 1.15.
  const result = check(withHangers(HANGER), load([40, 0, 0]));
  it('steel and anchorage carry the tension in place of the cone', () => {
    const anchorage = rowOf(result, 'bar-anchorage');
    expect(anchorage.characteristic).toBeCloseTo((6 * 80 * Math.PI * 10 * BOND) / 0.7, 6);
    expect(anchorage.characteristic).toBeCloseTo(68397, 0);
    expect(anchorage.safety).toBe(1);
    expect(anchorage.ratio).toBeCloseTo(0.58482, 5);
    const steel = rowOf(result, 'bar-steel');
    expect(steel.characteristic).toBeCloseTo(6 * AREA * 500, 6);
    expect(steel.safety).toBe(1.15);
    expect(steel.ratio).toBeCloseTo((40000 * 1.15) / 235619.4, 6);
  });
  it('the cone is shown with its own ratio, but does not count', () => {
    const cone = result.rows.find((row) => row.mode === 'concrete-cone')!;
    // 40 000 · 1.5/50 346 = 1.19175
    expect(cone).toMatchObject({ applies: false, ratio: expect.closeTo(1.19175, 5) });
    expect(cone.notes.join()).toContain('would reach 1.19');
    expect(result.verdict).toBe('pass');
    expect(result.governing).toMatchObject({ mode: 'bar-anchorage', ratio: expect.closeTo(0.58482, 5) });
  });
  it('bars weaker than the concrete are not counted', () => {
    // Two legs: 22 799 N against 33 564 N of the cone.
    const weak = check(withHangers({ ...HANGER, legs: 2 }), load([40, 0, 0]));
    expect(rowOf(weak, 'concrete-cone').notes.join()).toContain('bars are not counted');
    expect(weak.verdict).toBe('fail');
  });
  it('anchorage is held by the strength of the bar itself', () => {
    // 300 mm: 6 · 300 · π · 10 · 3.175/0.7 = 256 490 > 235 619/1.15 = 204 886 N.
    const long = { ...HANGER, anchorageInside: 300, anchorageOutside: 300 };
    expect(rowOf(check(withHangers(long), load([40, 0, 0])), 'bar-anchorage').characteristic).toBeCloseTo(
      (6 * AREA * 500) / 1.15,
      6,
    );
  });
  it('the shorter bonded length counts, straight ends and poor bond count less', () => {
    const value = (bar: Partial<SupplementaryBar>) =>
      rowOf(check(withHangers({ ...HANGER, legs: 12, ...bar }), load([40, 0, 0])), 'bar-anchorage').characteristic!;
    const plain = (12 * 80 * Math.PI * 10 * BOND) / 0.7;
    expect(value({})).toBeCloseTo(plain, 6);
    expect(value({ anchorageInside: 150, anchorageOutside: 70 })).toBeCloseTo((plain * 70) / 80, 6);
    // 10 d = 100 mm is the least straight length.
    expect(value({ hooked: false, anchorageInside: 100 })).toBeCloseTo((plain * 100 * 0.7) / 80, 6);
    expect(value({ goodBond: false })).toBeCloseTo(0.7 * plain, 6);
  });
  it('of the yield strength at most 600 MPa', () => {
    const value = (yieldStress: number) =>
      rowOf(check(withHangers({ ...HANGER, yield: yieldStress }), load([40, 0, 0])), 'bar-steel').characteristic!;
    expect(value(700)).toBeCloseTo(6 * AREA * 600, 6);
  });
  it.each([
    ['diameter 20 mm is above 16 mm', { diameter: 20 }],
    ['76 mm from the insert is farther than 75 mm', { distance: 76 }],
    ['bonded length 39 mm is below 40 mm', { anchorageInside: 39 }],
    ['bonded length 80 mm is below 100 mm', { hooked: false }],
  ])('not counted: %s', (reason, change) => {
    const result = check(withHangers({ ...HANGER, ...change }), load([40, 0, 0]));
    expect(rowOf(result, 'concrete-cone').notes.join()).toContain(reason);
    expect(result.verdict).toBe('fail');
  });
  it('limits themselves count: 16 mm, 75 mm, 4 d', () => {
    const at = { ...HANGER, diameter: 16, distance: 75, anchorageInside: 64 };
    expect(rowOf(check(withHangers(at), load([40, 0, 0])), 'bar-steel').notes).toEqual([]);
  });
  it('two clusters cannot share the bars', () => {
    const result = check(
      {
        ...withHangers(HANGER),
        at: [
          [0, 0],
          [400, 0],
        ],
      },
      load([40, 0, 0], [20, 0, 0]),
    );
    expect(result.rows.filter((row) => row.mode === 'bar-steel')).toEqual([]);
    expect(result.rows.find((row) => row.mode === 'concrete-cone')!.notes.join()).toContain('2 groups');
    expect(result.verdict).toBe('fail');
  });
  it('pry-out keeps only 0.75', () => {
    const row = rowOf(check(withHangers(HANGER), load([0, 10, 0])), 'pry-out');
    expect(row.characteristic).toBeCloseTo(0.75 * 2 * CONE, 6);
    expect(row.factors.k_re).toBe(0.75);
  });
});

describe('hairpins', () => {
  const panel = rectangle(0, 0, 2000, 2000);
  const at = [[80, 1000]] as const;
  const withLoops = (changes: Changes = {}, ...more: (typeof HAIRPIN)[]): Changes => ({
    outline: panel,
    at,
    ...changes,
    other: { hairpins: [HAIRPIN, ...more] },
  });

  // 12 kN toward the edge: z = 0.85 · min(200 − 30, 200, 160) = 136; N = (30/136 + 1) · 12 = 14.647 kN.
  // Anchorage 4 · 80 · π · 10 · 3.175/0.7 = 45 598 N: 0.32122; steel 0.5 · 4 · 78.54 · 500 = 78 540 N over 1.15: 0.21447.
  const result = check(withLoops(), load([0, -12, 0]));
  it('carry the shear in place of the edge', () => {
    expect(rowOf(result, 'bar-anchorage')).toMatchObject({
      inserts: ['A'],
      edge: { from: [0, 2000], to: [0, 0] },
      ratio: expect.closeTo(0.32122, 5),
    });
    expect(rowOf(result, 'bar-anchorage').action).toBeCloseTo((30 / 136 + 1) * 12000, 6);
    expect(rowOf(result, 'bar-steel').characteristic).toBeCloseTo(0.5 * 4 * AREA * 500, 6);
    expect(rowOf(result, 'bar-steel').ratio).toBeCloseTo(0.21447, 5);
    expect(rowToward(result, 'concrete-edge', 180)).toMatchObject({ applies: false });
    expect(rowToward(result, 'concrete-edge', 180).ratio).toBeGreaterThan(1);
    expect(result.verdict).toBe('pass');
  });
  it('in a thin member the depth below the loop sets the lever arm', () => {
    // 120 − 30 = 90: z = 76.5, N = (30/76.5 + 1) · 12 kN.
    const thin = check(withLoops({ thickness: 120 }), load([0, -12, 0]));
    expect(rowOf(thin, 'bar-steel').action).toBeCloseTo((30 / 76.5 + 1) * 12000, 6);
  });
  it('the deepest of several loops sets the lever arm for all; legs add up', () => {
    const two = check(withLoops({}, { ...HAIRPIN, depth: 50 }), load([0, -12, 0]));
    // z = 0.85 · min(150, 200, 160) = 127.5.
    expect(rowOf(two, 'bar-steel').action).toBeCloseTo((50 / 127.5 + 1) * 12000, 6);
    expect(rowOf(two, 'bar-steel').characteristic).toBeCloseTo(2 * 0.5 * 4 * AREA * 500, 6);
  });
  it('serve only the edge that they point to, within 10 degrees', () => {
    const bars = (degrees: number) =>
      check(
        { outline: panel, at, other: { hairpins: [{ ...HAIRPIN, toward: (degrees * Math.PI) / 180 }] } },
        load([0, -12, 0]),
      ).rows.filter((row) => row.mode === 'bar-steel').length;
    expect([bars(180), bars(-171), bars(189), bars(169), bars(0), bars(90)]).toEqual([1, 1, 1, 0, 0, 0]);
  });
  it('two rows on one edge cannot share the loops', () => {
    const far = check(
      withLoops({
        at: [
          [80, 600],
          [80, 1000],
        ],
      }),
      load([0, -12, 0], [0, -12, 0]),
    );
    expect(far.rows.filter((row) => row.mode === 'bar-steel')).toEqual([]);
    expect(far.verdict).toBe('fail');
  });
  it('bars for shear only: tension and shear meet in (n^(2/3) + v^(2/3))^1.5', () => {
    // Cone 33 194.8 N (see tension.test.ts): n = 10 000 · 1.5/33 194.8 = 0.451879. v: bars 0.321221, pry-out with 0.75:
    // 12 000 · 1.5/(0.75 · 2 · 33 194.8) = 0.361503. (0.588855 + 0.507465)^1.5 = 1.14790: fails together.
    const both = check(withLoops(), load([10, -12, 0]));
    const n = (10000 * 1.5) / (CONE * (69000 / 90000) * 0.86);
    const v = (12000 * 1.5) / (1.5 * CONE * (69000 / 90000) * 0.86);
    const row = both.interaction.find(({ kind }) => kind === 'concrete')!;
    expect(row.ratio).toBeCloseTo((n ** (2 / 3) + v ** (2 / 3)) ** 1.5, 9);
    expect(row.ratio).toBeCloseTo(1.1479, 4);
    expect(row.clause).toContain('7.2.3.2');
    expect(both.verdict).toBe('fail');
  });
  it('bars for both: the exponent of plain concrete', () => {
    const changes: Changes = {
      outline: panel,
      at,
      other: { hairpins: [HAIRPIN], hangers: [HANGER] },
    };
    const both = check(changes, load([30, -12, 0]));
    // n = 30 000/68 397 = 0.438616, v = 0.361503 of pry-out.
    const n = 30000 / ((6 * 80 * Math.PI * 10 * BOND) / 0.7);
    const v = (12000 * 1.5) / (1.5 * CONE * (69000 / 90000) * 0.86);
    const row = both.interaction.find(({ kind }) => kind === 'concrete')!;
    expect(row.ratio).toBeCloseTo((n ** 1.5 + v ** 1.5) ** (2 / 3), 9);
    expect(row.clause).toContain('7.2.3.1');
  });
  it('a loop that does not fit in the member is an error', () => {
    expect(() => prepare(makeGroup(withLoops({ thickness: 110 }, { ...HAIRPIN, depth: 110 })))).toThrow(
      'hairpins: a loop 110 mm below the shear force does not fit in a member 110 mm thick',
    );
  });
  it('numbers alone are the same', () => {
    const p = prepare(makeGroup(withLoops()));
    const actions = load([10, -12, 0]);
    const { ratio, mode } = checkAnchorage(p, actions);
    expect(explainAnchorage(p, actions, false).governing).toEqual({ ratio, mode });
  });
});
