// Stacks worked by hand (common practice: the section added up): panel 180 mm, insert 103 mm long with its bearing side at 96, foot 46, body 24.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { build, type HoldingParts, problemsOf, SANDWICH, stackOf } from './holding-sample.ts';

const sum = (heights: readonly { readonly height: number }[]) =>
  heights.reduce((total, { height }) => total + height, 0);

describe('the stack at the mould face', () => {
  it('a recess of 10 mm, the insert, 180 − 10 − 103 = 67 mm of concrete', () => {
    const assembly = build('mould face', 'nail-on plate', { castIn: { recess_mm: 10 }, way: { recess_mm: 10 } });
    expect(stackOf(assembly)).toEqual(['recess 10', 'insert 103', 'concrete 67']);
    expect(assembly.recess).toBe(10);
    expect(assembly.thickness).toBe(180);
    expect(assembly.chair).toBeNull();
    expect(problemsOf(assembly)).toEqual([]);
  });
  it('goes on through the layers: 150 − 103 = 47 mm of concrete, 80 of insulation, 70 of skin', () => {
    const panel = { ...SANDWICH, faceDown: 'inside' };
    const assembly = build('mould face', 'magnet', { panel, castIn: { face: 'inside' }, bed: { form: 'steel' } });
    expect(stackOf(assembly)).toEqual(['insert 103', 'concrete 47', 'concrete 80', 'concrete 70']);
    expect(assembly.stack.map(({ words }) => words)).toEqual(['Ferrule M16', 'concrete', 'insulation', 'outer skin']);
    expect(assembly.layers.map(({ kind, from, to }) => [kind, from, to])).toEqual([
      ['structural', 0, 150],
      ['insulation', 150, 230],
      ['outer skin', 230, 300],
    ]);
  });
});

describe('the stack under the trowelled face', () => {
  it('hung from a bar: aimed 2 mm below, 180 − 2 − 103 = 75 mm of concrete below the foot', () => {
    const assembly = build('trowelled face', 'bridging bar');
    expect(stackOf(assembly)).toEqual(['concrete 75', 'insert 103', 'recess 2']);
    expect(assembly.stage).toBe(2);
    expect(assembly.checkLines).toContain('Top lies 2 mm below the top of the side form, never above it.');
    expect(problemsOf(assembly)).toEqual([]);
  });
  it('a recess deeper than the aim is kept: 180 − 12 − 103 = 65', () => {
    const assembly = build('trowelled face', 'tied to the cage', { castIn: { recess_mm: 12 }, way: { recess_mm: 12 } });
    expect(stackOf(assembly)).toEqual(['concrete 65', 'insert 103', 'recess 12']);
    expect(problemsOf(assembly)).toEqual([]);
  });
  it('a cap 8 mm thick is not proud either: 8 mm below, and the recess of 0 that strength counts with is too little', () => {
    const way = { parts: [{ part: 'CAP8', count: 1 }] };
    const assembly = build('trowelled face', 'tied to the cage', { way });
    expect(stackOf(assembly)).toEqual(['concrete 69', 'insert 103', 'recess 8']);
    expect(problemsOf(assembly)).toEqual([
      'warning stack: the top comes to lie 8 mm below the face, bolt and lever arm are computed with a recess of 0 mm: give the way of holding and the insert a recess of 8 mm',
    ]);
    // Within the tolerance of level, 3 mm, nothing is said: 8 − 5.
    expect(
      problemsOf(
        build('trowelled face', 'tied to the cage', { way: { ...way, recess_mm: 5 }, castIn: { recess_mm: 5 } }),
      ),
    ).toEqual([]);
  });
  it('wants a cap where no bolt closes the thread', () => {
    const bare = { way: { parts: [] } };
    const warning =
      'warning not decided: Way names no cap, and an open thread at the trowelled face fills with mortar: add a cap to its parts';
    expect(problemsOf(build('trowelled face', 'tied to the cage', bare))).toEqual([warning]);
    expect(problemsOf(build('trowelled face', 'chair', bare))).toEqual([warning]);
    expect(problemsOf(build('trowelled face', 'bridging bar', bare))).toEqual([]);
    expect(
      problemsOf(build('trowelled face', 'tied to the cage', { way: { parts: [{ part: 'PLUG', count: 1 }] } })),
    ).toEqual([]);
  });
});

