import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { readDrawingFonts } from '../../src/cli/drawing-fonts.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import { UNITS_PER_EM, WIDTH_BLOCKS } from '../../src/drawing/font-widths.ts';
import { CAP_HEIGHT, measureText, wrapText } from '../../src/drawing/text-size.ts';

const fonts = readDrawingFonts();

/** Every sign of the table of a weight that is drawn by itself (not the space, not marks that join another letter). */
function listSigns(weight: 'plain' | 'bold'): readonly string[] {
  return WIDTH_BLOCKS.flatMap((block) =>
    block[weight].split(' ').flatMap((units, k) => (units === '-' ? [] : [String.fromCodePoint(block.first + k)])),
  );
}

describe('widths of signs', () => {
  it.each(['plain', 'bold'] as const)('are those of the font itself, %s, as fontkit reads it', (weight) => {
    const document = new PDFDocument({ font: '' });
    document.registerFont('own', fonts[weight]);
    document.font('own', 1000);
    const signs = listSigns(weight);
    expect(signs.length).toBeGreaterThan(2000);
    const differing = signs.filter(
      (sign) =>
        // A sign that Unicode writes as another one is measured as that one.
        sign === sign.normalize('NFC') &&
        Math.abs(document.widthOfString(sign) - measureText(sign, 1000, weight)) > 1e-6,
    );
    expect(differing).toEqual([]);
  });

  it('have the letters of the languages of a yard, and the signs of a drawing', () => {
    const needed =
      'AaÄäÅåÆæØøÐðÞþŁłŻżŠšČčŘřŐőŰűȘșȚțĞğıßÑñÇçÉéŒœαβγΔΩφЖжЩщЁёЇї0123456789²³½⌀Ø±×÷−≤≥≈°′″→←↑↓✓☐•–—…“”„‚€%‰';
    for (const weight of ['plain', 'bold'] as const) expect(() => measureText(needed, 3, weight)).not.toThrow();
  });

  it('are 0.572 of the size for a digit and 0.729 high for a capital', () => {
    // Read by hand from the font's tables: advance of "0" 1172, top of "H" 1493, 2048 units an em.
    expect(measureText('0', 1)).toBeCloseTo(1172 / 2048, 9);
    expect(CAP_HEIGHT).toBeCloseTo(1493 / 2048, 9);
    expect(UNITS_PER_EM).toBe(2048);
  });

  it('add up, grow with the size, and take a letter and its mark as one', () => {
    expect(measureText('AV', 3)).toBeCloseTo(measureText('A', 3) + measureText('V', 3), 9);
    expect(measureText('Øresund', 6, 'bold')).toBeCloseTo(2 * measureText('Øresund', 3, 'bold'), 9);
    expect(measureText('e\u0301', 3)).toBe(measureText('é', 3));
    expect(measureText('', 3)).toBe(0);
  });

  it('are refused for signs that the font lacks: other scripts, line feeds, tabs', () => {
    for (const [text, code] of [
      ['漢', 'U+6F22'],
      ['two\nlines', 'U+000A'],
      ['a\tb', 'U+0009'],
      ['😀', 'U+1F600'],
    ] as const) {
      expect(() => measureText(text, 3)).toThrow(DrawingError);
      expect(() => measureText(text, 3)).toThrow(code);
    }
  });
});

describe('turning a text into lines', () => {
  const words = fc.array(fc.constantFrom('insert', 'M16', 'a', 'Trowelled', '–', 'x'.repeat(30), 'Ø', ''), {
    maxLength: 12,
  });

  it('loses no letter, and no line is wider than it may be', () => {
    fc.assert(
      fc.property(
        words,
        fc.integer({ min: 8, max: 80 }),
        fc.constantFrom('plain', 'bold' as const),
        (list, width, weight) => {
          const text = list.join(' ');
          const lines = wrapText(text, 3, weight, width);
          expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
          for (const line of lines) expect(measureText(line, 3, weight)).toBeLessThanOrEqual(width);
        },
      ),
    );
  });

  it('turns at spaces as late as it can', () => {
    const width = measureText('one two', 3) + 0.01;
    expect(wrapText('one two six ten', 3, 'plain', width)).toEqual(['one two', 'six ten']);
    expect(wrapText('one two', 3, 'plain', width - 0.02)).toEqual(['one', 'two']);
  });

  it('breaks a word only where it alone is too wide, and keeps line feeds', () => {
    expect(wrapText('no 0000000000', 3, 'plain', measureText('00000', 3) + 0.01)).toEqual(['no', '00000', '00000']);
    expect(wrapText('one\n\ntwo', 3, 'plain', 50)).toEqual(['one', '', 'two']);
    expect(wrapText('ab', 3, 'plain', 0.1)).toEqual(['a', 'b']);
  });
});
