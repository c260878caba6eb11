import type { BodyOf } from '../../../records/record.ts';

/** A tool as somebody types it; empty: nobody read it, which stays a visible gap. */
export interface TypedTool {
  readonly name: string;
  readonly serial: string;
  /** YYYY-MM-DD. */
  readonly until: string;
}

export const NO_TOOL: TypedTool = { name: '', serial: '', until: '' };

/** A day of the calendar, which the browser's own reading would round to another. */
function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

/** What a record says of the tool; a text: what is wrong with what was typed. */
export function readTool({ name, serial, until }: TypedTool): BodyOf<'surveyed'>['tool'] | string {
  if (until !== '' && !isDay(until))
    return `“${until}” is no day; expected year-month-day, such as 2027-03-31, or nothing`;
  if (serial.length > 60) return 'The number of the tool is too long; expected at most 60 signs';
  if (name === '' && serial === '' && until === '') return null;
  return {
    name: name === '' ? null : name,
    serial: serial === '' ? null : serial,
    calibratedUntil: until === '' ? null : until,
  };
}