describe('the stack on a chair', () => {
  it('75 mm, pressed in 1: −1 + 75 + 103 + 3 = 180, so 3 mm below, or 2 where it does not sink', () => {
    const assembly = build('trowelled face', 'chair', { way: { chairSink_mm: 1 } });
    expect(stackOf(assembly)).toEqual(['sink -1', 'chair 75', 'insert 103', 'recess 3']);
    expect(assembly.chair).toMatchObject({ part: { id: 'CH75' }, topBelowFace: 3, range: [2, 3] });
    // 180 − 103 − 2, and half of the sink: 75.5.
    expect(assembly.chair!.needed).toBeCloseTo(75.5, 9);
    expect(assembly.parts.map(({ part, count, per }) => [part.id, count, per])).toEqual([
      ['CAP', 1, 'insert'],
      ['CH75', 1, 'insert'],
    ]);
    expect(assembly.checkLines).toContain(
      'Top lies 3 mm below the top of the side form, never above it, on Part CH75.',
    );
    expect(problemsOf(assembly)).toEqual([]);
  });
  it('sag lowers the top, the screed brings the face nearer, thickness goes both ways: 2 − 1 − 1 to 2 + 1 + 2 + 1', () => {
    const assembly = build('trowelled face', 'chair', {
      way: { chairSink_mm: 1 },
      bed: { sag_mm: 2, screedDeflection_mm: 1 },
      rules: { tolerances: { position_mm: 5, level_mm: 3, thickness_mm: 1 }, belowFace: { aim_mm: 2, most_mm: 8 } },
    });
    expect(assembly.chair).toMatchObject({ part: { id: 'CH75' }, range: [0, 6] });
    expect(problemsOf(assembly)).toEqual([]);
  });
  it('takes the lower chair where a thin panel would bring the top above the face', () => {
    const assembly = build('trowelled face', 'chair', {
      rules: { tolerances: { position_mm: 5, level_mm: 3, thickness_mm: 5 } },
    });
    // On 75: 2 − 5 = −3, proud. On 70: 7 − 5 = 2 to 7 + 5 = 12; the movements alone are 10, more than 0 to 5 holds.
    expect(assembly.chair).toMatchObject({ part: { id: 'CH70' }, range: [2, 12] });
    expect(problemsOf(assembly)).toEqual([
      'warning stack: on a chair of 70 mm the top ends between 2 mm and 12 mm below the trowelled face, 0 mm to 5 mm is wanted: sink, sag, screed and thickness together move it by 10 mm, more than any chair can take up; measure the depth of the form there before the pour and the top after the screed, or hang the insert from a bridging bar',
      'warning stack: the top comes to lie 7 mm below the face, bolt and lever arm are computed with a recess of 0 mm: give the way of holding and the insert a recess of 7 mm',
    ]);
  });
  it('only chairs that are too high: an error that names the chair and the lengths that would do', () => {
    // 180 − 80 − 103 = −3; wanted 75. Between 0 and 5 below: 180 − 80 − 5 = 95 to 100 long on a chair of 80.
    expect(problemsOf(build('trowelled face', 'chair', { chairs: [80] }))).toEqual([
      'error stack: on a chair of 80 mm the top ends between -3 mm and -3 mm below the trowelled face: it can stand proud (a number below 0 is above the face) and the screed would hit it; bring a chair of 75 mm; inserts that would fit: 95 mm to 100 mm on a chair of 80 mm',
    ]);
  });
  it('only chairs that are too low: an error that names the chairs that would do', () => {
    // 180 − 60 − 103 = 17; 0 to 5 below: chairs of 72 to 77.
    expect(problemsOf(build('trowelled face', 'chair', { chairs: [60] }))[0]).toBe(
      'error stack: on a chair of 60 mm the top ends between 17 mm and 17 mm below the trowelled face, 0 mm to 5 mm is wanted: bring a chair of 72 mm to 77 mm; inserts that would fit: 115 mm to 120 mm on a chair of 60 mm',
    );
  });
  it('the cap itself is never proud: 8 mm thick, aimed 8 below, at most 3 more', () => {
    const cap = { parts: [{ part: 'CAP8', count: 1 }], recess_mm: 8 };
    const assembly = build('trowelled face', 'chair', { way: cap, castIn: { recess_mm: 8 }, chairs: [65, 67, 70, 75] });
    // 180 − 103 − 8 = 69: 70 is nearest, and gives 7, so that the cap stands 1 mm proud; 67 gives 10.
    expect(assembly.chair).toMatchObject({ part: { id: 'CH67' }, topBelowFace: 10 });
    expect(problemsOf(assembly)).toEqual([]);
  });
  it('in a sandwich it stands on what lies below the concrete: 150 − 103 − 2 = 45, and insulation is soft', () => {
    const assembly = build('trowelled face', 'chair', { panel: SANDWICH, chairs: [45] });
    expect(stackOf(assembly)).toEqual(['concrete 70', 'concrete 80', 'chair 45', 'insert 103', 'recess 2']);
    expect(problemsOf(assembly)).toEqual([
      'warning stack: the chair stands on the insulation and presses into it: hang the insert from a bridging bar, or tie it to the cage',
    ]);
    const lined = {
      thickness_mm: 180,
      layers: [
        { kind: 'outer skin', thickness_mm: 20 },
        { kind: 'structural', thickness_mm: 160 },
      ],
    };
    expect(problemsOf(build('trowelled face', 'chair', { panel: lined, chairs: [55] }))).toEqual([
      'warning stack: the chair stands on the outer skin: set it when that is hard, or hang the insert from a bridging bar',
    ]);
  });
  it('says what is taken where no bed is named', () => {
    expect(problemsOf(build('trowelled face', 'chair', { bed: null }))).toEqual([
      'warning form material: no bed named, form material not known: how far form and screed give way is not known and taken as 0; name the bed in a pour',
    ]);
  });
  it('fails where the yard lists no such part', () => {
    expect(() => build('trowelled face', 'chair', { way: { chairs: ['CH99'] } })).toThrow(
      'way of holding WAY: no part CH99',
    );
    expect(() => build('trowelled face', 'chair', { chairs: [] })).toThrow('no chairs given');
    expect(() => build('trowelled face', 'chair', { way: { chairs: ['CAP'] } })).toThrow(
      'CAP is no chair with a height',
    );
  });
});

