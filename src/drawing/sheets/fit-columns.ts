import type { TableColumn } from '../table.ts';

/** Columns whose widths are shares, made to fill a width [mm] together. */
export function fitColumns(columns: readonly TableColumn[], width: number): readonly TableColumn[] {
  const sum = columns.reduce((total, column) => total + column.width, 0);
  return columns.map((column) => ({ ...column, width: (column.width / sum) * width }));
}
