// Tension modes of ACI 318-19 and 318M-19 against hand calculations; the arithmetic stands in the names or comments and once
// more in the expectation. Unless said otherwise SI, f'c 36 MPa (root 6), h_ef 100 mm (h_ef^1.5 = 1000), A_brg 900 mm² (root 30).
import { describe, expect, it } from 'vitest';
import type { Row } from '../../../src/engine/checks/result.ts';
import { checkAci } from './aci-groups.ts';
import { type Changes, HANGER, load, rectangle, rowOf, rowToward } from './groups.ts';

const PANEL = rectangle(0, 0, 2000, 2000);
/** 1 lb, 1 in and 1 psi in N, mm and MPa. */
const POUND = 4.4482216152605;
const INCH = 25.4;
const PSI = POUND / (INCH * INCH);

type Force = readonly [N: number, Vx: number, Vy: number];
const breakout = (changes: Changes, ...inserts: readonly Force[]): Row =>
  rowOf(checkAci(changes, load(...inserts)), 'concrete-cone');

describe('one insert far from edges', () => {
  const result = checkAci({}, load([21, 0, 0]));
  it('breakout: 10 · 6 · 1000 = 60 000 N, times 0.70; 21 kN of 42 kN', () => {
    const row = rowOf(result, 'concrete-cone');
    expect(row).toMatchObject({ inserts: ['A'], basic: 60000, safety: 0.7, embedmentUsed: 100 });
    expect(row.characteristic).toBeCloseTo(60000, 8);
    expect(row.design).toBeCloseTo(42000, 8);
    expect(row.ratio).toBeCloseTo(0.5, 12);
    expect(row.factors).toEqual({ areaRatio: 1, psi_ed: 1, psi_c: 1, psi_ec: 1, psi_cp: 1 });
    expect(row.clause).toBe('ACI 318-19 and 318M-19, 17.6.2.1');
  });
  it('steel: 157 · 800 = 125 600 N, times 0.75 where it is ductile', () => {
    expect(rowOf(result, 'steel-tension')).toMatchObject({ part: 'bolt', characteristic: 125600, safety: 0.75 });
    expect(rowOf(result, 'steel-tension').ratio).toBeCloseTo(21000 / 94200, 12);
  });
  it('pull-out: 8 · 900 · 36 = 259 200 N, times 0.70', () => {
    const row = rowOf(result, 'pull-out');
    expect(row).toMatchObject({ basic: 259200, characteristic: 259200, safety: 0.7, factors: { psi_c: 1 } });
    expect(row.ratio).toBeCloseTo(21000 / 181440, 12);
  });
  it('no blow-out without an edge: h_ef/2.5 = 40 mm', () => {
    const row = result.rows.find(({ mode }) => mode === 'blow-out')!;
    expect(row).toMatchObject({ applies: false, ratio: null });
    expect(row.notes).toEqual(['no edge within 0.4 h_ef = 40 mm of a tensioned insert']);
  });
  it('the document is named', () => {
    expect(result.document).toBe('ACI 318M-19');
    expect(checkAci({}, load([21, 0, 0]), 'ACI 318-19').document).toBe('ACI 318-19');
  });
  it('uncracked: 1.25 · 60 000 = 75 000 N in breakout, 1.4 · 259 200 = 362 880 N in pull-out', () => {
    const uncracked = checkAci({ concrete: { cracked: false } }, load([21, 0, 0]));
    expect(rowOf(uncracked, 'concrete-cone').characteristic).toBeCloseTo(75000, 8);
    expect(rowOf(uncracked, 'concrete-cone').factors).toMatchObject({ psi_c: 1.25 });
    expect(rowOf(uncracked, 'pull-out').characteristic).toBeCloseTo(362880, 8);
    expect(rowOf(uncracked, 'pull-out')).toMatchObject({ basic: 259200, factors: { psi_c: 1.4 } });
  });
  it('lightweight λ 0.75: 45 000 N in breakout; pull-out has no λ; both are covered', () => {
    const light = checkAci({ concrete: { lightweightFactor: 0.75 } }, load([21, 0, 0]));
    expect(rowOf(light, 'concrete-cone').characteristic).toBeCloseTo(45000, 8);
    expect(rowOf(light, 'pull-out').characteristic).toBe(259200);
    expect(light.verdict).toBe('pass');
  });
  it('a foot by its diameter: π/4 (44² − 24²) = 1068.14 mm², 42 mm where 3 mm thick: 6 · 3 + 24', () => {
    const pullOut = (thickness: number | null) =>
      rowOf(checkAci({ insert: { foot: { kind: 'diameter', diameter: 44, thickness } } }, load([21, 0, 0])), 'pull-out')
        .characteristic;
    expect(pullOut(null)).toBeCloseTo(8 * (Math.PI / 4) * (44 * 44 - 24 * 24) * 36, 6);
    expect(pullOut(null)).toBeCloseTo(307624.8, 1);
    expect(pullOut(3)).toBeCloseTo(8 * (Math.PI / 4) * (42 * 42 - 24 * 24) * 36, 6);
  });
  it('dense surface reinforcement and compression under the fixture have no factor here', () => {
    const actions = { ...load([21, 0, 0]), compression: { force: 21000, at: [60, 0] as const } };
    const row = rowOf(checkAci({ reinforcement: { denseSurface: true } }, actions), 'concrete-cone');
    expect(row.characteristic).toBeCloseTo(60000, 8);
    expect(row.factors).not.toHaveProperty('psi_M');
    expect(row.factors).not.toHaveProperty('psi_re');
  });
});

