/** How the cells of one column are read and written. */
export type CellKind = 'text' | 'number' | 'yes or no' | 'corners' | 'outlines' | 'words' | 'layers';

/** What the cells of a kind must look like, for messages. */
export const cellWords: Readonly<Record<CellKind, string>> = {
  text: 'a text',
  number: 'a number',
  'yes or no': 'yes or no',
  corners: 'corners as "x y; x y; x y"',
  outlines: 'outlines as "x y; x y; x y | x y; x y; x y"',
  words: 'words with ; between them',
  layers: 'layers from outside to inside as "outer skin 70; insulation 80; structural 150"',
};

/** Which decimal mark a file uses, as far as its cells have shown. */
export interface DecimalMark {
  readonly separator: string;
  mark: '.' | ',' | null;
}

/** A cell's value, or why it is none. */
export type Cell = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly why: string };

const numberForm = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?$/;

/** Why a text is no number, for the ways in which people write one. */
function explainNumber(text: string): string {
  const [head = '', ...rest] = text.split(/\s+/);
  const isSpaced = rest.length > 0 && [head, ...rest].every((part) => /^[+-]?[\d.,]+$/.test(part));
  if (isSpaced) return `"${text}" has a space in it; write ${[head, ...rest].join('')}`;
  const withUnit = /^([+-]?[\d.,]*\d)\s*\p{L}[\p{L}\d²³/]*$/u.exec(text);
  if (withUnit !== null && !/\d[oOlI]/.test(text))
    return `"${text}" is not a number alone; the unit stands in the heading, so write ${withUnit[1]}`;
  return `"${text}" is not a number`;
}

function readNumber(text: string, decimal: DecimalMark): number | string {
  const plain = text.replace('\u2212', '-');
  if (!numberForm.test(plain)) return explainNumber(plain);
  const mark = plain.includes(',') ? ',' : plain.includes('.') ? '.' : null;
  if (mark === ',' && decimal.separator === ',') {
    return `"${text}" has a comma, but commas stand between the columns of this file; use a decimal point, or ; between columns, and nothing for thousands`;
  }
  if (mark !== null && decimal.mark !== null && mark !== decimal.mark) {
    return `"${text}" has a decimal ${mark === ',' ? 'comma' : 'point'}, but cells before it use the other mark; use one in the whole file, none for thousands`;
  }
  decimal.mark ??= mark;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : `"${text}" is too large`;
}

function readCorners(text: string, decimal: DecimalMark): unknown[] | string {
  const corners: number[][] = [];
  for (const corner of text.split(';').map((part) => part.trim())) {
    const numbers = corner.split(/\s+/).map((part) => readNumber(part, decimal));
    const wrong = numbers.find((value) => typeof value === 'string');
    if (typeof wrong === 'string') return `corner ${corners.length + 1}: ${wrong}`;
    if (numbers.length !== 2) return `corner ${corners.length + 1}, "${corner}", is not two numbers`;
    corners.push(numbers.map(Number));
  }
  return corners;
}

function readLayers(text: string, decimal: DecimalMark): unknown[] | string {
  const layers: unknown[] = [];
  for (const part of text.split(';').map((piece) => piece.trim())) {
    const found = /^(\D+?)\s+(\S+)$/.exec(part);
    if (found === null) return `"${part}" is not a kind of layer and a thickness`;
    const thickness = readNumber(found[2]!, decimal);
    if (typeof thickness === 'string') return thickness;
    layers.push({ kind: found[1], thickness_mm: thickness });
  }
  return layers;
}

function give(result: unknown): Cell {
  return typeof result === 'string' ? { ok: false, why: result } : { ok: true, value: result };
}

/** Reads a cell that is not blank. */
export function readCell(kind: CellKind, text: string, decimal: DecimalMark): Cell {
  switch (kind) {
    case 'text':
      return { ok: true, value: text };
    case 'number':
      return give(readNumber(text, decimal));
    case 'yes or no': {
      const word = text.toLowerCase();
      return word === 'yes' || word === 'no'
        ? { ok: true, value: word === 'yes' }
        : { ok: false, why: `"${text}" is neither yes nor no` };
    }
    case 'corners':
      return give(readCorners(text, decimal));
    case 'outlines': {
      const outlines = text.split('|').map((outline) => readCorners(outline.trim(), decimal));
      const wrong = outlines.findIndex((outline) => typeof outline === 'string');
      return wrong >= 0
        ? { ok: false, why: `outline ${wrong + 1}, ${String(outlines[wrong])}` }
        : { ok: true, value: outlines };
    }
    case 'words':
      return { ok: true, value: text.split(';').map((word) => word.trim()) };
    case 'layers':
      return give(readLayers(text, decimal));
  }
}

function writeCorners(corners: unknown): string {
  return Array.isArray(corners) ? corners.map((corner: readonly unknown[]) => corner.join(' ')).join('; ') : '';
}

/** Writes a value as `readCell` reads it. */
export function writeCell(kind: CellKind, value: unknown): string {
  switch (kind) {
    case 'text':
    case 'number':
      return String(value);
    case 'yes or no':
      return value === true ? 'yes' : 'no';
    case 'corners':
      return writeCorners(value);
    case 'outlines':
      return Array.isArray(value) ? value.map(writeCorners).join(' | ') : '';
    case 'words':
      return Array.isArray(value) ? value.join('; ') : '';
    case 'layers':
      return Array.isArray(value)
        ? value.map((l: { kind: string; thickness_mm: number }) => `${l.kind} ${l.thickness_mm}`).join('; ')
        : '';
  }
}
