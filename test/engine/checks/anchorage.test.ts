// What a whole check answers: scope, tests in place of formulas, resistances alone, errors, verdicts. The modes themselves are
// held against hand calculations in tension.test.ts, shear.test.ts and bars.test.ts.
import { describe, expect, it } from 'vitest';
import { checkAnchorage, explainAnchorage, findResistances, prepare } from '../../../src/engine/checks/anchorage.ts';
import { AnchorageError } from '../../../src/engine/checks/anchorage-error.ts';
import type { GroupActions, TestedResistance } from '../../../src/engine/checks/anchorage-group.ts';
import type { AnchorageResult } from '../../../src/engine/checks/result.ts';
import type { UncoveredUse } from '../../../src/engine/checks/uncovered-use.ts';
import { decideVerdict, isWithin, loadRatio } from '../../../src/engine/checks/verdict.ts';
import { type Changes, HAIRPIN, load, makeGroup, rectangle, rowOf } from './groups.ts';

const check = (changes: Changes, actions: GroupActions = load([10, 5, 0])): AnchorageResult =>
  explainAnchorage(prepare(makeGroup(changes)), actions, true);

const CONE = 8.9 * Math.sqrt(32) * 1000;
const FOOT = (Math.PI / 4) * (44 * 44 - 24 * 24);
const PANEL = rectangle(0, 0, 2000, 2000);

describe('never a pass outside the rules', () => {
  const steel = { name: 'bolt', area: 157, ultimate: 1001, yield: 900, resists: 'both' } as const;
  const partial = { isFullHead: false } as const;
  const pullOut: TestedResistance = {
    mode: 'pull-out',
    characteristic: 60000,
    safety: null,
    fromStrength: 40,
    report: 'R 12',
  };
  const uncracked: Changes = { concrete: { cracked: false } };

  it.each<[text: string, changes: Changes]>([
    ['f_ck 11.9 MPa is outside 12 to 90 MPa', { concrete: { strength: 11.9 } }],
    ['f_ck 90.1 MPa is outside 12 to 90 MPa', { concrete: { strength: 90.1 } }],
    ['lightweight concrete (factor 0.85)', { concrete: { lightweightFactor: 0.85 } }],
    ['embedment 39.9 mm is below 40 mm', { insert: { embedment: 39.9 } }],
    ['no qualification document for EN 1992-4', { insert: { qualification: null } }],
    [
      'no qualification document for EN 1992-4',
      { insert: { qualification: { document: 'an invented document', standard: 'AS 5216' } } },
    ],
    ['not a full circumferential head', { insert: partial }],
    ['not a full circumferential head', { insert: { ...partial, tested: [pullOut] } }],
    ['bolt: f_uk 1001 MPa is above 1000 MPa', { insert: { steelParts: [steel] } }],
    ['splitting needs c_cr,sp and h_min of the product document (edge none near, thickness 200 mm)', uncracked],
    [
      'splitting needs c_cr,sp and h_min of the product document (edge 120 mm, thickness 200 mm)',
      { ...uncracked, outline: PANEL, at: [[1000, 120]] },
    ],
    [
      'member 200 mm thick, below h_min 210 mm',
      { ...uncracked, other: { splitting: { criticalEdge: 150, minimumThickness: 210 } } },
    ],
  ])('%s', (text, changes) => {
    const result = check(changes, load([5, 2, 0]));
    expect(result.uncovered.join('\n')).toContain(text);
    expect(result.uncovered).toHaveLength(1);
    // The numbers are still shown.
    expect(result.verdict).toBe('not covered');
    expect(result.governing!.ratio).toBeGreaterThan(0);
    expect(checkAnchorage(prepare(makeGroup(changes)), load([5, 2, 0])).verdict).toBe('not covered');
  });

  it.each<UncoveredUse>(['seismic', 'fire', 'fatigue', 'lifting', 'brace', 'mixed types', 'post-installed'])(
    'use: %s',
    (use) => {
      const result = check({ other: { uncoveredUses: [use] } });
      expect(result.uncovered.join()).toContain(`${use}: no rule`);
      expect(result.verdict).toBe('not covered');
    },
  );

  it('an insert that is pressed', () => {
    const result = check(
      {
        at: [
          [0, 0],
          [90, 0],
        ],
      },
      load([10, 0, 0], [-2.345, 0, 0]),
    );
    expect(result.uncovered).toEqual(['insert B is pressed by 2.35 kN; concrete in front of the foot is not computed']);
    expect(result.verdict).toBe('not covered');
  });

  it('the limits themselves are covered', () => {
    for (const strength of [12, 90]) expect(check({ concrete: { strength } }, load([1, 1, 0])).uncovered).toEqual([]);
    expect(check({ insert: { embedment: 40 } }, load([1, 1, 0])).verdict).toBe('pass');
    const limit = { ...steel, ultimate: 1000 };
    expect(check({ insert: { steelParts: [limit] } }, load([1, 1, 0])).verdict).toBe('pass');
    const partialTested = { ...partial, tested: [{ ...pullOut, fromStrength: 32 }] };
    expect(check({ insert: partialTested }, load([1, 1, 0])).verdict).toBe('pass');
  });

  it('too much load fails, covered or not', () => {
    expect(check({ insert: { qualification: null } }, load([40, 0, 0])).verdict).toBe('fail');
  });
});

