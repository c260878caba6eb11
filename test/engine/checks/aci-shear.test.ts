// Shear modes of ACI 318-19 and 318M-19 against hand calculations; the arithmetic stands in the names or comments and once more
// in the expectation. Unless said otherwise SI, f'c 36 MPa (root 6), h_ef 100 mm, d_a 24 mm, where the cap 3.7 counts for V_b.
import { describe, expect, it } from 'vitest';
import { anchorage } from '../../../src/engine/checks/anchorage.ts';
import type { AnchorageResult, Row } from '../../../src/engine/checks/result.ts';
import { checkAci, makeAciGroup } from './aci-groups.ts';
import { type Changes, HAIRPIN, load, rectangle, rowOf } from './groups.ts';

const PANEL = rectangle(0, 0, 3000, 3000);
const POUND = 4.4482216152605;
const INCH = 25.4;
const PSI = POUND / (INCH * INCH);

type Force = readonly [N: number, Vx: number, Vy: number];

/** One insert 100 mm from the left edge: V_b = 3.7 · 6 · 100^1.5 = 22 200 N, A_Vc = 300 · 150 = A_Vco. */
const PLAIN: Changes = { outline: PANEL, at: [[100, 1500]] };

/** Rows of an edge failure toward the edge whose outward normal has this direction [degrees]. */
function edgeRows(result: AnchorageResult, degrees: number): readonly Row[] {
  return result.rows.filter(
    ({ mode, direction }) =>
      mode === 'concrete-edge' && direction !== null && Math.cos(direction - (degrees * Math.PI) / 180) > 1 - 1e-9,
  );
}

/** The one row of a part of the shear at an edge. */
function part(result: AnchorageResult, degrees: number, name: 'toward' | 'along'): Row {
  const rows = edgeRows(result, degrees).filter((row) => row.part === name);
  if (rows.length !== 1) throw new Error(`${rows.length} rows of the part ${name}, one was expected`);
  return rows[0]!;
}

describe('steel', () => {
  const steel = (changes: Changes) => rowOf(checkAci(changes, load([0, 3, 4])), 'steel-shear');
  it('0.6 · 157 · 800 = 75 360 N; φ 0.65 ductile, 0.60 brittle or not known', () => {
    expect(steel({}).characteristic).toBeCloseTo(75360, 8);
    expect(steel({})).toMatchObject({ safety: 0.65, factors: { k_grout: 1 } });
    // √(3² + 4²) = 5 kN of 48 984 N
    expect(steel({}).ratio).toBeCloseTo(5000 / 48984, 12);
    expect(steel({ insert: { elongation: 13.9 } }).safety).toBe(0.6);
    expect(steel({ insert: { areaReduction: 29 } }).safety).toBe(0.6);
    expect(steel({ insert: { elongation: null } }).safety).toBe(0.6);
    expect(steel({ insert: { elongation: null } }).notes.join()).toContain('steel taken as brittle');
  });
  it('on a pad of mortar 0.8 of it: 60 288 N', () => {
    const row = steel({ other: { hasMortarPad: true } });
    expect(row.characteristic).toBeCloseTo(60288, 8);
    expect(row.basic).toBeCloseTo(75360, 8);
    expect(row.factors).toEqual({ k_grout: 0.8 });
  });
  it('f_uta counts up to 1.9 f_ya and 860 MPa, or 125 000 psi: 0.6 · 157 times 456, 860, 861.84', () => {
    const value = (ultimate: number, yieldStress: number, standard: 'ACI 318-19' | 'ACI 318M-19') =>
      rowOf(
        checkAci(
          { insert: { steelParts: [{ name: 'bolt', area: 157, ultimate, yield: yieldStress, resists: 'both' }] } },
          load([0, 5, 0]),
          standard,
        ),
        'steel-shear',
      ).characteristic!;
    expect(value(500, 240, 'ACI 318M-19')).toBeCloseTo(0.6 * 157 * 456, 8);
    expect(value(1000, 900, 'ACI 318M-19')).toBeCloseTo(0.6 * 157 * 860, 8);
    expect(value(1000, 900, 'ACI 318-19')).toBeCloseTo(0.6 * 157 * 125_000 * PSI, 6);
  });
  it('a group of brittle steel has no factor of its own; the most loaded insert counts', () => {
    const at = [
      [0, 0],
      [500, 0],
    ] as const;
    const row = rowOf(checkAci({ at, insert: { elongation: 5 } }, load([0, 3, 0], [0, 6, 0])), 'steel-shear');
    expect(row).toMatchObject({ inserts: ['B'], characteristic: expect.closeTo(75360, 8), action: 6000 });
  });
});

