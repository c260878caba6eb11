// Covers worked by hand on the sample: panel 4000 × 3000 × 180, insert 103 long, foot 46, body 24, hole for a bar 14 above the foot; XC4.
// Wanted: c_nom = max(c_min,b, c_min,dur) + 10 (EN 1992-1-1, 4.4.1), c_min,dur 30 in XC4 and S4 (Table 4.4N, recalled) → 40 mm; behind the foot
// what the rules say, 20 mm.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findWantedCover } from '../../../src/assess/set-out/wanted-cover.ts';
import { sampleItem } from '../../job/sample-job.ts';
import { ask, build, coversOf, problemsOf, SANDWICH } from './holding-sample.ts';

const bar = { crossBar: { diameter_mm: 10, length_mm: 300 } };

describe('the cover that is wanted', () => {
  it('in XC4 30 + 10; a bar of 40 mm by its bond 40 + 10; stainless steel 10 + 10', () => {
    expect(findWantedCover('XC4', 0, false)).toBe(40);
    expect(findWantedCover('XC1', 0, false)).toBe(25);
    expect(findWantedCover('XC4', 40, false)).toBe(50);
    expect(findWantedCover('XS3', 0, true)).toBe(20);
  });
});

describe('covers at a large face', () => {
  it('behind the foot 180 − 103 = 77; aside 500 − 23 and 500 − 12', () => {
    expect(coversOf(build('mould face', 'nail-on plate'))).toEqual([
      'foot the trowelled face: 77 of 20',
      'foot the nearest side or opening: 477 of 40',
      'body the nearest side or opening: 488 of 40',
    ]);
  });
  it('a recess of 10 takes 10 of it; hung 2 mm below the trowelled face it looks at the mould face: 180 − 2 − 103', () => {
    const sunk = build('mould face', 'nail-on plate', { castIn: { recess_mm: 10 }, way: { recess_mm: 10 } });
    expect(coversOf(sunk)[0]).toBe('foot the trowelled face: 67 of 20');
    expect(coversOf(build('trowelled face', 'bridging bar'))[0]).toBe('foot the mould face: 75 of 20');
  });
  it('on a chair of 75 mm pressed in by 1: 74 mm to the mould face', () => {
    const assembly = build('trowelled face', 'chair', { way: { chairSink_mm: 1 } });
    expect(coversOf(assembly)[0]).toBe('foot the mould face: 74 of 20');
  });
  it('an opening is a side: from (900, 500) to x = 950 are 50, 27 beside the foot: a warning', () => {
    const opening = [
      [950, 400],
      [1200, 400],
      [1200, 700],
      [950, 700],
    ];
    const assembly = build('mould face', 'nail-on plate', { panel: { openings_mm: [opening] } });
    expect(coversOf(assembly).slice(1)).toEqual([
      'foot the nearest side or opening: 27 of 40',
      'body the nearest side or opening: 38 of 40',
    ]);
    expect(problemsOf(assembly)).toEqual([
      'warning cover: the foot has 27 mm of concrete toward the nearest side or opening, 40 mm is wanted in XC4 (EN 1992-1-1, 4.4.1, class S4): move the insert, or take steel that does not rust',
    ]);
    const stainless = { panel: { openings_mm: [opening] }, item: { finish: 'stainless', boltFinishes: ['stainless'] } };
    expect(problemsOf(build('mould face', 'nail-on plate', stainless))).toEqual([]);
  });
  it('a foot that is known by its area only is not measured aside', () => {
    const foot = { kind: 'area', area_mm2: 1000, thickness_mm: null, isFullHead: true };
    const parts = build('mould face', 'nail-on plate', { item: { foot } }).covers.map(({ part }) => part);
    expect(parts).toEqual(['foot', 'body']);
  });
});