describe('resistances from tests', () => {
  const test = (mode: TestedResistance['mode'], more: Partial<TestedResistance> = {}): TestedResistance => ({
    mode,
    characteristic: 60000,
    safety: null,
    fromStrength: 0,
    report: 'R 12',
    ...more,
  });
  const tested = (...all: TestedResistance[]): Changes => ({ insert: { tested: all } });

  it('pull-out: the report takes the place of the formula, with gamma_Mc', () => {
    const row = rowOf(check(tested(test('pull-out'))), 'pull-out');
    expect(row).toMatchObject({ characteristic: 60000, safety: 1.5, design: 40000, ratio: 0.25 });
    expect(row.notes.join()).toContain('test report R 12');
  });
  it('its own partial factor', () => {
    expect(rowOf(check(tested(test('pull-out', { safety: 2 }))), 'pull-out').design).toBe(30000);
  });
  it('from the strength that the report holds for, else the formula', () => {
    expect(rowOf(check(tested(test('pull-out', { fromStrength: 32 }))), 'pull-out').characteristic).toBe(60000);
    const row = rowOf(check(tested(test('pull-out', { fromStrength: 33 }))), 'pull-out');
    expect(row.characteristic).toBeCloseTo(7.5 * FOOT * 32, 6);
    expect(row.notes.join()).toContain('holds from f_ck 33 MPa; the formula is used instead');
  });
  it('nothing without a report', () => {
    for (const report of ['', '  '])
      expect(() => check(tested(test('pull-out', { report })))).toThrow(
        'insert.tested: the tested pull-out resistance names no test report; a report was expected',
      );
  });

  // 30 kN tested over the 1.5 of the bolt: 20 kN; 15 kN over the 1.25 in shear: 12 kN.
  it('steel: beside the parts, and in the interaction', () => {
    const result = check(
      tested(test('steel-tension', { characteristic: 30000 }), test('steel-shear', { characteristic: 15000 })),
    );
    const rows = result.rows.filter((row) => row.part === 'insert as tested');
    expect(rows.map(({ mode, design, ratio }) => [mode, design, ratio])).toEqual([
      ['steel-tension', 20000, 0.5],
      ['steel-shear', 12000, 5 / 12],
    ]);
    expect(result.interaction[0]!.ratio).toBeCloseTo(0.25 + 25 / 144, 12);
  });
  it('steel: one of the two tested meets the least of the other', () => {
    // Tension 30 000/1.5 = 20 kN tested; shear of the bolt 50.24 kN.
    const result = check(tested(test('steel-tension', { characteristic: 30000 })));
    expect(result.interaction[0]!.ratio).toBeCloseTo(0.25 + (5 / 50.24) ** 2, 12);
  });
});

describe('no action: resistances alone', () => {
  const p = prepare(
    makeGroup({
      outline: PANEL,
      at: [
        [80, 1000],
        [80, 1090],
      ],
    }),
  );
  const result = findResistances(p, true);
  it('every applying row has a design value and no ratio', () => {
    const applying = result.rows.filter((row) => row.applies);
    for (const row of applying) {
      expect(row.design).toBeCloseTo(row.characteristic! / row.safety!, 9);
      expect([row.action, row.ratio]).toEqual([null, null]);
    }
    expect(new Set(applying.map(({ mode }) => mode))).toEqual(
      new Set(['steel-tension', 'concrete-cone', 'pull-out', 'steel-shear', 'pry-out', 'concrete-edge']),
    );
  });
  it('no verdict, nothing governs, no interaction', () => {
    expect(result).toMatchObject({ verdict: null, governing: null, interaction: [], uncovered: [] });
  });
  it('but "not covered" where it is', () => {
    const unknown = prepare(makeGroup({ insert: { qualification: null } }));
    expect(findResistances(unknown, false).verdict).toBe('not covered');
  });
  it('equal pull and a push square to each edge: as a check with such actions gives', () => {
    const pulled = explainAnchorage(p, load([1, 0, 0], [1, 0, 0]), false);
    const pushed = explainAnchorage(p, load([0, -1, 0], [0, -1, 0]), false);
    const find = (r: AnchorageResult, mode: string) =>
      r.rows.find((row) => row.mode === mode && row.applies && (row.edge === null || row.edge.to[0] === 0))!
        .characteristic;
    expect(find(result, 'concrete-cone')).toBe(find(pulled, 'concrete-cone'));
    expect(find(result, 'pry-out')).toBeCloseTo(find(pushed, 'pry-out')!, 6);
    const toLeft = (r: AnchorageResult) =>
      r.rows.find((row) => row.mode === 'concrete-edge' && row.edge?.from[0] === 0 && row.edge.to[0] === 0)!
        .characteristic;
    expect(toLeft(result)).toBe(toLeft(pushed));
  });
  it('without an outline: one row says that no edge is near', () => {
    const rows = findResistances(prepare(makeGroup()), false).rows.filter((row) => row.mode === 'concrete-edge');
    expect(rows.map(({ applies, notes }) => [applies, notes])).toEqual([[false, ['no edge within 1440 mm']]]);
  });
  it('with a lever arm: bending without tension', () => {
    const arm = prepare(makeGroup({ other: { leverArm: { length: 30, restraint: 1, sectionModulus: 277 } } }));
    const row = findResistances(arm, false).rows.find(({ mode }) => mode === 'steel-shear')!;
    expect(row.characteristic).toBeCloseTo((1.2 * 277 * 800) / 30, 6);
  });
  it('bars show no row of their own', () => {
    const bars = prepare(makeGroup({ outline: PANEL, at: [[80, 1000]], other: { hairpins: [HAIRPIN] } }));
    expect(findResistances(bars, false).rows.map(({ mode }) => mode)).not.toContain('bar-steel');
  });
});

