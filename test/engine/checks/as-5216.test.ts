// AS 5216:2021 has the rules of EN 1992-4:2018 with capacity factors φ = 1/γ, and 0.8 for supplementary bars (γ 1.15 gives 0.87).
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explainAnchorage, prepare } from '../../../src/engine/checks/anchorage.ts';
import type { AnchorageGroup, GroupActions } from '../../../src/engine/checks/anchorage-group.ts';
import type { AnchorageResult, Mode } from '../../../src/engine/checks/result.ts';
import { writeStep } from '../../../src/engine/checks/write-step.ts';
import { type Changes, HAIRPIN, HANGER, load, makeGroup, rectangle, rowOf } from './groups.ts';
import { anyCase } from './random-groups.ts';

const QUALIFIED = { document: 'an invented product document', standard: 'EN 1992-4; AS 5216' };

const explain = (group: AnchorageGroup, actions: GroupActions): AnchorageResult =>
  explainAnchorage(prepare(group), actions, true);
const check = (changes: Changes, actions: GroupActions): AnchorageResult =>
  explain(
    makeGroup({ standard: 'AS 5216', ...changes, insert: { qualification: QUALIFIED, ...changes.insert } }),
    actions,
  );

/** Two floating-point ways to the same number: 1/1.5 · R and R/1.5. */
const SAME = 1e-14;

describe('the same group by EN 1992-4 and by AS 5216', () => {
  const both = ({ group, actions }: { readonly group: AnchorageGroup; readonly actions: GroupActions }) => {
    const bare: AnchorageGroup = {
      ...group,
      insert: { ...group.insert, qualification: QUALIFIED },
      hangers: [],
      hairpins: [],
    };
    return [
      explain({ ...bare, standard: 'EN 1992-4' }, actions),
      explain({ ...bare, standard: 'AS 5216' }, actions),
    ] as const;
  };

  /** With a lever arm the tension's share of its design resistance moves by rounding. */
  const near = (force: number | null) => (force === null ? null : expect.closeTo(force, 6));

  it('same rows, factors and characteristic numbers, φ = 1/γ, same ratios and verdict', () => {
    const seen = new Set<Mode>();
    fc.assert(
      fc.property(anyCase, (one) => {
        const [en, as] = both(one);
        expect(as.rows).toHaveLength(en.rows.length);
        for (const [i, row] of as.rows.entries()) {
          const { clause, safety, design, ratio, notes, steps, ...same } = row;
          expect(same).toEqual({
            mode: en.rows[i]!.mode,
            part: en.rows[i]!.part,
            applies: en.rows[i]!.applies,
            inserts: en.rows[i]!.inserts,
            edge: en.rows[i]!.edge,
            basic: near(en.rows[i]!.basic),
            factors: en.rows[i]!.factors,
            characteristic: near(en.rows[i]!.characteristic),
            action: en.rows[i]!.action,
            embedmentUsed: en.rows[i]!.embedmentUsed,
            edgeUsed: en.rows[i]!.edgeUsed,
            direction: en.rows[i]!.direction,
            ratioTogether: null,
          });
          if (safety === null) continue;
          seen.add(row.mode);
          expect(Math.abs(safety * en.rows[i]!.safety! - 1)).toBeLessThanOrEqual(SAME);
        }
        const [a, b] = [en.governing!, as.governing!];
        if (Number.isFinite(a.ratio)) expect(Math.abs(b.ratio - a.ratio)).toBeLessThanOrEqual(1e-12 * a.ratio);
        else expect(b.ratio).toBe(a.ratio);
        expect([as.verdict, as.interaction.map(({ kind }) => kind)]).toEqual([
          en.verdict,
          en.interaction.map(({ kind }) => kind),
        ]);
      }),
      { numRuns: 400, seed: 5216 },
    );
    expect(seen.size).toBe(8);
  });

  it('every clause is named as one of AS 5216, EN 1992-4 only as where it comes from', () => {
    let steps = 0;
    fc.assert(
      fc.property(anyCase, ({ group, actions }) => {
        const result = explain({ ...group, standard: 'AS 5216' }, actions);
        expect(result.document).toBe('AS 5216:2021');
        const named = [...result.rows, ...result.interaction].flatMap((row) => [
          row.clause,
          ...row.steps.flatMap((step) => (step.kind === 'clause' ? [step.clause.reference] : [])),
        ]);
        steps += named.length;
        // Bond is a rule of EN 1992-1-1 in both documents.
        for (const clause of named) expect(clause).toMatch(/^AS 5216:2021 \S|^EN 1992-1-1:/);
        for (const clause of named)
          if (clause.includes('EN 1992-4')) expect(clause).toMatch(/^AS 5216:2021 as EN 1992-4 \d/);
        for (const step of result.rows.flatMap((row) => row.steps))
          if (step.kind === 'quantity') expect(step.how).not.toMatch(/EN 1992-4|4\.4\.2/);
        for (const text of [...result.uncovered, ...result.notes, ...result.rows.flatMap((row) => row.notes)])
          expect(text).not.toContain('EN 1992-4');
      }),
      { numRuns: 200, seed: 5216 },
    );
    expect(steps).toBeGreaterThan(2000);
  });
});

