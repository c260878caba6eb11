import { describe, expect, it } from 'vitest';
import { prepareRegion } from '../../../src/engine/geometry/region.ts';
import { hasHiddenPart } from '../../../src/engine/geometry/visible-polygon.ts';
import { box } from './faces.ts';

describe('hasHiddenPart', () => {
  // By looking: an insert at (500, 500) over the opening x 400 … 600, y 200 … 400, whose top (100 mm away) faces it. Dark is
  // what lies behind the opening, from its bottom (300 mm away) on, between the rays through its top corners: beside it too,
  // since they open at 45 degrees and its sides, x = 400 and 600, run straight down from 100 mm away.
  const panel = prepareRegion(box(0, 0, 1000, 1000), [box(400, 200, 600, 400)]);
  const about = (half: number) => ({ minU: -half, maxU: half, minV: -half, maxV: half });

  it('is so where concrete behind an opening lies in the box, or beside one and out of sight', () => {
    expect(hasHiddenPart(panel, 500, 500, 1, 0, about(301))).toBe(true);
    expect(hasHiddenPart(panel, 500, 500, 1, 0, about(101))).toBe(true);
  });
  it('is not so for a side that is only looked at: an edge of the panel, or an opening reached but not passed', () => {
    expect(hasHiddenPart(panel, 100, 900, 1, 0, about(300))).toBe(false);
    expect(hasHiddenPart(panel, 500, 500, 1, 0, { minU: -99, maxU: 99, minV: -150, maxV: 150 })).toBe(false);
  });
  it('follows the turn of the box', () => {
    // A square of half side 80 turned by 45 degrees reaches 113 mm straight down: past a slot of y 390 … 400, 110 mm away, but
    // in the other opening only to its top; the backs of that one start 100 mm down and 100 beside, 141 mm along a side.
    const slot = prepareRegion(box(0, 0, 1000, 1000), [box(450, 390, 550, 400)]);
    expect(hasHiddenPart(slot, 500, 500, 1, 0, about(80))).toBe(false);
    expect(hasHiddenPart(slot, 500, 500, Math.SQRT1_2, Math.SQRT1_2, about(80))).toBe(true);
    expect(hasHiddenPart(panel, 500, 500, Math.SQRT1_2, Math.SQRT1_2, about(80))).toBe(false);
    expect(hasHiddenPart(panel, 500, 500, 1, 0, about(140))).toBe(true);
    expect(hasHiddenPart(panel, 500, 500, Math.SQRT1_2, Math.SQRT1_2, about(140))).toBe(false);
  });
});
