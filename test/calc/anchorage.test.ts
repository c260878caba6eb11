import { describe, expect, it } from 'vitest';
import { anchorageInput } from '../../src/calc/anchorage-input.ts';
import { type AnchorageOutput, anchorageOutput } from '../../src/calc/anchorage-output.ts';
import { CalcError } from '../../src/calc/calc-error.ts';
import { calculate, describeCalculation, listCalculations } from '../../src/calc/calculation.ts';
import { ENGINE_VERSION } from '../../src/engine/version.ts';
import { EXAMPLE_GROUP } from './example-group.ts';

/** The example of the contract's page, with a rectangle of 3 m by 2 m round it. */
const example = {
  calc: 'anchorage',
  ...EXAMPLE_GROUP,
  member: {
    ...EXAMPLE_GROUP.member,
    outline_mm: [
      [0, 0],
      [3000, 0],
      [3000, 2000],
      [0, 2000],
    ],
  },
  positions: [
    { id: 'A', x_mm: 100, y_mm: 1000 },
    { id: 'B', x_mm: 220, y_mm: 1000 },
  ],
  actions: [
    { id: 'B', N_kN: 6, Vx_kN: 0, Vy_kN: -5 },
    { id: 'A', N_kN: 10, Vx_kN: -1, Vy_kN: -5 },
  ],
};
const qualified = { ...example.insert, qualification: { document: 'an invented document', standard: 'EN 1992-4' } };

/** Calculates and holds the answer to the output schema, every key of it. */
function ask(input: object, keepsSteps = false): AnchorageOutput {
  const { contract, engine, ...answer } = calculate(input, keepsSteps) as Record<string, unknown>;
  expect([contract, engine]).toEqual([1, ENGINE_VERSION]);
  return anchorageOutput.parse(answer);
}

