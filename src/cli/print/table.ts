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

/** Widths that fit the page: columns that may break give way, turn by turn, in each from left to right. */
function findWidths(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): number[] {
  const widths = columns.map(({ head }, k) => rows.reduce((most, row) => Math.max(most, row[k]!.length), head.length));
  let excess = widths.reduce((sum, one) => sum + one + GAP, -GAP) - width;
  const giving = columns
    .map((column, k) => ({ k, least: column.least ?? widths[k]!, turn: column.turn ?? 0 }))
    .sort((a, b) => a.turn - b.turn || a.k - b.k);
  for (const { k, least } of giving) {
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

/**
 * Lays rows out in columns two spaces apart, with a rule under the heads; columns with a least width give way until the table is at most
 * `width` wide. Nothing is cut off: a word longer than its column stands out. Lines have no trailing spaces.
 */
export function layTable(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number = PAGE_WIDTH,
): string {
  const widths = findWidths(columns, rows, width);
  const layLine = (cells: readonly string[]) =>
    cells
      .map((cell, k) => (columns[k]!.align === 'right' ? cell.padStart(widths[k]!) : cell.padEnd(widths[k]!)))
      .join(' '.repeat(GAP))
      .trimEnd();
  const layRow = (cells: readonly string[]) => {
    const broken = cells.map((cell, k) => (columns[k]!.least === undefined ? [cell] : breakText(cell, widths[k]!)));
    const height = Math.max(...broken.map((lines) => lines.length));
    return Array.from({ length: height }, (_, i) => layLine(broken.map((lines) => lines[i] ?? '')));
  };
  return [
    ...layRow(columns.map(({ head }) => head)),
    widths.map((one) => '-'.repeat(one)).join(' '.repeat(GAP)),
    ...rows.flatMap(layRow),
  ].join('\n');
}

/** Breaks a sentence at its spaces into lines of at most `width`; a longer word has a line of its own. Leading spaces stay. */
function breakText(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const [, gap = '', word = ''] of text.matchAll(/( *)([^ ]+)/g)) {
    if (line.trim() !== '' && line.length + gap.length + word.length > width) {
      lines.push(line);
      line = word;
    } else line += gap + word;
  }
  lines.push(line);
  return lines;
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
