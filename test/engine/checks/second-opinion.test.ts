// Cases that an independent computation from the same readings brought up. Its numbers stand beside each.

import { describe, expect, it } from 'vitest';
import { anchorage } from '../../../src/engine/checks/anchorage.ts';
import { INSERT, load, makeGroup, rectangle, rowToward } from './groups.ts';

const PART = INSERT.steelParts[0]!;

describe('an insert beyond an outward corner', () => {
  // Outline with a corner of 135 degrees at (650, 500); an opening hides the edge left of x = 450 from where the insert stands.
  const row = (x: number) =>
    rowToward(
      anchorage(
        makeGroup({
          concrete: { strength: 40 },
          insert: { embedment: 80, shaftDiameter: 20, foot: { kind: 'diameter', diameter: 40, thickness: null } },
          outline: [
            [0, 0],
            [800, 0],
            [800, 350],
            [650, 500],
            [0, 500],
          ],
          openings: [rectangle(200, 250, 450, 450)],
          at: [[x, 185]],
        }),
        load([0, 0, 12]),
      ),
      'concrete-edge',
      90,
    );
  // Independent computation: 11.38 kN before the corner, 10.31 kN 0.1 mm beyond it.
  it('has no more concrete than what it sees past an opening', () => {
    expect(row(650).characteristic).toBeCloseTo(11_380, -1);
    expect(row(650.1).characteristic).toBeCloseTo(10_310, -1);
  });
});

describe('steel that no given part carries', () => {
  const verdict = (resists: 'tension' | 'shear', action: readonly [number, number, number]) =>
    anchorage(makeGroup({ insert: { steelParts: [{ ...PART, resists }] } }), load(action));
  it.each([
    ['tension', 'shear', [5, 0, 0]],
    ['shear', 'tension', [0, 5, 0]],
  ] as const)('%s is never passed by a part for %s alone', (missing, resists, action) => {
    const result = verdict(resists, action);
    expect(result.verdict).toBe('not covered');
    expect(result.uncovered.join()).toContain(`no steel part is given that carries ${missing}`);
  });
  // n = 40 000/83 733 and v = 20 000/50 240 (157 mm², 800/640 MPa, γ 1.5 and 1.25): 0.2282 + 0.1585 = 0.3867.
  it('a part for tension and one for shear still meet in one insert', () => {
    const result = anchorage(
      makeGroup({
        insert: {
          steelParts: [
            { ...PART, resists: 'tension' },
            { ...PART, name: 'other', resists: 'shear' },
          ],
        },
      }),
      load([40, 20, 0]),
    );
    expect(result.interaction.find(({ kind }) => kind === 'steel')!.ratio).toBeCloseTo(0.3867, 3);
  });
});

describe('tests of an insert', () => {
  const test = (
    report: string,
    characteristic: number,
    fromStrength: number,
    mode: 'pull-out' | 'steel-shear' = 'pull-out',
  ) => ({
    mode,
    characteristic,
    safety: null,
    fromStrength,
    report,
  });
  // f_ck 32: report A holds from 40 MPa, B (30 kN) from 25 MPa: B counts, in whichever order; 25/(30/1.5) = 1.25.
  it('the least that holds counts, in any order', () => {
    const tests = [test('A', 60_000, 40), test('B', 30_000, 25), test('C', 45_000, 20)];
    for (const tested of [tests, [...tests].reverse()]) {
      const result = anchorage(makeGroup({ insert: { isFullHead: false, tested } }), load([25, 0, 0]));
      expect(result.rows.find(({ mode }) => mode === 'pull-out')!.ratio).toBeCloseTo(1.25, 9);
    }
  });
  it('a report without a factor of its own needs a part to take it from', () => {
    const group = makeGroup({
      insert: { steelParts: [{ ...PART, resists: 'tension' }], tested: [test('S', 50_000, 0, 'steel-shear')] },
    });
    expect(() => anchorage(group, load([0, 5, 0]))).toThrow('report S gives no partial factor');
  });
});

describe('an insert that stands out of the concrete', () => {
  it('is never a pass: a foot of 44 mm needs 22 mm to an edge', () => {
    const verdict = (x: number) =>
      anchorage(makeGroup({ outline: rectangle(0, 0, 3000, 3000), at: [[x, 1500]] }), load([1, 0, 0]));
    expect(verdict(22).uncovered).toEqual([]);
    expect(verdict(21).verdict).toBe('not covered');
    expect(verdict(21).uncovered.join()).toContain('insert A: 44 mm wide, 21 mm from an edge');
  });
});

