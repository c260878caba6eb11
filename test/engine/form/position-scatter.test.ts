import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addScatter,
  type GroupToScatter,
  scatterOfGroup,
  scatterOfPlace,
} from '../../../src/engine/form/position-scatter.ts';

const group: GroupToScatter = {
  tapeClass: 'II',
  centre: [2400, 600],
  offsets: [
    [-150, -100],
    [150, -100],
    [150, 100],
    [-150, 100],
  ],
  hasTemplate: false,
  diagonal: null,
};

// Variances of a length taped with class II, each by hand: 2400 mm (0.9² + 0.5² + 1²)/3 = 0.686667; up to 1000 mm (0.5² + 0.5² + 1²)/3 = 0.5.
const AT_2400 = 2.06 / 3;
const SHORT = 0.5;

describe('the scatter of a taped place', () => {
  it('is that of its two dimensions', () => {
    const { x, y } = scatterOfPlace('II', [2400, 600]);
    expect(x).toBeCloseTo(Math.sqrt(AT_2400), 12);
    expect(y).toBeCloseTo(Math.sqrt(SHORT), 12);
  });

  it('adds the variance of what holds the insert', () => {
    const { x, y } = addScatter(scatterOfPlace('II', [2400, 600]), { x: 1.2, y: 1.2 });
    expect(x).toBeCloseTo(Math.sqrt(AT_2400 + 1.44), 12);
    expect(y).toBeCloseTo(Math.sqrt(SHORT + 1.44), 12);
  });

  it('is larger with a coarser tape', () => {
    expect(scatterOfPlace('I', [2400, 600]).x).toBeLessThan(scatterOfPlace('II', [2400, 600]).x);
    expect(scatterOfPlace('II', [2400, 600]).x).toBeLessThan(scatterOfPlace('III', [2400, 600]).x);
  });
});

describe('the scatter of a group', () => {
  it('adds that of the centre and that of the offset', () => {
    const { centre, offsets, members, diagonal } = scatterOfGroup(group);
    expect(centre.x).toBeCloseTo(Math.sqrt(AT_2400), 12);
    expect(offsets).toHaveLength(4);
    expect(diagonal).toBeNull();
    for (const { x, y } of members) {
      expect(x).toBeCloseTo(Math.sqrt(AT_2400 + SHORT), 9);
      expect(y).toBeCloseTo(Math.sqrt(SHORT + SHORT), 9);
    }
  });

  // Common practice: a template board holds a group to ± 1 to 2 mm; ± 1.5 mm uniform has the variance 0.75.
  it('takes a template board for the offsets', () => {
    const { offsets, members } = scatterOfGroup({ ...group, hasTemplate: true });
    expect(offsets[0]!.x).toBeCloseTo(Math.sqrt(0.75), 12);
    expect(members[0]!.x).toBeCloseTo(Math.sqrt(AT_2400 + 0.75), 9);
  });

  // By hand: two members ±100 along x. Their difference has the variance 2 · 0.5 = 1 from the offsets and 0.5 from the diagonal, together
  // 1/(1 + 2) = 1/3; their mean has 0.686667 + 0.25. Each member: mean + a quarter of the difference's variance = 0.936667 + 1/12. Along y
  // nothing joins them: 0.5 from the centre and (0.3² + 0.5² + 1²)/3 from an offset of no length.
  it('counts what a check diagonal is worth', () => {
    const pair = { ...group, offsets: [[-100, 0] as const, [100, 0] as const], diagonal: [0, 1] as const };
    const { members, diagonal } = scatterOfGroup(pair);
    expect(diagonal).toBeCloseTo(Math.sqrt(SHORT), 12);
    for (const { x, y } of members) {
      expect(x).toBeCloseTo(Math.sqrt(AT_2400 + 0.25 + 1 / 12), 9);
      expect(y).toBeCloseTo(Math.sqrt(SHORT + 1.34 / 3), 9);
    }
  });

  it('refuses a diagonal to nowhere', () => {
    expect(() => scatterOfGroup({ ...group, diagonal: [0, 4] })).toThrow(/from member 0 to 4, expected two of the 4/);
    expect(() => scatterOfGroup({ ...group, diagonal: [2, 2] })).toThrow(/expected two of the 4 members/);
  });

  it('never grows by a check, and helps the members that it joins only', () => {
    const place = fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 }));
    fc.assert(
      fc.property(fc.uniqueArray(place, { minLength: 3, maxLength: 6, selector: String }), (offsets) => {
        const without = scatterOfGroup({ ...group, offsets }).members;
        const checked = scatterOfGroup({ ...group, offsets, diagonal: [0, 1] }).members;
        checked.forEach(({ x, y }, i) => {
          if (i > 1) expect(x).toBeCloseTo(without[i]!.x, 9);
          expect(x).toBeLessThanOrEqual(without[i]!.x + 1e-9);
          expect(y).toBeLessThanOrEqual(without[i]!.y + 1e-9);
        });
        expect(checked[0]!.x + checked[0]!.y).toBeLessThan(without[0]!.x + without[0]!.y);
      }),
    );
  });
});
