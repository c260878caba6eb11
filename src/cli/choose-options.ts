import type { ChooseOptions } from '../assess/choose/choice.ts';
import type { ChooseScope } from '../assess/choose/choose-job.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { UsageError } from './exit-codes.ts';
import { findConnection, refuseMark } from './find-connection.ts';

/** Options of `onepour choose`, as they are typed. */
export interface ChooseFlags {
  /** Another standard in place of the job's own. */
  readonly by?: string;
  readonly all?: boolean;
  readonly panel?: string;
  readonly move?: string;
  readonly drill?: boolean;
  readonly boltClass?: boolean;
  readonly pourIn?: string;
  readonly pourDate?: string;
  readonly apply?: string;
  readonly overwrite?: boolean;
  readonly json?: boolean;
}

/** No connection is moved farther [mm]: beyond that it is another connection. */
const FARTHEST_MOVE = 1000;
/** Ten years: more is a slip of the pen. */
const MOST_DAYS = 3650;
const MS_PER_DAY = 86_400_000;

function readWhole(option: string, text: string, low: number, high: number, unit: string): number {
  const value = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (value >= low && value <= high) return value;
  throw new UsageError(`${option} ${text}: expected whole ${unit}, ${low} to ${high}`);
}

/** Whole days from one day to another, both counted by the calendar. */
function readDate(text: string, today: Date): number {
  const refuse = (why: string) => new UsageError(`--pour-date ${text}: ${why}`);
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  if (Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== text)
    throw refuse('expected a day of the calendar as YYYY-MM-DD, such as 2031-05-30');
  const start = Date.UTC(today.getFullYear(), today.getMonth(), today.getDate());
  const days = Math.round((date.getTime() - start) / MS_PER_DAY);
  if (days < 0) throw refuse(`lies ${days === -1 ? '1 day' : `${-days} days`} back, expected today or later`);
  if (days > MOST_DAYS) throw refuse(`lies ${days} days ahead, expected at most ${MOST_DAYS}`);
  return days;
}

/**
 * What may be changed, and when the pour is.
 * @param today the day from which days to the pour are counted
 * @throws UsageError in one line for a value that cannot be used
 */
export function readChooseOptions(flags: ChooseFlags, today: Date): ChooseOptions {
  const { move, pourIn, pourDate } = flags;
  if (pourIn !== undefined && pourDate !== undefined)
    throw new UsageError('--pour-in and --pour-date: both are given, expected one of them');
  const ofDate = pourDate === undefined ? null : readDate(pourDate, today);
  return {
    move: move === undefined ? 0 : readWhole('--move', move, 1, FARTHEST_MOVE, 'millimetres'),
    drills: flags.drill ?? false,
    strongerBolts: flags.boltClass ?? false,
    daysToPour: pourIn === undefined ? ofDate : readWhole('--pour-in', pourIn, 0, MOST_DAYS, 'days'),
  };
}

/**
 * Which connections are chosen for.
 * @throws UsageError in one line for a mark that the job does not have, or for two ways at once
 */
export function readChooseScope(file: JobFile, mark: string | undefined, flags: ChooseFlags): ChooseScope {
  const { panel, all = false } = flags;
  if (mark !== undefined && (panel !== undefined || all))
    throw new UsageError(
      `${panel === undefined ? '--all' : `--panel ${panel}`}: a connection is named (${mark}), expected one or the other`,
    );
  if (mark !== undefined) findConnection(file, mark, mark);
  const marks = file.job.panels.map((candidate) => candidate.mark);
  if (panel !== undefined && !marks.includes(panel)) throw refuseMark(`--panel ${panel}`, panel, marks, 'panels');
  return { connection: mark ?? null, panel: panel ?? null, all };
}
