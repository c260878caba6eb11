// Tension modes against hand calculations: the arithmetic stands in the comments, written out again in the expectation
// so that every digit is held. √32 = 5.656854; h_ef = 100 mm gives h_ef^1.5 = 1000 and c_cr,N = 150 mm.
import { describe, expect, it } from 'vitest';
import { explainAnchorage, prepare } from '../../../src/engine/checks/anchorage.ts';
import type { GroupActions } from '../../../src/engine/checks/anchorage-group.ts';
import type { AnchorageResult } from '../../../src/engine/checks/result.ts';
import { type Changes, load, makeGroup, rectangle, rowOf, rowToward } from './groups.ts';

const check = (changes: Changes, actions: GroupActions): AnchorageResult =>
  explainAnchorage(prepare(makeGroup(changes)), actions, true);

/** N⁰_Rk,c of one insert: 8.9 · 5.656854 · 1000 = 50 346 N. */
const BASIC = 8.9 * Math.sqrt(32) * 1000;
/** A_h = π/4 (44² − 24²) = 1068.14 mm². */
const FOOT = (Math.PI / 4) * (44 * 44 - 24 * 24);
const PANEL = rectangle(0, 0, 2000, 2000);

describe('one insert far from edges', () => {
  const result = check({}, load([20, 0, 0]));
  it('steel: 157 · 800 = 125 600 N over 1.2/0.8 = 1.5', () => {
    const row = rowOf(result, 'steel-tension');
    expect(row).toMatchObject({ part: 'bolt', inserts: ['A'], basic: 125600, characteristic: 125600, safety: 1.5 });
    expect(row.ratio).toBeCloseTo(20000 / 83733.3333, 7);
  });
  it('cone: 50 346 N over 1.5, all factors 1', () => {
    const row = rowOf(result, 'concrete-cone');
    expect(row.characteristic).toBeCloseTo(BASIC, 6);
    expect(row.characteristic).toBeCloseTo(50346.0, 0);
    expect(row.factors).toEqual({ areaRatio: 1, psi_s: 1, psi_re: 1, psi_ec: 1, psi_M: 1 });
    // 20 000/33 564 = 0.59588
    expect(row.ratio).toBeCloseTo(0.59588, 5);
  });
  it('pull-out: 7.5 · 1068.14 · 32 = 256 354 N', () => {
    const row = rowOf(result, 'pull-out');
    expect(row.characteristic).toBeCloseTo(7.5 * FOOT * 32, 6);
    expect(row.characteristic).toBeCloseTo(256354, 0);
  });
  it('neither blow-out nor splitting, each with its reason', () => {
    const of = (mode: string) => result.rows.find((row) => row.mode === mode)!;
    expect(of('blow-out')).toMatchObject({ applies: false, ratio: null });
    expect(of('blow-out').notes[0]).toContain('no edge within 0.5 h_ef = 50 mm');
    expect(of('splitting')).toMatchObject({ applies: false });
    expect(of('splitting').notes[0]).toContain('limits the crack width');
  });
  it('uncracked: k1 12.7 and k2 10.5', () => {
    const uncracked = check({ concrete: { cracked: false } }, load([20, 0, 0]));
    expect(rowOf(uncracked, 'concrete-cone').characteristic).toBeCloseTo(12.7 * Math.sqrt(32) * 1000, 6);
    expect(rowOf(uncracked, 'pull-out').characteristic).toBeCloseTo(10.5 * FOOT * 32, 6);
  });
  it('dense surface reinforcement at h_ef 64: psi_re = 0.5 + 64/200 = 0.82', () => {
    const dense = check({ insert: { embedment: 64 }, reinforcement: { denseSurface: true } }, load([20, 0, 0]));
    // 8.9 · √32 · 64 · 8 · 0.82
    expect(rowOf(dense, 'concrete-cone').characteristic).toBeCloseTo(8.9 * Math.sqrt(32) * 512 * 0.82, 6);
  });
  it('a thin foot counts only up to 6 t_h + d = 6 · 3 + 24 = 42 mm', () => {
    const thin = check({ insert: { foot: { kind: 'diameter', diameter: 44, thickness: 3 } } }, load([20, 0, 0]));
    expect(rowOf(thin, 'pull-out').characteristic).toBeCloseTo(7.5 * (Math.PI / 4) * (42 * 42 - 24 * 24) * 32, 6);
  });
  it('a net bearing area is used as given', () => {
    const given = check({ insert: { foot: { kind: 'area', area: 900 } } }, load([20, 0, 0]));
    expect(rowOf(given, 'pull-out').characteristic).toBe(7.5 * 900 * 32);
  });
  it('compression of 0.9 of the tension 60 mm away: psi_M = 2 − 60/150 = 1.6', () => {
    const pressed = (force: number, x: number, outline = false) =>
      rowOf(
        check(outline ? { outline: PANEL, at: [[140, 1000]] } : {}, {
          ...load([20, 0, 0]),
          compression: { force, at: [x, outline ? 1000 : 0] },
        }),
        'concrete-cone',
      ).factors.psi_M;
    expect(pressed(18000, 60)).toBeCloseTo(1.6, 12);
    // 0.8 of the tension just counts; below it, at 1.5 h_ef, or with an edge nearer than 150 mm nothing does.
    expect(pressed(16000, 60)).toBeCloseTo(1.6, 12);
    expect(pressed(15999, 60)).toBe(1);
    expect(pressed(18000, 150)).toBe(1);
    expect(pressed(18000, 200, true)).toBe(1);
  });
});

