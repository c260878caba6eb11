import { CsvError, parse } from 'csv-parse/sync';
import type { Fault } from '../../job/fault.ts';
import { findNearestWord } from '../../job/nearest-word.ts';
import { type Cell, cellWords, type DecimalMark, readCell } from './cells.ts';
import type { Column, Schedule } from './columns.ts';

/** A row of a schedule: its number as a spreadsheet shows it (the heading is row 1) and its cells that are filled in. */
export interface Row {
  readonly number: number;
  readonly cells: ReadonlyMap<string, unknown>;
  /** Columns whose cell is filled in but cannot be read: reported already. */
  readonly wrong: ReadonlySet<string>;
}

const NONE_WRONG: ReadonlySet<string> = new Set();

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
export function detectSeparator(content: string): string {
  let isQuoted = false;
  let heading = '';
  for (const sign of content) {
    if (sign === '"') isQuoted = !isQuoted;
    else if (!isQuoted && (sign === '\n' || sign === '\r')) break;
    else if (!isQuoted) heading += sign;
  }
  return [';', '\t', ','].find((separator) => heading.includes(separator)) ?? ',';
}

/** Rows and cells of a file as they stand, row 1 the heading; or why they cannot be told apart. */
export function splitRecords(file: string, content: string, separator: string): string[][] | Fault {
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

/** A sign that stands where bytes were no text; a spreadsheet's own encoding in place of UTF-8 gives it. */
const UNREADABLE = '\uFFFD';

/** Content that is no text in UTF-8 at all: one fault in place of one for every cell. */
function refuseContent({ file, columns }: Schedule, content: string): Fault | null {
  const whole = (expected: string, text: string): Fault => ({
    file,
    path: '',
    value: '',
    expected,
    message: `${file}: ${text}`,
  });
  if (content.includes('\0'))
    return whole(
      'text in UTF-8',
      'the file is not text in UTF-8; expected a schedule saved as CSV in UTF-8 (not a workbook, not "Unicode text")',
    );
  if (content.replace('\uFEFF', '').trim() === '') {
    const needed = columns.filter(isNeeded).map(({ name }) => name);
    return whole('a heading', `the file is empty; expected a heading with at least ${needed.join(', ')}`);
  }
  return null;
}

/** Whether every row must fill in a column. */
function isNeeded(column: Column): boolean {
  return !('ifBlank' in column) && column.isOptional !== true;
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
    if (!isNeeded(column) || heading.includes(column.name) || meant.has(column.name)) continue;
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

const nameSeparator = (separator: string) => (separator === '\t' ? 'a tab' : separator);

function unreadable(content: string): Cell {
  return { ok: false, why: `"${content}" holds a sign that cannot be read; save the file as CSV in UTF-8` };
}

/**
 * Reads one schedule. Taken: a byte order mark, either line ending, cells in quotation marks, `,` `;` or a tab between columns (found
 * in the heading), decimal points, or decimal commas where no comma stands between columns. Empty rows are passed over but counted.
 */
export function readTable(schedule: Schedule, content: string): Table {
  const { file } = schedule;
  const refused = refuseContent(schedule, content);
  if (refused !== null) return { file, rows: [], columns: new Set(), faults: [refused] };
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
      const text = `${record.length} cells, but the heading has ${heading.length}; expected one for each heading (a cell with ${nameSeparator(separator)} in it${separator === ',' ? ', a decimal comma too,' : ''} stands in quotation marks)`;
      faults.push(tableFault(file, number, null, String(record.length), `${heading.length} cells`, text));
      return;
    }
    const cells = new Map<string, unknown>();
    const wrong = new Set<string>();
    record.forEach((content, k) => {
      const column = schedule.columns.find((candidate) => candidate.name === heading[k]);
      if (column === undefined || content === '') return;
      const cell = content.includes(UNREADABLE) ? unreadable(content) : readCell(column.kind, content, decimal);
      if (cell.ok) {
        cells.set(column.name, cell.value);
        return;
      }
      wrong.add(column.name);
      const expected = cellWords[column.kind];
      faults.push(tableFault(file, number, column.name, content, expected, `${cell.why}; expected ${expected}`));
    });
    rows.push({ number, cells, wrong: wrong.size === 0 ? NONE_WRONG : wrong });
  });
  return { file, rows, columns: new Set(heading), faults };
}
