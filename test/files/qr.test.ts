import fc from 'fast-check';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import type { AreaMark } from '../../src/drawing/drawing.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import { drawQr, findQrModules, findQrRoom, LEAST_QR_SIDE, QUIET_ZONE } from '../../src/files/qr/qr-marks.ts';

/** What jsQR reads in a picture of so many pixels a side, dark where `isDark` says so (y downward). */
function decode(size: number, isDark: (x: number, y: number) => boolean): string | null {
  const pixels = new Uint8ClampedArray(4 * size * size);
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) {
      const at = 4 * (y * size + x);
      pixels.fill(isDark(x, y) ? 0 : 255, at, at + 3);
      pixels[at + 3] = 255;
    }
  const found = jsQR(pixels, size, size);
  return found === null ? null : new TextDecoder().decode(new Uint8Array(found.binaryData));
}

/** A page of white paper with the mark on it, as a printer of so many dots a mm makes it. */
function print(mark: AreaMark, side: number, dots: number): (x: number, y: number) => boolean {
  const dark = new Set<number>();
  const size = Math.round(side * dots);
  for (const ring of mark.rings) {
    const xs = ring.map(([x]) => x);
    const ys = ring.map(([, y]) => y);
    for (let y = Math.ceil(Math.min(...ys) * dots - 0.5); y + 0.5 < Math.max(...ys) * dots; y++)
      for (let x = Math.ceil(Math.min(...xs) * dots - 0.5); x + 0.5 < Math.max(...xs) * dots; x++)
        dark.add((size - 1 - y) * size + x);
  }
  return (x, y) => dark.has(y * size + x);
}

describe('QR codes read by another program', () => {
  it('say what they were given, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 120 }), (text) => {
        const modules = findQrModules(text);
        const size = (modules.length + 8) * 4;
        const isDark = (x: number, y: number) => modules[Math.floor(y / 4) - 4]?.[Math.floor(x / 4) - 4] === true;
        expect(decode(size, isDark)).toBe(text);
      }),
      { numRuns: 25 },
    );
  });

  it('are read from paper at 150 dots an inch, 30 mm wide, and not mirrored', () => {
    const text = 'SQ-07|piece 3|revision C';
    const room = findQrRoom(30, text);
    const quiet = (room - 30) / 2;
    const mark = drawQr([quiet, quiet], 30, text);
    const dots = 150 / 25.4;
    expect(decode(Math.round(room * dots), print(mark, room, dots))).toBe(text);
  });

  it('have their three corner marks above and at the lower corner of least x, each module where it belongs', () => {
    const text = 'SQ-07|piece 3|revision C';
    const modules = findQrModules(text);
    const count = modules.length;
    // Two mm a module, one dot a module.
    const isDark = print(drawQr([0, 0], 2 * count, text), 2 * count, 0.5);
    for (const [r, row] of modules.entries())
      for (const [c, module] of row.entries()) expect(isDark(c, r)).toBe(module);
    // A corner mark has a dark rim of 7 modules (ISO/IEC 18004, 6.3.3).
    const hasRim = (x: number, y: number) =>
      Array.from({ length: 7 }, (_, k) => isDark(x + k, y) && isDark(x, y + k)).every(Boolean);
    expect([hasRim(0, 0), hasRim(count - 7, 0), hasRim(0, count - 7), hasRim(count - 7, count - 7)]).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  it('bear a quarter of damage: a smudge of 15 % of the width in the middle', () => {
    const text = 'SQ-07|piece 3|revision C';
    const modules = findQrModules(text);
    const size = (modules.length + 8) * 4;
    const [low, high] = [size * 0.45, size * 0.6];
    const isSmudged = (x: number, y: number) => x > low && x < high && y > low && y < high;
    const isDark = (x: number, y: number) =>
      isSmudged(x, y) || modules[Math.floor(y / 4) - 4]?.[Math.floor(x / 4) - 4] === true;
    expect(decode(size, isDark)).toBe(text);
  });

  it('keep to the side they were given, with 4 light modules around', () => {
    const mark = drawQr([100, 50], 32, 'SQ-07');
    const xs = mark.rings.flat().map(([x]) => x);
    const ys = mark.rings.flat().map(([, y]) => y);
    expect([Math.min(...xs), Math.min(...ys)]).toEqual([100, 50]);
    expect(Math.max(...xs)).toBeCloseTo(132, 9);
    expect(Math.max(...ys)).toBeCloseTo(82, 9);
    expect(mark).toMatchObject({ fill: 'black', pen: null });
    expect(QUIET_ZONE).toBe(4);
    // Version 1 has 21 modules (ISO/IEC 18004, table 1): 32 mm × 29 / 21.
    expect(findQrModules('SQ-07').length).toBe(21);
    expect(findQrRoom(32, 'SQ-07')).toBeCloseTo((32 * 29) / 21, 9);
  });

  it('are refused when too small, empty or too long', () => {
    expect(LEAST_QR_SIDE).toBe(30);
    expect(() => drawQr([0, 0], 29.9, 'SQ-07')).toThrow(DrawingError);
    expect(() => findQrModules('')).toThrow(DrawingError);
    // Version 40, level Q, bytes: 1663 (ISO/IEC 18004, table 7; recalled).
    expect(findQrModules('x'.repeat(1663)).length).toBe(177);
    expect(() => findQrModules('x'.repeat(1664))).toThrow('1664 bytes');
  });
});
