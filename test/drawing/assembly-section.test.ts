import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Assembly } from '../../src/assess/set-out/assembly-type.ts';
import type { FormPlace } from '../../src/assess/set-out/set-out.ts';
import { drawAssemblySection, type ScaledPicture } from '../../src/drawing/assembly-section.ts';
import { boxOfMarks } from '../../src/drawing/boxes.ts';
import type { AreaMark, Mark } from '../../src/drawing/drawing.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import type { Point } from '../../src/engine/geometry/point.ts';
import { bed } from '../../src/job/documents/yard.ts';
import { build, type HoldingParts, SANDWICH } from '../assess/set-out/holding-sample.ts';
import { sampleBed } from '../job/sample-job.ts';
import { findOverhang, findOverlaps, listTexts, textOf } from './picture-checks.ts';

const BED = bed.parse(sampleBed());
const ROOM = { width: 128, height: 113 };
const LARGE = { width: 400, height: 400 };

function assemble(place: FormPlace, method: string, changes: HoldingParts = {}): Assembly {
  return { ...build(place, method, changes), letter: 'A', numbers: [1, 2, 3, 4, 9] };
}

function draw(assembly: Assembly, room = ROOM, faceDown: 'outside' | 'inside' = 'outside'): ScaledPicture {
  return drawAssemblySection(assembly, { ...room, faceDown, bed: BED });
}

/** Read back from the marks at 1:1: the body as its eight corners from the top's one side round, above the bed and from the axis' start. */
function readBody({ marks, scale }: ScaledPicture): readonly Point[] {
  const body = marks.find((mark): mark is AreaMark => mark.kind === 'area' && mark.layer === 'insert')!;
  const form = marks.find((mark) => mark.kind === 'line' && mark.layer === 'form' && mark.pen === 'thick')!;
  if (form.kind !== 'line') throw new Error('the bed is a line');
  return body.rings[0]!.map(([x, y]): Point => [x * scale, (y - form.from[1]) * scale]);
}

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
const span = (a: Point, b: Point) => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Middle of the top and of the foot. */
function readAxis(picture: ScaledPicture): readonly [Point, Point] {
  const body = readBody(picture);
  return [middle(body[0]!, body[7]!), middle(body[3]!, body[4]!)];
}

/** Figures at the start of the labels of the stack, and the one of the thickness. */
function readStack({ marks }: ScaledPicture): { steps: number[]; total: number } {
  // The stack stands beyond the picture in +x, its labels start there; the thickness on the other side.
  const numbers = (pattern: RegExp, side: 'start' | 'end') =>
    listTexts(marks)
      .filter(({ layer, align }) => layer === 'dimension' && align === side)
      .flatMap(({ text }) => {
        const found = pattern.exec(text);
        return found === null ? [] : [Number(found[1]!.replace('−', '-'))];
      });
  return { steps: numbers(/^(−?[\d.]+) \p{L}/u, 'start'), total: numbers(/^thickness ([\d.]+)$/, 'end')[0]! };
}

/** Ways of holding with what else changes: each kind of picture there is. */
const cases: readonly (readonly [FormPlace, string, HoldingParts])[] = [
  ['mould face', 'nail-on plate', { castIn: { recess_mm: 10 }, way: { recess_mm: 10, recessWidth_mm: 60 } }],
  ['mould face', 'stick-on plate', { castIn: { recess_mm: 10 }, panel: { thickness_mm: 130 } }],
  ['mould face', 'magnet', { castIn: { recess_mm: 10 }, item: { crossBar: { diameter_mm: 12, length_mm: 300 } } }],
  ['mould face', 'recess former', { panel: SANDWICH, castIn: { recess_mm: 15.5 } }],
  ['mould face', 'template board', {}],
  ['trowelled face', 'chair', { way: { chairSink_mm: 2, parts: [{ part: 'CAP8', count: 1 }] } }],
  ['trowelled face', 'chair', { panel: SANDWICH, chairs: [35, 40] }],
  ['trowelled face', 'bridging bar', { item: { crossBar: { diameter_mm: 12, length_mm: 80 } } }],
  ['trowelled face', 'template board', {}],
  ['trowelled face', 'tied to the cage', { panel: SANDWICH }],
  ['edge', 'through the side form', { panel: { edges: [{ edge: 0, batter_deg: 5 }] } }],
  ['edge', 'nail-on plate', { castIn: { recess_mm: 10 }, panel: { edges: [{ edge: 0, batter_deg: -8 }] } }],
  ['edge', 'magnet', { castIn: { recess_mm: 10 }, item: { crossBar: { diameter_mm: 12, length_mm: 300 } } }],
];

