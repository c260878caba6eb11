import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import type { Mark } from '../../src/drawing/drawing.ts';
import { drawBox, drawLine, drawPath, drawText } from '../../src/drawing/marks.ts';
import { measureText } from '../../src/drawing/text-size.ts';
import { writeSvg } from '../../src/files/svg/write-svg.ts';

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  text: string;
}

/** Elements of an SVG, read by a strict XML reader: a fault of the file throws. */
function readSvg(text: string): readonly Element[] {
  const parser = new SaxesParser();
  const elements: Element[] = [];
  const open: Element[] = [];
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element = { name, attributes, text: '' };
    elements.push(element);
    open.push(element);
  });
  parser.on('closetag', () => open.pop());
  parser.on('text', (part) => {
    if (open.length > 0) open.at(-1)!.text += part;
  });
  parser.write(text).close();
  return elements;
}

const write = (...marks: readonly Mark[]) => writeSvg({ width: 420, height: 297, marks }, 'Panel & <form>');
const readMarks = (...marks: readonly Mark[]) =>
  readSvg(write(...marks)).filter(({ attributes }) => attributes.class !== undefined);

describe('an SVG read back by a strict XML reader', () => {
  it('is as large as its drawing and has its title', () => {
    const [svg, title] = readSvg(write());
    expect(svg!.attributes).toMatchObject({ width: '420mm', height: '297mm', viewBox: '0 0 420 297' });
    expect(title).toMatchObject({ name: 'title', text: 'Panel & <form>' });
  });

  it('has lines and boxes with y turned downward, and pens by their table', () => {
    const [line, box, path] = readMarks(
      drawLine('bar', [10, 20], [30, 97], 'dashed'),
      drawBox('opening', [100, 200], 30, 40, 'thick', 'grey'),
      drawPath(
        'dimension',
        [
          [0, 0],
          [5, 5],
        ],
        'faint',
      ),
    );
    expect(line!.attributes).toMatchObject({
      class: 'bar',
      d: 'M10 277L30 200',
      stroke: '#000000',
      'stroke-width': '0.25',
      'stroke-dasharray': '3 1.5',
    });
    expect(box!.attributes).toMatchObject({
      class: 'opening',
      d: 'M100 97L130 97L130 57L100 57Z',
      'fill-rule': 'evenodd',
      'stroke-width': '0.7',
      fill: '#c7c7c7',
    });
    expect(path!.attributes.stroke).toBe('#737373');
    expect(path!.attributes.d).toBe('M0 297L5 292');
  });

  it('has arcs counter-clockwise as the drawing means them', () => {
    const arc = (from: number, to: number) =>
      readMarks({ kind: 'arc', layer: 'datum', at: [50, 97], radius: 10, from, to, pen: 'thin' })[0]!.attributes.d;
    // Flags of an arc: long or not, and turning against the clock (0 with y downward).
    expect(arc(0, Math.PI / 2)).toBe('M60 200A10 10 0 0 0 50 190');
    expect(arc(Math.PI / 2, 0)).toBe('M50 190A10 10 0 1 0 60 200');
  });

  it('has hatching below the outline of what is hatched, a hole left open', () => {
    const marks = readMarks({
      kind: 'area',
      layer: 'section',
      rings: [
        [
          [0, 0],
          [40, 0],
          [40, 40],
          [0, 40],
        ],
        [
          [10, 10],
          [30, 10],
          [30, 30],
          [10, 30],
        ],
      ],
      pen: 'medium',
      fill: 'hatch',
    });
    expect(marks.length).toBe(2);
    expect(marks[0]!.attributes).toMatchObject({ class: 'section', 'stroke-width': '0.13' });
    expect(marks[0]!.attributes.d!.split('M').length).toBeGreaterThan(20);
    expect(marks[1]!.attributes.fill).toBeUndefined();
  });

  it('has circles, hatched ones too', () => {
    const circle = { kind: 'circle', layer: 'insert', at: [20, 97], radius: 4, pen: 'thin' } as const;
    const [plain, lines, hatched] = readMarks({ ...circle, fill: 'white' }, { ...circle, fill: 'hatch' });
    expect(plain).toMatchObject({ name: 'circle', attributes: { cx: '20', cy: '200', r: '4', fill: '#ffffff' } });
    expect(lines!.name).toBe('path');
    expect(hatched!.attributes.fill).toBeUndefined();
  });

  it('has texts as they are, where they are, held to their width', () => {
    const given = '<b> & "Ø" ’ 5 < 7';
    const mark = drawText([50, 97], given, 4, { align: 'end', baseline: 'top', turn: Math.PI / 2, weight: 'bold' });
    const [text] = readMarks(mark);
    expect(text!.text).toBe(given);
    // A capital is 0.729 × 4 mm = 2.916 mm high; turned upward its top lies toward smaller x.
    expect(text!.attributes).toMatchObject({
      x: '52.916',
      y: '200',
      transform: 'rotate(-90 52.916 200)',
      'text-anchor': 'end',
      'font-weight': 'bold',
      'font-size': '4',
    });
    expect(Number(text!.attributes.textLength)).toBeCloseTo(measureText(given, 4, 'bold'), 3);
  });

  it('has the shape of each symbol in its place', () => {
    const shape = [drawLine('insert', [0, 0], [2, 0], 'hair')];
    const [line] = readMarks({
      kind: 'symbol',
      layer: 'insert',
      name: 'A',
      at: [10, 97],
      turn: Math.PI / 2,
      scale: 3,
      shape,
      attributes: [{ tag: 'NUMBER', text: '1' }],
    });
    expect(line!.attributes.d).toBe('M10 200L10 194');
  });

  it('is the same text for the same drawing', () => {
    expect(write(drawText([1, 2], 'a', 3))).toBe(write(drawText([1, 2], 'a', 3)));
  });
});
