import { describe, expect, it } from 'vitest';
import { mustResolve } from './read.ts';
import { type Json, sampleCastIn, sampleConnection, sampleItem, sampleJob } from './sample-job.ts';

/** Two inserts 200 mm apart, the nearer 60 mm from the left edge, in a panel 180 mm thick. */
function reasonsFor(least: Json): readonly string[] {
  const job = sampleJob({
    items: [sampleItem(least)],
    castIns: [sampleCastIn('1', 60, 500), sampleCastIn('2', 260, 500)],
    connections: [sampleConnection({ origin_mm: [160, 500] })],
  });
  return mustResolve(job).notCovered;
}

describe('the least distances of a product document', () => {
  it.each([
    ['leastEdge_mm', 60, 'insert 1: 60 mm from an edge'],
    ['leastSpacing_mm', 200, 'inserts 1 and 2: 200 mm apart'],
    ['leastThickness_mm', 180, 'concrete 180 mm thick'],
  ] as const)('%s: kept at %d mm, broken a millimetre above', (key, has, words) => {
    expect(reasonsFor({ [key]: has })).toEqual([]);
    expect(reasonsFor({ [key]: has + 1 })).toEqual([`${words}, below ${has + 1} mm (the document of F16)`]);
  });

  it('are nothing where the document gives none', () => {
    expect(reasonsFor({})).toEqual([]);
  });
});