describe('documents of another year', () => {
  const verdict = (standard: 'EN 1992-4' | 'AS 5216' | 'ACI 318-19', named: string) =>
    anchorage(makeGroup({ standard, insert: { qualification: { document: 'D', standard: named } } }), load([5, 0, 0]));
  it.each([
    ['EN 1992-4', 'BS EN 1992-4:2018', 'pass'],
    ['EN 1992-4', 'EN 1992-4:2009', 'not covered'],
    ['AS 5216', 'AS 5216:2021', 'pass'],
    ['AS 5216', 'AS 5216:2018', 'not covered'],
    ['ACI 318-19', 'ACI 318-19', 'pass'],
    ['ACI 318-19', 'ACI 318:2019', 'pass'],
    ['ACI 318-19', 'ACI 318-14', 'not covered'],
  ] as const)('%s: a document for %s: %s', (standard, named, expected) => {
    const result = verdict(standard, named);
    expect(result.verdict).toBe(expected);
    if (expected === 'not covered') expect(result.uncovered.join()).toContain(`only for ${named}`);
  });
});

describe('a stand-off', () => {
  // W 277 mm³: M = 1.2 · 277 · 800 = 265 920 N mm, over 30 mm 8864 N; /1.25 = 7091 N: 5/7.0912 = 0.7051. The body: 0.5 · 0.8 is left out for
  // one insert: 0.5 · 300 · 510 = 76 500 N; γ 1.437 (510/355): 53 250 N: 5/53.25 = 0.0939.
  it('bends the bolt, not the body in the concrete, which meets tension and shear in its own steel', () => {
    const body = { name: 'body', area: 300, ultimate: 510, yield: 355, resists: 'both', isEmbedded: true } as const;
    const result = anchorage(
      makeGroup({
        insert: { steelParts: [PART, body] },
        other: { leverArm: { length: 30, restraint: 1, sectionModulus: 277 } },
      }),
      load([10, 5, 0]),
    );
    const rows = result.rows.filter(({ mode }) => mode === 'steel-shear');
    expect(rows.map(({ part }) => part)).toEqual(['bolt', 'body']);
    expect(rows[1]!.ratio).toBeCloseTo(0.0939, 4);
    expect(rows[0]!.ratio).toBeGreaterThan(0.7);
    // n = 10/(300 · 0.51/1.7239) = 0.11267; n² + v² = 0.0215.
    expect(result.interaction.find(({ kind }) => kind === 'steel')!.ratio).toBeCloseTo(0.0215, 4);
  });
});

describe('ACI 318: least distances', () => {
  // 4 d_a = 96 mm and 6 d_a = 144 mm with a body of 24 mm (Table 17.9.2(a), recalled).
  const uncovered = (spacing: number, isTorqued: boolean) =>
    anchorage(
      makeGroup({
        standard: 'ACI 318M-19',
        insert: { qualification: { document: 'D', standard: 'ACI 318-19' } },
        at: [
          [0, 0],
          [spacing, 0],
        ],
        other: { isTorqued },
      }),
      load([5, 0, 0], [5, 0, 0]),
    ).uncovered;
  it('never pass below them', () => {
    expect(uncovered(96, false)).toEqual([]);
    expect(uncovered(95, false).join()).toContain('95 mm apart, below 96 mm');
    expect(uncovered(144, true)).toEqual([]);
    expect(uncovered(143, true).join()).toContain('below 144 mm');
  });
});

describe('limits and the rounding of turned or drawn coordinates', () => {
  const edges = (second: number, spacing: number) =>
    anchorage(
      makeGroup({
        outline: rectangle(0, 0, 5000, 5000),
        at: [
          [1000, 100],
          [1000 + spacing, second],
        ],
      }),
      load([0, 0, -5], [0, 0, -5]),
    );
  it('the front row takes in what stands at 1.1 c_min but for rounding', () => {
    for (const c of [110, 110.00000000000003])
      expect(rowToward(edges(c, 150), 'concrete-edge', -90).inserts).toEqual(['A', 'B']);
    expect(rowToward(edges(110.001, 150), 'concrete-edge', -90).inserts).toEqual(['A']);
  });
  it('inserts exactly 3 c1 apart act alone', () => {
    const rows = (spacing: number) =>
      edges(100, spacing).rows.filter(
        ({ mode, direction }) =>
          mode === 'concrete-edge' && direction !== null && Math.abs(direction + Math.PI / 2) < 1e-9,
      ).length;
    expect(rows(300)).toBe(2);
    expect(rows(300 - 1e-9)).toBe(2);
    expect(rows(299.9)).toBe(1);
  });
  it('a right angle drawn a hair too sharp is a right angle', () => {
    const verdict = (lean: number) =>
      anchorage(
        makeGroup({
          outline: [
            [0, 0],
            [300, 0],
            [300 + lean, 300],
            [0, 300],
          ],
          insert: { embedment: 60 },
          at: [[60, 60]],
        }),
        load([0, 0, -1]),
      ).verdict;
    expect(verdict(0.001)).toBe('pass');
  });
});
