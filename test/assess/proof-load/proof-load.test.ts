import { describe, expect, it } from 'vitest';
import {
  evaluateTests,
  findCharacteristic,
  type ProofLoadResult,
} from '../../../src/assess/proof-load/evaluate-tests.ts';
import { findShareShown, planProofLoad } from '../../../src/assess/proof-load/test-plan.ts';
import { tellProofLoadAnswer, tellProofLoadPlan, tellTest } from '../../../src/say/proof-load-words.ts';

const GIVEN = {
  ...{ lot: 200, design: 20, steelYield: 60, depth: 100, support: 160 },
  ...{ count: null, factor: null, hold: null, displacement: null },
} as const;
const GAUGE = { serial: 'G 12', calibrated: '2026-03-01', goodUntil: '2027-03-01' } as const;
const DAY = '2026-11-30';
const plan = planProofLoad(GIVEN);
const good = (name: string, change: Partial<ProofLoadResult> = {}): ProofLoadResult => ({
  ...{ name, load: 25, displacement: 0.05, held: 60, failed: false },
  ...change,
});
const five = ['A', 'B', 'C', 'D', 'E'].map((name) => good(name));

describe('a plan of proof loads', () => {
  it('takes common practice where nothing is given, and says so', () => {
    expect(plan.count).toEqual({ value: 5, from: 'common practice' });
    expect(plan.load).toEqual({ value: 25, from: 'common practice' });
    expect([plan.isConfined, plan.supportNeeded, plan.isCutBySteel]).toEqual([false, 150, false]);
    expect(tellProofLoadPlan(plan).join(' ')).toContain('Load 25.0 kN (common practice)');
    expect(planProofLoad({ ...GIVEN, lot: 1000 }).count.value).toBe(25);
    expect(planProofLoad({ ...GIVEN, lot: 3 }).count.value).toBe(3);
    expect(planProofLoad({ ...GIVEN, hold: 120 }).hold).toEqual({ value: 120, from: 'engineer' });
  });

  it('never loads beyond 0.9 of the yield, and names a bridge that stands in the cone', () => {
    const cut = planProofLoad({ ...GIVEN, steelYield: 26 });
    expect(cut.load.value).toBeCloseTo(23.4, 10);
    expect(cut.isCutBySteel).toBe(true);
    expect(planProofLoad({ ...GIVEN, support: 149.9 }).isConfined).toBe(true);
    expect(planProofLoad({ ...GIVEN, support: 150 }).isConfined).toBe(false);
  });

  it('says what none failing shows: hypergeometric, by hand for small lots', () => {
    // 2 of 4: with one failing 1/2 are still missed, with two 1/6, with three none: at 80 % confidence one may fail.
    expect(findShareShown(2, 4, 0.8)).toBe(0.25);
    // A large lot: (1 − p)^20 = 0.1 at p = 0.109.
    expect(findShareShown(20, 100_000, 0.9)).toBeCloseTo(1 - 0.1 ** (1 / 20), 3);
    expect(findShareShown(4, 4, 0.9)).toBe(0);
  });
});

describe('what the tests come to', () => {
  it('passes where all is shown', () => {
    expect(evaluateTests(plan, five, GAUGE, DAY)).toMatchObject({ state: 'passes', gaps: [], missing: 0 });
  });

  it('does not pass where something is missing, and says what', () => {
    const stateOf = (results: readonly ProofLoadResult[], gauge: Parameters<typeof evaluateTests>[2] = GAUGE) =>
      evaluateTests(plan, results, gauge, DAY);
    expect(stateOf(five.slice(1))).toMatchObject({ state: 'not shown', gaps: ['tests are missing'], missing: 1 });
    expect(stateOf(five, { ...GAUGE, goodUntil: '2026-11-29' })).toMatchObject({ gaps: ['calibration has run out'] });
    expect(stateOf(five, { ...GAUGE, goodUntil: DAY }).state).toBe('passes');
    expect(stateOf(five, { ...GAUGE, goodUntil: null }).gaps).toEqual(['no calibration date']);
    expect(stateOf(five, { ...GAUGE, calibrated: null }).gaps).toEqual([]);
    expect(stateOf(five, { ...GAUGE, calibrated: '2026-12-01' }).gaps).toEqual(['calibration has run out']);
    expect(stateOf(five, { ...GAUGE, serial: null }).state).toBe('not shown');
    const change = (one: Partial<ProofLoadResult>) => stateOf([good('A', one), ...five.slice(1)]);
    expect(change({ displacement: null }).tests[0]).toMatchObject({
      state: 'not shown',
      why: ['displacement not read'],
    });
    expect(change({ held: 59 }).tests[0]).toMatchObject({ state: 'not shown', why: ['held too short'] });
    expect(change({ load: 24.9 }).state).toBe('not shown');
    const confined = planProofLoad({ ...GIVEN, support: 100 });
    expect(evaluateTests(confined, five, GAUGE, DAY)).toMatchObject({
      state: 'not shown',
      gaps: ['the cone is not tested'],
    });
    expect(tellProofLoadPlan(confined).join(' ')).toContain('does not test the cone');
  });

  it('fails where one gives way or moves too far; one that held and was pulled on does not', () => {
    const change = (one: Partial<ProofLoadResult>) =>
      evaluateTests(plan, [good('A', one), ...five.slice(1)], GAUGE, DAY);
    expect(change({ failed: true, load: 25 })).toMatchObject({ state: 'fails' });
    expect(change({ displacement: 0.11 })).toMatchObject({ state: 'fails' });
    expect(change({ failed: true, load: 48 })).toMatchObject({ state: 'passes' });
    expect(tellTest(change({ failed: true, load: 20 }).tests[0]!)).toBe(
      'A: fails – it gave way at the proof load or below; the load was not reached',
    );
  });

  it('gives a characteristic value of five failures and more: mean − k s', () => {
    const loads = [50, 52, 48, 51, 49];
    // By hand: mean 50, s = √2.5 = 1.5811; k = 2.463 (75 %), 3.400 (90 %), 2.335 (Annex D).
    const found = findCharacteristic(loads, 'normal');
    expect(found).toMatchObject({ kind: 'value', count: 5, mean: 50 });
    if (found.kind !== 'value') return;
    expect(found.at75).toBeCloseTo(50 - 2.463 * 1.5811, 2);
    expect(found.at90).toBeCloseTo(50 - 3.4 * 1.5811, 2);
    expect(found.annexD).toBeCloseTo(50 - 2.335 * 1.5811, 2);
    const logs = findCharacteristic(loads, 'lognormal');
    expect(logs).toMatchObject({ kind: 'value', mean: 50, distribution: 'lognormal' });
    if (logs.kind === 'value') expect(logs.at75).toBeGreaterThan(found.at75);
    expect(findCharacteristic(loads.slice(1), 'normal')).toEqual({ kind: 'too few', count: 4, least: 5 });
    const answer = evaluateTests(
      plan,
      loads.map((load, i) => good(`${i}`, { load, failed: true })),
      GAUGE,
      DAY,
    );
    expect(tellProofLoadAnswer(answer).at(-1)).toContain('46.1 kN with 75 % confidence');
  });
});