describe('φ of the steel', () => {
  const safety = (elongation: number | null, areaReduction: number | null) =>
    rowOf(checkAci({ insert: { elongation, areaReduction } }, load([21, 0, 0])), 'steel-tension');

  it('0.75 from A5 14 % and Z 30 % on, 0.65 below either, 0.65 where one is not known', () => {
    expect(safety(14, 30).safety).toBe(0.75);
    expect(safety(13.9, 30).safety).toBe(0.65);
    expect(safety(14, 29.9).safety).toBe(0.65);
    expect(safety(null, 30).safety).toBe(0.65);
    expect(safety(14, null).safety).toBe(0.65);
    // 125 600 · 0.65
    expect(safety(null, null).design).toBeCloseTo(81640, 8);
  });
  it('says which in the steps', () => {
    const tell = (elongation: number | null) =>
      safety(elongation, 30)
        .steps.filter(({ kind }) => kind === 'quantity')
        .map((step) => (step.kind === 'quantity' ? step.how : ''));
    expect(tell(14)).toEqual(['ductile: A5 14 %, Z 30 % (17.5.3)']);
    expect(tell(13)).toEqual(['brittle: A5 13 %, Z 30 % (17.5.3)']);
    expect(tell(null)).toEqual(['brittle: elongation or reduction of area not known (17.5.3)']);
  });
});

describe('ultimate strength of the steel that counts', () => {
  const strength = (ultimate: number, yieldStress: number, standard: 'ACI 318-19' | 'ACI 318M-19') =>
    rowOf(
      checkAci(
        { insert: { steelParts: [{ name: 'bolt', area: 157, ultimate, yield: yieldStress, resists: 'both' }] } },
        load([21, 0, 0]),
        standard,
      ),
      'steel-tension',
    ).characteristic;
  it('1.9 f_ya: 500/240 MPa → 456 · 157 = 71 592 N', () => {
    expect(strength(500, 240, 'ACI 318M-19')).toBeCloseTo(71592, 8);
    expect(strength(500, 240, 'ACI 318-19')).toBeCloseTo(71592, 8);
  });
  it('860 MPa in SI: 135 020 N; 125 000 psi = 861.84 MPa in inch-pound: 135 310 N', () => {
    expect(strength(1000, 900, 'ACI 318M-19')).toBeCloseTo(860 * 157, 8);
    expect(strength(1000, 900, 'ACI 318-19')).toBeCloseTo(125_000 * PSI * 157, 6);
    expect(strength(1000, 900, 'ACI 318-19')).toBeCloseTo(135309.6, 1);
  });
});

