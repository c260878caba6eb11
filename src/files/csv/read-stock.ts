import * as z from 'zod';
import type { Fault } from '../../job/fault.ts';
import type { Schedule } from './columns.ts';
import { type Row, readTable, type Table, tableFault } from './table.ts';

/** Columns of a list of what the yard has. */
export const stockSchedule: Schedule = {
  file: 'stock.csv',
  columns: [
    { name: 'id', kind: 'text' },
    { name: 'in_stock', kind: 'number', isOptional: true },
    { name: 'on_order', kind: 'number', isOptional: true },
    { name: 'arrives', kind: 'text', isOptional: true },
  ],
};

/** Columns of a list of what was ordered for a job, and delivered. */
export const orderSchedule: Schedule = {
  file: 'orders.csv',
  columns: [
    { name: 'id', kind: 'text' },
    { name: 'ordered', kind: 'number' },
    { name: 'delivered', kind: 'number', isOptional: true },
  ],
};

/** One row of stock.csv. */
export interface StockRow {
  readonly id: string;
  readonly inStock: number;
  readonly onOrder: number;
  /** YYYY-MM-DD. */
  readonly arrives: string | null;
}

/** One row of orders.csv. */
export interface OrderRow {
  readonly id: string;
  readonly ordered: number;
  readonly delivered: number;
}

/** Rows of a list, or everything that is wrong in it and no row. */
export type ListReading<T> =
  | { readonly ok: true; readonly rows: readonly T[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const day = z.iso.date();

/** Reads the cells of one row and gathers what is wrong with them. */
class RowReader {
  readonly faults: Fault[] = [];

  constructor(
    private readonly table: Table,
    private readonly row: Row,
  ) {}

  refuse(column: string, value: string, expected: string, text: string): void {
    this.faults.push(tableFault(this.table.file, this.row.number, column, value, expected, text));
  }

  /** Whether all cells so far are what they should be; those that cannot be read at all are told by the table. */
  get isSound(): boolean {
    return this.faults.length === 0 && this.row.wrong.size === 0;
  }

  has(column: string): boolean {
    return this.row.cells.has(column);
  }

  readText(column: string): string {
    const value = this.row.cells.get(column);
    if (typeof value === 'string') return value;
    if (!this.row.wrong.has(column)) this.refuse(column, '', 'a text', 'the cell is empty; expected the id of a part');
    return '';
  }

  /** A count; an empty cell is none, unless the row must have it. */
  readCount(column: string, isNeeded: boolean): number {
    const value = this.row.cells.get(column) ?? null;
    if (value === null) {
      // A cell that cannot be read is told already.
      if (isNeeded && !this.row.wrong.has(column))
        this.refuse(column, '', 'a whole number', 'the cell is empty; expected a whole number, 0 or more');
      return 0;
    }
    const count = Number(value);
    if (Number.isSafeInteger(count) && count >= 0) return count;
    this.refuse(column, String(count), 'a whole number', `${count} is no count; expected a whole number, 0 or more`);
    return 0;
  }

  readDay(column: string): string | null {
    const value = this.row.cells.get(column);
    if (value === undefined) return null;
    if (day.safeParse(value).success) return String(value);
    this.refuse(
      column,
      String(value),
      'a day of the calendar as YYYY-MM-DD',
      `"${value}" is not a day; expected a day of the calendar as YYYY-MM-DD, such as 2031-05-30`,
    );
    return null;
  }
}

function readList<T>(
  schedule: Schedule,
  file: string,
  content: string,
  readRow: (reader: RowReader) => T,
): ListReading<T> {
  const table = readTable({ ...schedule, file }, content);
  const readers = table.rows.map((row) => new RowReader(table, row));
  const isHeadingWrong = table.faults.some(({ row }) => row === undefined || row === 1);
  const rows = isHeadingWrong ? [] : readers.map(readRow);
  const faults = [...table.faults, ...readers.flatMap((reader) => reader.faults)];
  return faults.length === 0 ? { ok: true, rows } : { ok: false, faults: sortByRow(faults) };
}

function sortByRow(faults: readonly Fault[]): readonly Fault[] {
  return [...faults].sort((a, b) => (a.row ?? 0) - (b.row ?? 0));
}

/**
 * Reads what the yard has: a row a part, or several for one part (two shelves, two deliveries). Ids that no job knows may stand in it.
 * @param file its name, for faults
 */
export function readStock(file: string, content: string): ListReading<StockRow> {
  return readList(stockSchedule, file, content, (reader) => {
    const row = {
      id: reader.readText('id'),
      inStock: reader.readCount('in_stock', false),
      onOrder: reader.readCount('on_order', false),
      arrives: reader.readDay('arrives'),
    };
    if (!reader.has('in_stock') && !reader.has('on_order') && reader.isSound)
      reader.refuse(
        'in_stock',
        '',
        'a whole number',
        'neither in_stock nor on_order is filled in; expected one of them',
      );
    if (reader.has('arrives') && row.onOrder === 0 && reader.isSound)
      reader.refuse(
        'arrives',
        String(row.arrives),
        'an empty cell',
        'a day of arrival, but nothing is on order; expected a count in on_order',
      );
    return row;
  });
}

/**
 * Reads what was ordered for a job and what of it has come; several rows of one part add up.
 * @param file its name, for faults
 */
export function readOrders(file: string, content: string): ListReading<OrderRow> {
  return readList(orderSchedule, file, content, (reader) => ({
    id: reader.readText('id'),
    ordered: reader.readCount('ordered', true),
    delivered: reader.readCount('delivered', false),
  }));
}
