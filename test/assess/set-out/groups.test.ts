import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findGroups } from '../../../src/assess/set-out/groups.ts';
import type { SetOutItem } from '../../../src/assess/set-out/set-out.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { wholeMillimetres } from '../../../src/engine/form/whole-millimetres.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { mustRead } from '../../job/read.ts';
import { sampleJob } from '../../job/sample-job.ts';
import { ask } from './holding-sample.ts';

const [example] = setOutPanel(indexJob(mustRead(sampleJob())), 'P1', null).items;

function itemAt(number: number, at: Point): SetOutItem {
  return {
    ...example!,
    number,
    at,
    taped: at,
    printed: { kind: 'plan', x: wholeMillimetres(at[0]), y: wholeMillimetres(at[1]) },
    connection: 'C1',
  };
}

describe('groups', () => {
  it('counts members from the middle: 700.4 and 900.6 lie 100 beside 801', () => {
    const [group] = findGroups([itemAt(1, [700.4, 500]), itemAt(2, [900.6, 500])]);
    expect(group).toMatchObject({ centre: [801, 500], diagonal: { from: 1, to: 2, length: 200 } });
    expect(group!.members.map(({ dx }) => dx)).toEqual([-101, 100]);
  });

  it('counts from the middle of what is exact: 1000.6 and 1149.6 lie beside 1075.1, printed 1075', () => {
    // The middle of the printed 1001 and 1150 would be 1075.5, printed 1076.
    const [group] = findGroups([itemAt(1, [1000.6, 500]), itemAt(2, [1149.6, 500])]);
    expect(group!.centre).toEqual([1075, 500]);
    expect(group!.members.map(({ dx }) => dx)).toEqual([-74, 75]);
  });

  it('is set by one board where every insert is on that board, and there are two or more', () => {
    const onBoard = ask('mould face', 'template board').way;
    const on = (...ways: readonly SetOutItem['way'][]) =>
      findGroups(ways.map((way, i) => ({ ...itemAt(i + 1, [1000 + 200 * i, 500]), way })))[0]!.hasTemplate;
    expect(on(onBoard, onBoard)).toBe(true);
    expect(on(onBoard)).toBe(false);
    expect(on(onBoard, { ...onBoard, id: 'OTHER BOARD' })).toBe(false);
    expect(on(onBoard, ask('mould face', 'magnet', { way: { id: 'MAGNET' } }).way)).toBe(false);
    expect(on(onBoard, null)).toBe(false);
    expect(on(null, null)).toBe(false);
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
          const { printed } = items[i]!;
          expect(printed).toEqual({ kind: 'plan', x: sum[0], y: sum[1] });
          expect(Math.abs(sum[0]! - places[i]![0])).toBeLessThanOrEqual(0.5 + 1e-8);
          expect(Math.abs(sum[1]! - places[i]![1])).toBeLessThanOrEqual(0.5 + 1e-8);
        }
      }),
    );
  });
});
