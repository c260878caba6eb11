import { DrawingError } from '../../drawing/drawing-error.ts';
import { composeText, measureText } from '../../drawing/text-size.ts';
import { writeCoordinate } from '../../drawing/write-number.ts';

/** Lines of a DXF file, a group a pair of lines: its code, then its value. Handles count up, so that the same drawing gives the same file. */
export class DxfGroups {
  readonly #lines: string[] = [];
  #handle: number;

  constructor(firstHandle: number) {
    this.#handle = firstHandle;
  }

  /** The first handle that is not given away, in hexadecimal. */
  get nextHandle(): string {
    return this.#handle.toString(16).toUpperCase();
  }

  /** Takes a handle for an object. */
  takeHandle(): string {
    const handle = this.nextHandle;
    this.#handle += 1;
    return handle;
  }

  /** Adds groups: code, value, code, value. Numbers are written with eight decimals at most; whole numbers as such. */
  add(...groups: readonly (string | number)[]): void {
    for (let k = 0; k < groups.length; k += 2) {
      const value = groups[k + 1]!;
      this.#lines.push(String(groups[k]).padStart(3), typeof value === 'number' ? writeCoordinate(value, 8) : value);
    }
  }

  /** Adds a point in the plane under the codes first, first + 10, first + 20. */
  addPoint(first: number, [x, y]: readonly [number, number]): void {
    this.add(first, x, first + 10, y, first + 20, 0);
  }

  /** Adds the groups of others. */
  append(other: DxfGroups): void {
    for (const line of other.#lines) this.#lines.push(line);
  }

  toText(): string {
    return `${this.#lines.join('\r\n')}\r\n`;
  }
}

/**
 * A text as a DXF file before 2007 holds it: ASCII, other signs as \U+XXXX, as well as those that readers would take for a control code
 * (a backslash, a caret, a second percent sign).
 * Throws DrawingError when the drawing's font has no such sign.
 */
export function escapeDxfText(text: string): string {
  measureText(text, 1);
  const signs = Array.from(composeText(text));
  const isControl = (sign: string, k: number) =>
    sign === '\\' || sign === '^' || (sign === '%' && (signs[k - 1] === '%' || signs[k + 1] === '%'));
  return signs
    .map((sign, k) => {
      const code = sign.codePointAt(0)!;
      if (code < 0x7f && !isControl(sign, k)) return sign;
      return `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');
}

/** A name of a layer or block; throws DrawingError when it has signs that DXF does not allow in one. */
export function checkDxfName(kind: string, name: string): string {
  if (/^[A-Za-z0-9 $_-]{1,255}$/.test(name) && name.trim() === name) return name;
  throw new DrawingError(
    `${kind} "${name}" cannot be named so in a DXF file; expected 1 to 255 letters A to Z, digits, spaces, "-", "_" or "$"`,
  );
}