describe('cover behind the foot that falls short', () => {
  const catalogue = [60, 75, 90, 103, 160].map((length_mm) =>
    sampleItem({ id: `F16-${length_mm}`, length_mm, embedment_mm: length_mm - 7 }),
  );
  const longer = { ...sampleItem({ id: 'F16-160', length_mm: 160, embedment_mm: 153 }) };

  it('19 mm behind 103 in a panel of 122: an error, and 90 mm and less would fit', () => {
    expect(problemsOf(build('mould face', 'nail-on plate', { panel: { thickness_mm: 122 }, catalogue }))).toEqual([
      'error cover: the foot of F16 has 19 mm of concrete behind it, 20 mm is wanted; M16 of the catalogue that fit: 60 mm (F16-60), 75 mm (F16-75), 90 mm (F16-90); check again with the one taken',
    ]);
    expect(problemsOf(build('mould face', 'nail-on plate', { panel: { thickness_mm: 123 }, catalogue }))).toEqual([]);
  });
  it('a recess counts in the lengths that fit: 122 − 15 − 20 = 87', () => {
    const sunk = { castIn: { recess_mm: 15 }, way: { recess_mm: 15 } };
    const [text] = problemsOf(
      build('mould face', 'nail-on plate', { panel: { thickness_mm: 122 }, catalogue, ...sunk }),
    );
    expect(text).toMatch(/4 mm of concrete behind it.* 60 mm \(F16-60\), 75 mm \(F16-75\); check/);
  });
  it('through the panel, and in the insulation of a sandwich, are named by what they are', () => {
    const through = build('mould face', 'nail-on plate', { panel: { thickness_mm: 100 }, catalogue });
    expect(problemsOf(through)).toEqual([
      'error cover: the foot of F16 comes out of the trowelled face, 103 mm below the mould face; M16 of the catalogue that fit: 60 mm (F16-60), 75 mm (F16-75); check again with the one taken',
    ]);
    // 2 + 160 = 162 mm below the trowelled face, where the concrete ends at 150. All others leave 20 and more: 150 − 2 − 103 = 45.
    const soft = build('trowelled face', 'bridging bar', { panel: SANDWICH, item: longer, catalogue });
    expect(problemsOf(soft)).toEqual([
      'error cover: the foot of F16-160 stands in the insulation, 162 mm below the trowelled face; M16 of the catalogue that fit: 60 mm (F16-60), 75 mm (F16-75), 90 mm (F16-90), 103 mm (F16-103); check again with the one taken',
    ]);
  });
  it('in a sandwich the insulation counts as a face: 150 − 2 − 135 = 13', () => {
    const item = sampleItem({ id: 'F16-135', length_mm: 135, embedment_mm: 128 });
    const assembly = build('trowelled face', 'bridging bar', { panel: SANDWICH, item, catalogue });
    expect(coversOf(assembly)[0]).toBe('foot the insulation: 13 of 20');
    expect(problemsOf(assembly)[0]).toMatch(/^error cover: the foot of F16-135 has 13 mm of concrete behind it/);
  });
  it('across a joint of two layers of concrete', () => {
    const layers = [
      { kind: 'structural', thickness_mm: 100 },
      { kind: 'structural', thickness_mm: 80 },
    ];
    const [text] = problemsOf(build('mould face', 'nail-on plate', { panel: { layers } }));
    expect(text).toMatch(
      /^error cover: the foot of F16 stands across a joint of two layers, 103 mm below the mould face/,
    );
  });
  it('other threads, and inserts that are rated for lifting, are no choice; and none may be left', () => {
    const others = [
      sampleItem({ id: 'F12-60', thread: 'M12', length_mm: 60, embedment_mm: 53 }),
      sampleItem({
        id: 'L16-60',
        length_mm: 60,
        embedment_mm: 53,
        ratedLoads: [{ role: 'lifting', load_kN: 20, document: 'Invented', conditions: 'any' }],
      }),
    ];
    const panel = { thickness_mm: 110 };
    expect(problemsOf(build('mould face', 'nail-on plate', { panel, catalogue: others }))).toEqual([
      'error cover: the foot of F16 has 7 mm of concrete behind it, 20 mm is wanted; no M16 of the catalogue fits there: another place, less recess or more thickness is needed',
    ]);
    const [lifting] = problemsOf(
      build('mould face', 'nail-on plate', { panel, catalogue: others, castIn: { role: 'lifting' } }),
    );
    expect(lifting).toMatch(/that fit: 60 mm \(L16-60\)/);
  });
  it('tolerances that eat the allowance of 10 mm: 21 − 9 − 3 = 9, at least 20 − 10 is to be left', () => {
    const tolerances = { position_mm: 5, level_mm: 3, thickness_mm: 9 };
    const panel = { thickness_mm: 124 };
    expect(problemsOf(build('mould face', 'nail-on plate', { panel, rules: { tolerances } }))).toEqual([
      'warning cover: the foot has 21 mm of concrete behind it, and 9 mm where thickness and level are off as far as they may; at least 10 mm is to be left: tighten these tolerances, or take a shorter insert',
    ]);
    expect(
      problemsOf(
        build('mould face', 'nail-on plate', { panel, rules: { tolerances: { ...tolerances, thickness_mm: 8 } } }),
      ),
    ).toEqual([]);
  });
});

