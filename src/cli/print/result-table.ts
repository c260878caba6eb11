import { layPoint, layTable } from './table.ts';

/** Units behind the last underscores of a key, the longest first. */
const UNITS = [
  ['um_per_year', 'µm a year'],
  ['degC_h', '°C h'],
  ['mm2', 'mm²'],
  ['mm', 'mm'],
  ['um', 'µm'],
  ['MPa', 'MPa'],
  ['kNm', 'kN m'],
  ['kN', 'kN'],
  ['Nm', 'N m'],
  ['deg', '°'],
  ['degC', '°C'],
  ['hours', 'h'],
  ['days', 'days'],
] as const;

/** Significant digits of a printed number. */
const DIGITS = 6;

/** Keys of the frame around each result, and notes, which stand below the table. */
const NOT_ROWS = new Set(['contract', 'engine', 'notes']);

type Row = readonly [key: string, value: string, unit: string];

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A key without its unit, and the unit. */
function splitKey(key: string): readonly [name: string, unit: string] {
  const found = UNITS.find(([suffix]) => key.endsWith(`_${suffix}`));
  return found === undefined ? [key, ''] : [key.slice(0, -found[0].length - 1), found[1]];
}

/** A value in words: numbers with six digits at most, a pair as "from to", what is not there as "-". */
function showValue(value: unknown): string {
  if (value === null || value === undefined) return '-';
  if (typeof value === 'number') return `${Number(value.toPrecision(DIGITS))}`;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (!Array.isArray(value)) return String(value);
  const isPair = value.length === 2 && value.every((one) => typeof one === 'number' || one === null);
  return value.map(showValue).join(isPair ? ' to ' : ', ');
}

/** Rows of an object, those of the objects in it behind their key. */
function listRows(record: Readonly<Record<string, unknown>>, before = ''): readonly Row[] {
  return Object.entries(record).flatMap(([key, value]): readonly Row[] => {
    if (before === '' && NOT_ROWS.has(key)) return [];
    if (isRecord(value)) return listRows(value, `${before}${key}.`);
    if (isListOfRecords(value)) return [];
    const [name, unit] = splitKey(key);
    return [[`${before}${name}`, showValue(value), value === null ? '' : unit]];
  });
}

function isListOfRecords(value: unknown): value is readonly Readonly<Record<string, unknown>>[] {
  return Array.isArray(value) && value.length > 0 && value.every(isRecord);
}

/** A list of objects as a table of its own: a column a key, a row an object. */
function printList(title: string, list: readonly Readonly<Record<string, unknown>>[], width: number): string {
  const keys = [...new Set(list.flatMap((one) => Object.keys(one)))];
  const columns = keys.map((key) => {
    const [name, unit] = splitKey(key);
    const isNumber = list.every((one) => typeof one[key] !== 'string');
    return { head: unit === '' ? name : `${name} ${unit}`, align: isNumber ? 'right' : 'left' } as const;
  });
  const rows = list.map((one) => keys.map((key) => showValue(one[key])));
  return `\n${title}\n${layTable(columns, rows, width)}`;
}

/** Any result of a calculation for reading: key, value and unit in a table, lists in tables of their own, notes below. */
export function printResult(result: object, width: number): string {
  const record: Readonly<Record<string, unknown>> = { ...result };
  const table = layTable(
    [{ head: 'key' }, { head: 'value', align: 'right' }, { head: 'unit' }],
    listRows(record).map((row) => [...row]),
    width,
  );
  const lists = Object.entries(record).flatMap(([key, value]) =>
    isListOfRecords(value) ? [printList(key, value, width)] : [],
  );
  const notes = Array.isArray(record.notes) ? record.notes.map((note) => layPoint(String(note), width, '')) : [];
  return [table, ...lists, ...(notes.length === 0 ? [] : ['', ...notes])].join('\n');
}