describe('the section of an assembly', () => {
  it.each(cases)(
    '%s, %s: nothing on another, nothing outside, true to scale, steps add up (%#)',
    (place, method, changes) => {
      const assembly = assemble(place, method, changes);
      for (const room of [ROOM, { width: 136, height: 156 }, LARGE]) {
        const picture = draw(assembly, room);
        expect(findOverlaps(picture.marks)).toEqual([]);
        expect(findOverhang(picture.marks, picture)).toBe(0);
        expect(picture.width).toBeLessThanOrEqual(room.width);
        expect(picture.height).toBeLessThanOrEqual(room.height);
        const body = readBody(picture);
        expect(span(...readAxis(picture))).toBeCloseTo(assembly.item.length_mm, 6);
        expect(span(body[0]!, body[7]!)).toBeCloseTo(assembly.item.bodyDiameter_mm, 6);
        const { steps, total } = readStack(picture);
        expect(steps).toHaveLength(assembly.stack.length);
        expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(assembly.thickness, 9);
        expect(total).toBe(assembly.thickness);
      }
    },
  );

  it('stands on the form with its top at the recess, its foot up', () => {
    const [top, foot] = readAxis(draw(assemble('mould face', 'nail-on plate', { castIn: { recess_mm: 10 } })));
    expect(top[1]).toBeCloseTo(10, 6);
    expect(foot[1]).toBeCloseTo(113, 6);
  });

  it('hangs under the trowelled face with its foot down, on a chair that has sunk in', () => {
    // Worked by hand: 180 thick; a chair of 70 that sinks 2, 103 of insert: the foot at 68, the top at 171, 9 below the face.
    const picture = draw(assemble('trowelled face', 'chair', { chairs: [70], way: { chairSink_mm: 2 } }));
    const [top, foot] = readAxis(picture);
    expect(foot[1]).toBeCloseTo(68, 6);
    expect(top[1]).toBeCloseTo(171, 6);
    expect(readStack(picture).steps.sort((a, b) => a - b)).toEqual([-2, 9, 70, 103]);
    expect(textOf(picture.marks)).toContain('top 9 below the trowelled face');
    const holding = boxOfMarks(picture.marks.filter((mark: Mark) => mark.layer === 'holding' && mark.kind === 'area'))!;
    const bedLine = picture.marks.find((mark) => mark.kind === 'line' && mark.layer === 'form')!;
    if (bedLine.kind !== 'line') throw new Error('the bed is a line');
    expect((bedLine.from[1] - holding.y) * picture.scale).toBeCloseTo(2, 6);
  });

  it('hangs from the trowelled face even where it is too long, and comes through the bed', () => {
    // 100 thick, 103 long, its top 20 below the face: 23 below the form.
    const [top, foot] = readAxis(
      draw(assemble('trowelled face', 'bridging bar', { panel: { thickness_mm: 100 }, castIn: { recess_mm: 20 } })),
    );
    expect([top[1], foot[1]]).toEqual([expect.closeTo(80, 6), expect.closeTo(-23, 6)]);
  });

  it('keeps the axis of an edge whose body comes out of a face', () => {
    for (const y_mm of [8, 172]) {
      const [top] = readAxis(draw(assemble('edge', 'magnet', { castIn: { y_mm } })));
      expect(top[1]).toBeCloseTo(y_mm, 6);
    }
  });

  it('tells of a top that stands proud', () => {
    const picture = draw(assemble('trowelled face', 'chair', { chairs: [90] }));
    expect(textOf(picture.marks)).toContain('top 13 ABOVE the trowelled face');
  });

  it('tilts with a battered side form: the foot of 103 mm at 5° moves by 103 · sin 5° = 9.0 mm, square to the form', () => {
    for (const [batter_deg, direction] of [
      [5, -1],
      [-5, 1],
    ] as const) {
      const picture = draw(assemble('edge', 'through the side form', { panel: { edges: [{ edge: 0, batter_deg }] } }));
      const [top, foot] = readAxis(picture);
      expect(top[1]).toBeCloseTo(90, 6);
      expect(direction * (foot[1] - top[1])).toBeCloseTo(9, 1);
      const side = picture.marks.find(
        (mark) =>
          mark.kind === 'line' && mark.layer === 'form' && mark.from[0] !== mark.to[0] && mark.from[1] !== mark.to[1],
      )!;
      if (side.kind !== 'line') throw new Error('the side form is a line');
      const dot = (side.to[0] - side.from[0]) * (foot[0] - top[0]) + (side.to[1] - side.from[1]) * (foot[1] - top[1]);
      expect(dot).toBeCloseTo(0, 6);
      expect(textOf(picture.marks)).toContain('leans by 5°');
    }
  });

  it('keeps the axis of an edge at its height above the bed, and says it and the depth', () => {
    const picture = draw(assemble('edge', 'nail-on plate', { castIn: { recess_mm: 10, y_mm: 60 } }));
    const [top, foot] = readAxis(picture);
    expect([top[1], foot[1]]).toEqual([expect.closeTo(60, 6), expect.closeTo(60, 6)]);
    expect(textOf(picture.marks).replaceAll('\n', ' ')).toContain('axis 60 above the bed');
    expect(textOf(picture.marks).replaceAll('\n', ' ')).toContain('foot 113 deep (recess 10 + 103)');
  });

  it.each(['outside', 'inside'] as const)(
    'names both faces by form and building, %s down at the bottom',
    (faceDown) => {
      const { marks } = draw(assemble('mould face', 'magnet'), ROOM, faceDown);
      const find = (words: string) => listTexts(marks).find(({ text }) => text.startsWith(words))!;
      const [mould, trowelled] = [find('mould face'), find('trowelled face')];
      const up = faceDown === 'outside' ? 'INSIDE' : 'OUTSIDE';
      expect(mould.text).toBe(`mould face – ${faceDown.toUpperCase()}`);
      expect(trowelled.text).toContain(`trowelled face – ${up}`);
      expect(mould.at[1]).toBeLessThan(trowelled.at[1]);
    },
  );

  it('says what it is, how it is held, for which inserts, at which scale and with how much cover', () => {
    const picture = draw(
      assemble('mould face', 'nail-on plate', {
        castIn: { recess_mm: 10 },
        panel: { thickness_mm: 130 },
        item: { crossBar: { diameter_mm: 12, length_mm: 300 } },
      }),
    );
    const words = textOf(picture.marks).replaceAll('\n', ' ');
    expect(words).toContain(`Section A – 1 : ${picture.scale}`);
    expect(words).toContain('F16: Ferrule M16, M16 × 103, galvanised; thread M16, 40 long');
    expect(words).toContain('Way; stage 1, before the cage; for inserts 1–4 9');
    // 130 − 10 − 103 = 17 behind the foot; the rules want 20.
    expect(words).toContain('cover at the foot 17, wanted 20');
    expect(words).toContain('foot 17 to the trowelled face (wanted 20: TOO LITTLE)');
    expect(words).toContain('cross bar Ø12 × 300, 14 from the foot');
  });

  it('tells of each part the cover with the least to spare', () => {
    // At x = 150: the foot of 45 has 150 − 22.5 = 127.5 to the side, 87.5 more than wanted; behind it 180 − 103 = 77, 57 more.
    const words = textOf(draw(assemble('mould face', 'magnet', { castIn: { x_mm: 150 } })).marks).replaceAll('\n', ' ');
    expect(words).toContain('foot 77 to the trowelled face (wanted 20)');
    expect(words).not.toContain('foot 127.5');
    expect(words).toContain('body 138 to the nearest side or opening (wanted 40)');
  });

  it('draws the cross bar where its hole is, as wide as it is, and cuts it at the sides of the picture', () => {
    for (const [length_mm, isCut] of [
      [80, false],
      [3000, true],
    ] as const) {
      const picture = draw(
        assemble('mould face', 'magnet', { item: { crossBar: { diameter_mm: 12, length_mm } } }),
        LARGE,
      );
      const bar = boxOfMarks(picture.marks.filter(({ layer }) => layer === 'bar'))!;
      const [top, foot] = readAxis(picture);
      const bedLine = picture.marks.find((mark) => mark.kind === 'line' && mark.layer === 'form')!;
      if (bedLine.kind !== 'line') throw new Error('the bed is a line');
      expect(bar.height * picture.scale).toBeCloseTo(12, 6);
      expect((bar.y + bar.height / 2 - bedLine.from[1]) * picture.scale).toBeCloseTo(foot[1] - 14, 6);
      expect(bar.x * picture.scale + (bar.width * picture.scale) / 2).toBeCloseTo(top[0], 6);
      if (isCut) expect(bar.width * picture.scale).toBeLessThan(500);
      else expect(bar.width * picture.scale).toBeCloseTo(length_mm, 6);
    }
  });

  it('takes the largest scale that fits: 1:1 where there is room, never a smaller one in a larger room', () => {
    const assembly = assemble('mould face', 'magnet', { castIn: { recess_mm: 10 } });
    expect(draw(assembly, LARGE).scale).toBe(1);
    const scales = [90, 100, 113, 140, 200, 260].map((height) => draw(assembly, { width: 150, height }).scale);
    expect(scales).toEqual([...scales].sort((a, b) => b - a));
    expect(new Set(scales).size).toBeGreaterThan(2);
  });

  it('draws nothing that holds where a way does not hold at all', () => {
    const { marks } = draw(assemble('mould face', 'chair'));
    expect(marks.filter(({ layer }) => layer === 'holding')).toEqual([]);
  });

  it('says what does not fit and what to do', () => {
    expect(() => draw(assemble('mould face', 'magnet'), { width: 60, height: 40 })).toThrow(DrawingError);
    expect(() => draw(assemble('mould face', 'magnet'), { width: 60, height: 40 })).toThrow(
      'section A (F16, 180 mm thick) does not fit on 60 × 40 mm at 1 : 10; expected a larger sheet',
    );
  });

  it('holds for any insert in any panel (property)', () => {
    const lengths = fc.double({ min: 50, max: 250, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        lengths,
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 80, max: 400, noNaN: true }),
        fc.double({ min: -15, max: 15, noNaN: true }),
        fc.option(fc.integer({ min: 40, max: 900 }), { nil: null }),
        fc.constantFrom('outside' as const, 'inside' as const),
        fc.constantFrom(...['F', 'threaded insert with a round foot, long, for thick panels', 'Ä Ø']),
        ([place, method, changes], length_mm, recess_mm, thickness_mm, batter_deg, bar, faceDown, name) => {
          const layers =
            changes.panel?.layers === undefined
              ? []
              : [
                  { kind: 'outer skin', thickness_mm: thickness_mm / 4 },
                  { kind: 'insulation', thickness_mm: thickness_mm / 4 },
                  { kind: 'structural', thickness_mm: thickness_mm / 2 },
                ];
          const assembly = assemble(place, method, {
            ...changes,
            panel: { thickness_mm, layers, edges: [{ edge: 0, batter_deg }] },
            castIn: { recess_mm, ...(place === 'edge' ? { y_mm: thickness_mm / 2 } : {}) },
            item: {
              name,
              length_mm,
              embedment_mm: length_mm - 6,
              crossBar: bar === null ? null : { diameter_mm: 12, length_mm: bar },
            },
          });
          const picture = draw(assembly, { width: 136, height: 156 }, faceDown);
          expect(findOverlaps(picture.marks)).toEqual([]);
          expect(findOverhang(picture.marks, picture)).toBe(0);
          const { steps, total } = readStack(picture);
          // An insert that comes through or stands proud is drawn so; all others make up the thickness.
          const isProud = (assembly.chair?.topBelowFace ?? 0) < 0;
          if (!isProud && length_mm + recess_mm + 90 < thickness_mm)
            expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(total, 6);
        },
      ),
      { numRuns: 150, seed: 7 },
    );
  });
});