describe('the cross bar', () => {
  it('is said to be asked for by nobody, never that none is needed', () => {
    const { crossBar, checkLines } = build('mould face', 'nail-on plate');
    expect(crossBar).toBeNull();
    expect(checkLines).toContain("Cross bar: none asked for by the supplier's data.");
    expect(checkLines.join(' ')).not.toMatch(/need/);
  });
  it("the maker's 10 × 300, 14 above the foot: axis 103 − 14 = 89 deep; 84 and 180 − 89 − 5 = 86; 500 − 5 aside", () => {
    const assembly = build('mould face', 'nail-on plate', { item: bar });
    expect(assembly.crossBar).toEqual({ diameter: 10, length: 300, fromFoot: 14 });
    expect(coversOf(assembly).slice(3)).toEqual([
      'cross bar the mould face: 84 of 40',
      'cross bar the trowelled face: 86 of 40',
      'cross bar the nearest side or opening: 495 of 40',
    ]);
    expect(assembly.checkLines.at(-1)).toBe(
      'Cross bar 10 mm × 300 mm is through the hole, in the middle, and tied to the cage; it holds in place only and adds no computed resistance (asked for by the maker).',
    );
  });
  it('seen from the trowelled face the two faces change places: 2 + 89 = 91 deep', () => {
    expect(coversOf(build('trowelled face', 'bridging bar', { item: bar })).slice(3, 5)).toEqual([
      'cross bar the trowelled face: 86 of 40',
      'cross bar the mould face: 84 of 40',
    ]);
  });
  it('in a sandwich it keeps from the insulation: 150 − 2 − 89 − 5 = 54', () => {
    expect(coversOf(build('trowelled face', 'bridging bar', { item: bar, panel: SANDWICH }))).toContain(
      'cross bar the insulation: 54 of 40',
    );
  });
  it("the designer's size and direction before the maker's: 9 × 960 across at (900, 500) ends 20 from the side", () => {
    const castIn = { crossBar: { direction_deg: 90, diameter_mm: 9, length_mm: 960 } };
    const assembly = build('mould face', 'nail-on plate', { item: bar, castIn });
    expect(assembly.crossBar).toMatchObject({ diameter: 9, length: 960 });
    expect(coversOf(assembly)[5]).toBe('cross bar the nearest side or opening: 20 of 40');
    expect(problemsOf(assembly)).toEqual([
      'warning cover: the cross bar has 20 mm of concrete toward the nearest side or opening, 40 mm is wanted in XC4 (EN 1992-1-1, 4.4.1, class S4): turn or shorten it, or take steel that does not rust',
    ]);
    expect(assembly.checkLines.at(-1)).toMatch(/asked for by the designer/);
    // Along, it has 900 − 480 = 420 to its end, 500 − 4.5 beside it.
    const along = build('mould face', 'nail-on plate', {
      item: bar,
      castIn: { crossBar: { ...castIn.crossBar, direction_deg: 0 } },
    });
    expect(coversOf(along)[5]).toBe('cross bar the nearest side or opening: 420 of 40');
  });
  it('askew: at 45° its end has 500 − 480 · sin 45° − 4.5 · cos 45° = 157.41', () => {
    const castIn = { crossBar: { direction_deg: 45, diameter_mm: 9, length_mm: 960 } };
    expect(coversOf(build('mould face', 'nail-on plate', { castIn }))[5]).toBe(
      'cross bar the nearest side or opening: 157.41 of 40',
    );
  });
  it('through a side, or across a notch or opening, it comes out of the concrete', () => {
    const out =
      'error cross bar: the cross bar comes out of the concrete toward the nearest side or opening: turn or shorten it';
    const castIn = { crossBar: { direction_deg: 90, diameter_mm: 10, length_mm: 1100 } };
    expect(problemsOf(build('mould face', 'nail-on plate', { castIn }))).toEqual([out]);
    const slot = [
      [1100, 480],
      [1150, 480],
      [1150, 520],
      [1100, 520],
    ];
    const across = {
      panel: { openings_mm: [slot] },
      castIn: { crossBar: { direction_deg: 0, diameter_mm: 10, length_mm: 600 } },
    };
    expect(problemsOf(build('mould face', 'nail-on plate', across))).toEqual([out]);
  });
  it('too near to a face, and through it', () => {
    const item = {
      crossBar: { diameter_mm: 10, length_mm: 300 },
      crossHole: { diameter_mm: 10, fromFoot_mm: 70, boreThere_mm: 0 },
    };
    expect(problemsOf(build('mould face', 'nail-on plate', { item }))[0]).toMatch(
      /^warning cover: the cross bar has 28 mm of concrete toward the mould face, 40 mm/,
    );
    const high = { ...item, crossHole: { ...item.crossHole, fromFoot_mm: 99 } };
    expect(problemsOf(build('mould face', 'nail-on plate', { item: high }))).toEqual([
      'error cross bar: the cross bar comes out of the concrete toward the mould face: turn or shorten it',
    ]);
  });
  it('without a hole, without its size, or thicker than the hole: errors', () => {
    const without = build('mould face', 'nail-on plate', { item: { ...bar, crossHole: null } });
    expect(without.crossBar).toBeNull();
    expect(problemsOf(without)).toEqual([
      'error cross bar: the maker asks for a cross bar, and F16 has no cross hole: take an insert with one, or leave the bar out if the maker agrees',
    ]);
    expect(without.checkLines.at(-1)).toBe('Cross bar: asked for by the maker, not settled; see the findings.');
    expect(problemsOf(build('mould face', 'nail-on plate', { castIn: { crossBar: { direction_deg: 0 } } }))).toEqual([
      'error cross bar: a cross bar is asked for without its diameter, which the catalogue does not give for F16: ask the designer',
    ]);
    expect(problemsOf(build('mould face', 'nail-on plate', { castIn: { crossBar: { diameter_mm: 8 } } }))).toEqual([
      'error cross bar: a cross bar is asked for without its length, which the catalogue does not give for F16: ask the designer',
    ]);
    const thick = build('mould face', 'nail-on plate', { castIn: { crossBar: { diameter_mm: 12, length_mm: 300 } } });
    expect(problemsOf(thick)).toEqual([
      'error cross bar: a cross bar of 12 mm does not go through the hole of 10 mm of F16: take a bar of at most 10 mm',
    ]);
  });
});

