import { stringify } from 'csv-stringify/sync';
import type { BenchRow, LabelRow, PartRow } from '../../drawing/lists/part-rows.ts';

/** A cell of a list: a text, a number, or nothing. */
type Cell = string | number | null;

type Columns<T> = readonly (keyof T & string)[];

export const partColumns: Columns<PartRow> = [
  'scope',
  'pour',
  'date',
  'panel',
  'castings',
  'group',
  'id',
  'name',
  'thread',
  'size_mm',
  'finish',
  'count',
  'spares',
  'needed',
  'in_stock',
  'on_order',
  'at_hand',
  'short',
  'to_order',
  'pack_size',
  'packs',
  'order_by',
];

export const benchColumns: Columns<BenchRow> = [
  'pour',
  'date',
  'bed',
  'group',
  'id',
  'name',
  'thread',
  'size_mm',
  'finish',
  'count',
  'spares',
  'panels',
];

export const labelColumns: Columns<LabelRow> = [
  'pour',
  'date',
  'bed',
  'panel',
  'serial',
  'revision',
  'in_bag',
  'group',
  'id',
  'name',
  'thread',
  'size_mm',
  'finish',
  'count',
];

/**
 * A list as CSV: commas between columns, decimal points, a heading. A text that a spreadsheet would take for a formula gets an apostrophe in
 * front.
 */
function writeList<T>(columns: Columns<T>, rows: readonly T[], cell: (row: T, column: keyof T) => Cell): string {
  const body = rows.map((row) => columns.map((column) => cell(row, column)));
  return stringify([[...columns], ...body], {
    record_delimiter: 'windows',
    escape_formulas: true,
    cast: { number: (value) => String(value) },
  });
}

export function writeParts(rows: readonly PartRow[]): string {
  return writeList(partColumns, rows, (row, column) => row[column]);
}

export function writeBench(rows: readonly BenchRow[]): string {
  return writeList(benchColumns, rows, (row, column) => row[column]);
}

export function writeLabels(rows: readonly LabelRow[]): string {
  return writeList(labelColumns, rows, (row, column) => row[column]);
}
