// Tension with shear by ACI 318-19, and what its Chapter 17 does not cover, against hand calculations. SI, f'c 36 MPa: breakout
// φN = 42 kN, pry-out φV = 84 kN, steel 94.2 kN in tension and 48.984 kN in shear (aci-tension.test.ts, aci-shear.test.ts).
import { describe, expect, it } from 'vitest';
import { checkAnchorage, explainAnchorage, prepare } from '../../../src/engine/checks/anchorage.ts';
import type { AnchorageResult, Mode } from '../../../src/engine/checks/result.ts';
import { type StandardName, standardNames } from '../../../src/engine/standards/standard-name.ts';
import { ACI_QUALIFICATION, checkAci, makeAciGroup } from './aci-groups.ts';
import { type Changes, load, makeGroup, rectangle } from './groups.ts';

const PANEL = rectangle(0, 0, 3000, 3000);

describe('tension and shear together', () => {
  const all = (result: AnchorageResult) => result.interaction.map(({ kind, ratio }) => [kind, ratio]);

  it('n = 0.5 of breakout, v = 0.6 of steel: (0.5 + 0.6)/1.2 = 0.916667, steel and concrete in one', () => {
    const result = checkAci({}, load([21, 0.6 * 48.984, 0]));
    expect(all(result)).toEqual([['all', expect.closeTo(0.916667, 6)]]);
    expect(result.interaction[0]!.clause).toBe('ACI 318-19 and 318M-19, 17.8');
    expect(result).toMatchObject({ verdict: 'pass', governing: { mode: 'interaction-all' } });
    const [step] = result.interaction[0]!.steps;
    expect(step).toMatchObject({ kind: 'clause', args: [expect.closeTo(0.5, 12), expect.closeTo(0.6, 12)] });
  });
  it('n = 0.7, v = 0.6: 1.3/1.2 = 1.083333 fails though each alone passes', () => {
    const result = checkAci({}, load([0.7 * 42, 0.6 * 48.984, 0]));
    expect(all(result)).toEqual([['all', expect.closeTo(1.083333, 6)]]);
    expect(result.verdict).toBe('fail');
  });
  it('up to 0.2 of the one, all of the other: 0.2 and 1 pass, 0.21 and 1 do not', () => {
    const at = (n: number, v: number) => checkAci({}, load([n * 42, v * 48.984, 0]));
    expect(all(at(0.2, 1))).toEqual([['all', expect.closeTo(1, 12)]]);
    expect(at(0.2, 1).verdict).toBe('pass');
    expect(all(at(1, 0.2))).toEqual([['all', expect.closeTo(1, 12)]]);
    expect(at(1, 0.2).verdict).toBe('pass');
    expect(at(0.21, 1).verdict).toBe('fail');
    expect(at(1, 0.21).verdict).toBe('fail');
    // 0.9 and 0.1: the larger of the two, 0.9 > 1/1.2.
    expect(all(at(0.9, 0.1))).toEqual([['all', expect.closeTo(0.9, 12)]]);
    expect(all(at(0.1, 0.9))).toEqual([['all', expect.closeTo(0.9, 12)]]);
    // With equal ratios the first found governs, the mode itself.
    expect(at(0.9, 0.1).governing!.mode).toBe('concrete-cone');
  });
  it('one of the two alone has no interaction', () => {
    expect(checkAci({}, load([21, 0, 0])).interaction).toEqual([]);
    expect(checkAci({}, load([0, 21, 0])).interaction).toEqual([]);
  });
  it('steel that governs in tension counts: A 40 mm² of 500/400 MPa, 0.75 · 20 000 = 15 kN', () => {
    const steelParts = [{ name: 'bolt', area: 40, ultimate: 500, yield: 400, resists: 'both' }] as const;
    // n = 9/15 = 0.6 (breakout 9/42); v = 3/(0.65 · 12) = 0.384615: 0.820513.
    const result = checkAci({ insert: { steelParts } }, load([9, 3, 0]));
    expect(all(result)).toEqual([['all', expect.closeTo(0.820513, 6)]]);
  });
  it('tension on one insert and shear on another meet, unlike in EN 1992-4', () => {
    const at = [
      [0, 0],
      [1000, 0],
    ] as const;
    // 21/42 = 0.5 on A; 0.6 of the steel on B.
    const result = checkAci({ at }, load([21, 0, 0], [0, 0.6 * 48.984, 0]));
    expect(all(result)).toEqual([['all', expect.closeTo(0.916667, 6)]]);
  });
  // 100 mm from the left edge: breakout 60 000 · 250 · 300/90 000 · 0.9 = 45 000 · 0.7 = 31.5 kN: n = 12.6/31.5 = 0.4.
  // Edge: 6.216/15.54 = 0.4 toward, 9.324/31.08 = 0.3 along: 0.5. Together (0.4 + 0.5)/1.2 = 0.75.
  it('both parts of an edge failure enter as √(r⊥² + r∥²)', () => {
    const result = checkAci({ outline: PANEL, at: [[100, 1500]] }, load([12.6, -6.216, 9.324]));
    expect(all(result)).toEqual([['all', expect.closeTo(0.75, 9)]]);
    expect(result.governing).toEqual({ mode: 'interaction-all', ratio: expect.closeTo(0.75, 9) });
  });
});