describe('covers in an edge', () => {
  it('90 above the bed in 180: 90 − 23 and 90 − 12; 3000 − 103 behind; 900 − 23 along', () => {
    expect(coversOf(build('edge', 'through the side form'))).toEqual([
      'foot the side or opening behind it: 2897 of 20',
      'foot the mould face: 67 of 40',
      'foot the nearest side or opening: 877 of 40',
      'body the mould face: 78 of 40',
      'body the nearest side or opening: 888 of 40',
    ]);
  });
  it('60 from the outside face that is on the form looks at the mould face; turned over at the trowelled face', () => {
    const near = { castIn: { y_mm: 60 } };
    expect(coversOf(build('edge', 'magnet', { ...near, bed: { sideForm: 'steel' } }))[1]).toBe(
      'foot the mould face: 37 of 40',
    );
    expect(coversOf(build('edge', 'through the side form', { ...near, panel: { faceDown: 'inside' } }))[1]).toBe(
      'foot the trowelled face: 37 of 40',
    );
  });
  it('in the concrete of a sandwich the insulation counts: 150 + 60 above the bed, 60 − 23', () => {
    const assembly = build('edge', 'through the side form', { panel: SANDWICH, castIn: { y_mm: 210 } });
    expect(coversOf(assembly)[1]).toBe('foot the insulation: 37 of 40');
  });
  it('too long for the concrete behind it names the lengths that fit', () => {
    const opening = [
      [800, 120],
      [1000, 120],
      [1000, 400],
      [800, 400],
    ];
    const short = sampleItem({ id: 'F16-60', length_mm: 60, embedment_mm: 53 });
    const at = (bottom: number) =>
      problemsOf(
        build('edge', 'through the side form', {
          panel: { openings_mm: [opening.map(([x, y]) => [x, y === 120 ? bottom : y])] },
          catalogue: [short],
        }),
      )[0];
    expect(at(120)).toBe(
      'error cover: the foot of F16 has 17 mm of concrete behind it, 20 mm is wanted; M16 of the catalogue that fit: 60 mm (F16-60); check again with the one taken',
    );
    expect(at(100)).toMatch(/^error cover: the foot of F16 comes through: 103 mm in 100 mm of concrete; M16/);
  });
  it('a bar along the edge: 90 − 5 up and down; 89 behind the edge, 84 to it', () => {
    expect(coversOf(build('edge', 'through the side form', { item: bar })).slice(5)).toEqual([
      'cross bar the mould face: 85 of 40',
      'cross bar the trowelled face: 85 of 40',
      'cross bar the nearest side or opening: 84 of 40',
    ]);
  });
  it('a bar on end, 160 long: 90 − 80 up and down', () => {
    const castIn = { y_mm: 90, crossBar: { direction_deg: 90, diameter_mm: 10, length_mm: 160 } };
    const assembly = build('edge', 'through the side form', { castIn });
    expect(coversOf(assembly)[5]).toBe('cross bar the mould face: 10 of 40');
    // At 30°: 160 · sin 30° / 2 + 10 · cos 30° / 2 = 44.33.
    const askew = build('edge', 'through the side form', {
      castIn: { crossBar: { ...castIn.crossBar, direction_deg: 30 } },
    });
    expect(coversOf(askew)[6]).toBe('cross bar the trowelled face: 45.67 of 40');
    const long = build('edge', 'through the side form', {
      castIn: { crossBar: { ...castIn.crossBar, length_mm: 200 } },
    });
    expect(problemsOf(long)).toEqual([
      'error cross bar: the cross bar comes out of the concrete toward the mould face: turn or shorten it',
    ]);
  });
  it('a batter of 5° brings the foot 103 · sin 5° = 8.98 aside, and a plate 0.9 for each 10 mm in front', () => {
    for (const batter_deg of [5, -5]) {
      const assembly = build('edge', 'through the side form', {
        panel: { edges: [{ edge: 0, batter_deg }] },
        item: bar,
      });
      expect(assembly.tilt_deg).toBeCloseTo(batter_deg, 9);
      expect(coversOf(assembly)[1]).toBe('foot the mould face: 58.02 of 40');
      expect(coversOf(assembly)[3]).toBe('body the mould face: 69.02 of 40');
      // The bar 89 along the axis: 89 · sin 5° = 7.76 of the 85.
      expect(coversOf(assembly)[5]).toBe('cross bar the mould face: 77.24 of 40');
      expect(problemsOf(assembly)).toEqual([
        'warning stack: the side form leans by 5° and the axis with it: the foot lies 9 mm higher or lower than the axis at the face, and each 10 mm between the face and a plate move its contact by 0.9 mm; no rule here computes its strength',
      ]);
      expect(assembly.checkLines).toContain('Axis stands square to the side form, which leans by 5°.');
    }
    const other = build('edge', 'through the side form', { panel: { edges: [{ edge: 1, batter_deg: 5 }] } });
    expect([other.tilt_deg, problemsOf(other)]).toEqual([0, []]);
  });
  it('needs the number of the edge', () => {
    const question = ask('edge', 'through the side form', { castIn: { edge: null } });
    expect(question.castIn.edge).toBeNull();
    expect(() => build('edge', 'through the side form', { castIn: { edge: null } })).toThrow(
      'insert 1 of panel P1: on an edge without the number of its edge',
    );
  });
});

