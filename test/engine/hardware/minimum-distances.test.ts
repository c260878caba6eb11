import { describe, expect, it } from 'vitest';
import {
  findTooClose,
  type MinimumDistances,
  type PlacedInsert,
} from '../../../src/engine/hardware/minimum-distances.ts';
import { findLeastDistances } from '../../../src/engine/standards/aci-318-19/least-distances.ts';

const product: MinimumDistances = { edge: 60, spacing: 100, thickness: 120, source: 'product document' };

/** Three inserts in a row, 100 and 90 mm apart. */
const row: readonly PlacedInsert[] = [
  { id: 'A', at: [0, 0], edgeDistance: 60 },
  { id: 'B', at: [60, 80], edgeDistance: 59 },
  { id: 'C', at: [60, 170], edgeDistance: null },
];

describe('least distances of ACI 318-19, Table 17.9.2(a)', () => {
  // Recalled: 4 d_a, torqued 6 d_a; edge torqued 6 d_a, otherwise cover only, here to the surface of the shaft: 30 + 24/2.
  it('are multiples of the diameter', () => {
    expect(findLeastDistances(24, true)).toMatchObject({ edge: 144, spacing: 144, thickness: null });
    expect(findLeastDistances(24, false)).toMatchObject({ edge: null, spacing: 96, thickness: null });
  });
  it('name the table and that it is recalled', () => {
    expect(findLeastDistances(16, true).source).toBe('ACI 318-19, Table 17.9.2(a), torqued (recalled)');
    expect(findLeastDistances(16, false).source).toContain('not torqued');
  });
});

describe('what stands too close', () => {
  // By hand: A to B is hypot(60, 80) = 100, equal to the least; B to C 90; A to C hypot(60, 170) = 180.3. B's edge 59 of 60.
  it('is listed with its numbers, and a distance equal to the least is enough', () => {
    expect(findTooClose(row, 120, [product])).toEqual([
      { kind: 'edge', inserts: ['B'], has: 59, needs: 60, source: 'product document' },
      { kind: 'spacing', inserts: ['B', 'C'], has: 90, needs: 100, source: 'product document' },
    ]);
  });
  it('takes thickness for all inserts at once', () => {
    expect(findTooClose(row, 119, [product]).at(-1)).toEqual({
      kind: 'thickness',
      inserts: ['A', 'B', 'C'],
      has: 119,
      needs: 120,
      source: 'product document',
    });
    expect(findTooClose(row, null, [product]).map(({ kind }) => kind)).not.toContain('thickness');
  });
  it('asks nothing where a rule gives nothing, and keeps several rules apart', () => {
    const silent: MinimumDistances = { edge: null, spacing: null, thickness: null, source: 'none' };
    expect(findTooClose(row, 10, [silent])).toEqual([]);
    const both = findTooClose(row, 120, [product, findLeastDistances(24, true)]);
    // ACI 144: edges A and B, pairs A–B (100) and B–C (90).
    expect(both.filter(({ source }) => source.startsWith('ACI')).map(({ inserts }) => inserts.join('–'))).toEqual([
      'A',
      'B',
      'A–B',
      'B–C',
    ]);
    expect(both).toHaveLength(6);
  });
  it('does not trip over rounding', () => {
    const off: readonly PlacedInsert[] = [{ id: 'A', at: [0, 0], edgeDistance: 0.1 + 0.2 + 59.7 - 1e-9 }];
    expect(findTooClose(off, 120, [product])).toEqual([]);
  });
});