describe('φ of the concrete', () => {
  const safety = (supplementary: boolean) =>
    checkAci({ outline: PANEL, at: [[39, 1000]], reinforcement: { supplementary } }, load([5, 0, 0]))
      .rows.filter(({ applies }) => applies)
      .map(({ mode, safety }) => [mode, safety]);
  it('supplementary reinforcement: 0.75 for 0.70 in breakout and blow-out, not in pull-out', () => {
    expect(safety(false)).toEqual([
      ['steel-tension', 0.75],
      ['concrete-cone', 0.7],
      ['pull-out', 0.7],
      ['blow-out', 0.7],
    ]);
    expect(safety(true)).toEqual([
      ['steel-tension', 0.75],
      ['concrete-cone', 0.75],
      ['pull-out', 0.7],
      ['blow-out', 0.75],
    ]);
  });
});

describe('breakout near edges and in groups', () => {
  it('one edge at 80 mm: 60 000 · (80 + 150) · 300/90 000 · (0.7 + 0.3 · 80/150 = 0.86) = 39 560 N', () => {
    const row = breakout({ outline: PANEL, at: [[80, 1000]] }, [10, 0, 0]);
    expect(row.factors.areaRatio).toBeCloseTo(230 / 300, 12);
    expect(row.factors.psi_ed).toBeCloseTo(0.86, 12);
    expect(row.characteristic).toBeCloseTo(39560, 6);
  });
  it('a corner, 80 and 120 mm: the smaller distance counts in ψ_ed: 230 · 270/90 000 · 0.86 · 60 000 = 35 604 N', () => {
    const row = breakout({ outline: PANEL, at: [[120, 80]] }, [10, 0, 0]);
    expect(row.factors.psi_ed).toBeCloseTo(0.86, 12);
    expect(row.characteristic).toBeCloseTo(35604, 6);
  });
  it('two, 120 mm apart: 60 000 · (300 + 120) · 300/90 000 = 84 000 N', () => {
    const at = [
      [0, 0],
      [120, 0],
    ] as const;
    const row = breakout({ at }, [10, 0, 0], [10, 0, 0]);
    expect(row.characteristic).toBeCloseTo(84000, 6);
    expect(row.action).toBe(20000);
  });
  it('never more than n A_Nco: 3 h_ef apart each alone', () => {
    const rows = (s: number) =>
      checkAci(
        {
          at: [
            [0, 0],
            [s, 0],
          ],
        },
        load([10, 0, 0], [10, 0, 0]),
      ).rows.filter(({ mode }) => mode === 'concrete-cone');
    expect(rows(300).map(({ inserts, factors }) => [inserts, factors.areaRatio])).toEqual([
      [['A'], 1],
      [['B'], 1],
    ]);
    expect(rows(299)[0]!.factors.areaRatio).toBeCloseTo(599 / 300, 12);
  });

  // Edges 90 and 120 mm, spacings 160 and 140: A_Nc = (90 + 160 + 150)(120 + 140 + 150) = 164 000 mm²; psi_ed = 0.7 + 0.3 · 90/150 = 0.88.
  // Loads 8, 6, 4, 2: x = 3080/20 = 154 against 170, y = 3240/20 = 162 against 190: e = 16 and 28 mm:
  // psi_ec = 1/(1 + 16/150) · 1/(1 + 28/150). N = 60 000 · 1.822222 · 0.88/1.106667/1.186667 = 73 263.8 N.
  it('four by a corner, eccentric in both axes: 73 264 N', () => {
    const at = [
      [90, 120],
      [250, 120],
      [90, 260],
      [250, 260],
    ] as const;
    const row = breakout({ outline: PANEL, at }, [8, 0, 0], [6, 0, 0], [4, 0, 0], [2, 0, 0]);
    expect(row.factors.areaRatio).toBeCloseTo(164 / 90, 12);
    expect(row.factors.psi_ed).toBeCloseTo(0.88, 12);
    expect(row.factors.psi_ec).toBeCloseTo(1 / (1 + 16 / 150) / (1 + 28 / 150), 12);
    expect(row.characteristic).toBeCloseTo(73263.84, 2);
    expect(row.ratio).toBeCloseTo(20000 / (0.7 * 73263.84188), 9);
    expect(row.notes.join()).toContain('both axes');
  });
});

