import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findGroups, printedPair } from '../../../src/assess/set-out/groups.ts';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { mustRead } from '../../job/read.ts';
import { sampleJob } from '../../job/sample-job.ts';

const [example] = setOutPanel(indexJob(mustRead(sampleJob())), 'P1', null).items;

function itemAt(number: number, at: Point): SetOutItem {
  return {
    ...example!,
    number,
    at,
    printed: { kind: 'plan', x: Math.round(at[0]), y: Math.round(at[1]) },
    connection: 'C1',
  };
}

describe('groups', () => {
  it('counts members from the middle: 700.4 and 900.6 lie 100 beside 801', () => {
    const [group] = findGroups([itemAt(1, [700.4, 500]), itemAt(2, [900.6, 500])]);
    expect(group).toMatchObject({ centre: [801, 500], diagonal: { from: 1, to: 2, length: 200 } });
    expect(group!.members.map(({ dx }) => dx)).toEqual([-101, 100]);
  });

  it('checks by the longest distance, of what is exact', () => {
    const [group] = findGroups([itemAt(1, [0, 0]), itemAt(2, [30, 0]), itemAt(3, [30, 40]), itemAt(4, [0, 40])]);
    expect(group!.diagonal).toEqual({ from: 1, to: 3, length: 50 });
  });

  it('has no diagonal for a single insert, and no group without a connection', () => {
    expect(findGroups([itemAt(1, [10, 10])])[0]!.diagonal).toBeNull();
    expect(findGroups([{ ...itemAt(1, [10, 10]), connection: null }])).toEqual([]);
  });

  it('adds up: printed middle and printed offset are the printed place, within half a millimetre of the exact one (property)', () => {
    const coordinate = fc.double({ min: 0, max: 9000, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 1, maxLength: 8 }), (places) => {
        const items = places.map((at, i) => itemAt(i + 1, at));
        const [group] = findGroups(items);
        for (const [i, member] of group!.members.entries()) {
          const sum = [group!.centre[0] + member.dx, group!.centre[1] + member.dy];
          expect(sum).toEqual(printedPair(items[i]!));
          expect(Math.abs(sum[0]! - places[i]![0])).toBeLessThanOrEqual(0.5);
          expect(Math.abs(sum[1]! - places[i]![1])).toBeLessThanOrEqual(0.5);
        }
      }),
    );
  });
});
