import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { CalcError } from '../../src/calc/calc-error.ts';
import { fixtureForcesCalc } from '../../src/calc/fixture-forces.ts';

const good = {
  calc: 'fixture-forces',
  plate_mm: [
    [-100, -100],
    [100, -100],
    [100, 100],
    [-100, 100],
  ],
  modularRatio: 7,
  bolts: [
    { id: 'A', x_mm: -60, y_mm: 60, stressArea_mm2: 157, takesShear: true },
    { id: 'B', x_mm: 60, y_mm: 60, stressArea_mm2: 157, takesShear: { onlyAlong_deg: 90 } },
    { id: 'C', x_mm: 0, y_mm: -60, stressArea_mm2: 157, takesShear: false },
  ],
  action: { at_mm: [0, 0], N_kN: 0, Vx_kN: 3, Vy_kN: -4, Mx_kNm: 5, My_kNm: 0, T_kNm: 0 },
};
const [A, B] = good.bolts;
const calculate = (input: unknown) => fixtureForcesCalc.run(fixtureForcesCalc.input.parse(input));

describe('fixture-forces', () => {
  it('answers in the units and shape of the contract', () => {
    const result = calculate({ ...good, id: 7, source: 'x', note: null, expect: [] });
    expect(() => fixtureForcesCalc.output.parse(result)).not.toThrow();
    // Hand calculation (plate-equilibrium.test.ts): 34.8288 kN in two bolts, p = 7.0615 MPa; C's bolt lies 40 mm above the edge, inside 49.3.
    expect(result.bolts.map(({ N_kN }) => N_kN)).toEqual([expect.closeTo(17.4144, 3), expect.closeTo(17.4144, 3), 0]);
    expect(result.compression!.C_kN).toBeCloseTo(34.8288, 3);
    expect(result.compression!.at_mm[0]).toBeCloseTo(0, 9);
    expect(result.compression!.at_mm[1]).toBeCloseTo(-100 + 49.3224 / 3, 3);
    expect(result.maxContact_MPa).toBeCloseTo(7.0615, 3);
    // B takes y only, so A takes all of Vx. About A, 60 mm up: T = 60·3 for Vx at y = 60, and Vy = −4 acts midway: B gets
    // (−4·60 + 3·60)/120 = −0.5, A the rest.
    expect(result.bolts[0]).toMatchObject({ Vx_kN: expect.closeTo(3, 9), Vy_kN: expect.closeTo(-3.5, 9) });
    expect(result.bolts[1]).toMatchObject({ Vx_kN: expect.closeTo(0, 12), Vy_kN: expect.closeTo(-0.5, 9) });
    expect(result.bolts[2]).toEqual({ id: 'C', N_kN: 0, Vx_kN: 0, Vy_kN: 0 });
  });

  it('gives null and 0 without contact', () => {
    const result = calculate({ ...good, action: { ...good.action, at_mm: [0, 20], N_kN: 10, Mx_kNm: 0 } });
    expect(result.compression).toBeNull();
    expect(result.maxContact_MPa).toBe(0);
    // Shares: A and B by y = 60, C by −60: (A + B)·60 − C·60 = 10·20 → A + B = 6.667, C = 3.333.
    expect(result.bolts.map(({ N_kN }) => N_kN)).toEqual([
      expect.closeTo(10 / 3, 9),
      expect.closeTo(10 / 3, 9),
      expect.closeTo(10 / 3, 9),
    ]);
  });

  it('adds the moment of N at its point to the given one', () => {
    const moved = calculate({
      ...good,
      action: { ...good.action, at_mm: [0, 50], N_kN: 10, Vx_kN: 0, Vy_kN: 0, Mx_kNm: 1 },
    });
    const central = calculate({
      ...good,
      action: { ...good.action, at_mm: [0, 0], N_kN: 10, Vx_kN: 0, Vy_kN: 0, Mx_kNm: 1.5 },
    });
    expect(moved.bolts[0]!.N_kN).toBeCloseTo(central.bolts[0]!.N_kN, 9);
  });

  it('describes itself as JSON Schema', () => {
    const schema = z.toJSONSchema(fixtureForcesCalc.input);
    expect(schema.required).toEqual(['calc', 'plate_mm', 'modularRatio', 'bolts', 'action']);
    expect(z.toJSONSchema(fixtureForcesCalc.output).required).toEqual(['bolts', 'compression', 'maxContact_MPa']);
  });
});