describe('three or more near edges', () => {
  const near = (embedment: number) =>
    breakout({ outline: rectangle(-50, -50, 50, 151), insert: { embedment }, thickness: 250 }, [5, 0, 0]);

  // c_a,max = 50: h'_ef = 50/1.5 = 33.333 mm; the square of 100 mm fits: N = 60 · 33.333^1.5 = 11 547.0 N.
  it('h_ef 100.6: the edge at 151 mm is none', () => {
    expect(near(100.6).embedmentUsed).toBeCloseTo(100 / 3, 9);
    expect(near(100.6).factors).toMatchObject({ areaRatio: expect.closeTo(1, 12), psi_ed: expect.closeTo(1, 12) });
    expect(near(100.6).characteristic).toBeCloseTo(11547.005, 3);
    expect(near(100.6).notes.join()).toContain('embedment reduced from 100.6 to 33.3 mm');
  });
  // c_a,max = 151: h'_ef = 100.667 mm; 100 · 201 of 9 · 100.667² = 91 204 mm²; psi_ed = 0.7 + 0.3 · 50/151: 10 675.6 N.
  it('known jump: h_ef 100.7 takes it in, 7.5 % less', () => {
    expect(near(100.7).embedmentUsed).toBeCloseTo(302 / 3, 9);
    expect(near(100.7).characteristic).toBeCloseTo(10675.6, 1);
    expect(near(100.7).characteristic! / near(100.6).characteristic! - 1).toBeCloseTo(-0.0755, 4);
  });
  // A strip 100 mm wide, 120 mm between, three edges at 50 mm: h'_ef = max(50/1.5, 120/3) = 40; half a square 60 mm;
  // A = 100 · (50 + 120 + 60) = 23 000 of 14 400; psi_ed = 0.7 + 0.3 · 50/60 = 0.95; 60 · 40^1.5 = 15 178.9: 23 031.9 N.
  it('the spacing of a group may set it: s/3', () => {
    const at = [
      [0, 0],
      [0, 120],
    ] as const;
    const row = breakout({ outline: rectangle(-50, -50, 50, 2000), at }, [5, 0, 0], [5, 0, 0]);
    expect(row.embedmentUsed).toBeCloseTo(40, 9);
    expect(row.factors.psi_ed).toBeCloseTo(0.95, 9);
    expect(row.characteristic).toBeCloseTo(60 * 40 ** 1.5 * (23000 / 14400) * 0.95, 6);
    expect(row.characteristic).toBeCloseTo(23031.9, 1);
  });
  // h_ef 300 in the same panel: h'_ef = max(151/1.5, 0) = 100.667, no deep anchor any more.
  it('a deep anchor with a small h_ef is no deep anchor', () => {
    const row = breakout(
      { outline: rectangle(-50, -50, 50, 151), insert: { embedment: 300 }, thickness: 400 },
      [5, 0, 0],
    );
    expect(row.basic).toBeCloseTo(60 * (302 / 3) ** 1.5, 6);
  });
});