describe('pry-out', () => {
  const pryOut = (embedment: number, standard: 'ACI 318-19' | 'ACI 318M-19' = 'ACI 318M-19') =>
    rowOf(checkAci({ insert: { embedment } }, load([0, 5, 0]), standard), 'pry-out');
  it('twice the breakout strength: 2 · 60 000 = 120 000 N, φ 0.70', () => {
    expect(pryOut(100)).toMatchObject({ characteristic: expect.closeTo(120000, 6), safety: 0.7, factors: { k_cp: 2 } });
  });
  it('known jump: k_cp 2 from 65 mm on, 62 886 N, 1 below, half', () => {
    expect(pryOut(65).characteristic).toBeCloseTo(2 * 60 * 65 ** 1.5, 6);
    expect(pryOut(65).characteristic).toBeCloseTo(62886, 0);
    expect(pryOut(64.9999999).characteristic! / pryOut(65).characteristic!).toBeCloseTo(0.5, 6);
  });
  it('inch-pound: from 2.5 in = 63.5 mm on', () => {
    const factor = (embedment: number) => pryOut(embedment, 'ACI 318-19').factors.k_cp;
    expect([factor(63.5), factor(63.4999), factor(64.9)]).toEqual([2, 1, 2]);
    expect(pryOut(64.9).factors.k_cp).toBe(1);
  });
  it('a factor of the product is taken as given; bars do not lower it', () => {
    expect(
      rowOf(checkAci({ other: { pryOutFactor: 1.5, hairpins: [HAIRPIN] } }, load([0, 5, 0])), 'pry-out').characteristic,
    ).toBeCloseTo(90000, 6);
  });
  it('φ stays 0.70 with supplementary reinforcement', () => {
    expect(rowOf(checkAci({ reinforcement: { supplementary: true } }, load([0, 5, 0])), 'pry-out').safety).toBe(0.7);
  });

  // B carries 2 of 6 kN: the resultant 20 mm off the middle; A = 420 · 300; psi_ec = 1/(1 + 20/150) = 0.882353:
  // 120 000 · 1.4 · 0.882353 = 148 235 N.
  it('shears of one direction: together, with their eccentricity', () => {
    const at = [
      [0, 0],
      [120, 0],
    ] as const;
    const row = rowOf(checkAci({ at }, load([0, 0, 4], [0, 0, 2])), 'pry-out');
    expect(row).toMatchObject({ inserts: ['A', 'B'], action: 6000 });
    expect(row.characteristic).toBeCloseTo((120000 * 1.4) / (1 + 20 / 150), 6);
    expect(row.characteristic).toBeCloseTo(148235, 0);
  });
  // Torsion, ±4 kN at ±60 mm: a virtual edge at 60 mm: 210 · 300/90 000 = 0.7; psi_ed = 0.7 + 0.3 · 60/150 = 0.82: 68 880 N.
  it('shears against each other: each alone, virtual edge at half the spacing', () => {
    const at = [
      [-60, 0],
      [60, 0],
    ] as const;
    const rows = checkAci({ at }, load([0, 0, -4], [0, 0, 4])).rows.filter(({ mode }) => mode === 'pry-out');
    expect(rows.map(({ inserts, action }) => [inserts, action])).toEqual([
      [['A'], 4000],
      [['B'], 4000],
    ]);
    for (const row of rows) {
      expect(row.characteristic).toBeCloseTo(68880, 6);
      expect(row.notes.join()).toContain('opposite directions');
    }
  });
});

