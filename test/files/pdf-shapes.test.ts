import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { readDrawingFonts } from '../../src/cli/drawing-fonts.ts';
import type { Mark } from '../../src/drawing/drawing.ts';
import { drawBox, drawLine } from '../../src/drawing/marks.ts';
import { writePdf } from '../../src/files/pdf/write-pdf.ts';

const fonts = readDrawingFonts();
const details = { title: 't', author: 'a', subject: 's', date: new Date('2026-01-01T00:00:00Z'), language: 'en' };

/** A path as pdf.js paints it: what is done with it, the box around it [mm], and what was set when it was painted. */
interface Path {
  readonly paint: string;
  /** Least x and y, greatest x and y. */
  readonly box: readonly number[];
  readonly width: number;
  readonly dash: readonly number[];
  readonly stroke: string;
  readonly fill: string;
}

/** Paints of a page by their name; a line, an outline of an area, an area. */
const PAINTS: Readonly<Record<number, string>> = {
  [OPS.stroke]: 'line',
  [OPS.eoFill]: 'area',
  [OPS.eoFillStroke]: 'area with outline',
};

/** The paths of a page, and how many mm a unit of its coordinates is, by pdf.js. */
async function readPaths(
  ...marks: readonly Mark[]
): Promise<{ readonly unit: number; readonly paths: readonly Path[] }> {
  const bytes = await writePdf([{ drawing: { width: 210, height: 297, marks }, bookmark: null }], details, fonts);
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const page = await (await task.promise).getPage(1);
  const list = await page.getOperatorList();
  let set = { width: 1, dash: [] as readonly number[], stroke: '', fill: '' };
  // Each transform of the page multiplies onto the last: scale of x, scale of y and offset of y are all that is used.
  let [scaleX, scaleY, offsetY] = [1, 1, 0];
  const paths: Path[] = [];
  for (const [k, code] of list.fnArray.entries()) {
    const given = list.argsArray[k] as unknown[];
    if (code === OPS.transform) {
      const [a, , , d, , f] = given as number[];
      offsetY += scaleY * f!;
      scaleX *= a!;
      scaleY *= d!;
    } else if (code === OPS.setLineWidth) set = { ...set, width: given[0] as number };
    else if (code === OPS.setDash) set = { ...set, dash: [...(given[0] as number[])] };
    else if (code === OPS.setStrokeRGBColor) set = { ...set, stroke: String(given[0]) };
    else if (code === OPS.setFillRGBColor) set = { ...set, fill: String(given[0]) };
    else if (code === OPS.constructPath) {
      const [paint, , box] = given as [number, unknown, ArrayLike<number>];
      paths.push({ ...set, paint: PAINTS[paint] ?? `operator ${paint}`, box: Array.from(box) });
    }
  }
  await task.destroy();
  expect(scaleY).toBeCloseTo(scaleX, 6);
  expect(offsetY).toBeCloseTo(0, 3);
  return { unit: (scaleX * 25.4) / 72, paths };
}

const near = (box: readonly number[]) => box.map((value) => Number(value.toFixed(2)));

describe('lines and areas of a PDF, as pdf.js paints them', () => {
  it('are where their marks are, in mm, y up', async () => {
    const { unit, paths } = await readPaths(
      drawLine('outline', [10, 20], [60, 25], 'thick'),
      drawBox('opening', [100, 200], 30, 40, 'medium'),
      { kind: 'circle', layer: 'insert', at: [50, 60], radius: 7, pen: 'thin', fill: 'none' },
      { kind: 'arc', layer: 'datum', at: [50, 60], radius: 10, from: 0, to: Math.PI / 2, pen: 'thin' },
      { kind: 'arc', layer: 'datum', at: [50, 60], radius: 10, from: Math.PI / 2, to: 0, pen: 'thin' },
      { kind: 'arc', layer: 'datum', at: [50, 60], radius: 10, from: Math.PI / 4, to: (3 * Math.PI) / 4, pen: 'thin' },
    );
    expect(unit).toBeCloseTo(1, 6);
    expect(paths.map(({ box }) => near(box))).toEqual([
      [10, 20, 60, 25],
      [100, 200, 130, 240],
      [43, 53, 57, 67],
      [50, 60, 60, 70],
      [40, 50, 60, 70],
      // 10 mm × cos 45° to either side; it bulges to the whole radius, no further.
      [42.93, 67.07, 57.07, 70],
    ]);
    expect(new Set(paths.map(({ paint }) => paint))).toEqual(new Set(['line']));
  });

  it('have the width, dashes and grey of their pen', async () => {
    const { paths } = await readPaths(
      drawLine('outline', [0, 10], [90, 10], 'thick'),
      drawLine('form', [0, 20], [90, 20], 'dashed'),
      drawLine('bar', [0, 30], [90, 30], 'faint'),
      drawLine('outline', [0, 40], [90, 40], 'hair'),
    );
    expect(paths.map(({ width, dash, stroke }) => [width, dash, stroke])).toEqual([
      [0.7, [], '#000000'],
      [0.25, [3, 1.5], '#000000'],
      [0.25, [], '#737373'],
      [0.13, [], '#000000'],
    ]);
  });

  it('are filled as asked, and only there', async () => {
    const { paths } = await readPaths(
      drawBox('frame', [0, 0], 10, 10, null, 'black'),
      drawBox('frame', [20, 0], 10, 10, 'thin', 'light'),
      drawBox('frame', [40, 0], 10, 10, 'thin', 'none'),
      drawBox('frame', [60, 0], 10, 10, null, 'none'),
      { kind: 'circle', layer: 'insert', at: [90, 5], radius: 5, pen: null, fill: 'white' },
    );
    expect(paths.map(({ paint }) => paint)).toEqual(['area', 'area with outline', 'line', 'area']);
    expect([paths[0]!, paths[1]!, paths[3]!].map(({ fill }) => fill)).toEqual(['#000000', '#ebebeb', '#ffffff']);
  });

  it('are hatched inside their outline, circles too', async () => {
    const { paths } = await readPaths(drawBox('section', [100, 200], 30, 40, 'medium', 'hatch'), {
      kind: 'circle',
      layer: 'section',
      at: [50, 50],
      radius: 20,
      pen: 'medium',
      fill: 'hatch',
    });
    expect(paths.map(({ paint, width }) => [paint, width])).toEqual([
      ['line', 0.13],
      ['line', 0.35],
      ['line', 0.13],
      ['line', 0.35],
    ]);
    for (const [k, outline] of [1, 3].entries()) {
      const [hatching, around] = [paths[2 * k]!.box, paths[outline]!.box];
      expect(hatching[0]! >= around[0]! - 0.01 && hatching[1]! >= around[1]! - 0.01).toBe(true);
      expect(hatching[2]! <= around[2]! + 0.01 && hatching[3]! <= around[3]! + 0.01).toBe(true);
      expect(hatching[2]! - hatching[0]!).toBeGreaterThan(0.9 * (around[2]! - around[0]!));
    }
  });

  it('have the shape of each symbol in its place', async () => {
    const shape = [drawLine('insert', [0, 0], [4, 1], 'hair')];
    const { paths } = await readPaths({
      kind: 'symbol',
      layer: 'insert',
      name: 'A',
      at: [30, 40],
      turn: Math.PI / 2,
      scale: 2,
      shape,
      attributes: [],
    });
    expect(paths.map(({ box }) => near(box))).toEqual([[28, 40, 30, 48]]);
  });
});