describe('cone near edges', () => {
  it('one edge at 80 mm: (80 + 150)·300 = 69 000 mm², psi_s = 0.7 + 0.3·80/150 = 0.86', () => {
    const row = rowOf(check({ outline: PANEL, at: [[80, 1000]] }, load([10, 0, 0])), 'concrete-cone');
    expect(row.factors).toMatchObject({ areaRatio: 69000 / 90000 });
    expect(row.factors.psi_s).toBeCloseTo(0.86, 12);
    // 50 346 · 0.766667 · 0.86 = 33 194.8 N
    expect(row.characteristic).toBeCloseTo(BASIC * (69000 / 90000) * 0.86, 6);
    expect(row.characteristic).toBeCloseTo(33194.8, 1);
  });

  // Spacings 160 and 140, both edges at 90: A = (90 + 160 + 150)(90 + 140 + 150) = 400 · 380 = 152 000 mm²,
  // ratio 1.688889, psi_s = 0.7 + 0.3·90/150 = 0.88. Loads 8, 6, 4, 2: x = 3080/20 = 154, y = 2640/20 = 132, centroid
  // (170, 160): e = 16 and 28. psi_ec = 1/(1 + 32/300) · 1/(1 + 56/300) = 0.903614 · 0.842697.
  it('four inserts by a corner, eccentric in both axes', () => {
    const at = [
      [90, 90],
      [250, 90],
      [90, 230],
      [250, 230],
    ] as const;
    const result = check({ outline: PANEL, at }, load([8, 0, 0], [6, 0, 0], [4, 0, 0], [2, 0, 0]));
    const row = rowOf(result, 'concrete-cone');
    expect(row.inserts).toEqual(['A', 'B', 'C', 'D']);
    expect(row.factors.areaRatio).toBeCloseTo(152000 / 90000, 12);
    expect(row.factors.psi_ec).toBeCloseTo(1 / (1 + 32 / 300) / (1 + 56 / 300), 12);
    expect(row.characteristic).toBeCloseTo((((BASIC * 152000) / 90000) * 0.88) / (1 + 32 / 300) / (1 + 56 / 300), 6);
    expect(row.characteristic).toBeCloseTo(56977.5, 1);
    // 20 000/(56 977.5/1.5)
    expect(row.ratio).toBeCloseTo(0.52652, 5);
    expect(row.notes.join()).toContain('both axes');
    // The most loaded insert alone: 8000/(256 354/1.5)
    expect(rowOf(result, 'pull-out')).toMatchObject({ inserts: ['A'] });
    expect(rowOf(result, 'pull-out').ratio).toBeCloseTo(0.04681, 5);
  });

  it('inserts 3 h_ef apart break out alone, nearer ones together', () => {
    const rows = (s: number) =>
      check(
        {
          at: [
            [0, 0],
            [s, 0],
          ],
        },
        load([10, 0, 0], [10, 0, 0]),
      ).rows.filter((row) => row.mode === 'concrete-cone');
    expect(rows(300).map((row) => row.inserts)).toEqual([['A'], ['B']]);
    expect(rows(299).map((row) => row.inserts)).toEqual([['A', 'B']]);
    // (300 + 299)·300/90 000
    expect(rows(299)[0]!.factors.areaRatio).toBeCloseTo(599 / 300, 12);
  });

  it('only tensioned inserts form the group', () => {
    const row = rowOf(
      check(
        {
          at: [
            [0, 0],
            [100, 0],
          ],
        },
        load([10, 0, 0], [0, 5, 0]),
      ),
      'concrete-cone',
    );
    expect(row.inserts).toEqual(['A']);
  });

  it('two inserts on a slant: the squares lie along the line between them', () => {
    // 60-80-100 triangle: along the line A = (300 + 100)·300 = 120 000 mm², direction atan(80/60).
    const row = rowOf(
      check(
        {
          at: [
            [0, 0],
            [60, 80],
          ],
        },
        load([10, 0, 0], [10, 0, 0]),
      ),
      'concrete-cone',
    );
    expect(row.factors.areaRatio).toBeCloseTo(120000 / 90000, 12);
    expect(Math.tan(row.direction!)).toBeCloseTo(80 / 60, 9);
  });
});