describe('basic edge strength', () => {
  const basic = (shaftDiameter: number, standard: 'ACI 318-19' | 'ACI 318M-19' = 'ACI 318M-19') =>
    part(checkAci({ ...PLAIN, insert: { shaftDiameter } }, load([0, -5, 0]), standard), 180, 'toward').basic;
  it('the smaller of 0.6 (l_e/d)^0.2 √d and 3.7', () => {
    // d 24: 0.6 · 1.3303 · 4.8990 = 3.910 > 3.7: 22 200 N. d 16: 0.6 · 1.4427 · 4 = 3.4625: 20 775 N.
    expect(basic(24)).toBeCloseTo(22200, 6);
    expect(basic(16)).toBeCloseTo(0.6 * 6.25 ** 0.2 * 4 * 6000, 6);
    expect(basic(16)).toBeCloseTo(20774.9, 1);
  });
  it('l_e at most 8 d: d 10 → 80 of 100 mm: 0.6 · 8^0.2 · √10 = 2.8759: 17 255 N', () => {
    expect(basic(10)).toBeCloseTo(0.6 * 8 ** 0.2 * Math.sqrt(10) * 6000, 6);
    expect(basic(10)).toBeCloseTo(17255.2, 1);
  });
  it('inch-pound: 7 (l_e/d)^0.2 √d, at most 9, in inches and psi', () => {
    const common = Math.sqrt(36 / PSI) * (100 / INCH) ** 1.5 * POUND;
    // d 16 mm = 0.630 in: 7 · 1.4427 · 0.7937 = 8.015: 20 125 N, 3.1 % below SI; d 24 mm: 7 · 1.3303 · 0.9721 = 9.05 > 9: 22 598 N, 1.8 % above.
    expect(basic(16, 'ACI 318-19')).toBeCloseTo(7 * 6.25 ** 0.2 * Math.sqrt(16 / INCH) * common, 6);
    expect(basic(16, 'ACI 318-19')).toBeCloseTo(20125.4, 1);
    expect(basic(24, 'ACI 318-19')).toBeCloseTo(9 * common, 6);
    expect(basic(24, 'ACI 318-19')).toBeCloseTo(22598.0, 1);
  });
  it('lightweight λ 0.75: 16 650 N', () => {
    const row = part(checkAci({ ...PLAIN, concrete: { lightweightFactor: 0.75 } }, load([0, -5, 0])), 180, 'toward');
    expect(row.basic).toBeCloseTo(16650, 6);
  });
});