describe('deep anchors', () => {
  const basic = (embedment: number, standard: 'ACI 318-19' | 'ACI 318M-19' = 'ACI 318M-19') =>
    rowOf(checkAci({ insert: { embedment }, thickness: 900 }, load([21, 0, 0]), standard), 'concrete-cone');

  it('280 to 635 mm: the larger of 10 · 6 h^1.5 and 3.9 · 6 h^(5/3)', () => {
    // 280: 281 118 and 280 422 N; 300: 311 769 and 314 595 N (from (10/3.9)^6 = 284.19 mm on the second is the larger).
    expect(basic(280).basic).toBeCloseTo(281117.8, 1);
    expect(basic(284).basic).toBeCloseTo(60 * 284 ** 1.5, 6);
    expect(basic(285).basic).toBeCloseTo(23.4 * 285 ** (5 / 3), 6);
    expect(basic(300).basic).toBeCloseTo(314594.6, 1);
    expect(basic(635).basic).toBeCloseTo(1097754.9, 1);
    const light = checkAci(
      { insert: { embedment: 300 }, thickness: 900, concrete: { lightweightFactor: 0.75 } },
      load([21, 0, 0]),
    );
    expect(rowOf(light, 'concrete-cone').basic).toBeCloseTo(0.75 * 314594.61, 1);
  });
  it('shows both formulas where both may be used, one where not', () => {
    const names = (embedment: number) =>
      basic(embedment).steps.flatMap((step) =>
        step.symbol === 'N_b' ? [step.kind === 'clause' ? step.clause.clause : step.how] : [],
      );
    expect(names(279.9)).toEqual(['17.6.2.2.1']);
    expect(names(280)).toEqual(['17.6.2.2.1', '17.6.2.2.3', 'the larger of the two']);
    expect(names(635)).toHaveLength(3);
    expect(names(635.1)).toHaveLength(1);
  });
  it('inch-pound, 11 to 25 in: 16 √psi in^(5/3) lb; 300 mm = 11.811 in → 70 820 lb = 315 024 N', () => {
    const byHand = 16 * Math.sqrt(36 / PSI) * (300 / INCH) ** (5 / 3) * POUND;
    expect(basic(300, 'ACI 318-19').basic).toBeCloseTo(byHand, 5);
    expect(byHand).toBeCloseTo(315024.3, 1);
    // 11 in = 279.4 mm: the plain formula is still the larger, up to 1.5^6 = 11.39 in.
    expect(basic(279.4, 'ACI 318-19').basic).toBeCloseTo(24 * Math.sqrt(36 / PSI) * 11 ** 1.5 * POUND, 5);
    expect(basic(279.4, 'ACI 318-19').steps.map(({ symbol }) => symbol)).toContain('k_d');
    expect(basic(279.3, 'ACI 318-19').steps.map(({ symbol }) => symbol)).not.toContain('k_d');
  });
});

