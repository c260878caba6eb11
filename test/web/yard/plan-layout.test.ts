import { describe, expect, it } from 'vitest';
import { listFormMeasures } from '../../../src/assess/yard/form-measures.ts';
import { findTapeDirection, findTapped, layPlan } from '../../../src/web/yard/parts/plan-layout.ts';
import { findMeasureLine } from '../../../src/web/yard/state/form/measure-line.ts';
import { demoFile, pieceOf } from '../../assess/yard/yard-sample.ts';

const FILE = demoFile();
const MARKS = FILE.job.pours.flatMap(({ pieces }) => pieces.map(({ panel, serial }) => [panel, serial] as const));

describe('the form on the screen', () => {
  it.each(MARKS)(
    '%s no. %s: every insert lies in the room, has its number, and is found by a tap on either',
    (mark, serial) => {
      const { setOut } = pieceOf(FILE, mark, serial).plan;
      const layout = layPlan(setOut, { width: 836, height: 420 });
      for (const { item, at, chip } of layout.spots) {
        expect(at[0]).toBeGreaterThan(0);
        expect(at[0]).toBeLessThan(836);
        expect(at[1]).toBeGreaterThan(0);
        expect(at[1]).toBeLessThan(420);
        expect(findTapped(layout, at)?.number).toBe(item.number);
        expect(chip, `no. ${item.number} has no room for its number`).not.toBeNull();
        expect(findTapped(layout, [chip!.x + chip!.width / 2, chip!.y + chip!.height / 2])?.number).toBe(item.number);
      }
    },
  );

  it('gives nothing for a tap far from any insert', () => {
    const { setOut } = pieceOf(FILE, 'P13', '1').plan;
    expect(findTapped(layPlan(setOut, { width: 836, height: 420 }), [-500, -500])).toBeNull();
  });

  it.each(MARKS)(
    '%s no. %s: what is taped farther from the datum lies farther that way on the screen',
    (mark, serial) => {
      const { setOut } = pieceOf(FILE, mark, serial).plan;
      const layout = layPlan(setOut, { width: 836, height: 420 });
      for (const { item, at } of layout.spots)
        for (const [k, axis] of (['x', 'y'] as const).entries()) {
          const way = findTapeDirection(setOut, item, axis);
          if (way === null) continue;
          // Back along the tape by its length one stands at the side that it is hooked on: as far along as the datum, or as the corner named.
          const [x, y] = [
            at[0] - way[0] * item.taped[k]! * layout.scale,
            at[1] - way[1] * item.taped[k]! * layout.scale,
          ];
          const named = item.printed.kind === 'edge' && item.printed.from.startsWith('corner');
          if (named) continue;
          const isAcross = Math.abs(way[0]) > 0.5;
          expect(isAcross ? x : y).toBeCloseTo(isAcross ? layout.datum[0] : layout.datum[1], 6);
        }
    },
  );

  it('shows where each length of the form is taped, as long as it is', () => {
    const { setOut } = pieceOf(FILE, 'P13', '1').plan;
    for (const measure of listFormMeasures(setOut.form)) {
      const line = findMeasureLine(setOut, measure);
      expect(line).not.toBeNull();
      const [from, to] = line!;
      const long = Math.hypot(from[0] - to[0], from[1] - to[1]);
      if (measure.kind === 'depth') expect(long).toBe(0);
      else expect(Math.abs(long - measure.nominal)).toBeLessThan(1);
    }
  });
});