describe('toward an edge and along it', () => {
  it('toward: 22 200 N, φ 0.70; along: twice that, no corner factor', () => {
    const toward = part(checkAci(PLAIN, load([0, -5, 0])), 180, 'toward');
    expect(toward).toMatchObject({
      safety: 0.7,
      action: 5000,
      edgeUsed: 100,
      clause: 'ACI 318-19 and 318M-19, 17.7.2.1',
    });
    expect(toward.characteristic).toBeCloseTo(22200, 6);
    expect(toward.factors).toEqual({ areaRatio: expect.closeTo(1, 12), psi_ed: 1, psi_h: 1, psi_ec: 1, psi_c: 1 });
    expect(toward.ratio).toBeCloseTo(5000 / 15540, 12);
    expect(toward.notes.join()).toContain('all of it on the front row');
    const along = part(checkAci(PLAIN, load([0, 0, 5])), 180, 'along');
    expect(along.characteristic).toBeCloseTo(44400, 6);
    expect(along.notes.join()).toContain('twice the resistance, no corner factor');
    expect(edgeRows(checkAci(PLAIN, load([0, -5, 0])), 180).map((row) => row.part)).toEqual(['toward']);
    expect(edgeRows(checkAci(PLAIN, load([0, 0, 5])), 180).map((row) => row.part)).toEqual(['along']);
  });
  it('away from the edge: no number; a part along it stays', () => {
    const [away] = edgeRows(checkAci(PLAIN, load([0, 5, 0])), 180);
    expect(away).toMatchObject({ applies: false, notes: ['the shear acts away from this edge'] });
    expect(edgeRows(checkAci(PLAIN, load([0, 5, 4])), 180).map((row) => [row.part, row.action])).toEqual([
      ['along', 4000],
    ]);
  });
  // 9 kN toward: 9/15.54 = 0.579151; 12 kN along: 12/31.08 = 0.386100; √(0.579151² + 0.386100²) = 0.696050.
  it('both: √(r⊥² + r∥²), and it governs', () => {
    const result = checkAci(PLAIN, load([0, -9, 12]));
    expect(part(result, 180, 'toward').ratio).toBeCloseTo(0.579151, 6);
    expect(part(result, 180, 'along').ratio).toBeCloseTo(0.3861, 6);
    expect(result.governing).toEqual({ mode: 'concrete-edge', ratio: expect.closeTo(0.69605, 5) });
    for (const row of edgeRows(result, 180)) {
      expect(row.ratioTogether).toBeCloseTo(0.69605, 5);
      expect(row.notes.join()).toContain('the code is silent');
    }
    // One part alone comes together with nothing.
    expect(part(checkAci(PLAIN, load([0, -9, 0])), 180, 'toward').notes.join()).not.toContain('silent');
  });
  it('without an action: the resistances of both parts, no ratio', () => {
    // 90 mm from the bottom edge: 15 628.8 and 35 520 N, as below.
    const rows = edgeRows(anchorage(makeAciGroup({ outline: PANEL, at: [[100, 90]] }), null), 180);
    expect(rows.map(({ part, characteristic, action, ratio }) => [part, characteristic, action, ratio])).toEqual([
      ['toward', expect.closeTo(15628.8, 6), null, null],
      ['along', expect.closeTo(35520, 6), null, null],
    ]);
  });
  it('no edge is too far: 1500 mm away it is still checked, where EN 1992-4 stops at 1440 mm', () => {
    const result = checkAci({ outline: rectangle(-1500, -9000, 9000, 9000) }, load([0, -5, 0]));
    // Thick as 200 mm: A = 4500 · 200 of 4.5 · 1500² and psi_h = √(2250/200).
    expect(part(result, 180, 'toward').characteristic).toBeCloseTo(
      3.7 * 6 * 1500 ** 1.5 * ((4500 * 200) / (4.5 * 1500 * 1500)) * Math.sqrt(2250 / 200),
      4,
    );
    expect(edgeRows(checkAci({ outline: null }, load([0, -5, 0])), 180)).toEqual([]);
    const none = checkAci({ outline: null }, load([0, -5, 0])).rows.find(({ mode }) => mode === 'concrete-edge');
    expect(none).toMatchObject({ applies: false, notes: ['no edge in sight'] });
  });
});