describe('no load', () => {
  it('zero on every insert passes with ratio 0', () => {
    const zero = load([0, 0, 0]);
    expect(check({}, zero)).toMatchObject({ verdict: 'pass', governing: { ratio: 0 }, interaction: [] });
    expect(checkAnchorage(prepare(makeGroup()), zero)).toMatchObject({ ratio: 0, verdict: 'pass' });
    expect(check({}, zero).rows.every((row) => !row.applies)).toBe(true);
  });
  it('a force of rounding size beside real ones is none', () => {
    const result = check(
      {
        at: [
          [0, 0],
          [90, 0],
        ],
      },
      load([10, 1e-13, 0], [1e-13, 0, 0]),
    );
    expect(rowOf(result, 'concrete-cone').inserts).toEqual(['A']);
    expect(result.rows.some((row) => row.mode === 'pry-out' && row.applies)).toBe(false);
  });
});

describe('what cannot be computed', () => {
  it.each<[text: string, changes: Changes]>([
    ['positions: no insert given', { at: [] }],
    ['insert.steelParts: no steel part given', { insert: { steelParts: [] } }],
    ['insert.embedment: 100 mm does not fit in a member 100 mm thick', { thickness: 100 }],
    [
      'positions: inserts A and B stand at the same place',
      {
        at: [
          [5, 5],
          [5, 5],
        ],
      },
    ],
    ['positions: insert A at (-1, 5) mm is not inside the concrete', { outline: PANEL, at: [[-1, 5]] }],
    [
      'positions: insert A at (50, 50) mm is not inside the concrete',
      { outline: PANEL, openings: [rectangle(40, 40, 60, 60)], at: [[50, 50]] },
    ],
  ])('%s', (text, changes) => {
    expect(() => prepare(makeGroup(changes))).toThrow(AnchorageError);
    expect(() => prepare(makeGroup(changes))).toThrow(text);
  });
  it('actions that do not fit', () => {
    const p = prepare(makeGroup());
    expect(() => checkAnchorage(p, load([1, 0, 0], [1, 0, 0]))).toThrow('actions: 2 actions for 1 inserts');
    expect(() => checkAnchorage(p, load([Number.POSITIVE_INFINITY, 0, 0]))).toThrow('actions: forces must be finite');
    expect(() => checkAnchorage(p, load([0, Number.NaN, 0]))).toThrow('actions: forces must be finite');
  });
});

describe('verdict', () => {
  it('1 exactly passes, a hair above fails, NaN fails', () => {
    expect([isWithin(1), isWithin(1 + 1e-10), isWithin(1 + 2e-9), isWithin(Number.NaN)]).toEqual([
      true,
      true,
      false,
      false,
    ]);
    // A load equal to the design resistance of the cone: 50 346/1.5.
    expect(check({}, load([CONE / 1500, 0, 0])).verdict).toBe('pass');
    expect(check({}, load([(CONE / 1500) * (1 + 1e-8), 0, 0])).verdict).toBe('fail');
  });
  it('fail comes before not covered, not covered before pass', () => {
    expect([
      decideVerdict(2, false),
      decideVerdict(2, true),
      decideVerdict(0.5, false),
      decideVerdict(0.5, true),
    ]).toEqual(['fail', 'fail', 'not covered', 'pass']);
    expect([decideVerdict(null, true), decideVerdict(null, false)]).toEqual([null, 'not covered']);
  });
  it('a load on nothing is endless, nothing on nothing is 0', () => {
    expect([loadRatio(1, 0), loadRatio(0, 0), loadRatio(-1, 5), loadRatio(2, 4)]).toEqual([
      Number.POSITIVE_INFINITY,
      0,
      0,
      0.5,
    ]);
  });
});