describe('wrong input names the key and what was expected', () => {
  const { action: _, ...withoutAction } = good;
  it.each<[string, unknown, string, RegExp]>([
    [
      'two corners',
      {
        ...good,
        plate_mm: [
          [0, 0],
          [1, 0],
        ],
      },
      'plate_mm',
      /2 corners, expected at least 3/,
    ],
    [
      'a bow',
      {
        ...good,
        plate_mm: [
          [0, 0],
          [9, 9],
          [9, 0],
          [0, 9],
        ],
      },
      'plate_mm',
      /sides 0 and 2 .*cross/,
    ],
    ['a closed outline', { ...good, plate_mm: [...good.plate_mm, [-100, -100]] }, 'plate_mm', /corners 0 and 4/],
    [
      'a straight outline',
      {
        ...good,
        plate_mm: [
          [0, 0],
          [1, 1],
          [2, 2],
        ],
      },
      'plate_mm',
      /one line/,
    ],
    [
      'a corner of three numbers',
      {
        ...good,
        plate_mm: [
          [0, 0, 0],
          [9, 0],
          [9, 9],
        ],
      },
      'plate_mm.0',
      /./,
    ],
    [
      'text for a number',
      {
        ...good,
        plate_mm: [
          ['0', 0],
          [9, 0],
          [9, 9],
        ],
      },
      'plate_mm.0.0',
      /finite number in mm/,
    ],
    ['not a number', { ...good, modularRatio: Number.NaN }, 'modularRatio', /expected n = E_s\/E_c/],
    ['zero ratio', { ...good, modularRatio: 0 }, 'modularRatio', /more than 0/],
    [
      'infinite force',
      { ...good, action: { ...good.action, N_kN: Number.POSITIVE_INFINITY } },
      'action.N_kN',
      /finite number in kN/,
    ],
    [
      'a length beyond reason',
      { ...good, action: { ...good.action, at_mm: [1e7, 0] } },
      'action.at_mm.0',
      /-1000000 to 1000000 mm/,
    ],
    ['a missing part of the action', { ...good, action: { at_mm: [0, 0] } }, 'action.N_kN', /finite number in kN/],
    ['a missing action', withoutAction, 'action', /./],
    ['negative area', { ...good, bolts: [{ ...A, stressArea_mm2: -157 }] }, 'bolts.0.stressArea_mm2', /more than 0/],
    ['no area', { ...good, bolts: [{ ...A, stressArea_mm2: 0 }] }, 'bolts.0.stressArea_mm2', /more than 0/],
    ['a name twice', { ...good, bolts: [A, { ...B, id: 'A' }] }, 'bolts.1.id', /"A" names two bolts/],
    ['an empty name', { ...good, bolts: [{ ...A, id: '' }] }, 'bolts.0.id', /names the bolt/],
    [
      'a bolt beside the plate',
      { ...good, bolts: [{ ...A, x_mm: 101 }] },
      'bolts.0',
      /bolt "A" at \(101, 60\) mm stands outside/,
    ],
    [
      'a word for takesShear',
      { ...good, bolts: [{ ...A, takesShear: 'yes' }] },
      'bolts.0.takesShear',
      /true, false or/,
    ],
    ['a key unknown', { ...good, plates: 1 }, '', /plates/],
    ['a key unknown inside', { ...good, bolts: [{ ...A, note: 'x' }] }, 'bolts.0', /note/],
    ['another calculation', { ...good, calc: 'anchorage' }, 'calc', /fixture-forces/],
  ])('%s', (_name, input, path, message) => {
    const parsed = fixtureForcesCalc.input.safeParse(input);
    expect(parsed.success).toBe(false);
    const issues = parsed.error!.issues.map((issue) => ({ path: issue.path.join('.'), message: issue.message }));
    expect(issues).toContainEqual({ path, message: expect.stringMatching(message) });
  });

  const catchCalc = (input: unknown): CalcError => {
    try {
      calculate(input);
    } catch (error) {
      if (error instanceof CalcError) return error;
    }
    throw new Error('expected a CalcError');
  };

  it('what the statics cannot do comes as a CalcError of one line', () => {
    const lifted = catchCalc({
      ...good,
      bolts: [],
      action: { ...good.action, N_kN: 1, Vx_kN: 0, Vy_kN: 0, Mx_kNm: 0 },
    });
    expect(lifted.key).toBe('action');
    expect(lifted.message).toBe('action: N = 1000 N pulls the plate off and no bolt holds it');
    const sliding = catchCalc({ ...good, bolts: [B] });
    expect(sliding.key).toBe('bolts');
    expect(sliding.message).toMatch(/^bolts: none /);
    expect(sliding.message).not.toContain('\n');
  });
});
