import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findScatter } from '../../../src/assess/as-cast/scatter-of-inserts.ts';
import { countColumns, drawHistogram } from '../../../src/drawing/as-cast/histogram-picture.ts';
import { drawScatter } from '../../../src/drawing/as-cast/scatter-picture.ts';
import { boxOfMarks } from '../../../src/drawing/boxes.ts';
import { reportOff } from '../../assess/as-cast/casts.ts';

const write = (mm: number) => String(mm);

describe('the scatter of a piece', () => {
  const offs = { 1: { dx: 4 }, 2: { dx: -4 }, 3: { dx: 4 }, 4: { dx: -4 }, 5: { dy: 2 }, 6: { dy: -2 } };

  it('has the ellipse of its covariance, scaled to hold 95 of 100', () => {
    const { inserts } = reportOff('P01', offs);
    const six = inserts.filter(({ item }) => item.number <= 6);
    const { mean, ellipse } = findScatter(six);
    expect(mean[0]).toBeCloseTo(0, 9);
    expect(mean[1]).toBeCloseTo(0, 9);
    // By hand: variances 4·16/5 = 12.8 and 2·4/5 = 1.6 mm², chi-square of two degrees of freedom at 95 % 5.991.
    expect(ellipse!.half[0]).toBeCloseTo(Math.sqrt(12.8 * 5.9915), 3);
    expect(ellipse!.half[1]).toBeCloseTo(Math.sqrt(1.6 * 5.9915), 3);
    expect(Math.abs(Math.sin(ellipse!.turn))).toBeCloseTo(0, 9);
  });

  it('says of five inserts that they are too few', () => {
    const { inserts } = reportOff('P01', offs);
    expect(findScatter(inserts.slice(0, 5)).ellipse).toBeNull();
    expect(findScatter(inserts.slice(0, 6)).ellipse).not.toBeNull();
  });

  it('is drawn inside its room, whatever it is', () => {
    const far = fc.double({ min: -80, max: 80, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(far, far), { minLength: 1, maxLength: 12 }), (values) => {
        const points = values.map((by, k) => ({ number: k + 1, by, isOff: false }));
        const room = { width: 110, height: 110, text: 3 };
        const box = boxOfMarks(drawScatter({ points, tolerances: [5], ellipse: null }, room, write).marks)!;
        expect(box.x).toBeGreaterThanOrEqual(-3);
        expect(box.x + box.width).toBeLessThanOrEqual(room.width + 3);
      }),
      { numRuns: 30, seed: 1 },
    );
  });
});

describe('the histogram', () => {
  it('counts every value once, about the designed place, a border to the far column', () => {
    expect([...countColumns([0, 0.4, -0.4, 0.5, -0.5, 1.2, 3], 1)].sort((a, b) => a[0] - b[0])).toEqual([
      [-1, 1],
      [0, 3],
      [1, 2],
      [3, 1],
    ]);
  });

  it('has columns beyond the narrowest tolerance black', () => {
    const room = { width: 110, height: 52, text: 3 };
    const { marks } = drawHistogram({ values: [0, 1, 9], tolerances: [5], words: 'along x' }, room, write);
    const fills = marks.flatMap((mark) => (mark.kind === 'area' ? [mark.fill] : []));
    expect(fills).toEqual(['grey', 'grey', 'black']);
  });
});