describe('a section where the panel is rebated', () => {
  // 140 of concrete that begins 40 above the bed; the axis 110 from the outside face, so 70 above the concrete's lower face.
  const zones = [
    {
      name: 'rebate',
      outline_mm: [
        [500, -10],
        [1300, -10],
        [1300, 900],
        [500, 900],
      ],
      layers: [{ kind: 'structural', thickness_mm: 140 }],
      behindOutside_mm: 40,
    },
  ];

  it('has the axis of an edge insert where it lies, with its height above the bed', () => {
    const picture = draw(assemble('edge', 'through the side form', { panel: { zones }, castIn: { y_mm: 110 } }), LARGE);
    expect(readAxis(picture)[0][1]).toBeCloseTo(70, 6);
    const words = textOf(picture.marks).replaceAll('\n', ' ');
    expect(words).toContain('axis 70 above the mould face there, 110 above the bed');
    expect(words).toContain('mould face – OUTSIDE, 40 above the bed');
    expect(words).toContain('built up by 40 there');
    expect(words).toContain('trowelled face – INSIDE, level of the screed');
  });

  it('tells a trowelled face that lies below the side form', () => {
    const panel = { zones, faceDown: 'inside' };
    const picture = draw(assemble('edge', 'through the side form', { panel, castIn: { y_mm: 110 } }), LARGE, 'inside');
    const words = textOf(picture.marks).replaceAll('\n', ' ');
    expect(words).toContain('axis 70 above the bed');
    expect(words).toContain('trowelled face – OUTSIDE, 40 below the top of the side form');
    expect(words).not.toContain('built up');
  });
});
