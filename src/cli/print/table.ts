/** Width of a printed page in signs, where no narrower terminal is in the way. */
export const PAGE_WIDTH = 100;

/** Signs between two columns. */
export const GAP = 2;

/** How a column stands: texts to the left, numbers to the right. */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
  /** Its cells may take several lines, so that it gives way down to this width; without it a column stays whole. */
  readonly least?: number;
  /** Columns of a lower turn give way first; 0 where nothing is said. */
  readonly turn?: number;
}

/** A number with its unit: what stands between them never breaks. */
const UNITS = /(\d) (?=(?:%|[mµ]m[23]?|m|MPa|k?N(?: mm?)?|days?|years?)(?!\w))/g;

/** Puts no-break spaces between a number and its unit, inside a unit, and behind "above". */
function glueUnits(text: string): string {
  return text
    .replace(UNITS, '$1\u00a0')
    .replace(/(\d\u00a0k?N) (?=mm?(?!\w))/g, '$1\u00a0')
    .replace(/> (?=\d)/g, '>\u00a0');
}

/** Length of the longest part of a text that no line breaks in. */
function findLongestPart(text: string): number {
  return glueUnits(text)
    .split(' ')
    .reduce((most, part) => Math.max(most, part.length), 0);
}

/**
 * Widths that fit the page: columns that may break give way, turn by turn, in each from left to right. Where that is not enough, all
 * columns give way down to their longest word.
 */
function findWidths(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): number[] {
  const widths = columns.map(({ head }, k) => rows.reduce((most, row) => Math.max(most, row[k]!.length), head.length));
  let excess = widths.reduce((sum, one) => sum + one + GAP, -GAP) - width;
  const giving = columns
    .map((column, k) => ({ k, least: column.least ?? widths[k]!, turn: column.turn ?? 0 }))
    .sort((a, b) => a.turn - b.turn || a.k - b.k);
  const pressed = giving.map(({ k }) => ({
    k,
    least: rows.reduce((most, row) => Math.max(most, findLongestPart(row[k]!)), findLongestPart(columns[k]!.head)),
  }));
  for (const { k, least } of [...giving, ...pressed]) {
    const one = widths[k]!;
    const wanted = one - Math.min(Math.max(0, excess), Math.max(0, one - least));
    if (wanted === one) continue;
    // What is left over at the ends of broken lines goes back to the page.
    const longest = (most: number, cell: string) =>
      breakText(cell, wanted).reduce((length, line) => Math.max(length, line.length), most);
    widths[k] = rows.reduce((most, row) => longest(most, row[k]!), longest(0, columns[k]!.head));
    excess -= one - widths[k]!;
  }
  return widths;
}

/** With fewer columns than this, a table that is too wide is left as it is: pairs would be no narrower. */
const LEAST_FOR_PAIRS = 3;

/** Each row by itself: its first cell, then head and cell side by side; where a page is too narrow for a table. */
function layRowsAsPairs(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
): readonly string[] {
  return rows.map(([first, ...cells]) => {
    const pairs = cells.flatMap((cell, k) => (cell === '' ? [] : [[columns[k + 1]!.head, cell] as const]));
    const head = layText(`${columns[0]!.head} ${first}`, width);
    return pairs.length === 0 ? head : `${head}\n${indentLines(layPairs(pairs, width - GAP), ' '.repeat(GAP))}`;
  });
}

/** A table as its parts: what stands above the rows (empty where each row says it itself), and each row, which may take several lines. */
export interface LaidTable {
  readonly head: string;
  readonly rows: readonly string[];
}

/** Lays rows out as `layTable` does, row by row, so that more can be put under one. */
export function layRows(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): LaidTable {
  const widths = findWidths(columns, rows, width);
  if (columns.length >= LEAST_FOR_PAIRS && widths.reduce((sum, one) => sum + one + GAP, -GAP) > width)
    return { head: '', rows: layRowsAsPairs(columns, rows, width) };
  const layLine = (cells: readonly string[]) =>
    cells
      .map((cell, k) => (columns[k]!.align === 'right' ? cell.padStart(widths[k]!) : cell.padEnd(widths[k]!)))
      .join(' '.repeat(GAP))
      .trimEnd();
  const layRow = (cells: readonly string[]) => {
    const broken = cells.map((cell, k) => breakText(cell, widths[k]!));
    const height = Math.max(...broken.map((lines) => lines.length));
    return Array.from({ length: height }, (_, i) => layLine(broken.map((lines) => lines[i] ?? ''))).join('\n');
  };
  const rule = widths.map((one) => '-'.repeat(one)).join(' '.repeat(GAP));
  return { head: `${layRow(columns.map(({ head }) => head))}\n${rule}`, rows: rows.map(layRow) };
}

/**
 * Lays rows out in columns two spaces apart, with a rule under the heads; columns with a least width give way until the table is at most
 * `width` wide, then all of them, down to their longest word. Where that is still too wide, each row stands by itself, a line a column.
 * Nothing is cut off: a word longer than its column stands out. Lines have no trailing spaces.
 */
export function layTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number = PAGE_WIDTH,
): string {
  const laid = layRows(columns, rows, width);
  return (laid.head === '' ? laid.rows : [laid.head, ...laid.rows]).join('\n');
}

/**
 * Breaks a sentence at its spaces into lines of at most `width`; a longer word has a line of its own. Leading spaces stay. No-break
 * spaces, and those between a number and its unit, do not break; they come out as plain ones.
 */
function breakText(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const [, gap = '', word = ''] of glueUnits(text).matchAll(/( *)([^ ]+)/g)) {
    if (line.trim() !== '' && line.length + gap.length + word.length > width) {
      lines.push(line);
      line = word;
    } else line += gap + word;
  }
  lines.push(line);
  return lines.map((one) => one.replaceAll('\u00a0', ' '));
}

/** A sentence as lines of at most `width` in all: the first behind `indent`, the others behind `further`. */
export function layText(text: string, width: number, indent = '', further = `${indent}  `): string {
  return indent + breakText(text, width - further.length).join(`\n${further}`);
}

/** A point of a list: "- " and the sentence, its further lines under its first word; `width` holds all of it. */
export function layPoint(text: string, width: number, indent = '  '): string {
  return layText(`- ${text}`, width, indent);
}

/** Labels and what belongs to them, the texts in one column. */
export function layPairs(pairs: readonly (readonly [label: string, text: string])[], width: number): string {
  const first = Math.max(...pairs.map(([label]) => label.length));
  const indent = ' '.repeat(first + GAP);
  return pairs
    .map(([label, text]) => label.padEnd(first + GAP) + breakText(text, width - first - GAP).join(`\n${indent}`))
    .join('\n');
}

/** Puts each line behind an indent. */
export function indentLines(text: string, indent: string): string {
  return text.replace(/^(?=.)/gm, indent);
}