describe('side-face blow-out', () => {
  const blowOut = (changes: Changes, ...inserts: readonly Force[]) =>
    checkAci({ outline: PANEL, ...changes }, load(...inserts)).rows.filter(({ mode }) => mode === 'blow-out');

  it('from h_ef above 2.5 c_a1 on, not at it: 100 mm at c_a1 = 40 none, 39.9 mm one', () => {
    expect(blowOut({ at: [[40, 1000]] }, [5, 0, 0]).map(({ applies }) => applies)).toEqual([false]);
    const [row] = blowOut({ at: [[39.9, 1000]] }, [5, 0, 0]);
    // 13 · 39.9 · 30 · 6 = 93 366 N
    expect(row).toMatchObject({ applies: true, edgeUsed: expect.closeTo(39.9, 9), safety: 0.7 });
    expect(row!.characteristic).toBeCloseTo(93366, 6);
    expect(row!.ratio).toBeCloseTo(5000 / (0.7 * 93366), 12);
  });
  it('lightweight λ 0.75: 0.75 · 13 · 30 · 30 · 6 = 52 650 N; cracked or not is the same', () => {
    const value = (lightweightFactor: number, cracked: boolean) =>
      blowOut({ at: [[30, 1000]], concrete: { lightweightFactor, cracked } }, [5, 0, 0])[0]!.characteristic;
    expect(value(0.75, true)).toBeCloseTo(52650, 6);
    expect(value(1, true)).toBeCloseTo(70200, 6);
    expect(value(1, false)).toBeCloseTo(70200, 6);
  });
  it('a corner, one insert: (1 + c_a2/c_a1)/4 with c_a2/c_a1 from 1 to 3', () => {
    const at = (c2: number) =>
      rowToward(checkAci({ outline: PANEL, at: [[30, c2]] }, load([5, 0, 0])), 'blow-out', 180);
    // 60/30 = 2: 0.75; 90/30 = 3: 1; 30/30 = 1: 0.5; 24/30: kept at 1, 0.5. Of 70 200 N.
    expect(at(60).factors).toEqual({ corner: 0.75, group: 1 });
    expect(at(60).characteristic).toBeCloseTo(52650, 6);
    expect(at(90).factors.corner).toBe(1);
    expect(at(200).factors.corner).toBe(1);
    expect(at(30).factors.corner).toBe(0.5);
    expect(at(24).factors.corner).toBe(0.5);
  });
  it('both edges of a corner are checked, each with its own c_a1', () => {
    const result = checkAci({ outline: PANEL, at: [[30, 36]] }, load([5, 0, 0]));
    // Toward the left: (1 + 36/30)/4 = 0.55 of 70 200; toward the bottom: kept at 1: 0.5 of 13 · 36 · 180 = 84 240.
    expect(rowToward(result, 'blow-out', 180).characteristic).toBeCloseTo(0.55 * 70200, 6);
    expect(rowToward(result, 'blow-out', -90).characteristic).toBeCloseTo(0.5 * 84240, 6);
  });
  it('a row of three, 90 mm apart: the outer spacing counts, 70 200 · (1 + 180/(6 · 30)) = 140 400 N', () => {
    const at = [
      [30, 1000],
      [30, 1090],
      [30, 1180],
    ] as const;
    const [row] = blowOut({ at }, [5, 0, 0], [5, 0, 0], [2, 0, 0]);
    expect(row).toMatchObject({ inserts: ['A', 'B', 'C'], action: 12000, factors: { corner: 1, group: 2 } });
    expect(row!.characteristic).toBeCloseTo(140400, 6);
  });
  it('a row by a corner has no corner factor: 70 200 · (1 + 90/180) = 105 300 N', () => {
    const at = [
      [30, 45],
      [30, 135],
    ] as const;
    const row = rowToward(checkAci({ outline: PANEL, at }, load([5, 0, 0], [5, 0, 0])), 'blow-out', 180);
    expect(row.factors).toEqual({ corner: 1, group: 1.5 });
    expect(row.characteristic).toBeCloseTo(105300, 6);
    expect(row.steps.some((step) => step.kind === 'quantity' && step.how === 'a row: no corner factor')).toBe(true);
  });
  it('neighbours nearer than 6 c_a1 = 180 mm act together', () => {
    const rows = (s: number) =>
      blowOut(
        {
          at: [
            [30, 1000],
            [30, 1000 + s],
          ],
        },
        [5, 0, 0],
        [5, 0, 0],
      ).map(({ inserts, characteristic }) => [inserts, characteristic]);
    expect(rows(179)).toEqual([[['A', 'B'], expect.closeTo(70200 * (1 + 179 / 180), 6)]]);
    expect(rows(180)).toEqual([
      [['B'], expect.closeTo(70200, 6)],
      [['A'], expect.closeTo(70200, 6)],
    ]);
  });
  it('inch-pound: 160 · 1.1811 in · √1.3950 in² · √5221.4 psi = 16 128 lb = 71 742 N', () => {
    const row = rowOf(checkAci({ outline: PANEL, at: [[30, 1000]] }, load([5, 0, 0]), 'ACI 318-19'), 'blow-out');
    const byHand = 160 * (30 / INCH) * Math.sqrt(900 / (INCH * INCH)) * Math.sqrt(36 / PSI) * POUND;
    expect(row.characteristic).toBeCloseTo(byHand, 5);
    expect(byHand).toBeCloseTo(71742, 0);
    // SI rounds its own: 13 for 13.285.
    expect(row.characteristic! / 70200).toBeCloseTo(1.022, 3);
  });
  it('a corner below 90 degrees is not covered within 3 c_a1, where it would count', () => {
    // A side that leans in by 10 degrees; 30 mm from the bottom edge, the leaning side as far along it.
    const outline = [
      [0, 0],
      [2000, 0],
      [2000, 2000],
      [350, 2000],
    ] as const;
    const verdict = (along: number) => checkAci({ outline, at: [[along, 30]] }, load([5, 0, 0])).verdict;
    expect(verdict(85)).toBe('not covered');
    expect(verdict(120)).toBe('pass');
  });
  it('a foot that is no full head is not covered', () => {
    const result = checkAci({ outline: PANEL, at: [[30, 1000]], insert: { isFullHead: false } }, load([5, 0, 0]));
    expect(result.verdict).toBe('not covered');
    expect(result.uncovered.join()).toContain('side-face blow-out is not covered');
  });
});

