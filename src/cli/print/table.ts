/** How a column stands: texts to the left, numbers to the right. */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
}

/** Lays rows out in columns two spaces apart, with a rule under the heads. Lines have no trailing spaces. */
export function layTable(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map(({ head }, k) => Math.max(head.length, ...rows.map((row) => row[k]!.length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, k) => (columns[k]!.align === 'right' ? cell.padStart(widths[k]!) : cell.padEnd(widths[k]!)))
      .join('  ')
      .trimEnd();
  return [
    line(columns.map(({ head }) => head)),
    widths.map((width) => '-'.repeat(width)).join('  '),
    ...rows.map(line),
  ].join('\n');
}

/** Breaks a sentence into lines of at most `width`, each after the first indented. */
export function wrapText(text: string, width: number, indent: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.join(`\n${indent}`);
}
