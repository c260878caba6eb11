import { parseString } from 'dxf';
import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import type { Drawing, Mark, SymbolMark } from '../../src/drawing/drawing.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import { LAYER_NAMES } from '../../src/drawing/layers.ts';
import { drawBox, drawLine, drawPath, drawText } from '../../src/drawing/marks.ts';
import { measureText } from '../../src/drawing/text-size.ts';
import { writeDxf } from '../../src/files/dxf/write-dxf.ts';

const options = { scale: 20, layers: LAYER_NAMES };
const panel = (marks: readonly Mark[]): Drawing => ({ width: 6000, height: 3000, marks });

const cross: readonly Mark[] = [
  { kind: 'circle', layer: 'insert', at: [0, 0], radius: 12, pen: 'medium', fill: 'none' },
  drawLine('insert', [-20, 0], [20, 0], 'hair'),
];
const insert = (number: number, x: number, y: number, over: Partial<SymbolMark> = {}): SymbolMark => ({
  kind: 'symbol',
  layer: 'insert',
  name: 'INSERT-A',
  at: [x, y],
  turn: 0,
  scale: 1,
  shape: cross,
  attributes: [
    { tag: 'NUMBER', text: String(number) },
    { tag: 'THREAD', text: 'M16 – Ø' },
  ],
  ...over,
});

/** What one reader of the registry makes of a file. dxf-parser drops attributes and hatching. */
const readOne = (text: string) => new DxfParser().parseSync(text)!;
/** What another one makes of it. */
const readOther = parseString;

/** Groups of a DXF text: code and value. */
function readGroups(text: string): readonly (readonly [code: number, value: string])[] {
  const lines = text.split('\r\n').slice(0, -1);
  expect(lines.length % 2).toBe(0);
  return Array.from({ length: lines.length / 2 }, (_, k) => [Number(lines[2 * k]), lines[2 * k + 1]!] as const);
}