describe('splitting', () => {
  it('has no row of its own; least distances are checked apart', () => {
    for (const splitting of [null, { criticalEdge: 200, minimumThickness: 300 }]) {
      const result = checkAci(
        { concrete: { cracked: false }, reinforcement: { limitsCrackWidth: false }, other: { splitting } },
        load([21, 0, 0]),
      );
      const row = result.rows.find(({ mode }) => mode === 'splitting')!;
      expect(row).toMatchObject({ applies: false, clause: 'ACI 318-19 and 318M-19, 17.9' });
      expect(row.notes.join()).toContain('least spacings, edge distances and thicknesses (17.9)');
      expect(result).toMatchObject({ verdict: 'pass', uncovered: [] });
    }
  });
});

describe('bars and tests in place of a formula', () => {
  it('hangers count for nothing, and the breakout row says so', () => {
    const result = checkAci({ other: { hangers: [HANGER] } }, load([45, 0, 0]));
    expect(rowOf(result, 'concrete-cone').notes.join()).toContain('they count for nothing here');
    expect(result.rows.filter(({ mode }) => mode.startsWith('bar'))).toEqual([]);
    // 45 kN of 42 kN: the concrete alone fails.
    expect(result).toMatchObject({ verdict: 'fail', governing: { mode: 'concrete-cone' } });
    expect(rowOf(checkAci({}, load([45, 0, 0])), 'concrete-cone').notes.join()).not.toContain('bars');
  });
  const report = 'report 12';
  it('a tested pull-out of 30 kN: with φ 0.70, or 1/1.8 where the report has γ 1.8', () => {
    const pullOut = (safety: number | null) =>
      rowOf(
        checkAci(
          { insert: { tested: [{ mode: 'pull-out', characteristic: 30000, safety, fromStrength: 30, report }] } },
          load([10, 0, 0]),
        ),
        'pull-out',
      );
    expect(pullOut(null)).toMatchObject({ characteristic: 30000, safety: 0.7 });
    expect(pullOut(1.8)).toMatchObject({ characteristic: 30000, safety: 1 / 1.8 });
  });
  it('a tested steel resistance of 80 kN takes φ of the steel: 0.65 · 80 = 52 kN', () => {
    const rows = checkAci(
      {
        insert: {
          elongation: 12,
          tested: [{ mode: 'steel-tension', characteristic: 80000, safety: null, fromStrength: 0, report }],
        },
      },
      load([26, 0, 0]),
    ).rows.filter(({ mode }) => mode === 'steel-tension');
    expect(rows.map(({ part, safety }) => [part, safety])).toEqual([
      ['bolt', 0.65],
      ['insert as tested', 0.65],
    ]);
    expect(rows[1]!.ratio).toBeCloseTo(0.5, 12);
  });
});

describe('inch-pound against SI', () => {
  it('breakout: 24 · √5221.36 psi · (3.93701 in)^1.5 = 13 547 lb = 60 261 N, 0.4 % above SI', () => {
    const row = rowOf(checkAci({}, load([21, 0, 0]), 'ACI 318-19'), 'concrete-cone');
    const byHand = 24 * Math.sqrt(36 / PSI) * (100 / INCH) ** 1.5 * POUND;
    expect(row.characteristic).toBeCloseTo(byHand, 6);
    expect(byHand).toBeCloseTo(60261.35, 2);
  });
  it('pull-out has no unit of its own: the same', () => {
    expect(rowOf(checkAci({}, load([21, 0, 0]), 'ACI 318-19'), 'pull-out').characteristic).toBe(259200);
  });
});
