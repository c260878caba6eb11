import { stringify } from 'csv-stringify/sync';
import type { Grid } from './grid.ts';
import { detectSeparator, splitRecords } from './table.ts';

const DECIMAL = /^[+-]?\d+([.,])\d+$/;

/** The decimal mark of the first number that has one. */
function findDecimalMark(rows: readonly (readonly string[])[], separator: string): Grid['decimalMark'] {
  for (const row of rows)
    for (const cell of row) {
      const mark = DECIMAL.exec(cell)?.[1];
      if (mark === '.' || (mark === ',' && separator !== ',')) return mark;
    }
  return null;
}

/** A schedule's cells as they are typed, whatever is wrong in them; null where rows and cells cannot be told apart. */
export function readGrid(content: string): Grid | null {
  if (content.includes('\0')) return null;
  const separator = detectSeparator(content);
  const rows = splitRecords('', content, separator);
  return Array.isArray(rows) ? { separator, decimalMark: findDecimalMark(rows, separator), rows } : null;
}

/** The text of a schedule, to be read again: same separator, cells in quotation marks where they must be. */
export function writeGrid({ separator, rows }: Grid): string {
  return stringify(
    rows.map((row) => [...row]),
    { delimiter: separator, record_delimiter: 'windows' },
  );
}
