import { describe, expect, it } from 'vitest';
import { boxOfMarks } from '../../src/drawing/boxes.ts';
import { drawLegend, insertSymbol } from '../../src/drawing/insert-symbol.ts';
import { expandSymbols } from '../../src/drawing/place.ts';
import { PLACES, ROLES } from '../../src/drawing/symbol-shapes.ts';
import { sampleGroup } from './detail-sample.ts';
import { findOverhang, findOverlaps, listTexts, textOf } from './picture-checks.ts';

const item = sampleGroup([[900, 500]], { face: 'outside' }).setOut.items[0]!;
const kinds = ROLES.flatMap((role) =>
  PLACES.map((place) => ({ ...item, place, castIn: { ...item.castIn, role }, side: 'wall rail' })),
);

describe('symbols of inserts', () => {
  it('have a name and a shape of their own for each role and face', () => {
    const symbols = kinds.map((kind) => insertSymbol(kind, [0, 0], 2));
    expect(new Set(symbols.map(({ name }) => name)).size).toBe(21);
    expect(new Set(symbols.map(({ shape }) => JSON.stringify(shape))).size).toBe(21);
  });

  it('carry what a reader of the DXF file asks for', () => {
    const { attributes } = insertSymbol({ ...item, number: 7, connection: null }, [10, 20], 2);
    expect(Object.fromEntries(attributes.map(({ tag, text }) => [tag, text]))).toEqual({
      NUMBER: '7',
      TYPE: 'F16',
      FACE: 'mould face, OUTSIDE',
      CONNECTION: '-',
      ROLE: 'fixing',
    });
  });

  it('have their middle where the insert is, and the size that is asked for', () => {
    const box = boxOfMarks([insertSymbol(item, [10, 20], 2)])!;
    expect([box.x + box.width / 2, box.y + box.height / 2]).toEqual([expect.closeTo(10, 6), expect.closeTo(20, 6)]);
    expect(box.width).toBeCloseTo(4, 2);
  });

  it.each([
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
    [0.6, -0.8],
  ] as const)('on an edge show the solid half into the concrete, toward %d, %d', (x, y) => {
    for (const role of ROLES) {
      const edge = { ...item, place: 'edge' as const, castIn: { ...item.castIn, role }, inward: [x, y] as const };
      const marks = expandSymbols([insertSymbol({ ...edge, side: 'wall rail' }, [0, 0], 2)]);
      const solid = marks.flatMap((mark) => (mark.kind === 'area' && mark.fill === 'black' ? mark.rings.flat() : []));
      const inward = solid.map((point) => point[0] * x + point[1] * y);
      expect(Math.min(...inward), role).toBeGreaterThan(-1e-9);
      expect(Math.max(...inward), role).toBeGreaterThan(1);
    }
  });

  it('are solid on the mould face and open at the trowelled face', () => {
    const fills = (place: (typeof PLACES)[number]) =>
      insertSymbol({ ...item, place }, [0, 0], 1).shape.flatMap((mark) => (mark.kind === 'area' ? [mark.fill] : []));
    expect(fills('mould face')).toEqual(['black']);
    expect(fills('trowelled face')).toEqual(['white']);
  });
});

describe('the legend', () => {
  it('names what occurs and nothing else', () => {
    const { marks } = drawLegend([kinds[0]!, kinds[1]!, kinds[0]!, kinds[8]!], 92, 2.6);
    expect(marks.filter(({ kind }) => kind === 'symbol')).toHaveLength(3);
    expect(textOf(marks)).toContain('fixing insert: mould face (on the form)');
    expect(textOf(marks)).toContain('LIFTING – by others');
    expect(textOf(marks)).not.toContain('duct');
  });

  it('has every word in its column, none on another', () => {
    for (const width of [74, 92]) {
      const { marks, height } = drawLegend(kinds, width, 2.6);
      const raised = marks.map((mark) => ({
        ...mark,
        at: 'at' in mark ? ([mark.at[0], mark.at[1] + height] as const) : [0, 0],
      }));
      expect(findOverlaps(marks)).toEqual([]);
      expect(findOverhang(raised as typeof marks, { width, height })).toBe(0);
      expect(listTexts(marks).length).toBeGreaterThan(20);
    }
  });
});
