import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOfMarks } from '../../../src/drawing/boxes.ts';
import { drawDistance } from '../../../src/drawing/learn/distance-picture.ts';

const write = (mm: number) => String(mm);
const ROOM = { width: 110, height: 60, text: 3 };

describe('deviations over the distance from the datum', () => {
  it('are drawn to one scale each way, those that are off black, with the band about the line', () => {
    const content = {
      points: [
        { at: [0, 0] as const, isOff: false },
        { at: [4000, 6] as const, isOff: true },
      ],
      tolerances: [5],
      lineAt: (from: number) => ({ y: from / 1000, interval: [from / 1000 - 1, from / 1000 + 1] as const }),
      words: 'off',
    };
    const { marks } = drawDistance(content, ROOM, write);
    const dots = marks.flatMap((mark) => (mark.kind === 'circle' ? [mark] : []));
    expect(dots.map(({ fill }) => fill)).toEqual(['white', 'black']);
    const [zero, far] = dots.map(({ at }) => at);
    const limits = marks.flatMap((mark) => (mark.kind === 'line' && mark.pen === 'dashed' ? [mark.from[1]] : []));
    expect((far![1] - zero![1]) / 6).toBeCloseTo((limits[0]! - limits[1]!) / 10, 9);
    const line = marks.flatMap((mark) => (mark.kind === 'line' && mark.pen === 'thick' ? [mark] : []));
    expect(line.at(-1)!.to[1] - line[0]!.from[1]).toBeCloseTo((4 / 6) * (far![1] - zero![1]), 9);
    const band = marks.flatMap((mark) => (mark.kind === 'area' ? mark.rings : []));
    expect(band[0]!.map(([x]) => x)).toContain(far![0]);
    const bare = drawDistance({ ...content, lineAt: null }, ROOM, write);
    expect(bare.marks.some((mark) => mark.kind === 'area')).toBe(false);
  });

  it('stay inside of their room, whatever they are', () => {
    const far = fc.double({ min: 0, max: 20_000, noNaN: true });
    const off = fc.double({ min: -80, max: 80, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(far, off), { minLength: 1, maxLength: 12 }), (values) => {
        const points = values.map((at) => ({ at, isOff: false }));
        const box = boxOfMarks(
          drawDistance({ points, tolerances: [5], lineAt: null, words: 'off' }, ROOM, write).marks,
        )!;
        expect(box.x).toBeGreaterThanOrEqual(-3);
        expect(box.y).toBeGreaterThanOrEqual(-1);
        expect(box.x + box.width).toBeLessThanOrEqual(ROOM.width + 5);
        expect(box.y + box.height).toBeLessThanOrEqual(ROOM.height + 1);
      }),
      { seed: 1, numRuns: 60 },
    );
  });
});