/** Text as a drawing program shows it: \U+XXXX is a sign. */
const decode = (text: string) =>
  text.replace(/\\U\+([0-9A-F]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

describe('a DXF file read back by two readers', () => {
  it('says version, millimetres, extents', () => {
    const text = writeDxf(panel([drawBox('outline', [10, 20], 6000, 3000, 'thick')]), options);
    const { header } = readOne(text);
    expect(header.$ACADVER).toBe('AC1015');
    expect(header.$INSUNITS).toBe(4);
    expect(header.$MEASUREMENT).toBe(1);
    expect(header.$EXTMIN).toMatchObject({ x: 10, y: 20 });
    expect(header.$EXTMAX).toMatchObject({ x: 6010, y: 3020 });
    expect(readOther(text).header).toMatchObject({ insUnits: 4, extMax: { x: 6010, y: 3020 } });
  });

  it('has inserts where they are, with number and thread as attributes', () => {
    const places = [
      [400, 2600],
      [1234.5, 150.25],
      [5999.125, 2999],
    ] as const;
    const text = writeDxf(panel(places.map(([x, y], k) => insert(k + 1, x, y, { turn: k * 0.5 }))), options);
    const inserts = readOne(text).entities.filter(({ type }) => type === 'INSERT') as unknown as {
      name: string;
      position: { x: number; y: number };
      rotation?: number;
    }[];
    expect(inserts.map(({ name, position }) => [name, position.x, position.y])).toEqual(
      places.map(([x, y]) => ['INSERT-A', x, y]),
    );
    const other = readOther(text);
    const others = other.entities.filter(({ type }) => type === 'INSERT');
    expect(others.map(({ block, x, y }) => [block, x, y])).toEqual(places.map(([x, y]) => ['INSERT-A', x, y]));
    for (const [k, { rotation }] of others.entries()) expect(rotation ?? 0).toBeCloseTo((k * 0.5 * 180) / Math.PI, 6);
    const raw = readGroups(text);
    const attributes = raw.flatMap(([code, value], k) => {
      if (code !== 0 || value !== 'ATTRIB') return [];
      const end = raw.findIndex(([next], i) => i > k && next === 0);
      const own = raw.slice(k, end);
      return [[own.find(([c]) => c === 2)![1], decode(own.find(([c]) => c === 1)![1])]];
    });
    expect(attributes).toEqual(
      [1, 2, 3].flatMap((n) => [
        ['NUMBER', String(n)],
        ['THREAD', 'M16 – Ø'],
      ]),
    );
    expect(other.entities.filter(({ type }) => type === 'ATTRIB').length).toBe(6);
    expect(other.blocks.find(({ name }) => name === 'INSERT-A')!.entities.map(({ type }) => type)).toEqual([
      'CIRCLE',
      'LINE',
      'ATTDEF',
      'ATTDEF',
    ]);
  });

  it('has lines, polygons, circles and arcs with their numbers on their layers', () => {
    const marks: readonly Mark[] = [
      drawLine('bar', [1, 2], [300.25, -4], 'faint'),
      drawPath(
        'dimension',
        [
          [0, 0],
          [5, 5],
          [10, 0],
        ],
        'thin',
      ),
      drawBox('opening', [100, 200], 30, 40, 'medium', 'hatch'),
      { kind: 'circle', layer: 'form', at: [7, 8], radius: 9.5, pen: 'dashed', fill: 'none' },
      { kind: 'arc', layer: 'datum', at: [0, 0], radius: 50, from: -Math.PI / 6, to: Math.PI / 2, pen: 'dash-dot' },
    ];
    const text = writeDxf(panel(marks), options);
    const seen = readOne(text).entities as unknown as Record<string, unknown>[];
    expect(seen).toMatchObject([
      {
        type: 'LINE',
        layer: 'ONEPOUR-BAR',
        vertices: [
          { x: 1, y: 2 },
          { x: 300.25, y: -4 },
        ],
        lineweight: 25,
      },
      { type: 'LWPOLYLINE', layer: 'ONEPOUR-DIMENSION', shape: false },
      { type: 'LWPOLYLINE', layer: 'ONEPOUR-OPENING', shape: true, lineweight: 35 },
      { type: 'CIRCLE', layer: 'ONEPOUR-FORM', center: { x: 7, y: 8 }, radius: 9.5, lineType: 'ONEPOUR-DASHED' },
      { type: 'ARC', layer: 'ONEPOUR-DATUM', radius: 50, lineType: 'ONEPOUR-DASH-DOT' },
    ]);
    const other = readOther(text).entities;
    expect(other.map(({ type, layer }) => [type, layer])).toEqual([
      ['LINE', 'ONEPOUR-BAR'],
      ['LWPOLYLINE', 'ONEPOUR-DIMENSION'],
      ['HATCH', 'ONEPOUR-OPENING'],
      ['LWPOLYLINE', 'ONEPOUR-OPENING'],
      ['CIRCLE', 'ONEPOUR-FORM'],
      ['ARC', 'ONEPOUR-DATUM'],
    ]);
    expect(other[3]).toMatchObject({
      closed: true,
      vertices: [
        { x: 100, y: 200 },
        { x: 130, y: 200 },
        { x: 130, y: 240 },
        { x: 100, y: 240 },
      ],
    });
    expect(other[4]).toMatchObject({ x: 7, y: 8, r: 9.5 });
    const arc = other[5] as unknown as { startAngle: number; endAngle: number };
    expect(arc.startAngle).toBeCloseTo((330 * Math.PI) / 180, 6);
    expect(arc.endAngle).toBeCloseTo(Math.PI / 2, 6);
  });

  it('has dashes and hatching as large as the scale of plotting wants', () => {
    const text = writeDxf(panel([drawBox('section', [0, 0], 30, 40, null, 'hatch')]), options);
    const types = readOne(text).tables as unknown as {
      lineType: { lineTypes: Record<string, { pattern: number[]; patternLength: number }> };
    };
    // Dashes of 3 mm and gaps of 1.5 mm on paper, at 1:20.
    expect(types.lineType.lineTypes['ONEPOUR-DASHED']).toMatchObject({ pattern: [60, -30], patternLength: 90 });
    // Lines 1.6 mm apart on paper: 32 mm, at 45° so 22.627 mm each way.
    const [hatch] = readOther(text).entities as unknown as [
      { pattern: { angle: number; offsetX: number; offsetY: number } },
    ];
    expect(hatch.pattern.angle).toBe(45);
    expect(hatch.pattern.offsetX).toBeCloseTo(-22.627, 3);
    expect(hatch.pattern.offsetY).toBeCloseTo(22.627, 3);
  });

  it('has texts at 1:1, as high as they are on paper times the scale, every sign readable', () => {
    const given = 'Ø16 · 50 %% \\P ^J “façade” 100 % Ж';
    const mark = drawText([100, 200], given, 3, { align: 'end', baseline: 'middle', turn: Math.PI / 2, tone: 'grey' });
    const text = writeDxf(panel([mark]), options);
    expect(/^[\x20-\x7e\r\n]*$/.test(text)).toBe(true);
    const [one] = readOne(text).entities as unknown as {
      text: string;
      textHeight: number;
      rotation: number;
      startPoint: { x: number; y: number };
    }[];
    expect(decode(one!.text)).toBe(given);
    // No control code is left for a program to obey.
    expect(one!.text).not.toMatch(/%%|\^|\\P/);
    expect(one!.rotation).toBeCloseTo(90, 6);
    // A capital is 0.729 of the size of 3 mm, at 1:20.
    expect(one!.textHeight).toBeCloseTo(0.729 * 60, 2);
    expect(one!.startPoint.x).toBeCloseTo(100 + (0.729 * 60) / 2, 2);
    expect(one!.startPoint.y).toBeCloseTo(200 - measureText(given, 60), 6);
    const [other] = readOther(text).entities as unknown as {
      string: string;
      x2: number;
      y2: number;
      hAlign: number;
      vAlign: number;
    }[];
    expect(other).toMatchObject({ x2: 100, y2: 200, hAlign: 2, vAlign: 2 });
    expect(decode(other!.string)).toBe(given);
  });

  it('takes a firm’s own names of layers', () => {
    const layers = { ...LAYER_NAMES, insert: 'PRECAST FIXINGS', datum: 'S-REF_1' };
    const text = writeDxf(panel([insert(1, 5, 6)]), { scale: 10, layers });
    expect(readOther(text).entities[0]).toMatchObject({ layer: 'PRECAST FIXINGS' });
    expect(Object.keys(readOther(text).tables.layers)).toEqual(['0', ...Object.values(layers)]);
  });

  it('refuses what cannot stand in such a file, and names it', () => {
    const write = (marks: readonly Mark[], layers = LAYER_NAMES) => writeDxf(panel(marks), { scale: 20, layers });
    expect(() => write([], { ...LAYER_NAMES, bar: 'BARS|A' })).toThrow(DrawingError);
    expect(() => write([], { ...LAYER_NAMES, bar: 'BARS|A' })).toThrow('the layer "BARS|A"');
    expect(() => write([insert(1, 0, 0), insert(2, 9, 9, { shape: [] })])).toThrow(
      'two symbols are named "INSERT-A" but differ',
    );
    expect(() => write([insert(1, 0, 0, { name: 'Å' })])).toThrow('the symbol "Å"');
    expect(() => write([insert(1, 0, 0, { attributes: [{ tag: 'no tag', text: '' }] })])).toThrow('"no tag"');
    expect(() => write([drawText([0, 0], '漢', 3)])).toThrow('U+6F22');
    expect(() => write([drawLine('bar', [0, 0], [Infinity, 0], 'thin')])).toThrow(RangeError);
  });

  it('gives each object a handle of its own, each owner is there, and the next free one is named', () => {
    const text = writeDxf(panel([insert(1, 5, 6), insert(2, 7, 8), drawText([0, 0], 'A', 3)]), options);
    const groups = readGroups(text);
    const handles = groups.flatMap(([code, value], k) =>
      (code === 5 && groups[k - 1]![1] !== '$HANDSEED') || code === 105 ? [Number.parseInt(value, 16)] : [],
    );
    expect(handles.length).toBeGreaterThan(40);
    expect(new Set(handles).size).toBe(handles.length);
    const seed = groups[groups.findIndex(([, value]) => value === '$HANDSEED') + 1]![1];
    expect(Number.parseInt(seed, 16)).toBe(Math.max(...handles) + 1);
    const owners = groups.flatMap(([code, value]) => (code === 330 ? [Number.parseInt(value, 16)] : []));
    expect(owners.every((owner) => owner === 0 || handles.includes(owner))).toBe(true);
  });

  it('is the same text for the same drawing', () => {
    const make = () => writeDxf(panel([insert(1, 5, 6), drawBox('outline', [0, 0], 9, 9, 'thick', 'grey')]), options);
    expect(make()).toBe(make());
  });
});
