import { CsvError, parse } from 'csv-parse/sync';
import type { Fault } from '../../job/fault.ts';
import { findNearestWord } from '../../job/nearest-word.ts';
import { cellWords, type DecimalMark, readCell } from './cells.ts';
import type { Schedule } from './columns.ts';

/** A row of a schedule: its number as a spreadsheet shows it (the heading is row 1) and its cells that are filled in. */
export interface Row {
  readonly number: number;
  readonly cells: ReadonlyMap<string, unknown>;
}

/** A schedule as read: rows in order, which columns it has, and what is wrong in it. */
export interface Table {
  readonly file: string;
  readonly rows: readonly Row[];
  readonly columns: ReadonlySet<string>;
  readonly faults: readonly Fault[];
}

/** A fault of a schedule, with its place in front of the sentence. */
export function tableFault(
  file: string,
  row: number,
  column: string | null,
  value: string,
  expected: string,
  text: string,
): Fault {
  const place = column === null ? `${file} row ${row}` : `${file} row ${row}, column ${column}`;
  const message = `${place}: ${text}`;
  return column === null
    ? { file, row, path: '', value, expected, message }
    : { file, row, column, path: '', value, expected, message };
}

/** What stands between the columns, from the heading alone: the first of ; tab , that it holds outside quotes. */
function detectSeparator(content: string): string {
  let isQuoted = false;
  let heading = '';
  for (const sign of content) {
    if (sign === '"') isQuoted = !isQuoted;
    else if (!isQuoted && (sign === '\n' || sign === '\r')) break;
    else if (!isQuoted) heading += sign;
  }
  return [';', '\t', ','].find((separator) => heading.includes(separator)) ?? ',';
}

function splitRecords(file: string, content: string, separator: string): string[][] | Fault {
  try {
    return parse(content, {
      bom: true,
      delimiter: separator,
      relax_column_count: true,
      skip_empty_lines: false,
      trim: true,
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const row = typeof error.records === 'number' ? error.records + 1 : 1;
    const text =
      error.code === 'CSV_QUOTE_NOT_CLOSED'
        ? 'a quotation mark is opened here or further down and never closed'
        : 'a quotation mark stands inside a cell; a cell with one is written in quotation marks, with each mark inside doubled';
    return tableFault(file, row, null, '', 'cells in quotation marks closed', text);
  }
}

function checkHeading(schedule: Schedule, heading: readonly string[]): Fault[] {
  const { file, columns } = schedule;
  const names = columns.map((column) => column.name);
  const free = names.filter((name) => !heading.includes(name));
  const faults: Fault[] = [];
  const meant = new Set<string>();
  heading.forEach((name, i) => {
    if (name === '') {
      faults.push(
        tableFault(file, 1, null, '', 'a heading', `heading ${i + 1} is empty; expected one of ${free.join(', ')}`),
      );
    } else if (heading.indexOf(name) !== i) {
      faults.push(tableFault(file, 1, name, name, 'each heading once', `the heading ${name} is there twice`));
    } else if (!names.includes(name)) {
      const near = findNearestWord(name, free);
      if (near !== null) meant.add(near);
      const hint = near === null ? `expected one of ${free.join(', ')}` : `did you mean ${near}?`;
      faults.push(
        tableFault(
          file,
          1,
          name,
          name,
          near ?? `one of ${free.join(', ')}`,
          `the heading ${name} is not known; ${hint}`,
        ),
      );
    }
  });
  for (const column of columns) {
    const isNeeded = !('ifBlank' in column) && column.isOptional !== true;
    if (!isNeeded || heading.includes(column.name) || meant.has(column.name)) continue;
    faults.push(
      tableFault(
        file,
        1,
        column.name,
        '',
        column.name,
        `the column ${column.name} is missing; expected ${cellWords[column.kind]} in every row`,
      ),
    );
  }
  return faults;
}

/**
 * Reads one schedule. Taken: a byte order mark, either line ending, cells in quotation marks, `,` `;` or a tab between columns (found
 * in the heading), decimal points, or decimal commas where no comma stands between columns. Empty rows are passed over but counted.
 */
export function readTable(schedule: Schedule, content: string): Table {
  const { file } = schedule;
  const separator = detectSeparator(content);
  const records = splitRecords(file, content, separator);
  if (!Array.isArray(records)) return { file, rows: [], columns: new Set(), faults: [records] };
  const heading = records[0] ?? [];
  const faults = checkHeading(schedule, heading);
  const decimal: DecimalMark = { separator, mark: null };
  const rows: Row[] = [];
  records.forEach((record, i) => {
    if (i === 0 || record.every((cell) => cell === '')) return;
    const number = i + 1;
    if (record.length !== heading.length) {
      const text = `${record.length} cells, but the heading has ${heading.length}; expected one for each heading (a cell with a separator in it stands in quotation marks)`;
      faults.push(tableFault(file, number, null, String(record.length), `${heading.length} cells`, text));
      return;
    }
    const cells = new Map<string, unknown>();
    record.forEach((content, k) => {
      const column = schedule.columns.find((candidate) => candidate.name === heading[k]);
      if (column === undefined || content === '') return;
      const cell = readCell(column.kind, content, decimal);
      if (cell.ok) cells.set(column.name, cell.value);
      else
        faults.push(
          tableFault(
            file,
            number,
            column.name,
            content,
            cellWords[column.kind],
            `${cell.why}; expected ${cellWords[column.kind]}`,
          ),
        );
    });
    rows.push({ number, cells });
  });
  return { file, rows, columns: new Set(heading), faults };
}
