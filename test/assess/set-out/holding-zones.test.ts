// Inserts where the panel is thinner or thicker than elsewhere: a rebate in the mould face or the trowelled face, a rib. Worked by hand.

import { describe, expect, it } from 'vitest';
import { letterAssemblies } from '../../../src/assess/set-out/letter-assemblies.ts';
import { build, coversOf, type HoldingParts, problemsOf, stackOf } from './holding-sample.ts';

/** A zone around insert 1 of a panel of 180 mm, as thick as said and so far behind the outside face. */
function zone(thickness_mm: number, behindOutside_mm: number) {
  return {
    zones: [
      {
        name: 'zone',
        outline_mm: [
          [500, -10],
          [1300, -10],
          [1300, 900],
          [500, 900],
        ],
        layers: [{ kind: 'structural', thickness_mm }],
        behindOutside_mm,
      },
    ],
  };
}

/** In edge 0 where the outside face is rebated by 40, at a height from the outside face of the panel itself. */
function inRebate(y_mm: number, faceDown = 'outside', changes: HoldingParts = {}) {
  return build('edge', 'through the side form', {
    ...changes,
    panel: { ...zone(140, 40), faceDown },
    castIn: { y_mm, ...changes.castIn },
  });
}

describe('an edge insert where the outside face is rebated by 40 mm', () => {
  it('110 from the outside face lies in the middle of the 140: 70 − 23 at the foot, 70 − 12 at the body, either way up', () => {
    for (const faceDown of ['outside', 'inside']) {
      const assembly = inRebate(110, faceDown);
      expect(stackOf(assembly)).toEqual(['concrete 58', 'insert 24', 'concrete 58']);
      expect([coversOf(assembly)[1], coversOf(assembly)[3]]).toEqual([
        'foot the mould face: 47 of 40',
        'body the mould face: 58 of 40',
      ]);
      expect(problemsOf(assembly)).toEqual([]);
    }
  });

  it('70 from the outside face lies 30 from the rebate: 30 − 23 of 40 at the foot', () => {
    const down = inRebate(70);
    expect(stackOf(down)).toEqual(['concrete 18', 'insert 24', 'concrete 98']);
    expect(coversOf(down)[1]).toBe('foot the mould face: 7 of 40');
    expect(problemsOf(down)[0]).toMatch(/^warning cover: the foot has 7 mm of concrete toward the mould face/);
    expect(down.surface).toEqual({ mould: 40, trowelled: 0 });
    const up = inRebate(70, 'inside');
    expect(stackOf(up)).toEqual(['concrete 98', 'insert 24', 'concrete 18']);
    expect(coversOf(up)[1]).toBe('foot the trowelled face: 7 of 40');
    expect(up.surface).toEqual({ mould: 0, trowelled: 40 });
  });

  it('30 from the outside face lies in the air, above or below the concrete', () => {
    const bar = { crossBar: { direction_deg: 0, diameter_mm: 10, length_mm: 80 } };
    const down = inRebate(30, 'outside', { castIn: bar });
    expect(problemsOf(down)).toEqual([
      'error cover: the axis lies 30 mm above the bed, and the concrete of its edge is from 40 mm to 180 mm above the bed there: give the insert a place in the concrete',
    ]);
    expect(coversOf(down)).toEqual(['foot the side or opening behind it: 2897 of 20']);
    expect(problemsOf(inRebate(30, 'inside', { castIn: bar }))).toEqual([
      'error cover: the axis lies 150 mm above the bed, and the concrete of its edge is from 0 mm to 140 mm above the bed there: give the insert a place in the concrete',
    ]);
    // Body from 8 to 32 below the bed's 40, so from −22 to 2 in the concrete; at 20 from −32 to −8, and 8 of nothing.
    expect(stackOf(inRebate(20))).toEqual(['insert 24', 'recess 8', 'concrete 140']);
    expect(stackOf(inRebate(20, 'inside'))).toEqual(['concrete 140', 'recess 8', 'insert 24']);
  });
});

describe('the line that says how deep the top is set', () => {
  const top = (changes: HoldingParts, method = 'bridging bar') =>
    build('trowelled face', method, changes).checkLines.filter((line) => line.startsWith('Top lies'));

  it('names both lengths where the trowelled face is rebated by 60: 2, and 2 + 60 from the side form', () => {
    expect(top({ panel: zone(120, 0) })).toEqual([
      'Top lies 2 mm below the trowelled face there, never above it: 62 mm below the top of the side form.',
    ]);
  });

  it('on a rib 20 higher than the side form: 2 − 20', () => {
    expect(top({ panel: zone(200, 0) })).toEqual([
      'Top lies 2 mm below the trowelled face there, never above it: 18 mm above the top of the side form.',
    ]);
  });

  it('a rebate in the mould face does not lower it', () => {
    expect(top({ panel: zone(140, 40) })).toEqual(['Top lies 2 mm below the top of the side form, never above it.']);
  });

  it('is left out where the stack cannot be built: 90 + 103 in 180 stands 13 proud', () => {
    expect(top({ chairs: [90] }, 'chair')).toEqual([]);
    expect(top({ chairs: [75] }, 'chair')).toHaveLength(1);
  });
});

describe('the foot that comes through', () => {
  it('names the face that it comes out of', () => {
    const [mould] = problemsOf(build('mould face', 'nail-on plate', { panel: { thickness_mm: 100 } }));
    expect(mould).toContain('comes out of the trowelled face, 103 mm below the mould face');
    const [trowelled] = problemsOf(build('trowelled face', 'bridging bar', { panel: { thickness_mm: 100 } }));
    expect(trowelled).toContain('comes out of the mould face, 105 mm below the trowelled face');
  });
});

describe('the letters of edge inserts', () => {
  it('differ where the heights do, and only there', () => {
    const at = (y_mm: number, x_mm = 900) => build('edge', 'through the side form', { castIn: { x_mm, y_mm } });
    const { letters } = letterAssemblies([at(90), at(70), at(90, 1500), at(70.1), at(70, 2000)]);
    expect(letters).toEqual(['A', 'B', 'A', 'C', 'B']);
  });

  it('differ where the same concrete lies higher above the bed', () => {
    const middle = build('edge', 'through the side form', { panel: { thickness_mm: 140 }, castIn: { y_mm: 70 } });
    expect(letterAssemblies([middle, inRebate(110)]).letters).toEqual(['A', 'B']);
  });
});
