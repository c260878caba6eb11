import { describe, expect, it } from 'vitest';
import { CalcError } from '../../src/calc/calc-error.ts';
import { calculate } from '../../src/calc/calculation.ts';
import { carriesAtMostCalc } from '../../src/calc/carries-at-most.ts';
import { ENGINE_VERSION } from '../../src/engine/version.ts';
import { EXAMPLE_GROUP } from './example-group.ts';

/** Two inserts 200 mm from the lower edge of a panel of 3 m by 2.5 m, asked for the load toward that edge. */
const example = {
  calc: 'carries-at-most',
  ...EXAMPLE_GROUP,
  insert: {
    ...EXAMPLE_GROUP.insert,
    qualification: { document: 'an invented document', standard: 'EN 1992-4, ACI 318-19' },
  },
  positions: [
    { id: 'A', x_mm: 1150, y_mm: 200 },
    { id: 'B', x_mm: 1350, y_mm: 200 },
  ],
  direction: { N: 0, Vx: 0, Vy: -1 },
};
const loaded = (() => {
  const { direction: _, ...rest } = example;
  return {
    ...rest,
    actions: [
      { id: 'B', N_kN: 2, Vx_kN: 1, Vy_kN: -3 },
      { id: 'A', N_kN: 4, Vx_kN: 0, Vy_kN: -3 },
    ],
  };
})();

/** Calculates and holds the answer to the output schema, every key of it. */
function ask(input: object, keepsSteps = false) {
  const { contract, engine, ...answer } = calculate(input, keepsSteps) as Record<string, unknown>;
  expect([contract, engine]).toEqual([1, ENGINE_VERSION]);
  return carriesAtMostCalc.output.parse(answer);
}

/** What `anchorage` says of the same group under a load on each insert [kN]. */
function check(input: object, actions: readonly object[]) {
  const { direction: _, actions: __, ...group } = input as Record<string, unknown>;
  return calculate({ ...group, calc: 'anchorage', actions }) as {
    readonly verdict: string;
    readonly governing: { readonly mode: string; readonly ratio: number };
  };
}

