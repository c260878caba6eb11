import type { Weight } from './drawing.ts';
import { DrawingError } from './drawing-error.ts';
import { CAP_UNITS, UNITS_PER_EM, WIDTH_BLOCKS } from './font-widths.ts';

/** Height of a capital letter or digit, as part of the font size. */
export const CAP_HEIGHT = CAP_UNITS / UNITS_PER_EM;

/** What letters need below the line they stand on (g, j, Q), as part of the font size. */
export const DESCENT = 0.24;

/** What letters with a mark need above that line (Å, É), as part of the font size. */
export const ASCENT = 0.94;

/** From one line of text to the next, as part of the font size. */
export const LINE_STEP = 1.3;

type Widths = ReadonlyMap<string, number>;

const widthsByWeight = new Map<Weight, Widths>();

/** Widths of all signs of a weight, as parts of the font size; read once. */
function findWidths(weight: Weight): Widths {
  const known = widthsByWeight.get(weight);
  if (known !== undefined) return known;
  const widths = new Map<string, number>();
  for (const block of WIDTH_BLOCKS) {
    for (const [k, units] of block[weight].split(' ').entries())
      if (units !== '-') widths.set(String.fromCodePoint(block.first + k), Number(units) / UNITS_PER_EM);
  }
  widthsByWeight.set(weight, widths);
  return widths;
}

/** A text as it is drawn: each letter with its mark as one sign (Unicode form C). */
export function composeText(text: string): string {
  return text.normalize('NFC');
}

/** Width of one sign as part of the font size; a sign that the font lacks is an error, never a gap. */
function findWidth(sign: string, widths: Widths, text: string): number {
  const width = widths.get(sign);
  if (width !== undefined) return width;
  const code = sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
  throw new DrawingError(
    `the text "${text}" has the sign U+${code}, which drawings cannot show; expected one line of Latin, Greek or Cyrillic letters, digits and signs`,
  );
}

/**
 * Width of one line of text [mm], the sum of the widths of its signs.
 * Throws DrawingError when a sign cannot be drawn. Example: ten digits of size 10 are 57.2 mm wide.
 */
export function measureText(text: string, size: number, weight: Weight = 'plain'): number {
  const widths = findWidths(weight);
  let sum = 0;
  for (const sign of composeText(text)) sum += findWidth(sign, widths, text);
  return sum * size;
}

/** Pieces of a word that are not wider than the line; one sign at least, however narrow the line. */
function breakWord(word: string, size: number, weight: Weight, width: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && measureText(piece + sign, size, weight) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += sign;
  }
  return [...pieces, piece];
}

/**
 * Lines of a text, none wider than `width` [mm]: turned at spaces, inside a word only where the word alone is wider. A line feed starts a new
 * line. No letter is lost. Throws DrawingError when a sign cannot be drawn.
 */
export function wrapText(text: string, size: number, weight: Weight, width: number): readonly string[] {
  return composeText(text)
    .split('\n')
    .flatMap((part) => wrapLine(part, size, weight, width));
}

function wrapLine(part: string, size: number, weight: Weight, width: number): string[] {
  const lines: string[] = [];
  let line: string | null = null;
  for (const word of part.split(' ')) {
    const longer: string = line === null ? word : `${line} ${word}`;
    if (measureText(longer, size, weight) <= width) {
      line = longer;
      continue;
    }
    if (line !== null) lines.push(line);
    const pieces = breakWord(word, size, weight, width);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1)!;
  }
  return line === null ? lines : [...lines, line];
}

/** What stands in the place of a sign that the font lacks. */
const REPLACEMENT = '\ufffd';

/** A text that people typed, as it can be drawn: a sign that the font lacks becomes the replacement sign, so that what is missing shows. */
export function replaceUndrawable(text: string): string {
  const widths = findWidths('plain');
  const heavy = findWidths('bold');
  return Array.from(composeText(text).replaceAll('\t', ' '), (sign) =>
    sign === '\n' || (widths.has(sign) && heavy.has(sign)) ? sign : REPLACEMENT,
  ).join('');
}