describe('never a pass outside the rules', () => {
  const verdict = (changes: Changes) => {
    const result = checkAci(changes, load([5, 2, 0]));
    return [result.verdict, result.uncovered] as const;
  };
  it("f'c up to 70 MPa, for both editions", () => {
    expect(verdict({ concrete: { strength: 70 } })).toEqual(['pass', []]);
    const [high, reasons] = verdict({ concrete: { strength: 70.1 } });
    expect(high).toBe('not covered');
    expect(reasons).toEqual(["f'c 70.1 MPa is above 70 MPa, the highest that ACI 318 covers; use a concrete below it"]);
    expect(verdict({ standard: 'ACI 318-19', concrete: { strength: 71 } })[0]).toBe('not covered');
  });
  it('no least embedment of its own: 35 mm, where EN 1992-4 wants 40', () => {
    expect(verdict({ insert: { embedment: 35 } })).toEqual(['pass', []]);
  });
  it('a stand-off: no rule for bolts that bend; their shear has no number', () => {
    const leverArm = { length: 30, restraint: 1, sectionModulus: 277 };
    const result = checkAci({ other: { leverArm } }, load([5, 2, 0]));
    expect(result.verdict).toBe('not covered');
    expect(result.uncovered).toEqual(['stand-off of 30 mm: ACI 318 gives no rule for bolts that bend']);
    const steel = result.rows.find(({ mode }) => mode === 'steel-shear')!;
    expect(steel).toMatchObject({ applies: false, characteristic: null });
    expect(steel.notes.join()).toContain('gives no rule for bolts that bend');
    // What stands in the concrete does not bend: its shear is computed.
    const embedded = { name: 'body', area: 157, ultimate: 800, yield: 640, resists: 'both', isEmbedded: true } as const;
    const body = checkAci({ other: { leverArm }, insert: { steelParts: [embedded] } }, load([5, 2, 0]));
    expect(body.rows.find(({ mode }) => mode === 'steel-shear')!.characteristic).toBeCloseTo(75360, 8);
  });
  it('steel up to 1000 MPa', () => {
    const bolt = (ultimate: number) => ({ name: 'bolt', area: 157, ultimate, yield: 900, resists: 'both' }) as const;
    expect(verdict({ insert: { steelParts: [bolt(1000)] } })).toEqual(['pass', []]);
    const [high, reasons] = verdict({ insert: { steelParts: [bolt(1001)] } });
    expect(high).toBe('not covered');
    expect(reasons.join()).toContain('bolt: f_uk 1001 MPa is above 1000 MPa, the highest that ACI 318 covers');
  });
  it('uses without a rule, a pressed insert, a foot that is no full head', () => {
    expect(verdict({ other: { uncoveredUses: ['seismic'] } })[0]).toBe('not covered');
    expect(checkAci({}, load([-1, 2, 0])).verdict).toBe('not covered');
    expect(verdict({ insert: { isFullHead: false } })[0]).toBe('not covered');
  });
});