describe('anchorage', () => {
  const answer = ask(example);
  const of = (mode: string, from = answer) => from.modes.find((row) => row.mode === mode)!;

  it('answers the example in the shape of the contract', () => {
    expect(answer.standard).toBe('EN 1992-4:2018');
    expect(new Set(answer.modes.map(({ mode }) => mode))).toEqual(
      new Set([
        'steel-tension',
        'concrete-cone',
        'pull-out',
        'blow-out',
        'splitting',
        'steel-shear',
        'pry-out',
        'concrete-edge',
      ]),
    );
    expect(answer.interaction.map(({ kind }) => kind)).toEqual(['steel', 'concrete']);
    for (const row of answer.modes.filter(({ applies }) => !applies)) expect(row.notes).not.toEqual([]);
  });
  it('in kN and degrees', () => {
    // 157 mm² · 800 MPa = 125.6 kN, over 1.5.
    expect(of('steel-tension')).toMatchObject({ inserts: ['A'], characteristic_kN: 125.6, safety: 1.5, action_kN: 10 });
    expect(of('steel-tension').design_kN).toBeCloseTo(83.7333, 4);
    // 8.9 √32 · 96^1.5 = 47 356 N.
    expect(of('concrete-cone').basic_kN).toBeCloseTo(47.356, 3);
    expect(of('concrete-cone')).toMatchObject({ inserts: ['A', 'B'], action_kN: 16, hefUsed_mm: 96 });
    const edge = answer.modes.find((row) => row.mode === 'concrete-edge' && row.c1Used_mm === 100)!;
    expect(edge.direction_deg).toBeCloseTo(-180, 9);
    expect(edge.edge).toEqual({ from: [0, 2000], to: [0, 0] });
    // Toward the left edge: 1 kN of A; along it A's own 5 kN: √26.
    expect(edge.action_kN).toBeCloseTo(Math.sqrt(26), 9);
  });
  it('matches actions to positions by name, not by place', () => {
    const turned = ask({ ...example, actions: [...example.actions].reverse() });
    expect(turned).toEqual(answer);
  });
  it('says "not covered" without a qualification, and why', () => {
    expect(answer.verdict).toBe('not covered');
    expect(answer.notes.join()).toContain('no qualification document for EN 1992-4');
    expect(ask({ ...example, insert: qualified }).verdict).toBe('pass');
    expect(ask({ ...example, insert: { ...qualified, qualification: null } }).verdict).toBe('not covered');
  });
  it('without actions: resistances, ratios null, nothing governs', () => {
    const { actions: _, ...rest } = example;
    const resistances = ask({ ...rest, insert: qualified });
    expect(resistances).toMatchObject({ verdict: null, governing: null, interaction: [] });
    expect(resistances.modes.every(({ ratio, action_kN }) => ratio === null && action_kN === null)).toBe(true);
    expect(resistances.notes.join()).toContain('strength not checked');
    expect(of('concrete-cone', resistances).design_kN).toBeGreaterThan(0);
  });
  it('a null outline is a face without an edge', () => {
    const open = ask({ ...example, member: { thickness_mm: 180, outline_mm: null } });
    expect(of('concrete-edge', open)).toMatchObject({ applies: false, notes: ['no edge within 1440 mm'] });
    expect(of('concrete-cone', open).factors.psi_s).toBe(1);
  });
  it('names what it assumed', () => {
    const { lightweightFactor: _, ...concrete } = example.concrete;
    expect(ask({ ...example, concrete }).notes.join()).toContain('lightweightFactor not given');
    expect(answer.notes.join()).toContain('gamma_Mc 1.5');
    expect(ask({ ...example, partialFactors: { gamma_Mc: 1.5 } }).notes.join()).not.toContain('gamma_Mc');
  });
  it('ignores id, source, note and expect', () => {
    expect(ask({ ...example, id: 7, source: 'a book', note: null, expect: {} })).toEqual(answer);
  });
  it('carries steps only when asked', () => {
    expect(JSON.stringify(answer)).not.toContain('"steps"');
    const explained = ask(example, true);
    expect(of('concrete-cone', explained).steps!.map(({ symbol }) => symbol)).toContain('N_Rk_c');
    expect(explained.interaction[0]!.steps).toHaveLength(1);
  });

  // Every key of the contract's "inputs beyond the README", each seen in the answer.
  it('passes the further inputs on', () => {
    const parts = [
      { name: 'bolt', area_mm2: 157, ultimate_MPa: 800, yield_MPa: 640, resists: 'both' },
      { name: 'body', area_mm2: 300, ultimate_MPa: 500, yield_MPa: 400 },
    ];
    const { headDiameter_mm: _, ...noHead } = qualified;
    const bar = {
      diameter_mm: 10,
      count: 6,
      distance_mm: 40,
      anchorageInside_mm: 80,
      anchorageOutside_mm: 150,
      yield_MPa: 500,
      hooked: true,
      goodBond: true,
    };
    const further = ask({
      ...example,
      member: { ...example.member, thickness_mm: 240 },
      concrete: { ...example.concrete, cracked: false },
      insert: { ...noHead, bearingArea_mm2: 1000, steelParts: parts },
      splitting: { c_cr_mm: 200, h_min_mm: 160 },
      partialFactors: { gamma_Mc: 1.8, gamma_Ms_N: 1.6, gamma_Ms_V: 1.7 },
      pryOutFactor: 1.5,
      leverArm: { length_mm: 25, restraint: 2, sectionModulus_mm3: 277 },
      hangers: [bar],
      hairpins: [{ ...bar, toward_deg: 180, depth_mm: 30 }],
      uses: ['fatigue'],
    });
    expect(
      further.modes.filter(({ mode }) => mode === 'steel-tension').map(({ part, safety }) => [part, safety]),
    ).toEqual([
      ['bolt', 1.6],
      ['body', 1.6],
    ]);
    expect(of('steel-shear', further)).toMatchObject({ safety: 1.7, factors: {} });
    expect(of('pull-out', further).characteristic_kN).toBeCloseTo((10.5 * 1000 * 32) / 1000, 9);
    expect(of('splitting', further)).toMatchObject({ applies: true, safety: 1.8 });
    expect(of('pry-out', further).factors).toMatchObject({ k_8: 1.5, k_re: 0.75 });
    // Hangers behind the cone; hairpins toward the left edge, 180 degrees.
    const bars = further.modes.filter(({ mode }) => mode === 'bar-steel');
    expect(bars.map((row) => row.edge?.from)).toEqual([undefined, [0, 2000]]);
    expect(further.notes.join()).toContain('fatigue: no rule');
  });
  it('compression and tested resistances', () => {
    const pressed = ask({
      ...example,
      member: { thickness_mm: 180, outline_mm: null },
      insert: {
        ...qualified,
        fullHead: false,
        tested: [{ mode: 'pull-out', characteristic_kN: 30, safety: 1.8, fromStrength_MPa: 25, report: 'R 7' }],
      },
      compression: { C_kN: 16, at_mm: [160, 1060] },
    });
    expect(of('concrete-cone', pressed).factors.psi_M).toBeGreaterThan(1);
    expect(of('pull-out', pressed)).toMatchObject({ characteristic_kN: 30, safety: 1.8 });
    expect(pressed.verdict).toBe('pass');
  });
  it('a load on nothing has a null ratio, a note and "fail", since JSON has no infinity', () => {
    const nothing = ask({
      ...example,
      leverArm: { length_mm: 25, restraint: 1, sectionModulus_mm3: 277 },
      actions: [example.actions[0]!, { id: 'A', N_kN: 90, Vx_kN: 1, Vy_kN: 0 }],
    });
    expect(of('steel-shear', nothing).ratio).toBeNull();
    expect(of('steel-shear', nothing).notes.join()).toContain('nothing is left to resist');
    expect(nothing).toMatchObject({ verdict: 'fail', governing: { mode: 'steel-shear', ratio: null } });
    expect(() => JSON.parse(JSON.stringify(nothing))).not.toThrow();
  });
});