describe('the stack in an edge', () => {
  it('90 mm above the bed: 78 mm to the body of 24, 78 above; 60 from the outside face when that is up', () => {
    expect(stackOf(build('edge', 'through the side form'))).toEqual(['concrete 78', 'insert 24', 'concrete 78']);
    const turned = build('edge', 'through the side form', { panel: { faceDown: 'inside' }, castIn: { y_mm: 60 } });
    expect(stackOf(turned)).toEqual(['concrete 108', 'insert 24', 'concrete 48']);
    expect(turned.stage).toBe(1);
  });
});

const place = fc.constantFrom('mould face' as const, 'trowelled face' as const);
const heights = fc.uniqueArray(fc.integer({ min: 20, max: 200 }), { minLength: 1, maxLength: 6 });

describe('any stack', () => {
  it('adds up to the thickness, whichever way the insert is held', () => {
    fc.assert(
      fc.property(
        place,
        fc.integer({ min: 130, max: 400 }),
        fc.integer({ min: 0, max: 25 }),
        heights,
        fc.integer({ min: 0, max: 4 }),
        fc.boolean(),
        (where, thickness_mm, recess_mm, chairs, chairSink_mm, hasChair) => {
          const method = where === 'mould face' ? 'nail-on plate' : hasChair ? 'chair' : 'bridging bar';
          const { stack, chair } = build(where, method, {
            panel: { thickness_mm },
            castIn: { recess_mm },
            way: { recess_mm, chairSink_mm },
            chairs,
          });
          // A top above the face has no recess: the stack is higher than the panel by as much.
          const proud = Math.min(0, chair?.topBelowFace ?? 0);
          expect(sum(stack) + proud).toBeCloseTo(thickness_mm, 9);
        },
      ),
    );
  });

  it('on a chair is never proud in any state of form, screed, sink and thickness, or the error says so', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const upTo = fc.integer({ min: 0, max: 5 });
    fc.assert(
      fc.property(
        fc.integer({ min: 130, max: 300 }),
        heights,
        fc.tuple(upTo, upTo, upTo, upTo),
        fc.tuple(share, share, share, share),
        (thickness_mm, chairs, [sink, sag_mm, screedDeflection_mm, tolerance], [a, b, c, d]) => {
          const changes: HoldingParts = {
            panel: { thickness_mm },
            chairs,
            way: { chairSink_mm: sink },
            bed: { sag_mm, screedDeflection_mm },
            rules: { tolerances: { position_mm: 5, level_mm: 3, thickness_mm: tolerance } },
          };
          const { chair, problems } = build('trowelled face', 'chair', changes);
          // What really becomes of it: the chair goes down with the form and into it, the face goes down with the screed.
          const bottom = -sag_mm * b;
          const topOfInsert = bottom + chair!.part.height_mm! - sink * a + 103;
          const face = thickness_mm + tolerance * (2 * d - 1) - screedDeflection_mm * c;
          const below = face - topOfInsert;
          expect(below).toBeGreaterThanOrEqual(chair!.range[0] - 1e-9);
          expect(below).toBeLessThanOrEqual(chair!.range[1] + 1e-9);
          const isRefused = problems.some(({ severity, kind }) => severity === 'error' && kind === 'stack');
          if (!isRefused) expect(below).toBeGreaterThanOrEqual(-1e-9);
        },
      ),
    );
  });
});
