import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { ListReading } from '../files/csv/read-stock.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { UsageError } from './exit-codes.ts';
import { refuseMark } from './find-connection.ts';

/** Options of `onepour parts`, as they are typed. */
export interface PartsFlags {
  readonly pour?: string;
  readonly panel?: string;
  readonly stock?: string;
  readonly orders?: string;
  readonly today?: string;
  readonly csv?: string;
  readonly list?: string;
  readonly overwrite?: boolean;
  readonly json?: boolean;
}

/** Lists that can be written as CSV. */
const listNames = ['parts', 'bench', 'labels'] as const;
export type ListName = (typeof listNames)[number];

function writeDay(year: number, month: number, day: number): string {
  const pad = (value: number, digits: number) => String(value).padStart(digits, '0');
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`;
}

/** The day from which on pours are to come: as asked, else today by the calendar of this machine. */
export function readToday(text: string | undefined, now: Date): string {
  if (text === undefined) return writeDay(now.getFullYear(), now.getMonth() + 1, now.getDate());
  const date = new Date(`${text}T00:00:00Z`);
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(date.getTime()) && date.toISOString().slice(0, 10) === text)
    return text;
  throw new UsageError(`--today ${text}: expected a day of the calendar as YYYY-MM-DD, such as 2031-05-30`);
}

/** Refuses marks that the job does not have, and options that do not go together. */
export function checkFlags({ job }: JobFile, flags: PartsFlags): void {
  const { pour, panel, stock, orders, csv, list, json } = flags;
  const ids = job.pours.map(({ id }) => id);
  if (pour !== undefined && !ids.includes(pour)) throw refuseMark(`--pour ${pour}`, pour, ids, 'pours');
  const marks = job.panels.map(({ mark }) => mark);
  if (panel !== undefined && !marks.includes(panel)) throw refuseMark(`--panel ${panel}`, panel, marks, 'panels');
  const castHere = job.pours.find(({ id }) => id === pour)?.pieces.map((piece) => piece.panel) ?? marks;
  if (panel !== undefined && !castHere.includes(panel))
    throw new UsageError(
      `--panel ${panel}: not cast in pour ${pour}, expected one of ${[...new Set(castHere)].join(', ')}`,
    );
  if (stock !== undefined && panel !== undefined)
    throw new UsageError('--stock: not together with --panel, since the stock is shared by all panels');
  if (orders !== undefined && (panel !== undefined || pour !== undefined))
    throw new UsageError('--orders: not together with --panel or --pour, since an order is for the whole job');
  if (csv !== undefined && json) throw new UsageError('--csv: not together with --json, one form at a time');
  if (csv === undefined && list !== undefined) throw new UsageError('--list: needs --csv FILE.csv, the file to write');
  if (csv === undefined && flags.overwrite)
    throw new UsageError('--overwrite: needs --csv FILE.csv, the file to write');
}

/** Which list to write as CSV; parts where nothing is said. */
export function readListName({ list, panel }: PartsFlags): ListName {
  const name = listNames.find((known) => known === (list ?? 'parts'));
  if (name === undefined) throw new UsageError(`--list ${list}: expected one of ${listNames.join(', ')}`);
  if (name === 'bench' && panel !== undefined)
    throw new UsageError('--list bench: not together with --panel, since a bench is for a whole pour');
  return name;
}

/**
 * Reads a list of the yard.
 * @throws UsageError with every fault, one a line
 */
export function loadList<T>(
  option: string,
  path: string | undefined,
  read: (file: string, content: string) => ListReading<T>,
): readonly T[] | null {
  if (path === undefined) return null;
  const reading = read(basename(path), readContent(option, path));
  if (reading.ok) return reading.rows;
  const count = reading.faults.length === 1 ? '1 fault' : `${reading.faults.length} faults`;
  throw new UsageError(
    [...reading.faults.map(({ message }) => message), `${path}: ${count}, nothing was read`].join('\n'),
  );
}

function readContent(option: string, path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw new UsageError(`${option} ${path}: cannot be read, expected a CSV file (docs/parts.md)`);
  }
}
