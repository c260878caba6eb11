import { type Column, GAP, layTable } from './table.ts';

/** A column with what stands in it. */
export interface FilledColumn<T> extends Column {
  readonly cell: (one: T) => string;
}

/** A table two spaces in, from columns that know their cells. */
export function layFilled<T>(columns: readonly FilledColumn<T>[], rows: readonly T[], width: number): string {
  const table = layTable(
    columns,
    rows.map((row) => columns.map(({ cell }) => cell(row))),
    width - GAP,
  );
  return table.replace(/^(?=.)/gm, ' '.repeat(GAP));
}
