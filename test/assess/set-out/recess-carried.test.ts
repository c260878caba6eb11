// What a plate, magnet or former leaves is carried on. By hand for M16 under a plate of 15 mm: lever arm a_3 + e_1 = 0.5 · 16 + 15/2 + recess
// (EN 1992-4, 6.2.2.3, recalled; the recess by common practice); shortest bolt 3.3 (thickest washer, ISO 7089) + 15 + recess + 16.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseConnectionBolt } from '../../../src/assess/bolt-of-connection.ts';
import { mustResolve } from '../../job/read.ts';
import { type Json, sampleCastIn, sampleConnection, sampleJob } from '../../job/sample-job.ts';
import { build } from './holding-sample.ts';

function resolve(recess_mm: number, connection: Json = {}) {
  const castIns = [sampleCastIn('1', 900, 500, { recess_mm }), sampleCastIn('2', 1100, 500, { recess_mm })];
  return mustResolve(sampleJob({ castIns, connections: [sampleConnection(connection)] }));
}

/** Length under the head that the engagement asks for, before a stock length is taken: washer, plate, recess and engagement. */
function reachOf(recess: number, connection: Json = {}): number {
  const { length, engagement } = chooseConnectionBolt(resolve(recess, connection), null)!.answer.choice!;
  return length - engagement.least + 16;
}

describe('a recess of 10 mm', () => {
  it('lengthens the bolt by 10 mm: 34.3 to 44.3, filled or not', () => {
    expect(reachOf(0)).toBeCloseTo(34.3, 9);
    expect(reachOf(10)).toBeCloseTo(44.3, 9);
    expect(reachOf(10, { isFilled: true })).toBeCloseTo(44.3, 9);
  });
  it('is in the lever arm: on packers of 5 mm from 20.5 to 30.5; without packers 25.5 where there was none', () => {
    expect(resolve(0, { packers_mm: 5 }).group.leverArm!.length).toBeCloseTo(20.5, 9);
    expect(resolve(10, { packers_mm: 5 }).group.leverArm!.length).toBeCloseTo(30.5, 9);
    expect(resolve(0).group.leverArm).toBeNull();
    expect(resolve(10).group.leverArm!.length).toBeCloseTo(25.5, 9);
  });
  it('is not in the lever arm where it is filled', () => {
    expect(resolve(10, { isFilled: true }).group.leverArm).toBeNull();
  });
  it('leaves 10 mm less of concrete, in the resistance as in the cover of the assembly', () => {
    expect(resolve(10).group.member.thickness).toBe(170);
    const cover = (recess_mm: number) =>
      build('mould face', 'nail-on plate', { castIn: { recess_mm }, way: { recess_mm } }).covers[0]!.cover;
    expect([cover(0), cover(10)]).toEqual([77, 67]);
  });
  it('any recess: the bolt reaches as much farther', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), (recess) => {
        expect(reachOf(recess)).toBeCloseTo(34.3 + recess, 9);
      }),
      { numRuns: 20 },
    );
  });
});