describe('anchorage by the other standards', () => {
  const documents = { document: 'an invented document', standard: 'EN 1992-4; AS 5216; ACI 318-19' };
  const by = (standard: string, more: object = {}, keepsSteps = false) =>
    ask({ ...example, insert: { ...example.insert, qualification: documents }, standard, ...more }, keepsSteps);
  const rowsOf = (answer: AnchorageOutput, mode: string) =>
    answer.modes.filter((row) => row.mode === mode && row.applies);

  it('names the document and the clauses of each', () => {
    const names = ['EN 1992-4:2018', 'AS 5216:2021', 'ACI 318-19', 'ACI 318M-19'];
    const answers = ['EN 1992-4', 'AS 5216', 'ACI 318-19', 'ACI 318M-19'].map((standard) => by(standard));
    expect(answers.map(({ standard }) => standard)).toEqual(names);
    const starts = ['EN 1992-4:2018 ', 'AS 5216:2021 ', 'ACI 318-19 and 318M-19, ', 'ACI 318-19 and 318M-19, '];
    for (const [i, answer] of answers.entries())
      for (const { clause } of [...answer.modes, ...answer.interaction])
        expect(clause.slice(0, starts[i]!.length)).toBe(starts[i]);
  });

  it('AS 5216: safety is φ = 1/γ, design = φ · characteristic', () => {
    const [as, en] = [by('AS 5216'), by('EN 1992-4')];
    for (const [i, row] of as.modes.entries()) {
      expect(row.characteristic_kN).toBe(en.modes[i]!.characteristic_kN);
      if (row.safety === null) continue;
      expect(row.safety * en.modes[i]!.safety!).toBeCloseTo(1, 12);
      expect(row.design_kN).toBeCloseTo(row.safety * row.characteristic_kN!, 12);
    }
    expect(as).toMatchObject({ verdict: 'pass', interaction: [{ kind: 'steel' }, { kind: 'concrete' }] });
    // Partial factors γ are taken as 1/γ.
    const given = by('AS 5216', { partialFactors: { gamma_Mc: 1.8, gamma_Ms_N: 1.6, gamma_Ms_V: 1.25 } });
    expect(rowsOf(given, 'concrete-cone')[0]!.safety).toBe(1 / 1.8);
    expect(rowsOf(given, 'steel-tension')[0]!.safety).toBe(1 / 1.6);
    expect(rowsOf(given, 'steel-shear')[0]!.safety).toBe(0.8);
  });

  it('ACI 318M-19: safety is φ, factors by its own symbols, an edge in two parts, one interaction', () => {
    const aci = by('ACI 318M-19');
    const [cone] = rowsOf(aci, 'concrete-cone');
    // 10 √32 · 96^1.5 = 53 209 N; φ 0.70.
    expect(cone!.basic_kN).toBeCloseTo(53.209, 3);
    expect(cone).toMatchObject({ safety: 0.7, hefUsed_mm: 96 });
    expect(cone!.design_kN).toBeCloseTo(0.7 * cone!.characteristic_kN!, 12);
    expect(Object.keys(cone!.factors)).toEqual(['areaRatio', 'psi_ed', 'psi_c', 'psi_ec', 'psi_cp']);
    // A5 14 % and Z 35 %: ductile.
    expect(rowsOf(aci, 'steel-tension')[0]).toMatchObject({ characteristic_kN: 125.6, safety: 0.75 });
    expect(rowsOf(aci, 'steel-shear')[0]).toMatchObject({ characteristic_kN: 75.36, safety: 0.65 });
    // Toward the left edge 1 kN of A; along it A's own 5 kN.
    const left = rowsOf(aci, 'concrete-edge').filter((row) => row.edge!.from[0] === 0 && row.edge!.to[0] === 0);
    expect(left.map(({ part, action_kN, inserts }) => [part, action_kN, inserts])).toEqual([
      ['toward', 1, ['A']],
      ['along', 5, ['A']],
    ]);
    expect(Object.keys(left[0]!.factors)).toEqual(['areaRatio', 'psi_ed', 'psi_h', 'psi_ec', 'psi_c']);
    expect(aci.interaction.map(({ kind }) => kind)).toEqual(['all']);
    expect(aci.verdict).toBe('pass');
    expect(aci.notes.join()).not.toContain('gamma_Mc');
    expect(aci.modes.find(({ mode }) => mode === 'splitting')).toMatchObject({ applies: false });
  });

  it('ACI 318-19 gives the same shape with the inch-pound coefficients', () => {
    const [inch, si] = [by('ACI 318-19'), by('ACI 318M-19')];
    const shape = ({ modes }: AnchorageOutput) =>
      modes.map(({ mode, part, applies, inserts }) => [mode, part, applies, inserts]);
    expect(shape(inch)).toEqual(shape(si));
    // 24 over the 10 of SI: 10.0436.
    expect(rowsOf(inch, 'concrete-cone')[0]!.basic_kN! / rowsOf(si, 'concrete-cone')[0]!.basic_kN!).toBeCloseTo(
      1.00436,
      5,
    );
  });

  it('an edge without a part along it has one row; without actions both resistances', () => {
    const actions = [
      { id: 'A', N_kN: 0, Vx_kN: -5, Vy_kN: 0 },
      { id: 'B', N_kN: 0, Vx_kN: -5, Vy_kN: 0 },
    ];
    const isLeft = ({ c1Used_mm }: AnchorageOutput['modes'][number]) => c1Used_mm === 100;
    expect(
      rowsOf(by('ACI 318M-19', { actions }), 'concrete-edge')
        .filter(isLeft)
        .map(({ part }) => part),
    ).toEqual(['toward']);
    const bare = by('ACI 318M-19', { actions: undefined });
    expect(
      rowsOf(bare, 'concrete-edge')
        .filter(isLeft)
        .map(({ part, ratio }) => [part, ratio]),
    ).toEqual([
      ['toward', null],
      ['along', null],
    ]);
    // EN and AS have one row an edge, without parts.
    expect(rowsOf(by('EN 1992-4'), 'concrete-edge').every((row) => !('part' in row))).toBe(true);
  });

  it('mortarPad, lightweightFactor and supplementary count by ACI 318', () => {
    const concrete = { ...example.concrete, lightweightFactor: 0.75 };
    const reinforcement = { ...example.reinforcement, supplementary: true };
    const further = by('ACI 318M-19', { mortarPad: true, concrete, reinforcement });
    expect(rowsOf(further, 'steel-shear')[0]!.characteristic_kN).toBeCloseTo(0.8 * 75.36, 9);
    expect(rowsOf(further, 'concrete-cone')[0]!.safety).toBe(0.75);
    expect(rowsOf(further, 'concrete-cone')[0]!.basic_kN).toBeCloseTo(0.75 * 53.209, 3);
    expect(rowsOf(further, 'pry-out')[0]!.safety).toBe(0.7);
  });

  it('asks for a document of the standard in use', () => {
    const insert = { ...example.insert, qualification: { ...documents, standard: 'EN 1992-4' } };
    for (const [standard, named] of [
      ['AS 5216', 'AS 5216'],
      ['ACI 318-19', 'ACI 318'],
      ['ACI 318M-19', 'ACI 318'],
    ] as const) {
      const answer = by(standard, { insert });
      expect(answer.verdict).toBe('not covered');
      expect(answer.notes.join()).toContain(`no qualification document for ${named}, only for EN 1992-4;`);
    }
  });

  it('steps carry the clauses of the standard', () => {
    const steps = (standard: string) =>
      by(standard, {}, true)
        .modes.flatMap((row) => row.steps ?? [])
        .filter(({ clause }) => clause !== '');
    expect(steps('ACI 318-19').every(({ clause }) => clause.startsWith('ACI 318-19 and 318M-19, 17.'))).toBe(true);
    expect(steps('AS 5216').every(({ clause }) => clause.startsWith('AS 5216:2021 '))).toBe(true);
  });

  it.each(['gamma_Mc', 'gamma_Ms_N', 'gamma_Ms_V'])('ACI 318 takes no %s', (factor) => {
    for (const standard of ['ACI 318-19', 'ACI 318M-19']) {
      const error = catchError(() => by(standard, { partialFactors: { [factor]: 1.5 } }));
      expect(error).toBeInstanceOf(CalcError);
      expect(error.message).toBe(
        `partialFactors.${factor}: ${standard} has strength reduction factors of its own, expected no partial factors`,
      );
    }
    expect(() => by('ACI 318-19', { partialFactors: {} })).not.toThrow();
  });

  it.each(['ACI 318', 'AS 5216:2021', 'EN 1992-4:2018', 'en 1992-4', 7])('no standard is called %s', (standard) => {
    expect(catchError(() => ask({ ...example, standard })).message).toBe(
      'standard: expected "EN 1992-4", "AS 5216", "ACI 318-19", "ACI 318M-19"',
    );
  });
});

