import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EXAMPLE_GROUP } from '../calc/example-group.ts';
import { onepour } from './run-command.ts';

/** The contract's example of `anchorage`, its choices filled in; expected numbers are worked by hand in the tests. */
const ANCHORAGE = {
  calc: 'anchorage',
  id: 'example',
  note: 'extra keys id, source, note and expect are passed over',
  ...EXAMPLE_GROUP,
  insert: {
    ...EXAMPLE_GROUP.insert,
    qualification: { document: 'invented for this test', standard: 'EN 1992-4' },
  },
  positions: [{ id: 'A', x_mm: 100, y_mm: 1000 }],
  actions: [{ id: 'A', N_kN: 10, Vx_kN: 0, Vy_kN: -5 }],
};

const FIXTURE = {
  calc: 'fixture-forces',
  plate_mm: [
    [-100, -100],
    [100, -100],
    [100, 100],
    [-100, 100],
  ],
  modularRatio: 7,
  bolts: [
    { id: 'A', x_mm: -60, y_mm: 0, stressArea_mm2: 157, takesShear: true },
    { id: 'B', x_mm: 60, y_mm: 0, stressArea_mm2: 157, takesShear: true },
  ],
  action: { at_mm: [0, 0], N_kN: 20, Vx_kN: 0, Vy_kN: -6, Mx_kNm: 0, My_kNm: 0, T_kNm: 0 },
};

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'calc-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function save(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

describe('onepour calc', () => {
  it('answers the anchorage example from a file', () => {
    const { status, stdout, stderr } = onepour(['calc', save('a.json', ANCHORAGE)]);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const result = JSON.parse(stdout);
    expect(result.contract).toBe(1);
    expect(result.verdict).toBe('pass');
    const cone = result.modes.find(({ mode }: { mode: string }) => mode === 'concrete-cone');
    // By hand: N0 = 8.9 · √32 · 96^1.5 = 47 355.65 N; area (144 + 100) · 288/288² = 0.847222; psi_s = 0.7 + 0.3 · 100/144
    // = 0.908333; 47.35565 · 0.847222 · 0.908333 = 36.44303 kN; / 1.5 = 24.29536 kN.
    expect(cone.basic_kN).toBeCloseTo(47.35565, 5);
    expect(cone.factors.areaRatio).toBeCloseTo(244 / 288, 9);
    expect(cone.design_kN).toBeCloseTo(24.29536, 4);
    expect(cone.ratio).toBeCloseTo(10 / 24.29536, 5);
  });

  it('answers the fixture example from standard input', () => {
    const { status, stdout } = onepour(['calc', '-'], JSON.stringify(FIXTURE));
    expect(status).toBe(0);
    const { bolts, compression } = JSON.parse(stdout);
    // By statics: two bolts share 20 kN and 6 kN alike; nothing presses.
    expect(bolts).toHaveLength(2);
    for (const bolt of bolts) {
      expect(bolt.N_kN).toBeCloseTo(10, 9);
      expect(bolt.Vy_kN).toBeCloseTo(-3, 9);
    }
    expect(compression).toBeNull();
  });

  it('gives one line a file for several files', () => {
    const { status, stdout } = onepour(['calc', save('a.json', ANCHORAGE), save('f.json', FIXTURE)]);
    expect(status).toBe(0);
    const lines = stdout.trim().split('\n');
    expect(lines).toHaveLength(2);
    expect(JSON.parse(lines[0]!).modes).toBeDefined();
    expect(JSON.parse(lines[1]!).bolts).toBeDefined();
  });

  it('prints nothing of the good files when one is wrong, and names it', () => {
    const { status, stdout, stderr } = onepour([
      'calc',
      save('a.json', ANCHORAGE),
      save('bad.json', { ...FIXTURE, modularRatio: 0 }),
    ]);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain('bad.json: modularRatio:');
  });

  it('prints an anchorage step by step', () => {
    const { status, stdout } = onepour(['calc', '--steps', save('a.json', ANCHORAGE)]);
    expect(status).toBe(0);
    expect(stdout).toContain('8.9 * sqrt(32) * 96^1.5');
    expect(stdout).toContain('EN 1992-4:2018 7.2.1.4');
    expect(stdout).toContain('verdict: pass');
  });

  it('lists calculations and writes schemas', () => {
    const list = onepour(['calc', '--list']);
    expect(list.status).toBe(0);
    const names = [
      'anchorage',
      'carries-at-most',
      'position-zone',
      'fixture-forces',
      'bolt',
      'strength-at-age',
      'maturity',
      'coating-life',
      'mould-view',
      'chair-stack',
      'tape-position',
      'hole-fit',
      'clearance-probability',
      'as-cast',
    ];
    expect(list.stdout.match(/^\S+/gm)).toEqual(names);
    for (const name of names) {
      const { status, stdout } = onepour(['calc', '--schema', name]);
      expect(status).toBe(0);
      const schema = JSON.parse(stdout);
      expect(schema.input.type).toBe('object');
      expect(schema.output.type).toBe('object');
    }
  });
});