describe('capacity factors by hand', () => {
  it('steel 800/640 MPa: 5 · 640/(6 · 800) = 0.666667 in tension, 640/800 = 0.8 in shear; concrete 1/1.5', () => {
    const result = check({ outline: rectangle(0, 0, 2000, 2000), at: [[45, 1000]] }, load([5, -5, 0]));
    const of = (mode: Mode) =>
      result.rows.filter((row) => row.mode === mode && row.applies).map(({ safety }) => safety);
    expect(of('steel-tension')).toEqual([expect.closeTo(0.666667, 6)]);
    expect(of('steel-shear')).toEqual([0.8]);
    for (const mode of ['concrete-cone', 'pull-out', 'blow-out', 'pry-out'] as const)
      expect(of(mode)).toEqual([1 / 1.5]);
    for (const safety of of('concrete-edge')) expect(safety).toBe(1 / 1.5);
    // Cone at 45 mm: 8.9 · √32 · 1000 · (195 · 300/90 000) · (0.7 + 0.3 · 45/150) = 25 853 N; φ: 17 235 N.
    const cone = rowOf(result, 'concrete-cone');
    expect(cone.characteristic).toBeCloseTo(8.9 * Math.sqrt(32) * 1000 * 0.65 * 0.79, 6);
    expect(cone.design).toBeCloseTo(17234.9, 0);
    expect(cone.ratio).toBeCloseTo(5000 / 17234.9, 4);
  });
  it('steel 830/660 MPa: 5 · 660/(6 · 830) = 0.66265, 2/3 in shear; 830/750: at most 1/1.4', () => {
    const safety = (ultimate: number, yieldStress: number) => {
      const steelParts = [{ name: 'bolt', area: 157, ultimate, yield: yieldStress, resists: 'both' }] as const;
      const result = check({ insert: { steelParts } }, load([5, 5, 0]));
      return [rowOf(result, 'steel-tension').safety, rowOf(result, 'steel-shear').safety];
    };
    expect(safety(830, 660)).toEqual([expect.closeTo(0.66265, 5), 2 / 3]);
    expect(safety(830, 750)).toEqual([expect.closeTo(0.714286, 6), 2 / 3]);
    expect(safety(400, 240)).toEqual([0.5, 0.6]);
  });
  it('partial factors that are given count as 1/γ', () => {
    const partialFactors = { concrete: 1.8, steelTension: 1.6, steelShear: 1.25 };
    const result = check({ other: { partialFactors } }, load([5, 5, 0]));
    expect(rowOf(result, 'steel-tension').safety).toBe(1 / 1.6);
    expect(rowOf(result, 'steel-shear').safety).toBe(0.8);
    expect(rowOf(result, 'concrete-cone').safety).toBe(1 / 1.8);
    expect(rowOf(result, 'pry-out').safety).toBe(1 / 1.8);
    const tell = rowOf(result, 'concrete-cone').steps.find(({ symbol }) => symbol === 'phi_Mc');
    expect(tell).toMatchObject({ how: '1 / 1.8, as given' });
    const none = { concrete: null, steelTension: null, steelShear: null };
    expect(rowOf(check({ other: { partialFactors: none } }, load([5, 5, 0])), 'concrete-cone').safety).toBe(1 / 1.5);
  });
  it('a factor of a test report counts as 1/γ; without one the safest of the parts does', () => {
    const steelParts = [
      { name: 'bolt', area: 157, ultimate: 800, yield: 640, resists: 'both' },
      { name: 'body', area: 300, ultimate: 400, yield: 240, resists: 'both' },
    ] as const;
    const tested = (standard: 'AS 5216' | 'EN 1992-4', safety: number | null) =>
      check(
        {
          standard,
          insert: {
            steelParts,
            tested: [{ mode: 'steel-tension', characteristic: 90000, safety, fromStrength: 0, report: 'report 12' }],
          },
        },
        load([5, 0, 0]),
      ).rows.find(({ part }) => part === 'insert as tested')!;
    expect(tested('AS 5216', 2.4)).toMatchObject({ safety: 1 / 2.4, design: expect.closeTo(37500, 8) });
    // φ of the parts 0.6667 and 0.5: 0.5; γ 1.5 and 2.0: 2.0. Either way 45 kN.
    expect(tested('AS 5216', null)).toMatchObject({ safety: 0.5, design: expect.closeTo(45000, 8) });
    expect(tested('EN 1992-4', null)).toMatchObject({ safety: 2, design: expect.closeTo(45000, 8) });
  });
});