describe('three or more near edges', () => {
  const cone = (embedment: number) =>
    rowOf(
      check({ outline: rectangle(-50, -50, 50, 151), insert: { embedment }, thickness: 250 }, load([5, 0, 0])),
      'concrete-cone',
    );

  // c_cr = 150.9: edges 50, 50, 50 count, c_max = 50: h'_ef = 50/150.9 · 100.6 = 33.3333; the square of 100 mm fits whole.
  // N = 8.9 √32 · 33.3333^1.5 = 8.9 · 5.656854 · 192.450 = 9689.1 N.
  it('h_ef 100.6: the fourth edge does not count', () => {
    const row = cone(100.6);
    expect(row.embedmentUsed).toBeCloseTo(100 / 3, 9);
    expect(row.factors).toMatchObject({ areaRatio: expect.closeTo(1, 12), psi_s: expect.closeTo(1, 12) });
    expect(row.characteristic).toBeCloseTo(8.9 * Math.sqrt(32) * (100 / 3) ** 1.5, 6);
    expect(row.notes.join()).toContain('three or more near edges');
  });

  // c_cr = 151.05: all four count, c_max = 151: h'_ef = 100.6667, square 302 cut to 100 · 201 = 20 100 of 91 204 mm²,
  // psi_s = 0.7 + 0.3·50/151 = 0.799338: N = 8.9 √32 · 1010.02 · 0.220385 · 0.799338 = 8957.8 N, 7.5 % less.
  it('known jump: h_ef 100.7 brings the fourth edge in and 7.5 % less', () => {
    const row = cone(100.7);
    expect(row.embedmentUsed).toBeCloseTo(302 / 3, 9);
    const byHand = 8.9 * Math.sqrt(32) * (302 / 3) ** 1.5 * (20100 / 302 ** 2) * (0.7 + 15 / 151);
    expect(row.characteristic).toBeCloseTo(byHand, 6);
    expect(row.characteristic! / cone(100.6).characteristic! - 1).toBeCloseTo(-0.0755, 4);
  });

  it('with a group the spacing may set h_ef: s 120 > 2 · 50', () => {
    // Strip 100 mm wide, inserts 120 mm apart along it, 50 mm from its three near edges, the fourth 2000 mm away:
    // h'_ef = max(50/150, 120/300) · 100 = 40; c_cr' = 60; A = 100 · (50 + 120 + 60) = 23 000 of 14 400; psi_s = 0.7 + 0.3·50/60.
    const at = [
      [0, 0],
      [0, 120],
    ] as const;
    const row = rowOf(
      check({ outline: rectangle(-50, -50, 50, 2120), at }, load([5, 0, 0], [5, 0, 0])),
      'concrete-cone',
    );
    expect(row.embedmentUsed).toBeCloseTo(40, 9);
    expect(row.characteristic).toBeCloseTo(8.9 * Math.sqrt(32) * 40 ** 1.5 * (23000 / 14400) * 0.95, 6);
  });

  it('edges whose normals differ by less than 45 degrees count once', () => {
    // A right strip end cut by a blunt point: normals 90 ± 20 degrees at the top count as one, so with left and right three.
    const point = Math.tan((20 * Math.PI) / 180) * 60;
    const outline = [
      [-60, -2000],
      [60, -2000],
      [60, 80],
      [0, 80 + point],
      [-60, 80],
    ] as const;
    const row = rowOf(check({ outline }, load([5, 0, 0])), 'concrete-cone');
    expect(row.embedmentUsed).toBeLessThan(100);
    // Without the walls (moved 200 mm out) only the two blunt sides are near: no reduction.
    const wide = [
      [-260, -2000],
      [260, -2000],
      [260, 80],
      [0, 80 + (point * 260) / 60],
      [-260, 80],
    ] as const;
    expect(rowOf(check({ outline: wide }, load([5, 0, 0])), 'concrete-cone').embedmentUsed).toBe(100);
    // Three sides round the insert, 80 mm away, normals 20 degrees apart: three near edges of nearly one direction.
    const normal = (degrees: number) =>
      [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)] as const;
    const corner = (degrees: number, more: number) => {
      const [nx, ny] = normal(degrees);
      const reach = 80 / Math.cos((10 * Math.PI) / 180);
      const [tx, ty] = normal(degrees > 180 ? degrees + 100 : degrees - 100);
      return [reach * nx + more * tx, reach * ny + more * ty] as const;
    };
    const round = [corner(170, 0), corner(190, 0), corner(190, 2000), corner(170, 2000)];
    const blunt = rowOf(check({ outline: round }, load([5, 0, 0])), 'concrete-cone');
    expect(blunt.embedmentUsed).toBe(100);
    expect(blunt.factors.psi_s).toBeCloseTo(0.7 + (0.3 * 80) / 150, 9);
  });

  // Two edges 180 mm away, past c_cr = 150, at 45 degrees: the square lies along one of them, and the other cuts its corner, 150 √2 = 212.13 mm
  // away: a triangle 32.13 mm high, 32.13² mm².
  it('squares are turned to edges that only their corners reach', () => {
    const outline = [
      [-2000, -180],
      [180 * Math.SQRT2 + 180, -180],
      [180 * Math.SQRT2 - 2000, 2000],
      [-2000, 2000],
    ] as const;
    const row = rowOf(check({ outline }, load([5, 0, 0])), 'concrete-cone');
    expect(row.factors.areaRatio).toBeCloseTo(1 - (150 * Math.SQRT2 - 180) ** 2 / 90000, 9);
    expect(row.factors.psi_s).toBe(1);
  });
});

