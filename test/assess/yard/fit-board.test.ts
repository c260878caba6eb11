import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitBoard } from '../../../src/assess/yard/fit-board.ts';

const corners = [
  [1000, 400],
  [1600, 400],
  [1600, 600],
  [1000, 600],
] as const;

describe('how a template board lies by what was taped on it', () => {
  it('by three lengths is shifted and turned: the others lie with it', () => {
    const by = fc.double({ min: -0.02, max: 0.02, noNaN: true });
    const off = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(by, off, off, (turn, dx, dy) => {
        const at = ([x, y]: readonly [number, number]) => ({ x: x + dx - turn * y, y: y + dy + turn * x });
        const lies = fitBoard(
          corners.map((taped, i) => {
            const { x, y } = at(taped);
            // One end in full, across the line of the far end: what a board is asked for.
            return { taped, found: { x: i === 0 ? x : null, y: i === 0 || i === 2 ? y : null } };
          }),
        )!;
        for (const corner of corners) {
          expect(lies(corner).x).toBeCloseTo(at(corner).x, 6);
          expect(lies(corner).y).toBeCloseTo(at(corner).y, 6);
        }
      }),
    );
  });

  it('turned by 10 mm in 600 has its untaped far corner 10 mm off, and not half of it', () => {
    const lies = fitBoard([
      { taped: corners[0], found: { x: 1000, y: 400 } },
      { taped: corners[1], found: { x: null, y: 410 } },
    ])!;
    expect(lies(corners[2]).y).toBeCloseTo(610, 6);
    expect(lies(corners[3]).x).toBeCloseTo(1000 - (200 * 10) / 600, 6);
  });

  it('by one length along each axis is shifted only, and by one length along one axis only along that', () => {
    const lies = fitBoard([
      { taped: corners[0], found: { x: 1007, y: null } },
      { taped: corners[2], found: { x: null, y: 595 } },
    ])!;
    expect(lies(corners[1])).toEqual({ x: 1607, y: 395 });
    expect(fitBoard([{ taped: corners[0], found: { x: 1007, y: null } }])!(corners[2])).toEqual({ x: 1607, y: null });
    expect(fitBoard([{ taped: corners[0], found: { x: null, y: null } }])).toBeNull();
  });
});