describe('wrong input', () => {
  type Change = (input: {
    concrete: Record<string, unknown>;
    member: Record<string, unknown>;
    reinforcement: Record<string, unknown>;
    insert: Record<string, unknown>;
    positions: Record<string, unknown>[];
    actions: Record<string, unknown>[];
    [key: string]: unknown;
  }) => void;

  it.each<[key: string, expected: string, change: Change]>([
    ['standard', 'expected "EN 1992-4"', (input) => Object.assign(input, { standard: 'EN 1992' })],
    ['concrete', 'expected an object', (input) => Object.assign(input, { concrete: 32 })],
    [
      'concrete.strength_MPa',
      'a number above 0, at most 200 MPa',
      ({ concrete }) => Object.assign(concrete, { strength_MPa: '32' }),
    ],
    ['concrete.strength_MPa', 'a number above 0', ({ concrete }) => Object.assign(concrete, { strength_MPa: -1 })],
    ['concrete.cracked', 'expected true or false', ({ concrete }) => Object.assign(concrete, { cracked: 'yes' })],
    ['member.thickness_mm', 'expected the thickness', ({ member }) => delete member.thickness_mm],
    ['member.outline_mm', 'expected a list of corners', ({ member }) => delete member.outline_mm],
    [
      'member.outline_mm',
      'at least three corners',
      ({ member }) =>
        Object.assign(member, {
          outline_mm: [
            [0, 0],
            [9, 9],
          ],
        }),
    ],
    [
      'member.outline_mm[1]',
      'expected a point [x, y] in mm',
      ({ member }) => Object.assign(member, { outline_mm: [[0, 0], [9], [9, 0]] }),
    ],
    [
      'member.outline_mm',
      'expected a simple polygon',
      ({ member }) =>
        Object.assign(member, {
          outline_mm: [
            [0, 0],
            [9, 9],
            [9, 0],
            [0, 9],
          ],
        }),
    ],
    [
      'member.openings_mm[0]',
      'expected concrete between them',
      ({ member }) =>
        Object.assign(member, {
          openings_mm: [
            [
              [-5, -5],
              [5, -5],
              [5, 5],
            ],
          ],
        }),
    ],
    ['reinforcement', 'expected an object', (input) => Object.assign(input, { reinforcement: undefined })],
    [
      'reinforcement.edge',
      'expected "none", "bar" or "bar-and-stirrups"',
      ({ reinforcement }) => Object.assign(reinforcement, { edge: 'bars' }),
    ],
    [
      'insert.headDiameter_mm',
      'exactly one of headDiameter_mm and bearingArea_mm2',
      ({ insert }) => Object.assign(insert, { bearingArea_mm2: 1000 }),
    ],
    [
      'insert.headDiameter_mm',
      'exactly one of headDiameter_mm and bearingArea_mm2',
      ({ insert }) => delete insert.headDiameter_mm,
    ],
    [
      'insert.headDiameter_mm',
      '20 mm is not above the body diameter; expected more than 24 mm',
      ({ insert }) => Object.assign(insert, { headDiameter_mm: 20 }),
    ],
    [
      'insert.stressArea_mm2',
      'expected stressArea_mm2, ultimate_MPa and yield_MPa, or steelParts',
      ({ insert }) => delete insert.yield_MPa,
    ],
    [
      'insert.yield_MPa',
      '900 MPa is above the ultimate strength; expected at most 800 MPa',
      ({ insert }) => Object.assign(insert, { yield_MPa: 900 }),
    ],
    [
      'insert.embedment_mm',
      '190 mm does not fit in a member 180 mm thick',
      ({ insert }) => Object.assign(insert, { embedment_mm: 190 }),
    ],
    [
      'insert.embedmnt_mm',
      'is not a key of this calculation',
      ({ insert }) => Object.assign(insert, { embedmnt_mm: 90 }),
    ],
    [
      'insert.tested[0].report',
      'expected the number of the test report',
      ({ insert }) =>
        Object.assign(insert, {
          tested: [{ mode: 'pull-out', characteristic_kN: 30, fromStrength_MPa: 20, report: '' }],
        }),
    ],
    [
      'insert.tested',
      'a report was expected',
      ({ insert }) =>
        Object.assign(insert, {
          tested: [{ mode: 'pull-out', characteristic_kN: 30, fromStrength_MPa: 20, report: ' ' }],
        }),
    ],
    [
      'insert.steelParts[0].yield_MPa',
      'expected at most 2 MPa',
      ({ insert }) =>
        Object.assign(insert, { steelParts: [{ name: 'bolt', area_mm2: 1, ultimate_MPa: 2, yield_MPa: 3 }] }),
    ],
    ['positions', 'expected at least one insert', (input) => Object.assign(input, { positions: [] })],
    ['positions', 'is not inside the concrete', ({ positions }) => Object.assign(positions[0]!, { x_mm: -5 })],
    ['positions', 'stand at the same place', ({ positions }) => Object.assign(positions[1]!, { x_mm: 100 })],
    ['positions[1].id', '"A" names two inserts', ({ positions }) => Object.assign(positions[1]!, { id: 'A' })],
    ['actions', 'insert "B" has no action', ({ actions }) => actions.shift()],
    ['actions', 'expected a list', (input) => Object.assign(input, { actions: {} })],
    [
      'actions[0].id',
      '"Z" is not among the positions, expected one of A, B',
      ({ actions }) => Object.assign(actions[0]!, { id: 'Z' }),
    ],
    ['actions[2].id', '"A" has two actions', ({ actions }) => actions.push(actions[1]!)],
    [
      'actions[1].N_kN',
      'expected the tension, a number from -1000000 to 1000000 kN',
      ({ actions }) => Object.assign(actions[1]!, { N_kN: null }),
    ],
    [
      'leverArm.restraint',
      'a number from 1 to 2',
      (input) => Object.assign(input, { leverArm: { length_mm: 30, restraint: 3, sectionModulus_mm3: 277 } }),
    ],
    ['hairpins[0].diameter_mm', 'expected the bar diameter', (input) => Object.assign(input, { hairpins: [{}] })],
    [
      'compression.at_mm',
      'expected a point [x, y] in mm',
      (input) => Object.assign(input, { compression: { C_kN: 5, at_mm: [1] } }),
    ],
    ['uses[0]', 'expected "seismic"', (input) => Object.assign(input, { uses: ['crane'] })],
    ['speed', 'is not a key of this calculation', (input) => Object.assign(input, { speed: 3 })],
  ])('%s: … %s', (key, expected, change) => {
    const input = structuredClone(example);
    change(input);
    const error = catchError(() => calculate(input));
    expect(error).toBeInstanceOf(CalcError);
    expect((error as CalcError).key).toBe(key);
    expect(error.message.startsWith(`${key}: `)).toBe(true);
    expect(error.message).toContain(expected);
    expect(error.message).not.toContain('\n');
  });

  it.each([null, [], 'anchorage', 5, undefined])('not an object: %s', (input) => {
    expect(catchError(() => calculate(input)).message).toBe('input: expected a JSON object with the key "calc"');
  });
  it('a calculation that is not there', () => {
    const known = listCalculations().map(({ name }) => `"${name}"`);
    expect(catchError(() => calculate({})).message).toBe(`calc: expected one of ${known.join(', ')}`);
    expect(catchError(() => calculate({ calc: 'anchor' })).message).toContain('calc: "anchor" is not known');
    expect(catchError(() => calculate({ calc: 3 })).message).toContain('calc: expected one of');
    expect(() => describeCalculation('anchor')).toThrow(CalcError);
  });
});