describe('wrong input gives one clear line and exit code 2', () => {
  const cases: readonly (readonly [what: string, input: unknown, expected: RegExp])[] = [
    ['not JSON', '{ "calc": ', /is not JSON/],
    ['a list', [], /input: expected a JSON object/],
    ['no calc', {}, /calc: expected one of "anchorage"/],
    ['an unknown calc', { calc: 'anchor' }, /calc: "anchor" is not known/],
    ['another standard', { ...ANCHORAGE, standard: 'EN 1992' }, /standard: expected "EN 1992-4"/],
    [
      'a negative strength',
      { ...ANCHORAGE, concrete: { ...ANCHORAGE.concrete, strength_MPa: -1 } },
      /concrete\.strength_MPa/,
    ],
    ['a misspelt key', { ...ANCHORAGE, insets: 1 }, /insets: is not a key/],
    ['a missing key', { ...ANCHORAGE, reinforcement: undefined }, /reinforcement/],
    [
      'a deep foot',
      { ...ANCHORAGE, member: { ...ANCHORAGE.member, thickness_mm: 90 } },
      /insert\.embedment.*90 mm thick/,
    ],
    [
      'an insert outside',
      { ...ANCHORAGE, positions: [{ id: 'A', x_mm: -5, y_mm: 5 }] },
      /positions: insert A .* not inside/,
    ],
    [
      'a name twice',
      { ...ANCHORAGE, positions: [ANCHORAGE.positions[0], ANCHORAGE.positions[0]] },
      /positions\[1\]\.id: "A" names two/,
    ],
    [
      'an unknown insert',
      { ...ANCHORAGE, actions: [{ id: 'Z', N_kN: 1, Vx_kN: 0, Vy_kN: 0 }] },
      /actions\[0\]\.id: "Z" is not among/,
    ],
    ['an action missing', { ...ANCHORAGE, actions: [] }, /actions: insert "A" has no action/],
    [
      'a text for a number',
      { ...ANCHORAGE, actions: [{ id: 'A', N_kN: '1', Vx_kN: 0, Vy_kN: 0 }] },
      /actions\[0\]\.N_kN/,
    ],
    [
      'two feet',
      { ...ANCHORAGE, insert: { ...ANCHORAGE.insert, bearingArea_mm2: 1000 } },
      /exactly one of headDiameter_mm/,
    ],
    [
      'no foot',
      { ...ANCHORAGE, insert: { ...ANCHORAGE.insert, headDiameter_mm: undefined } },
      /exactly one of headDiameter_mm/,
    ],
    [
      'a foot thinner than the body',
      { ...ANCHORAGE, insert: { ...ANCHORAGE.insert, headDiameter_mm: 20 } },
      /insert\.headDiameter_mm: 20 mm/,
    ],
    [
      'yield above ultimate',
      { ...ANCHORAGE, insert: { ...ANCHORAGE.insert, yield_MPa: 900 } },
      /insert\.yield_MPa: 900 MPa/,
    ],
    [
      'a crossed outline',
      {
        ...ANCHORAGE,
        member: {
          ...ANCHORAGE.member,
          outline_mm: [
            [0, 0],
            [10, 10],
            [10, 0],
            [0, 10],
          ],
        },
      },
      /member/,
    ],
    [
      'an opening outside',
      {
        ...ANCHORAGE,
        member: {
          ...ANCHORAGE.member,
          openings_mm: [
            [
              [9000, 0],
              [9100, 0],
              [9100, 50],
            ],
          ],
        },
      },
      /member.*opening/,
    ],
    [
      'a wrong edge word',
      { ...ANCHORAGE, reinforcement: { ...ANCHORAGE.reinforcement, edge: 'stirrups' } },
      /reinforcement\.edge: expected "none"/,
    ],
    [
      'a crossed plate',
      {
        ...FIXTURE,
        plate_mm: [
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ],
      },
      /plate_mm/,
    ],
    [
      'a bolt twice',
      { ...FIXTURE, bolts: [FIXTURE.bolts[0], FIXTURE.bolts[0]] },
      /bolts\[1\]\.id: "A" names two bolts/,
    ],
    ['a plate that tips', { ...FIXTURE, bolts: [], action: { ...FIXTURE.action, N_kN: 20 } }, /bolts|action/],
  ];
  it.each(cases)('%s', (_, input, expected) => {
    const { status, stdout, stderr } = onepour(
      ['calc', '-'],
      typeof input === 'string' ? input : JSON.stringify(input),
    );
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(expected);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stderr).not.toMatch(/ at .*:\d+:\d+/);
  });

  it('a file that is not there, a wrong schema name, no file, a wrong option', () => {
    for (const [args, expected] of [
      [['calc', 'nowhere.json'], /nowhere\.json: cannot be read/],
      [['calc', '--schema', 'bolts'], /"bolts" is not known, expected one of/],
      [['calc'], /no file given/],
      [['calc', '--lst'], /unknown option '--lst'/],
      [['chek'], /unknown command 'chek'/],
    ] as const) {
      const { status, stderr } = onepour(args);
      expect(status).toBe(2);
      expect(stderr).toMatch(expected);
      expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    }
  });
});