describe('factors of an edge body', () => {
  it('a corner at 90 mm: (90 + 150) · 150/45 000 = 0.8, ψ_ed = 0.7 + 0.3 · 90/150 = 0.88: 15 629 N; along 35 520 N', () => {
    const corner: Changes = { outline: PANEL, at: [[100, 90]] };
    const toward = part(checkAci(corner, load([0, -5, 0])), 180, 'toward');
    expect(toward.factors).toMatchObject({ areaRatio: expect.closeTo(0.8, 12), psi_ed: expect.closeTo(0.88, 12) });
    expect(toward.characteristic).toBeCloseTo(15628.8, 6);
    const along = part(checkAci(corner, load([0, 0, 5])), 180, 'along');
    expect(along.factors).toMatchObject({ psi_ed: 1 });
    expect(along.characteristic).toBeCloseTo(35520, 6);
    // Pushed toward the left edge it is pushed along the bottom edge.
    expect(part(checkAci(corner, load([0, -5, 0])), -90, 'along').action).toBe(5000);
  });
  it('a member 120 mm thick: area 0.8, ψ_h = √(150/120): 19 856 N', () => {
    const row = part(checkAci({ ...PLAIN, thickness: 120 }, load([0, -5, 0])), 180, 'toward');
    expect(row.factors.psi_h).toBeCloseTo(Math.sqrt(1.25), 12);
    expect(row.characteristic).toBeCloseTo(22200 * 0.8 * Math.sqrt(1.25), 6);
    expect(row.characteristic).toBeCloseTo(19856.3, 1);
    const along = part(checkAci({ ...PLAIN, thickness: 120 }, load([0, 0, 5])), 180, 'along');
    expect(along.characteristic).toBeCloseTo(2 * 19856.3, 0);
  });
  it('ψ_c: 1, with a bar 1.2, with stirrups 1.4; in uncracked concrete 1.4', () => {
    const value = (edge: 'none' | 'bar' | 'bar-and-stirrups', cracked = true, stirrupSpacing: number | null = 80) =>
      part(
        checkAci({ ...PLAIN, concrete: { cracked }, reinforcement: { edge, stirrupSpacing } }, load([0, -5, 0])),
        180,
        'toward',
      );
    expect(value('none').characteristic).toBeCloseTo(22200, 6);
    expect(value('bar').characteristic).toBeCloseTo(26640, 6);
    expect(value('bar-and-stirrups').characteristic).toBeCloseTo(31080, 6);
    expect(value('bar-and-stirrups').notes.join()).not.toContain('stirrup');
    for (const edge of ['none', 'bar', 'bar-and-stirrups'] as const)
      expect(value(edge, false).characteristic).toBeCloseTo(31080, 6);
  });
  it('stirrups wider than 100 mm: the bar alone, 1.2, and a note; spacing not given: taken as stated, and a note', () => {
    const row = (stirrupSpacing: number | null, standard?: 'ACI 318-19') =>
      part(
        checkAci({ ...PLAIN, reinforcement: { edge: 'bar-and-stirrups', stirrupSpacing } }, load([0, -5, 0]), standard),
        180,
        'toward',
      );
    expect(row(100).factors.psi_c).toBe(1.4);
    expect(row(102).factors.psi_c).toBe(1.2);
    expect(row(102).notes.join()).toContain('stirrups at 102 mm are wider than 100 mm: only the bar');
    // In inch-pound 4 in, 101.6 mm.
    expect(row(100.1).factors.psi_c).toBe(1.2);
    expect(row(101.6, 'ACI 318-19').factors.psi_c).toBe(1.4);
    expect(row(101.7, 'ACI 318-19').factors.psi_c).toBe(1.2);
    expect(row(null).factors.psi_c).toBe(1.4);
    expect(row(null).notes.join()).toContain('spacing not given: taken as stated');
  });
  it('φ 0.75 with supplementary reinforcement', () => {
    const row = part(checkAci({ ...PLAIN, reinforcement: { supplementary: true } }, load([0, -5, 0])), 180, 'toward');
    expect(row.safety).toBe(0.75);
    expect(row.design).toBeCloseTo(16650, 6);
  });
  // A strip 220 mm wide, 150 thick, 200 mm from its end, 100 and 120 from its sides, all below 300: c'_a1 = max(120/1.5, 150/1.5) = 100:
  // 220 · 150/45 000 = 0.733333; psi_ed = 0.7 + 0.3 · 100/150 = 0.9; psi_h 1; 22 200 · 0.66 = 14 652 N.
  it('thin and narrow: c_a1 200 counts as 100', () => {
    const strip = (thickness: number) =>
      part(
        checkAci({ outline: rectangle(0, 0, 220, 3000), at: [[100, 2800]], thickness }, load([0, 0, 5])),
        90,
        'toward',
      );
    expect(strip(150).edgeUsed).toBeCloseTo(100, 9);
    expect(strip(150).characteristic).toBeCloseTo(14652, 6);
    expect(strip(150).notes.join()).toContain('edge distance reduced from 200 to 100 mm');
    // 120 thick: 80 mm: 220 · 120/(4.5 · 80²), psi_ed = 0.7 + 0.3 · 100/120.
    expect(strip(120).edgeUsed).toBeCloseTo(80, 9);
    expect(strip(120).characteristic).toBeCloseTo(
      22.2 * 80 ** 1.5 * ((220 * 120) / 28800) * (0.7 + (0.3 * 100) / 120),
      6,
    );
    // 105 thick: the farther side decides alone, 120/1.5 of 100/1.5 and 105/1.5.
    expect(strip(105).edgeUsed).toBeCloseTo(80, 9);
    // 300 thick is not thin.
    expect(strip(300).edgeUsed).toBe(200);
  });
  it('thin and narrow with a row: the spacing counts, 180/3 = 60 of c_a2/1.5 = 53.3 and 70/1.5 = 46.7', () => {
    const at = [
      [80, 2900],
      [260, 2900],
    ] as const;
    const row = part(
      checkAci(
        { outline: rectangle(0, 0, 340, 3000), at, thickness: 70, insert: { embedment: 60 } },
        load([0, 0, 5], [0, 0, 5]),
      ),
      90,
      'toward',
    );
    expect(row.edgeUsed).toBeCloseTo(60, 9);
    // 340 · 70/(4.5 · 3600), psi_ed = 0.7 + 0.3 · 80/90, psi_h = √(90/70).
    expect(row.characteristic).toBeCloseTo(
      22.2 *
        60 ** 1.5 *
        ((340 * 70) / 16200) *
        (0.7 + 24 / 90) *
        Math.sqrt(90 / 70) *
        Math.min(1, coefficientAt60() / 3.7),
      6,
    );
  });
  it('a corner below 90 degrees: never a pass', () => {
    const outline = [
      [0, 0],
      [3000, 0],
      [3000, 3000],
      [200, 3000],
    ] as const;
    const result = checkAci({ outline, at: [[100, 90]] }, load([0, 0, -2]));
    expect(result.verdict).toBe('not covered');
    expect(result.uncovered.join()).toContain('below 90 degrees');
  });
});