describe('any cover behind the foot', () => {
  const behind = (place: 'mould face' | 'trowelled face', thickness_mm: number, recess_mm: number) => {
    const method = place === 'mould face' ? 'nail-on plate' : 'bridging bar';
    const changes = { panel: { thickness_mm }, castIn: { recess_mm }, way: { recess_mm } };
    return build(place, method, changes).covers[0]!.cover;
  };
  const place = fc.constantFrom('mould face' as const, 'trowelled face' as const);

  it('grows with the panel, and is lost to a recess, millimetre by millimetre', () => {
    fc.assert(
      fc.property(
        place,
        fc.integer({ min: 140, max: 300 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 2, max: 15 }),
        (where, thickness, more, recess) => {
          const cover = behind(where, thickness, recess);
          expect(behind(where, thickness + more, recess)).toBeCloseTo(cover + more, 9);
          expect(behind(where, thickness, recess + 7)).toBeCloseTo(cover - 7, 9);
        },
      ),
    );
  });

  it('is the same at either large face when both have the same recess', () => {
    fc.assert(
      fc.property(fc.integer({ min: 140, max: 300 }), fc.integer({ min: 2, max: 20 }), (thickness, recess) => {
        expect(behind('mould face', thickness, recess)).toBeCloseTo(behind('trowelled face', thickness, recess), 9);
      }),
    );
  });
});