function catchError(work: () => unknown): Error {
  try {
    work();
  } catch (error) {
    if (error instanceof Error) return error;
  }
  throw new Error('an error was expected');
}

describe('what there is to calculate', () => {
  it('lists each calculation once, with a phrase', () => {
    const names = listCalculations().map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['anchorage', 'fixture-forces']));
    expect(new Set(names).size).toBe(names.length);
    for (const { gives } of listCalculations()) expect(gives.length).toBeGreaterThan(10);
  });
  it('describes each as JSON Schema of input and output', () => {
    for (const { name } of listCalculations()) {
      const described = describeCalculation(name) as { input: object; output: object; name: string };
      expect(described.name).toBe(name);
      expect(described.input).toMatchObject({ type: 'object', additionalProperties: false });
      expect(described.output).toMatchObject({ type: 'object' });
      expect(() => JSON.stringify(described)).not.toThrow();
    }
  });
  it('the schema of anchorage names every key of its input', () => {
    const { input } = describeCalculation('anchorage') as { input: { properties: object; required: string[] } };
    expect(Object.keys(input.properties)).toEqual(Object.keys(anchorageInput.shape));
    expect(input.required.sort()).toEqual([
      'calc',
      'concrete',
      'insert',
      'member',
      'positions',
      'reinforcement',
      'standard',
    ]);
  });
});
