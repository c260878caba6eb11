import { describe, expect, it } from 'vitest';
import { listPlanRows } from '../../src/drawing/sheets/plan-dimensions.ts';
import { ELL, sampleGroup } from './detail-sample.ts';

/** What the rows of both axes show for insert 1 in a side of the L, laid as drawn with the datum at corner 1. */
function figuresIn(edge: number): readonly (readonly string[])[] {
  const panel = { outline_mm: ELL, drawnFace: 'inside' };
  const { setOut } = sampleGroup([[700, 60]], { face: 'edge', edge }, { panel });
  return ([0, 1] as const).map((axis) =>
    listPlanRows(setOut, axis).flatMap(({ words, dimensions }) =>
      words === 'form' ? [] : dimensions.map(({ text }) => text),
    ),
  );
}

describe('the rows of running dimensions', () => {
  it('show an edge insert where its tape starts at the end or the rail of the datum corner', () => {
    // Worked by hand: side 1 runs along x from corner 1; side 2 up from (5200, 0); side 5 back from (2100, 3600); side 6 down from (0, 3600).
    expect(figuresIn(0)).toEqual([['700 (1)'], []]);
    expect(figuresIn(1)).toEqual([[], ['700 (1)']]);
    expect(figuresIn(4)).toEqual([['1400 (1)'], []]);
    expect(figuresIn(5)).toEqual([[], ['2900 (1)']]);
  });

  it('leave to the list what is taped along a step of the outline, which starts at a corner of it', () => {
    expect(figuresIn(2)).toEqual([[], []]);
    expect(figuresIn(3)).toEqual([[], []]);
  });
});
