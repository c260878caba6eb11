import { parseString } from 'dxf';
import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LAYER_NAMES } from '../../../src/drawing/layers.ts';
import { drawTemplate, listTemplateHoles, type Template } from '../../../src/drawing/sheets/drill-template.ts';
import { drawTemplateSheets } from '../../../src/drawing/sheets/drill-template-sheets.ts';
import { writeDxf } from '../../../src/files/dxf/write-dxf.ts';
import type { Fixture } from '../../../src/job/documents/fixture.ts';
import { findOverhang, findOverlaps, textOf } from '../picture-checks.ts';

function plateOf(width: number, height: number, holes: readonly Partial<Fixture['holes'][number]>[]): Fixture {
  return {
    outline_mm: [
      [-width / 2, -height / 2],
      [width / 2, -height / 2],
      [width / 2, height / 2],
      [-width / 2, height / 2],
    ],
    thickness_mm: 20,
    yield_MPa: 235,
    holes: holes.map((hole, k) => ({
      id: String(k + 1),
      at_mm: [0, 0],
      diameter_mm: 18,
      slot_mm: 0,
      slotAngle_deg: 0,
      takesShear: true,
      ...hole,
    })),
    attachment_mm: null,
  };
}

const template: Template = {
  plate: plateOf(160, 120, [{ at_mm: [-52.37, 31.4] }, { at_mm: [51.3, 29.85], slot_mm: 12, slotAngle_deg: 30 }]),
  changed: new Set(['2']),
};

const facts = {
  project: '4711 Hall',
  revision: null,
  fingerprint: 'abcdef012345',
  caution: 'NOT FOR LIFTING',
} as const;
const words = {
  head: { mark: 'P13', lines: ['connection C41'], title: 'Drill template' },
  notes: ['Seen from the front.'],
};

/** What a reader of the registry finds of a kind on a layer, measured from the plate's lower left corner. */
function readBack(text: string) {
  const file = new DxfParser().parseSync(text)!;
  const entities = file.entities as unknown as readonly {
    type: string;
    layer: string;
    vertices?: { x: number; y: number }[];
    center?: { x: number; y: number };
    radius?: number;
  }[];
  const outline = entities.find(({ layer, type }) => layer === LAYER_NAMES.outline && type.endsWith('LINE'))!;
  const x0 = Math.min(...outline.vertices!.map(({ x }) => x));
  const y0 = Math.min(...outline.vertices!.map(({ y }) => y));
  const onHoles = entities.filter(({ layer }) => layer === LAYER_NAMES.hole);
  const centresOf = (kind: string) =>
    onHoles
      .filter(({ type }) => type === kind)
      .map(({ center, radius }) => [center!.x - x0, center!.y - y0, radius!] as const);
  return { file, outline, circles: centresOf('CIRCLE'), arcs: centresOf('ARC') };
}

describe('the template as DXF', () => {
  const text = writeDxf(drawTemplate(template), { scale: 1, layers: LAYER_NAMES });
  it('is in millimetres, its holes where they are to be, to 0.01 mm', () => {
    const { file, outline, circles, arcs } = readBack(text);
    expect(file.header.$INSUNITS).toBe(4);
    const xs = outline.vertices!.map(({ x }) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(160, 6);
    // From the lower left corner at (−80, −60).
    expect(circles).toHaveLength(1);
    const [x, y, radius] = circles[0]!;
    expect([x, y, radius].map((one) => Number(one.toFixed(3)))).toEqual([27.63, 91.4, 9]);
    // The ends of a slot of 12 at 30°: 6 cos 30° = 5.196 and 6 sin 30° = 3 either way of the middle.
    const ends = arcs.map(([ax, ay, r]) => [Number(ax.toFixed(2)), Number(ay.toFixed(2)), r]);
    expect(ends.sort((a, b) => a[0]! - b[0]!)).toEqual([
      [126.1, 86.85, 9],
      [136.5, 92.85, 9],
    ]);
    expect(parseString(text).header).toMatchObject({ insUnits: 4 });
  });
  it('holds for any plate', () => {
    const coordinate = fc.double({ min: -400, max: 400, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 1, maxLength: 8 }), (places) => {
        const plate = plateOf(
          900,
          900,
          places.map((at_mm) => ({ at_mm })),
        );
        const { circles } = readBack(
          writeDxf(drawTemplate({ plate, changed: new Set() }), { scale: 1, layers: LAYER_NAMES }),
        );
        expect(circles).toHaveLength(places.length);
        for (const [k, [x, y]] of circles.entries()) {
          expect(Math.abs(x - (places[k]![0] + 450))).toBeLessThan(0.01);
          expect(Math.abs(y - (places[k]![1] + 450))).toBeLessThan(0.01);
        }
      }),
      { numRuns: 40, seed: 7 },
    );
  });
});

describe('the template on paper', () => {
  it('is at 1:1 with a bar of 100 mm, its holes from the datum edges in a table', () => {
    const [page, ...none] = drawTemplateSheets(template, words, facts);
    expect(none).toEqual([]);
    expect([page!.width, page!.height]).toEqual([297, 210]);
    const circles = page!.marks.filter((mark) => mark.kind === 'circle' && mark.layer === 'hole');
    expect(circles.map((mark) => mark.kind === 'circle' && mark.radius)).toEqual([9]);
    const bar = page!.marks.find((mark) => mark.kind === 'line' && mark.layer === 'dimension');
    expect(bar?.kind === 'line' && bar.to[0] - bar.from[0]).toBeCloseTo(100, 9);
    const text = textOf(page!.marks);
    expect(text).toContain('▲ 2');
    expect(text).toContain('27.6');
    expect(text).toContain('18 × 30, at 30°');
    expect(listTemplateHoles(template)[1]).toMatchObject({ isChanged: true, length: 30 });
  });
  it.each([
    [230, 180, 1, 420],
    [700, 500, 7, 420],
  ])('of %s × %s mm takes %s sheets, nothing outside of them, no text on another', (width, height, count, wide) => {
    const plate = plateOf(width, height, [
      { at_mm: [-width / 2 + 40, height / 2 - 40] },
      { at_mm: [width / 2 - 40, -height / 2 + 40], slot_mm: 20, slotAngle_deg: 90 },
    ]);
    const pages = drawTemplateSheets({ plate, changed: new Set() }, words, facts);
    expect(pages).toHaveLength(count);
    for (const page of pages) {
      expect(page.width).toBe(wide);
      expect(findOverhang(page.marks, page)).toBe(0);
      expect(findOverlaps(page.marks)).toEqual([]);
    }
  });
  it('cut into tiles shows every hole, whole lines as long as they are', () => {
    const plate = plateOf(700, 500, [{ at_mm: [-310, 210] }, { at_mm: [310, -210] }]);
    const pages = drawTemplateSheets({ plate, changed: new Set() }, words, facts);
    const drawn = pages.map(({ marks }) => marks.filter(({ layer }) => layer === 'hole'));
    const lengths = drawn.map((marks) =>
      marks.reduce(
        (sum, mark) =>
          sum + (mark.kind === 'line' ? Math.hypot(mark.to[0] - mark.from[0], mark.to[1] - mark.from[1]) : 0),
        0,
      ),
    );
    // Two rims of π 18 at least; what lies where tiles overlap stands on both.
    expect(lengths.reduce((sum, length) => sum + length, 0)).toBeGreaterThan(2 * Math.PI * 18 * 0.999);
    expect(pages.filter(({ marks }) => textOf(marks).includes('lay')).length).toBe(0);
    expect(pages.filter(({ marks }) => textOf(marks).includes('tile ')).length).toBe(6);
  });
});
