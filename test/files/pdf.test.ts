import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { readDrawingFonts } from '../../src/cli/drawing-fonts.ts';
import type { Drawing, Mark, TextMark } from '../../src/drawing/drawing.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import { drawBox, drawLine, drawText } from '../../src/drawing/marks.ts';
import { CAP_HEIGHT, measureText } from '../../src/drawing/text-size.ts';
import { type PdfPage, writePdf } from '../../src/files/pdf/write-pdf.ts';
import { findCut, findOverlaps, readPdf } from './read-pdf.ts';

const fonts = readDrawingFonts();
const details = {
  title: 'Set-out – Saltmarsh Quay',
  author: 'Form shop',
  subject: 'Boat store',
  date: new Date('2026-03-04T05:06:07Z'),
  language: 'en',
};
const A4 = { width: 210, height: 297 };

function pageOf(marks: readonly Mark[], size = A4, bookmark: string | null = null): PdfPage {
  const drawing: Drawing = { ...size, marks };
  return { drawing, bookmark };
}

const write = (...pages: readonly PdfPage[]) => writePdf(pages, details, fonts);
const readMarks = async (...marks: readonly Mark[]) => (await readPdf(await write(pageOf(marks)))).texts;

describe('a PDF read back by pdf.js', () => {
  it('has pages as large as their drawings, title and bookmarks', async () => {
    const pages = [pageOf([], A4, 'Cover'), pageOf([], { width: 420, height: 297 }, 'Panel Ø'), pageOf([])];
    const reading = await readPdf(await write(...pages));
    expect(reading.pages.map(([w, h]) => [w.toFixed(2), h.toFixed(2)])).toEqual([
      ['210.00', '297.00'],
      ['420.00', '297.00'],
      ['210.00', '297.00'],
    ]);
    expect(reading.title).toBe('Set-out – Saltmarsh Quay');
    expect(reading.bookmarks).toEqual(['Cover', 'Panel Ø']);
  });

  it('has each text where its mark puts it, as wide as it was measured', async () => {
    for (const turn of [0, Math.PI / 2, -0.3]) {
      for (const align of ['start', 'middle', 'end'] as const) {
        for (const baseline of ['bottom', 'middle', 'top'] as const) {
          const mark = drawText([100, 150], 'AVA fig. Tö 1740', 3.5, { turn, align, baseline, weight: 'bold' });
          const [text, ...others] = await readMarks(mark);
          expect(others).toEqual([]);
          expect(text!.text).toBe('AVA fig. Tö 1740');
          expect(text!.size).toBeCloseTo(3.5, 3);
          expect(text!.turn).toBeCloseTo(turn, 5);
          const width = measureText(mark.text, mark.size, mark.weight);
          expect(text!.width).toBeCloseTo(width, 2);
          // Worked by hand: back along the text by its share of the width, down across it by its share of a capital's height.
          const along = { start: 0, middle: 0.5, end: 1 }[align] * width;
          const down = { bottom: 0, middle: 0.5, top: 1 }[baseline] * CAP_HEIGHT * 3.5;
          expect(text!.x).toBeCloseTo(100 - along * Math.cos(turn) + down * Math.sin(turn), 2);
          expect(text!.y).toBeCloseTo(150 - along * Math.sin(turn) - down * Math.cos(turn), 2);
        }
      }
    }
  });

  it('has every letter that it was given: Latin, Greek, Cyrillic, signs', async () => {
    const given = ['Zażółć gęślą jaźń', 'ærøskøbing', 'φ ≤ 0,75 · Δx ±2', 'Щёлково', '⌀20 × 150 → ½ °C', '☐ ✓ “a” – …'];
    const texts = await readMarks(...given.map((text, k) => drawText([20, 20 + 10 * k], text, 3)));
    expect(texts.map(({ text }) => text)).toEqual(given);
  });

  it('puts a letter with a mark of its own as one', async () => {
    expect((await readMarks(drawText([20, 20], 'A\u030angstro\u0308m', 3))).map(({ text }) => text)).toEqual([
      'Ångström',
    ]);
  });

  it('refuses a text that it cannot show, and names it', async () => {
    await expect(readMarks(drawText([20, 20], 'bolt 螺栓', 3))).rejects.toThrow(
      new DrawingError(
        'the text "bolt 螺栓" has the sign U+87BA, which drawings cannot show; expected one line of Latin, Greek or Cyrillic letters, digits and signs',
      ),
    );
  });

  it('refuses a mark that lies nowhere', async () => {
    await expect(readMarks(drawLine('outline', [0, 0], [Number.NaN, 3], 'thin'))).rejects.toThrow(RangeError);
  });

  it('is the same, byte for byte, for the same input', async () => {
    const make = () =>
      write(pageOf([drawText([20, 20], 'Ø 16', 3), drawBox('outline', [10, 10], 90, 60, 'thick', 'hatch')], A4, 'One'));
    const [one, two] = [await make(), await make()];
    const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
    expect(hash(one)).toBe(hash(two));
    const later = await writePdf([pageOf([])], { ...details, date: new Date('2026-03-05T00:00:00Z') }, fonts);
    expect(hash(later)).not.toBe(hash(await write(pageOf([]))));
  });

  it('takes pages while they are made', async () => {
    let made = 0;
    function* make() {
      for (; made < 40; made++) yield pageOf([drawText([20, 20], `page ${made + 1}`, 3)]);
    }
    const reading = await readPdf(await writePdf(make(), details, fonts));
    expect(reading.texts.map(({ text, page }) => [text, page])).toEqual(
      Array.from({ length: 40 }, (_, k) => [`page ${k + 1}`, k + 1]),
    );
  });
});

describe('texts that lie on each other', () => {
  const at = (x: number, y: number, text: string, style: Partial<TextMark> = {}) => drawText([x, y], text, 3, style);

  it('are found, straight and turned', async () => {
    const width = measureText('first', 3);
    const overlapping = [
      [at(20, 20, 'first'), at(20 + width - 1, 20, 'second')],
      [at(20, 20, 'first'), at(20, 22, 'second')],
      [at(50, 50, 'first one'), at(54, 47, 'second', { turn: Math.PI / 2 })],
      [at(50, 50, 'first one'), at(52, 48, 'second', { turn: 0.7 })],
    ];
    for (const pair of overlapping) {
      const pairs = findOverlaps(await readMarks(...pair));
      expect(pairs.map(([a, b]) => [a.text, b.text])).toEqual([pair.map(({ text }) => text)]);
    }
  });

  it('are not seen where there are none', async () => {
    const width = measureText('first', 3);
    const apart = [
      [at(20, 20, 'first'), at(20 + width + 0.2, 20, 'second')],
      [at(20, 20, 'first'), at(20, 23.2, 'second')],
      // Boxes along x and y would overlap; the turned ones do not.
      [at(50, 50, 'first one', { turn: Math.PI / 4 }), at(55, 50, 'second', { turn: Math.PI / 4 })],
    ];
    for (const pair of apart) expect(findOverlaps(await readMarks(...pair))).toEqual([]);
    const pages = await readPdf(await write(pageOf([at(20, 20, 'first')]), pageOf([at(20, 20, 'second')])));
    expect(findOverlaps(pages.texts)).toEqual([]);
  });

  it('are told from texts that reach over the edge of the page', async () => {
    const reading = await readPdf(await write(pageOf([at(205, 20, 'over the edge'), at(20, 20, 'inside')])));
    expect(findCut(reading).map(({ text }) => text.slice(0, 4))).toEqual(['over']);
  });
});
