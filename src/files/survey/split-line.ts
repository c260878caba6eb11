import type { SurveySeparator } from './survey-file.ts';

/** A line of a file that is not blank, with its number from 1. */
export interface TextLine {
  readonly number: number;
  readonly text: string;
}

const COMMENT = /^\s*(#|\/\/|%|!|\*|--)/;

/** The lines of a text that are not blank, whichever way they end. */
export function listLines(text: string): readonly TextLine[] {
  return text
    .split(/\r\n|\n|\r/)
    .map((line, i) => ({ number: i + 1, text: line }))
    .filter(({ text: line }) => line.trim() !== '');
}

/** Whether a line is a comment: by its first sign, or a semicolon where none stands between cells. */
export function isComment({ text }: TextLine, separator: SurveySeparator): boolean {
  return COMMENT.test(text) || (separator !== ';' && text.trimStart().startsWith(';'));
}

/** A comment without the sign that makes it one. */
export function uncomment(text: string): string {
  return text.replace(/^\s*(#|\/\/|%|!|\*|--|;)+\s*/, '');
}

/** The cells of one line, trimmed. A mark of quotation that is not closed ends with the line: one line spoils no other. */
export function splitLine(text: string, separator: SurveySeparator): readonly string[] {
  const cells: string[] = [];
  let cell = '';
  let quote: string | null = null;
  const line = separator === ' ' ? text.trim() : text;
  for (let i = 0; i < line.length; i += 1) {
    const sign = line[i]!;
    if (quote !== null) {
      if (sign !== quote) cell += sign;
      else if (line[i + 1] === quote) {
        cell += sign;
        i += 1;
      } else quote = null;
    } else if (sign === '"' && cell.trim() === '') {
      quote = sign;
      cell = '';
    } else if (separator === ' ' ? sign === ' ' || sign === '\t' : sign === separator) {
      cells.push(cell.trim());
      cell = '';
      while (separator === ' ' && (line[i + 1] === ' ' || line[i + 1] === '\t')) i += 1;
    } else cell += sign;
  }
  cells.push(cell.trim());
  return cells;
}