describe('openings', () => {
  // A slit from 60 to 70 mm to the right, 120 mm tall. Square ±150: the rays past the slit's near corners run at 45 degrees, so all
  // from u = 60 outward with |v| < u is hidden: 150² − 60² = 18 900 mm²; 71 100 of 90 000 are left. psi_s = 0.7 + 0.3·60/150 = 0.82.
  it('a slit hides the concrete behind it from the cone', () => {
    const result = check(
      { outline: rectangle(-2000, -2000, 2000, 2000), openings: [rectangle(60, -60, 70, 60)] },
      load([10, 0, 0]),
    );
    const row = rowOf(result, 'concrete-cone');
    expect(row.factors.areaRatio).toBeCloseTo(71100 / 90000, 12);
    expect(row.factors.psi_s).toBeCloseTo(0.82, 12);
    expect(row.characteristic).toBeCloseTo(BASIC * 0.79 * 0.82, 6);
    expect(row.notes.join()).toContain('hides part of the concrete');
  });
});

describe('blow-out', () => {
  // N⁰ = 8.7 · 40 · √1068.14 · √32 = 348 · 32.6824 · 5.65685 = 64 338 N. f = 200 − 100 = 100 > 2 c1 = 80: full body.
  it('one insert 40 mm from an edge, alone: A = A⁰ = 160²', () => {
    const row = rowOf(check({ outline: PANEL, at: [[1000, 40]] }, load([10, 0, 0])), 'blow-out');
    expect(row.characteristic).toBeCloseTo(8.7 * 40 * Math.sqrt(FOOT) * Math.sqrt(32), 6);
    expect(row.characteristic).toBeCloseTo(64338, 0);
    expect(row.factors).toEqual({ areaRatio: 1, psi_s: 1, psi_g: 1, psi_ec: 1 });
    expect(row).toMatchObject({ inserts: ['A'], edgeUsed: 40, edge: { from: [0, 0], to: [2000, 0] } });
  });

  // Two at 40 mm, 100 mm apart, 60 mm from a corner, f = 150 − 100 = 50: A = (60 + 100 + 80)·(80 + 50) = 31 200 mm²,
  // A⁰ = 25 600, ratio 1.21875; psi_s = 0.7 + 0.3·60/80 = 0.925; psi_g = √2 + (1 − √2)·100/160 = 1.155330;
  // loads 6 and 4: e = |(6·60 + 4·160)/10 − 110| = 10, psi_ec = 1/(1 + 20/160) = 0.888889. 64 338 times all: 74 487 N.
  it('a row of two by a corner, in a thin panel, unequally loaded', () => {
    const result = check(
      {
        outline: PANEL,
        at: [
          [60, 40],
          [160, 40],
        ],
        thickness: 150,
      },
      load([6, 0, 0], [4, 0, 0]),
    );
    const row = rowOf(result, 'blow-out');
    const group = Math.SQRT2 + (1 - Math.SQRT2) * 0.625;
    const basic = 8.7 * 40 * Math.sqrt(FOOT) * Math.sqrt(32);
    expect(row.characteristic).toBeCloseTo((((basic * 31200) / 25600) * 0.925 * group) / 1.125, 6);
    expect(row.characteristic).toBeCloseTo(74486.7, 1);
    expect(row.ratio).toBeCloseTo((10000 * 1.5) / 74486.7, 6);
    expect(row.inserts).toEqual(['A', 'B']);
  });

  it('uncracked: 12.2', () => {
    const row = rowOf(
      check({ outline: PANEL, at: [[1000, 40]], concrete: { cracked: false } }, load([10, 0, 0])),
      'blow-out',
    );
    expect(row.basic).toBeCloseTo(12.2 * 40 * Math.sqrt(FOOT) * Math.sqrt(32), 6);
  });

  // A at 20 mm, B behind it at 45 mm (1.1 · 20 = 22 < 45 ≤ 0.5 · 100 = 50): B is a row of its own, under its own load.
  // N⁰ = 8.7 · 45 · √1068.14 · √32 = 72 380 N; f = 200 − 100 = 100 > 2 · 45: full body.
  it('an insert behind the front row, near enough itself, is a row of its own', () => {
    const result = check(
      {
        outline: PANEL,
        at: [
          [1000, 20],
          [1000, 45],
        ],
      },
      load([1, 0, 0], [50, 0, 0]),
    );
    const rows = result.rows.filter(({ mode }) => mode === 'blow-out');
    expect(rows.map(({ inserts, edgeUsed }) => [inserts, edgeUsed])).toEqual([
      [['A'], 20],
      [['B'], 45],
    ]);
    expect(rows[1]!.characteristic).toBeCloseTo(8.7 * 45 * Math.sqrt(FOOT) * Math.sqrt(32), 6);
    expect(rows[1]!.action).toBe(50000);
  });

  it('a foot that is not a full head: not covered, though its pull-out was tested', () => {
    const tested = [
      { mode: 'pull-out', characteristic: 60000, safety: null, fromStrength: 30, report: 'R 1 (invented)' } as const,
    ];
    const at = (y: number) =>
      check({ outline: PANEL, at: [[1000, y]], insert: { isFullHead: false, tested } }, load([10, 0, 0])).verdict;
    expect(at(60)).toBe('pass');
    expect(at(40)).toBe('not covered');
  });

  it('inserts 4 c1 = 160 mm apart act alone', () => {
    const rows = (s: number) =>
      check(
        {
          outline: PANEL,
          at: [
            [1000, 40],
            [1000 + s, 40],
          ],
        },
        load([6, 0, 0], [4, 0, 0]),
      ).rows.filter(({ mode }) => mode === 'blow-out');
    expect(rows(160)).toHaveLength(2);
    expect(rows(159)).toHaveLength(1);
  });

  it('one row an edge in a corner', () => {
    const result = check({ outline: PANEL, at: [[45, 40]] }, load([10, 0, 0]));
    // Toward the bottom c1 40, c2 45 (psi_s 0.7 + 0.3·45/80); toward the left c1 45, c2 40 (0.7 + 0.3·40/90).
    expect(rowToward(result, 'blow-out', -90).factors.psi_s).toBeCloseTo(0.7 + 13.5 / 80, 12);
    expect(rowToward(result, 'blow-out', 180).factors.psi_s).toBeCloseTo(0.7 + 12 / 90, 12);
  });

  // Known jump: blow-out starts at c1 = 0.5 h_ef. A small foot of 100 mm² at h_ef 400, c1 200: N_cb = 8.7·200·10·√32 = 98 429 N.
  it('known jump: onset at c1 = 0.5 h_ef', () => {
    const ratio = (c1: number) => {
      const changes: Changes = {
        outline: rectangle(0, 0, 4000, 4000),
        at: [[2000, c1]],
        thickness: 900,
        insert: { embedment: 400, foot: { kind: 'area', area: 1000 } },
      };
      return check(changes, load([50, 0, 0])).rows.find((row) => row.mode === 'blow-out')!;
    };
    expect(ratio(200.001)).toMatchObject({ applies: false, ratio: null });
    // √1000 = 31.6228: 8.7 · 200 · 31.6228 · 5.656854 = 311 262 N; 50 000 · 1.5/311 262 = 0.24095 at once.
    expect(ratio(200)).toMatchObject({ applies: true });
    expect(ratio(200).ratio).toBeCloseTo(0.24095, 4);
  });
});

