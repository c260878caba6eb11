import type { Fault } from '../../job/fault.ts';
import { type Column, Table } from './table.tsx';

/** The sentence without the place, which has columns of its own. */
function bare({ file, row, column, message }: Fault): string {
  const place =
    row === undefined ? `${file}: ` : `${file} row ${row}${column === undefined ? '' : `, column ${column}`}: `;
  return message.startsWith(place) ? message.slice(place.length) : message;
}

const COLUMNS: readonly Column<Fault>[] = [
  { head: 'row', kind: 'number', cell: ({ row }) => row ?? '–' },
  { head: 'column', cell: ({ column }) => column ?? '' },
  { head: 'what is wrong', kind: 'wide', cell: bare },
];

/** What is wrong in a list, row by row as a spreadsheet numbers them. */
export function FaultTable({ caption, faults }: { readonly caption: string; readonly faults: readonly Fault[] }) {
  return (
    <Table
      caption={caption}
      columns={COLUMNS}
      rows={faults}
      keyOf={({ row, column, message }) => `${row} ${column} ${message}`}
    />
  );
}
