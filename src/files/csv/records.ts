import { writeCell } from './cells.ts';
import type { Column, Schedule } from './columns.ts';
import type { Sources } from './sources.ts';
import type { Row } from './table.ts';

/** A part of a job file being put together. */
export type Draft = Record<string, unknown>;

type Path = readonly (string | number)[];

/** Sets a value deep inside a draft; a number as a step makes a list. */
function setDeep(draft: Draft, steps: readonly (string | number)[], value: unknown): void {
  let place: Draft = draft;
  steps.slice(0, -1).forEach((step, i) => {
    place[step] ??= typeof steps[i + 1] === 'number' ? [] : {};
    place = place[step] as Draft; // safe: made just above, or by an earlier column as the same kind
  });
  place[steps[steps.length - 1]!] = value;
}

function getDeep(record: unknown, steps: readonly (string | number)[]): unknown {
  return steps.reduce<unknown>(
    (value, step) => (typeof value === 'object' && value !== null ? (value as Draft)[step] : undefined), // safe: an object
    record,
  );
}

/** Fills an entry of the job file from a row, column by column, and remembers where each value came from. */
export function fillRecord(schedule: Schedule, row: Row, path: Path, sources: Sources): Draft {
  const draft: Draft = {};
  sources.add(path, { file: schedule.file, row: row.number, column: null, columns: schedule.columns });
  for (const { name, to, ifBlank } of schedule.columns) {
    if (to === undefined) continue;
    const value = row.cells.has(name) ? row.cells.get(name) : ifBlank;
    if (value !== undefined) setDeep(draft, to, value);
  }
  return draft;
}

function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** The cells of an entry, by column; blank where the value is nothing or what a blank cell means. */
export function writeRecord(columns: readonly Column[], record: unknown): Map<string, string> {
  const cells = new Map<string, string>();
  for (const column of columns) {
    if (column.to === undefined) continue;
    const value = getDeep(record, column.to);
    if (value === undefined || value === null || ('ifBlank' in column && isSame(value, column.ifBlank))) continue;
    cells.set(column.name, writeCell(column.kind, value));
  }
  return cells;
}
