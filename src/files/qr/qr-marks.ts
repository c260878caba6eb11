import { encode } from 'uqr';
import type { AreaMark } from '../../drawing/drawing.ts';
import { DrawingError } from '../../drawing/drawing-error.ts';

/** Light modules around a code (ISO/IEC 18004, 4 on each side). */
export const QUIET_ZONE = 4;

/** Least side of a printed code without its quiet zone: read with a telephone, at arm's length, in rain [mm]. */
export const LEAST_QR_SIDE = 30;

/** Rows of modules, dark ones true, the first row on top; without the quiet zone. */
export type QrModules = readonly (readonly boolean[])[];

/**
 * Modules of the QR code of a text, level Q (about a quarter of it may be unreadable), bytes in UTF-8.
 * Throws DrawingError when the text is empty or longer than a code of level Q holds (1663 bytes).
 */
export function findQrModules(text: string): QrModules {
  if (text === '') throw new DrawingError('a QR code of an empty text was asked for; expected a text');
  try {
    return encode(text, { ecc: 'Q', boostEcc: false, border: 0 }).data;
  } catch {
    throw new DrawingError(
      `a text of ${new TextEncoder().encode(text).length} bytes does not go into a QR code; expected 1663 at most`,
    );
  }
}

/**
 * A QR code as one black area, `side` mm wide without its quiet zone, with `at` as its lower corner of least x. The quiet zone around it must
 * be left white by the sheet.
 * Throws DrawingError when it would be smaller than LEAST_QR_SIDE, or the text does not fit.
 */
export function drawQr(at: readonly [number, number], side: number, text: string): AreaMark {
  if (!(side >= LEAST_QR_SIDE))
    throw new DrawingError(`a QR code of ${side} mm was asked for; expected at least ${LEAST_QR_SIDE} mm`);
  const modules = findQrModules(text);
  const step = side / modules.length;
  // Neighbours of a row are one rectangle, so that no hair shows between them.
  const rings = modules.flatMap((row, r) =>
    findRuns(row).map(([from, to]): AreaMark['rings'][number] => {
      const [top, below] = [at[1] + side - r * step, at[1] + side - (r + 1) * step];
      return [
        [at[0] + from * step, below],
        [at[0] + to * step, below],
        [at[0] + to * step, top],
        [at[0] + from * step, top],
      ];
    }),
  );
  return { kind: 'area', layer: 'frame', rings, pen: null, fill: 'black' };
}

/** Room that a code takes with its quiet zone [mm]. */
export function findQrRoom(side: number, text: string): number {
  return side * (1 + (2 * QUIET_ZONE) / findQrModules(text).length);
}

/** Dark modules of a row that lie side by side: first, and one after the last. */
function findRuns(row: readonly boolean[]): readonly (readonly [from: number, to: number])[] {
  const runs: [number, number][] = [];
  for (const [k, isDark] of row.entries()) {
    if (!isDark) continue;
    const last = runs.at(-1);
    if (last?.[1] === k) last[1] = k + 1;
    else runs.push([k, k + 1]);
  }
  return runs;
}
