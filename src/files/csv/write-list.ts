import { stringify } from 'csv-stringify/sync';

/** A cell of a list: a text, a number, or nothing. */
export type ListCell = string | number | null;

/**
 * A list as CSV: commas between columns, decimal points, a heading. A text that a spreadsheet would take for a formula gets an apostrophe in
 * front.
 */
export function writeList<Column extends string>(
  columns: readonly Column[],
  rows: readonly Readonly<Record<Column, ListCell>>[],
): string {
  const body = rows.map((row) => columns.map((column) => row[column]));
  return stringify([[...columns], ...body], {
    record_delimiter: 'windows',
    escape_formulas: true,
    cast: { number: (value) => String(value) },
  });
}