describe('supplementary bars', () => {
  // 6 legs of 10 mm, 500 MPa: 6 · 78.5398 · 500 = 235 619 N, times 0.8.
  const bars = (changes: Changes, actions: GroupActions) => check(changes, actions);
  it('hangers: φ 0.8 of the bars, no φ on anchorage, which is a design value', () => {
    const result = bars({ other: { hangers: [HANGER] } }, load([40, 0, 0]));
    const steel = rowOf(result, 'bar-steel');
    expect(steel.characteristic).toBeCloseTo(6 * (Math.PI / 4) * 100 * 500, 6);
    expect(steel.safety).toBe(0.8);
    expect(steel.design).toBeCloseTo(188495.6, 1);
    const named = steel.steps.map((step) => (step.kind === 'clause' ? `${step.symbol}: ${step.clause.reference}` : ''));
    expect(named).toContain('f_bd: EN 1992-1-1:2004 8.4.2');
    // Bond 2.25 · 0.7 · 0.3 · 32^(2/3)/1.5 = 3.17512 MPa on 6 · 80 mm · π 10 mm, over 0.7 of a hook: 68 396 N, as by EN 1992-4.
    const anchorage = rowOf(result, 'bar-anchorage');
    expect(anchorage.safety).toBe(1);
    expect(anchorage.characteristic).toBeCloseTo(
      (6 * 80 * Math.PI * 10 * ((2.25 * 0.7 * 0.3 * 32 ** (2 / 3)) / 1.5)) / 0.7,
      6,
    );
    expect(result.rows.find(({ mode }) => mode === 'concrete-cone')).toMatchObject({ applies: false });
  });
  it('a bar is never held by more than 0.8 of its own strength; by EN 1992-4 1/1.15', () => {
    const hangers = [{ ...HANGER, yield: 100 }];
    const held = (standard: 'AS 5216' | 'EN 1992-4') =>
      rowOf(bars({ standard, other: { hangers } }, load([28, 0, 0])), 'bar-anchorage').characteristic;
    // Bond holds 68 396 N as above, the bars yield at 6 · 78.5398 · 100 = 47 124 N: 37 699 and 40 977 N.
    const strength = 6 * (Math.PI / 4) * 100 * 100;
    expect(held('AS 5216')).toBeCloseTo(0.8 * strength, 6);
    expect(held('EN 1992-4')).toBeCloseTo(strength / 1.15, 6);
  });
  it('hairpins: the same factor', () => {
    const result = bars(
      { outline: rectangle(0, 0, 2000, 2000), at: [[80, 1000]], other: { hairpins: [HAIRPIN] } },
      load([0, -10, 0]),
    );
    expect(rowOf(result, 'bar-steel').safety).toBe(0.8);
  });
});

describe('scope', () => {
  it('the range of EN 1992-4, named as that of AS 5216', () => {
    const reasons = (changes: Changes) => check(changes, load([1, 0, 0])).uncovered.join();
    expect(reasons({ concrete: { strength: 11 } })).toContain('outside 12 to 90 MPa, the range of AS 5216;');
    expect(reasons({ insert: { embedment: 39 } })).toContain('below 40 mm, the smallest that AS 5216 covers');
    expect(reasons({ concrete: { lightweightFactor: 0.8 } })).toContain('not covered by AS 5216');
    expect(check({}, load([1, 0, 0])).verdict).toBe('pass');
  });
});

describe('printed steps', () => {
  it('the design value is φ times the characteristic one', () => {
    const row = rowOf(check({}, load([20, 0, 0])), 'concrete-cone');
    const last = writeStep(row.steps.at(-1)!);
    expect(last).toMatchObject({ symbol: 'R_d', formula: 'phi * R_k', clause: 'AS 5216:2021 design capacities' });
    expect(last.numbers).toBe('0.6666667 * 50346');
  });
});
