// Least distances: the demo's own numbers for a product document; 4 d_a and 6 d_a of ACI 318-19, Table 17.9.2(a) are recalled.

import { describe, expect, it } from 'vitest';
import { mustResolve } from './read.ts';
import { type Json, sampleCastIn, sampleConnection, sampleItem, sampleJob } from './sample-job.ts';

const bare = sampleConnection({
  fixture: null,
  inserts: ['1', '2'].map((insert) => ({ insert, hole: null })),
  actions: { kind: 'none' },
});
const at = (x1: number, x2: number, y: number) => [sampleCastIn('1', x1, y), sampleCastIn('2', x2, y)];
const reasonsOf = (item: Json, castIns: Json[], rules: Json = {}) =>
  mustResolve(sampleJob({ items: [sampleItem(item)], castIns, connections: [bare], rules })).notCovered;

describe('least distances of a product document', () => {
  it('asks for nothing where the document gives none', () => {
    expect(reasonsOf({}, at(30, 60, 500))).toEqual([]);
  });
  it('names insert, distance and what is allowed; the limit itself is enough', () => {
    expect(reasonsOf({ leastEdge_mm: 75 }, at(74, 1100, 500))).toEqual([
      'insert 1: 74 mm from an edge, below 75 mm (the document of F16)',
    ]);
    expect(reasonsOf({ leastEdge_mm: 75 }, at(75, 1100, 500))).toEqual([]);
  });
  it('tells the worst and how many more', () => {
    expect(reasonsOf({ leastEdge_mm: 75 }, at(70, 3940, 500))).toEqual([
      'insert 2: 60 mm from an edge, below 75 mm (the document of F16); 1 more so',
    ]);
  });
  it('looks at every pair and at the thickness', () => {
    expect(reasonsOf({ leastSpacing_mm: 150, leastThickness_mm: 200 }, at(900, 1040, 500))).toEqual([
      'inserts 1 and 2: 140 mm apart, below 150 mm (the document of F16)',
      'concrete 180 mm thick, below 200 mm (the document of F16)',
    ]);
    expect(reasonsOf({ leastSpacing_mm: 140, leastThickness_mm: 180 }, at(900, 1040, 500))).toEqual([]);
  });
});

describe('least distances of ACI 318, body 24 mm', () => {
  const rules = { standard: 'ACI 318M-19' };
  const qualification = { document: 'Invented', standard: 'ACI 318-19' };
  it('6 d_a = 144 mm to edges and each other with a tightening torque', () => {
    expect(reasonsOf({ qualification }, at(143, 286, 500), rules)).toEqual([
      'insert 1: 143 mm from an edge, below 144 mm (ACI 318-19, Table 17.9.2(a), torqued (recalled))',
      'inserts 1 and 2: 143 mm apart, below 144 mm (ACI 318-19, Table 17.9.2(a), torqued (recalled))',
    ]);
    expect(reasonsOf({ qualification }, at(144, 288, 500), rules)).toEqual([]);
  });
  it('4 d_a = 96 mm apart without one', () => {
    const item = { qualification, maxTorque_Nm: null };
    expect(reasonsOf(item, at(100, 195, 500), rules)).toEqual([
      'inserts 1 and 2: 95 mm apart, below 96 mm (ACI 318-19, Table 17.9.2(a), not torqued (recalled))',
    ]);
    expect(reasonsOf(item, at(100, 196, 500), rules)).toEqual([]);
  });
  it('EN 1992-4 leaves them to the product document', () => {
    expect(reasonsOf({}, at(100, 195, 500))).toEqual([]);
  });
});