describe('carries-at-most', () => {
  it('gives the load on the group, its parts, what governs and by which clause', () => {
    const answer = ask(example);
    expect(answer).toMatchObject({
      standard: 'EN 1992-4:2018',
      N_kN: 0,
      Vx_kN: 0,
      governing: { mode: 'concrete-edge', clause: 'EN 1992-4:2018 7.2.2.5' },
      verdict: 'pass',
    });
    expect(answer.Vy_kN).toBe(-answer.largest_kN!);
    expect(answer.perInsert_kN).toBe(answer.largest_kN! / 2);
    expect(answer.notes[0]).toContain('the load on the whole group');
    expect(answer.notes[0]).toContain('shared equally by its 2 inserts');
    expect(answer).not.toHaveProperty('multiplier');
  });
  it('what it gives passes in `anchorage`, and 1.001 of it fails', () => {
    for (const direction of [example.direction, { N: 3, Vx: 1, Vy: -2 }, { N: 1, Vx: 0, Vy: 0 }]) {
      const { N_kN, Vx_kN, Vy_kN } = ask({ ...example, direction });
      const half = (by: number) =>
        example.positions.map(({ id }) => ({
          id,
          N_kN: (N_kN! * by) / 2,
          Vx_kN: (Vx_kN! * by) / 2,
          Vy_kN: (Vy_kN! * by) / 2,
        }));
      expect(check(example, half(1)).verdict).toBe('pass');
      expect(check(example, half(1.001)).verdict).toBe('fail');
    }
  });
  it('a direction has no size: ten times as long gives the same load', () => {
    const long = ask({ ...example, direction: { N: 0, Vx: 0, Vy: -10 } });
    expect(long.largest_kN).toBeCloseTo(ask(example).largest_kN!, 6);
    const tiny = ask({ ...example, direction: { N: 0, Vx: 0, Vy: -1e-300 } });
    expect(tiny.largest_kN).toBeCloseTo(ask(example).largest_kN!, 6);
  });
  it('one insert by hand: the cone, 8.9 √32 · 96^1.5 / 1.5 = 31.571 kN', () => {
    const answer = ask({
      ...example,
      member: { thickness_mm: 180, outline_mm: null },
      positions: [{ id: 'A', x_mm: 0, y_mm: 0 }],
      direction: { N: 1, Vx: 0, Vy: 0 },
    });
    expect(answer.largest_kN).toBeCloseTo((8.9 * Math.sqrt(32) * 96 ** 1.5) / 1500, 6);
    expect(answer.governing).toEqual({ mode: 'concrete-cone', clause: 'EN 1992-4:2018 7.2.1.4' });
    expect(answer.perInsert_kN).toBe(answer.largest_kN);
  });
  it('multiplies actions in their own ratio', () => {
    const answer = ask(loaded);
    const { multiplier } = answer;
    // 6, 1 and −6 kN in all; the larger force is A's: √(4² + 3²) = 5 kN.
    expect(answer.N_kN).toBeCloseTo(6 * multiplier!, 9);
    expect(answer.Vx_kN).toBeCloseTo(multiplier!, 9);
    expect(answer.Vy_kN).toBeCloseTo(-6 * multiplier!, 9);
    expect(answer.largest_kN).toBeCloseTo(Math.sqrt(73) * multiplier!, 9);
    expect(answer.perInsert_kN).toBeCloseTo(5 * multiplier!, 9);
    const by = (factor: number) =>
      loaded.actions.map(({ id, N_kN, Vx_kN, Vy_kN }) => ({
        id,
        N_kN: N_kN * factor,
        Vx_kN: Vx_kN * factor,
        Vy_kN: Vy_kN * factor,
      }));
    expect(check(loaded, by(multiplier!)).verdict).toBe('pass');
    expect(check(loaded, by(multiplier! * 1.001)).verdict).toBe('fail');
    expect(answer.notes[0]).toContain('the actions times `multiplier`');
  });
  it('names the clause of an interaction, by every edition', () => {
    const both = { ...example, direction: { N: 1, Vx: 0, Vy: -1 } };
    expect(ask(both).governing).toEqual({ mode: 'interaction-concrete', clause: 'EN 1992-4:2018 7.2.3.1' });
    const byAci = ask({ ...both, standard: 'ACI 318-19' });
    expect(byAci.governing).toEqual({ mode: 'interaction-all', clause: expect.stringContaining('17.8') });
    for (const standard of ['EN 1992-4', 'AS 5216', 'ACI 318-19', 'ACI 318M-19'])
      expect(ask({ ...example, standard }).largest_kN).toBeGreaterThan(10);
  });
  it('says "not covered" beside the number, and why', () => {
    const answer = ask({ ...example, standard: 'AS 5216' });
    expect(answer.verdict).toBe('not covered');
    expect(answer.largest_kN).toBeGreaterThan(0);
    expect(answer.notes.join()).toContain('a number to be judged, never a pass');
    expect(answer.notes.join()).toContain('no qualification document for AS 5216');
  });
  it('has no number where nothing computed limits the load', () => {
    const answer = ask({ ...example, direction: { N: -1, Vx: 0, Vy: 0 } });
    expect(answer).toMatchObject({ largest_kN: null, perInsert_kN: null, governing: null, verdict: 'not covered' });
    expect(answer.notes[0]).toContain('nothing computed here limits');
    expect(answer.notes.join()).toContain('is pressed by');
  });
  it('carries the full check at that load where steps are asked for', () => {
    const { atLargest, governing } = ask(example, true);
    expect(atLargest!.governing!.mode).toBe(governing!.mode);
    expect(atLargest!.governing!.ratio).toBeCloseTo(1, 8);
    expect(atLargest!.modes.some(({ steps }) => (steps ?? []).length > 0)).toBe(true);
    expect(ask(example)).not.toHaveProperty('atLargest');
  });
});

// Typed loosely on purpose: each case hands in something wrong.
type Change = (input: Record<string, Record<string, unknown> & unknown[]>) => void;