/** 0.6 (60/24)^0.2 √24 = 3.530, below the cap. */
function coefficientAt60(): number {
  return 0.6 * (60 / 24) ** 0.2 * Math.sqrt(24);
}

describe('rows', () => {
  const row = (...inserts: readonly Force[]) =>
    checkAci(
      {
        outline: PANEL,
        at: [
          [100, 1500],
          [100, 1620],
          [300, 1560],
        ],
      },
      load(...inserts),
    );

  it('two of a row: area 420 · 150/45 000 = 1.4; 4 and 2 kN: e = 20 mm, ψ_ec = 1/(1 + 20/150): 27 424 N', () => {
    const at = [
      [100, 1500],
      [100, 1620],
    ] as const;
    const toward = part(checkAci({ outline: PANEL, at }, load([0, -4, 0], [0, -2, 0])), 180, 'toward');
    expect(toward.factors.areaRatio).toBeCloseTo(1.4, 12);
    expect(toward.factors.psi_ec).toBeCloseTo(1 / (1 + 20 / 150), 12);
    expect(toward.characteristic).toBeCloseTo(27423.5, 1);
  });
  it('each part has its own eccentricity', () => {
    const at = [
      [100, 1500],
      [100, 1620],
    ] as const;
    const result = checkAci({ outline: PANEL, at }, load([0, -4, 3], [0, -2, 3]));
    expect(part(result, 180, 'toward').factors.psi_ec).toBeCloseTo(1 / (1 + 20 / 150), 12);
    expect(part(result, 180, 'along').factors.psi_ec).toBe(1);
    expect(part(result, 180, 'along').characteristic).toBeCloseTo(62160, 6);
  });
  it('3 c_a1 = 300 mm apart each alone', () => {
    const names = (s: number) =>
      edgeRows(
        checkAci(
          {
            outline: PANEL,
            at: [
              [100, 1500],
              [100, 1500 + s],
            ],
          },
          load([0, -4, 0], [0, -4, 0]),
        ),
        180,
      ).map(({ inserts }) => inserts.join(''));
    expect(names(299)).toEqual(['AB']);
    expect(names(300)).toEqual(['B', 'A']);
  });

  // A and B in front (100 mm), C behind (300 mm).
  it('all of the load toward the edge on the front row: 4 + 3 + 2 = 9 kN', () => {
    const toward = part(row([0, -4, 0], [0, -3, 0], [0, -2, 0]), 180, 'toward');
    expect(toward).toMatchObject({ inserts: ['A', 'B'], action: 9000 });
  });
  it('the larger of the sum of all and of the positive ones in front', () => {
    const action = (...inserts: readonly Force[]) => part(row(...inserts), 180, 'toward').action;
    // C away: 4 + 3 − 2 = 5 of all, 7 in front. B away: 4 − 1 + 2 = 5 of all, 4 in front.
    expect(action([0, -4, 0], [0, -3, 0], [0, 2, 0])).toBe(7000);
    expect(action([0, -4, 0], [0, 1, 0], [0, -2, 0])).toBe(5000);
    expect(action([0, -4, 0], [0, 1, 0], [0, 2, 0])).toBe(4000);
    // What is pulled away has no share in the eccentricity: A alone, 60 mm from the middle.
    const away = part(row([0, -4, 0], [0, 1, 0], [0, 0, 0]), 180, 'toward');
    expect(away.factors.psi_ec).toBeCloseTo(1 / (1 + 60 / 150), 12);
  });
  it('along the edge the front row has its own shears only, by size', () => {
    expect(part(row([0, 0, 4], [0, 0, 3], [0, 0, 2]), 180, 'along').action).toBe(7000);
    expect(part(row([0, 0, 4], [0, 0, -3], [0, 0, 2]), 180, 'along').action).toBe(7000);
  });
  it('known jump: front-row membership at 1.1 c_min', () => {
    const at = (behind: number) =>
      part(
        checkAci(
          {
            outline: PANEL,
            at: [
              [100, 1500],
              [behind, 1620],
            ],
          },
          load([0, -4, 0], [0, -4, 0]),
        ),
        180,
        'toward',
      );
    // 110 mm: both resist 8 kN with 1.4 · 22 200 = 31 080 N; beyond: A alone with 22 200 N.
    expect(at(110)).toMatchObject({ inserts: ['A', 'B'], action: 8000, characteristic: expect.closeTo(31080, 6) });
    expect(at(110.001)).toMatchObject({ inserts: ['A'], action: 8000, characteristic: expect.closeTo(22200, 6) });
  });
  it('a row behind counts where it carries more than the row before it', () => {
    const at = [
      [100, 1500],
      [300, 1500],
    ] as const;
    const rows = edgeRows(checkAci({ outline: PANEL, at }, load([0, 0, 1], [0, 0, 20])), 180);
    expect(rows.map(({ inserts, part: name, action }) => [inserts, name, action])).toEqual([
      [['A'], 'along', 1000],
      [['B'], 'along', 20000],
    ]);
  });
  // Two pushed along the edge against each other: 40 kN by size; 44 400 · 1.4 and no factor for torsion.
  it('a pair in torsion has no factor of its own', () => {
    const at = [
      [1000, 100],
      [1120, 100],
    ] as const;
    const along = part(checkAci({ outline: PANEL, at }, load([0, 20, 0], [0, -20, 0])), -90, 'along');
    expect(along.action).toBe(40000);
    expect(along.characteristic).toBeCloseTo(62160, 6);
    expect(along.notes.join()).not.toContain('torsion');
  });
  it('hairpins count for nothing, and each part says so', () => {
    const result = checkAci({ ...PLAIN, other: { hairpins: [HAIRPIN] } }, load([0, -20, 5]));
    for (const name of ['toward', 'along'] as const)
      expect(part(result, 180, name).notes.join()).toContain('they count for nothing here');
    expect(result.rows.filter(({ mode }) => mode.startsWith('bar'))).toEqual([]);
    expect(result.verdict).toBe('fail');
    expect(part(checkAci(PLAIN, load([0, -20, 5])), 180, 'toward').notes.join()).not.toContain('bars');
  });
});
