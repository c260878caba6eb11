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
