import type { BenchRow, LabelRow, PartRow } from '../../drawing/lists/part-rows.ts';
import { writeList } from './write-list.ts';

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

export function writeParts(rows: readonly PartRow[]): string {
  return writeList(partColumns, rows);
}

export function writeBench(rows: readonly BenchRow[]): string {
  return writeList(benchColumns, rows);
}

export function writeLabels(rows: readonly LabelRow[]): string {
  return writeList(labelColumns, rows);
}
