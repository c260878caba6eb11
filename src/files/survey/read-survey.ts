import type { Fault } from '../../job/fault.ts';
import { decodeText } from './decode-text.ts';
import { type CellLine, findReading } from './find-reading.ts';
import { readSurveyNumber } from './read-number.ts';
import { listLines } from './split-line.ts';
import type { SurveyChoices, SurveyFile, SurveyReading, SurveyRow } from './survey-file.ts';

const MM_PER_M = 1000;
/** No frame of any country is larger [mm]. */
const FARTHEST = 1e10;
/** More points than that are no survey of panels. */
const MOST_LINES = 20_000;
/** A cell as it is shown in a message. */
const SHOWN = 40;

const NOTHING = { reading: null, rows: [], passedOver: [], repeated: [] } as const;

function wholeFault(file: string, expected: string, text: string): Fault {
  return { file, path: '', value: '', expected, message: `${file}: ${text}` };
}

/**
 * Reads a file of points as instruments and spreadsheets write them: any of the usual separators, decimal point or comma, metres or
 * millimetres, with or without a heading, names in quotation marks, comments. It is found out how the file is written, and told with how
 * sure it is; a person may choose otherwise. A line that cannot be read is told and left out; nothing is ever thrown.
 *
 * @param file its name, for messages
 */
export function readSurvey(file: string, bytes: Uint8Array, choices: SurveyChoices = {}): SurveyFile {
  const { text, encoding } = decodeText(bytes);
  if (text.includes('\0'))
    return {
      ...NOTHING,
      faults: [wholeFault(file, 'points as text', 'the file is not text; expected points as text, one a line')],
    };
  const lines = listLines(text.replace('\uFEFF', ''));
  if (lines.length > MOST_LINES) {
    const said = `${lines.length} lines, expected at most ${MOST_LINES}`;
    return { ...NOTHING, faults: [wholeFault(file, `at most ${MOST_LINES} lines`, said)] };
  }
  const found = findReading(lines, choices);
  if (found === null) {
    const said = 'no line holds two numbers; expected a point a line: name, east, north, height';
    return { ...NOTHING, faults: [wholeFault(file, 'a point a line', said)] };
  }
  const reading: SurveyReading = { encoding, ...found.reading };
  const rows: SurveyRow[] = [];
  const faults: Fault[] = [];
  for (const line of found.data) {
    const read = readRow(file, line, reading);
    if ('faults' in read) faults.push(...read.faults);
    else rows.push(read.row);
  }
  return {
    reading,
    ...sortOutHeights(file, rows, faults),
    passedOver: found.passedOver,
    repeated: findRepeated(rows),
  };
}

const AXIS_WORDS = { x: 'x, east', y: 'y, north', z: 'height' } as const;

function readRow(
  file: string,
  { number: line, cells }: CellLine,
  { columns: { value: columns }, decimal, unit, separator }: SurveyReading,
): { readonly row: SurveyRow } | { readonly faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const refuse = (column: number, axis: keyof typeof AXIS_WORDS, text: string) =>
    faults.push({
      file,
      row: line,
      column: `${column + 1}`,
      path: '',
      value: (cells[column] ?? '').slice(0, SHOWN),
      expected: 'a number',
      message: `${file} line ${line}, cell ${column + 1} (${AXIS_WORDS[axis]}): ${text}`,
    });
  const read = (axis: keyof typeof AXIS_WORDS): number => {
    const column = columns[axis] ?? 0;
    const cell = cells[column];
    if (cell === undefined) {
      refuse(
        column,
        axis,
        `is missing: the line has ${cells.length} cell${cells.length === 1 ? '' : 's'}; expected a number`,
      );
      return 0;
    }
    const value = readSurveyNumber(cell, decimal.value);
    const shown = cell.length > SHOWN ? `${cell.slice(0, SHOWN)}…` : cell;
    if (value === null) {
      const mark = decimal.value === '.' ? 'point' : 'comma';
      const aside = separator.value === ' ' ? ' (spaces stand between the cells)' : '';
      refuse(column, axis, `"${shown}" is not a number; expected one with a decimal ${mark}${aside}`);
      return 0;
    }
    const length = value * (unit.value === 'm' ? MM_PER_M : 1);
    if (Math.abs(length) > FARTHEST) refuse(column, axis, `"${shown}" is too far, expected at most 10,000 km`);
    return length;
  };
  const [x, y] = [read('x'), read('y')];
  // An empty height is none; a point of two numbers is told once the whole file is known.
  const hasHeight = columns.z !== null && (cells[columns.z] ?? '') !== '';
  const z = hasHeight ? read('z') : null;
  if (faults.length > 0) return { faults };
  const textAt = (column: number | null) => (column === null ? null : cells[column] || null);
  return {
    row: { line, name: textAt(columns.name), at_mm: z === null ? [x, y] : [x, y, z], code: textAt(columns.code) },
  };
}

/** Where most points have a height, those without one are told and left out; where most have none, heights are left away. */
function sortOutHeights(
  file: string,
  rows: readonly SurveyRow[],
  faults: readonly Fault[],
): { readonly rows: readonly SurveyRow[]; readonly faults: readonly Fault[] } {
  const without = rows.filter(({ at_mm }) => at_mm.length === 2);
  if (without.length === 0 || without.length === rows.length) return { rows, faults };
  if (without.length > rows.length / 2) {
    const said = `${rows.length - without.length} of ${rows.length} points have a height; heights are left away`;
    return {
      rows: rows.map((row) => ({ ...row, at_mm: [row.at_mm[0], row.at_mm[1]] })),
      faults: [...faults, wholeFault(file, 'a height at every point, or at none', said)],
    };
  }
  return {
    rows: rows.filter(({ at_mm }) => at_mm.length === 3),
    faults: [
      ...faults,
      ...without.map(
        ({ line }): Fault => ({
          file,
          row: line,
          path: '',
          value: '',
          expected: 'a height',
          message: `${file} line ${line}: the point has no height, as the others have; it is left out`,
        }),
      ),
    ],
  };
}

function findRepeated(rows: readonly SurveyRow[]): SurveyFile['repeated'] {
  const lines = new Map<string, number[]>();
  for (const { name, line } of rows) if (name !== null) lines.set(name, [...(lines.get(name) ?? []), line]);
  return [...lines].flatMap(([name, at]) => (at.length > 1 ? [{ name, lines: at }] : []));
}