describe('the document of the insert', () => {
  /** Verdict by each edition, in the order of their names. */
  const verdicts = (standard: string | null) =>
    standardNames.map((name: StandardName) => {
      const qualification = standard === null ? null : { document: 'an invented product document', standard };
      const group = makeGroup({ standard: name, insert: { qualification, elongation: 14 } });
      return checkAnchorage(prepare(group), load([5, 2, 0])).verdict;
    });
  const [PASS, NOT] = ['pass', 'not covered'] as const;

  it('covers the standard that it names, and no other', () => {
    expect(standardNames).toEqual(['EN 1992-4', 'AS 5216', 'ACI 318-19', 'ACI 318M-19']);
    expect(verdicts('EN 1992-4')).toEqual([PASS, NOT, NOT, NOT]);
    expect(verdicts('EN 1992-4:2018')).toEqual([PASS, NOT, NOT, NOT]);
    expect(verdicts('AS 5216:2021')).toEqual([NOT, PASS, NOT, NOT]);
    // Both editions of ACI 318 are one document.
    expect(verdicts('ACI 318-19')).toEqual([NOT, NOT, PASS, PASS]);
    expect(verdicts('ACI 318M-19')).toEqual([NOT, NOT, PASS, PASS]);
    expect(verdicts('ACI 318')).toEqual([NOT, NOT, PASS, PASS]);
    expect(verdicts('ACI 318-14')).toEqual([NOT, NOT, NOT, NOT]);
  });
  it('may name several, set apart by commas or semicolons', () => {
    expect(verdicts('EN 1992-4; ACI 318-19')).toEqual([PASS, NOT, PASS, PASS]);
    expect(verdicts('AS 5216,EN 1992-4')).toEqual([PASS, PASS, NOT, NOT]);
    expect(verdicts('ACI 318-19; AS 5216:2021, EN 1992-4:2018')).toEqual([PASS, PASS, PASS, PASS]);
  });
  it('must be there', () => {
    expect(verdicts(null)).toEqual([NOT, NOT, NOT, NOT]);
    expect(verdicts('the maker says so')).toEqual([NOT, NOT, NOT, NOT]);
    // A name inside another is none.
    for (const named of ['not EN 1992-4', 'not ACI 318-19', 'not AS 5216'])
      expect(verdicts(named)).toEqual([NOT, NOT, NOT, NOT]);
  });
  it('is asked for by name', () => {
    const reasons = (standard: StandardName) =>
      explainAnchorage(
        prepare(makeGroup({ standard, insert: { qualification: null } })),
        load([5, 2, 0]),
        false,
      ).uncovered.join();
    expect(reasons('AS 5216')).toContain('no qualification document for AS 5216;');
    expect(reasons('ACI 318-19')).toContain('no qualification document for ACI 318;');
    expect(reasons('ACI 318M-19')).toContain('no qualification document for ACI 318;');
  });
});

describe('inch-pound against SI', () => {
  // Coefficients of the SI edition over those converted: 10/10.0436, 3.9/3.905, 13/13.285, 0.6/0.5818, 3.7/3.7663; all else is the same.
  it('every mode within 3.3 per cent', () => {
    const changes: Changes = {
      outline: PANEL,
      at: [
        [30, 60],
        [30, 140],
      ],
      insert: { qualification: ACI_QUALIFICATION, shaftDiameter: 16 },
    };
    const actions = load([5, -3, 2], [4, -3, 2]);
    const of = (standard: StandardName) => checkAci(changes, actions, standard).rows.filter(({ applies }) => applies);
    const [inch, si] = [of('ACI 318-19'), of('ACI 318M-19')];
    const ratios = inch.map((row, i) => {
      expect([row.mode, row.part, row.inserts, row.edge]).toEqual([
        si[i]!.mode,
        si[i]!.part,
        si[i]!.inserts,
        si[i]!.edge,
      ]);
      return [row.mode, row.characteristic! / si[i]!.characteristic!] as const;
    });
    const expected: Partial<Record<Mode, number>> = {
      'steel-tension': 1,
      'concrete-cone': 1.00436,
      'pull-out': 1,
      'blow-out': 1.02197,
      'steel-shear': 1,
      'pry-out': 1.00436,
      'concrete-edge': 0.96874,
    };
    expect(new Set(ratios.map(([mode]) => mode))).toEqual(new Set(Object.keys(expected)));
    for (const [mode, ratio] of ratios) expect(ratio, mode).toBeCloseTo(expected[mode]!, 4);
    // Along a far edge c_a1^1.5 grows but the ratio stays; only the depth from which k_cp is 2 and the highest f_uta differ besides.
    expect(inch.filter(({ mode }) => mode === 'concrete-edge').length).toBeGreaterThan(4);
  });
});

describe('one group by each edition', () => {
  it('makes no edition take the prepared numbers of another', () => {
    const ratios = standardNames.map(
      (standard) => checkAnchorage(prepare(makeAciGroup({ standard })), load([20, 0, 0])).ratio,
    );
    // 20 kN over 8.9 · 6000/1.5 (EN, AS), 0.7 · 60 261 (inch-pound), 0.7 · 60 000 (SI).
    expect(ratios[0]).toBeCloseTo(20000 / 35600, 9);
    expect(ratios[1]).toBeCloseTo(20000 / 35600, 9);
    expect(ratios[2]).toBeCloseTo(20000 / (0.7 * 60261.348), 8);
    expect(ratios[3]).toBeCloseTo(20000 / 42000, 9);
  });
});