describe('splitting', () => {
  const splitting = { criticalEdge: 200, minimumThickness: 160 };
  const base: Changes = { outline: PANEL, concrete: { cracked: false }, thickness: 180, other: { splitting } };

  // c1 = 120, c_cr,sp = 200: A = (120 + 200)·400 = 128 000 of 160 000 mm² = 0.8; psi_s = 0.7 + 0.3·120/200 = 0.88;
  // psi_h = (180/160)^(2/3) = 1.081687, below ((100 + 180)/160)^(2/3) = 1.45; N⁰ = min(10.5·1068.14·32, 12.7·√32·1000) = 71 842 N.
  // 71 842 · 0.8 · 0.88 · 1.081687 = 54 708 N.
  it('one insert near one edge', () => {
    const row = rowOf(check({ ...base, at: [[1000, 120]] }, load([10, 0, 0])), 'splitting');
    const basic = 12.7 * Math.sqrt(32) * 1000;
    expect(row.basic).toBeCloseTo(basic, 6);
    expect(row.factors.psi_h).toBeCloseTo(1.125 ** (2 / 3), 12);
    expect(row.characteristic).toBeCloseTo(basic * 0.8 * 0.88 * 1.125 ** (2 / 3), 6);
    expect(row.characteristic).toBeCloseTo(54708, 0);
    expect(row.ratio).toBeCloseTo((10000 * 1.5) / 54708.3, 5);
  });

  it('the thickness factor is held by the edge distance and by 2', () => {
    const factor = (thickness: number, c1: number) =>
      rowOf(check({ ...base, thickness, at: [[1000, c1]] }, load([10, 0, 0])), 'splitting').factors.psi_h;
    // (100 + 1.5·60)/160 = 1.1875 holds 400/160 = 2.5.
    expect(factor(400, 60)).toBeCloseTo(1.1875 ** (2 / 3), 12);
    // (100 + 1.5·30)/160 < 1 → held at 1.
    expect(factor(400, 30)).toBe(1);
  });

  it('takes pull-out where that is lower: a foot of 100 mm² gives 10.5 · 100 · 32 = 33 600 N', () => {
    const changes = { ...base, at: [[1000, 120]] as const, insert: { foot: { kind: 'area', area: 100 } as const } };
    expect(rowOf(check(changes, load([10, 0, 0])), 'splitting').basic).toBe(33600);
  });

  const applies = (changes: Changes, actions: GroupActions) =>
    check(changes, actions).rows.some((row) => row.mode === 'splitting' && row.applies);

  it('is left out at c ≥ c_cr,sp for one insert and c ≥ 1.2 c_cr,sp for a group', () => {
    expect(applies({ ...base, at: [[1000, 199.9]] }, load([10, 0, 0]))).toBe(true);
    expect(applies({ ...base, at: [[1000, 200]] }, load([10, 0, 0]))).toBe(false);
    const pair = (c: number): Changes => ({
      ...base,
      at: [
        [1000, c],
        [1100, c],
      ],
    });
    expect(applies(pair(239.9), load([10, 0, 0], [10, 0, 0]))).toBe(true);
    expect(applies(pair(240), load([10, 0, 0], [10, 0, 0]))).toBe(false);
    // One of the two alone in tension is one insert.
    expect(applies(pair(210), load([10, 0, 0], [0, 0, 0]))).toBe(false);
  });

  it('cracked values release it only together with crack-width reinforcement', () => {
    const near: Changes = { ...base, at: [[1000, 120]], concrete: { cracked: true } };
    expect(applies(near, load([10, 0, 0]))).toBe(false);
    expect(applies({ ...near, reinforcement: { limitsCrackWidth: false } }, load([10, 0, 0]))).toBe(true);
    expect(applies({ ...base, at: [[1000, 120]] }, load([10, 0, 0]))).toBe(true);
  });

  it('two clusters have a row each', () => {
    const rows = check(
      {
        ...base,
        at: [
          [500, 120],
          [900, 120],
        ],
      },
      load([10, 0, 0], [10, 0, 0]),
    ).rows;
    expect(rows.filter((row) => row.mode === 'splitting' && row.applies)).toHaveLength(2);
  });
});