describe('what is wrong is named in one line', () => {
  it.each<readonly [key: string, expected: string, change: Change]>([
    ['direction', 'expected direction { N, Vx, Vy }, or actions', (input) => delete input.direction],
    ['direction', 'actions are given too', (input) => Object.assign(input, { actions: loaded.actions })],
    ['direction', 'are all 0', ({ direction }) => Object.assign(direction!, { Vy: 0 })],
    ['direction', 'expected an object', (input) => Object.assign(input, { direction: 'down' })],
    ['direction', 'expected an object', (input) => Object.assign(input, { direction: [0, 0, -1] })],
    ['direction.N', 'expected the share of the tension', ({ direction }) => delete direction!.N],
    [
      'direction.Vx',
      'expected the share of the shear along x',
      ({ direction }) => Object.assign(direction!, { Vx: '1' }),
    ],
    ['direction.Vy', 'a number from -1000000 to 1000000', ({ direction }) => Object.assign(direction!, { Vy: null })],
    ['direction.Vy_kN', 'is not a key', ({ direction }) => Object.assign(direction!, { Vy_kN: 5 })],
    [
      'compression',
      'a direction has no size',
      (input) => Object.assign(input, { compression: { C_kN: 5, at_mm: [0, 0] } }),
    ],
    ['standard', 'expected "EN 1992-4", "AS 5216"', (input) => Object.assign(input, { standard: 'ACI 318' })],
    [
      'partialFactors.gamma_Mc',
      'expected no partial factors',
      (input) => Object.assign(input, { standard: 'ACI 318-19', partialFactors: { gamma_Mc: 1.5 } }),
    ],
    ['concrete.strength_MPa', 'a number above 0', ({ concrete }) => Object.assign(concrete!, { strength_MPa: -32 })],
    ['concrete.cracked', 'expected true or false', ({ concrete }) => delete concrete!.cracked],
    ['member.thickness_mm', 'expected the thickness', ({ member }) => Object.assign(member!, { thickness_mm: 0 })],
    [
      'member.outline_mm',
      'expected a simple polygon',
      ({ member }) =>
        Object.assign(member!, {
          outline_mm: [
            [0, 0],
            [9, 9],
            [9, 0],
            [0, 9],
          ],
        }),
    ],
    ['insert.embedment_mm', '190 mm does not fit', ({ insert }) => Object.assign(insert!, { embedment_mm: 190 })],
    ['insert.headDiameter_mm', 'exactly one of', ({ insert }) => delete insert!.headDiameter_mm],
    ['positions', 'expected at least one insert', (input) => Object.assign(input, { positions: [] })],
    ['positions[1].id', '"A" names two inserts', ({ positions }) => Object.assign(positions![1]!, { id: 'A' })],
    ['positions', 'is not inside the concrete', ({ positions }) => Object.assign(positions![0]!, { y_mm: -1 })],
    ['calc', 'expected one of', (input) => Object.assign(input, { calc: 7 })],
    ['largest_kN', 'is not a key of this calculation', (input) => Object.assign(input, { largest_kN: 10 })],
  ])('%s: … %s', (key, expected, change) => {
    expectFault(example, key, expected, change);
  });
  it.each<readonly [key: string, expected: string, change: Change]>([
    [
      'actions',
      'all forces are zero',
      (input) => Object.assign(input, { actions: ['A', 'B'].map((id) => ({ id, N_kN: 0, Vx_kN: 0, Vy_kN: 0 })) }),
    ],
    ['actions', 'insert "A" has no action', ({ actions }) => actions!.pop()],
    ['actions[2].id', '"A" has two actions', ({ actions }) => actions!.push(actions![1])],
    ['actions[0].N_kN', 'expected the tension', ({ actions }) => Object.assign(actions![0]!, { N_kN: 'much' })],
  ])('%s: … %s', (key, expected, change) => {
    expectFault(loaded, key, expected, change);
  });
});

function expectFault(from: object, key: string, expected: string, change: Change): void {
  const input = structuredClone(from) as Parameters<Change>[0];
  change(input);
  let error: unknown;
  try {
    calculate(input);
  } catch (caught) {
    error = caught;
  }
  expect(error).toBeInstanceOf(CalcError);
  const { message, key: named } = error as CalcError;
  expect(named).toBe(key);
  expect(message.startsWith(`${key}: `)).toBe(true);
  expect(message).toContain(expected);
  expect(message).not.toContain('\n');
}
