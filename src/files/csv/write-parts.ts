import { stringify } from 'csv-stringify/sync';

/** A cell of a list: a text, a number, or nothing. */
type Cell = string | number | null;

/** Parts of a job, a pour or one casting of a panel. */
export interface PartRow {
  readonly scope: 'job' | 'pour' | 'panel';
  readonly pour: string | null;
  readonly date: string | null;
  readonly panel: string | null;
  /** Castings of the panel in that pour; null where the row is not of a panel. */
  readonly castings: number | null;
  readonly group: string;
  readonly id: string;
  readonly name: string;
  readonly thread: string | null;
  readonly size_mm: number | null;
  readonly finish: string | null;
  readonly count: number;
  readonly spares: number | null;
  readonly needed: number | null;
  readonly in_stock: number | null;
  readonly on_order: number | null;
  readonly at_hand: number | null;
  readonly short: number | null;
  readonly to_order: number | null;
  readonly pack_size: number | null;
  readonly packs: number | null;
  readonly order_by: string | null;
}

/** One bin of a bench. */
export interface BenchRow {
  readonly pour: string;
  readonly date: string;
  readonly bed: string;
  readonly group: string;
  readonly id: string;
  readonly name: string;
  readonly thread: string | null;
  readonly size_mm: number | null;
  readonly finish: string | null;
  readonly count: number;
  readonly spares: number;
  /** Panels with the count for one casting, as words. */
  readonly panels: string;
}

/** One line of the label of a bag. */
export interface LabelRow {
  readonly pour: string;
  readonly date: string;
  readonly bed: string;
  readonly panel: string;
  readonly serial: string;
  readonly revision: string;
  readonly in_bag: 'yes' | 'no';
  readonly group: string;
  readonly id: string;
  readonly name: string;
  readonly thread: string | null;
  readonly size_mm: number | null;
  readonly finish: string | null;
  readonly count: number;
}

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
