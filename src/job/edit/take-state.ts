import type { Draft } from 'immer';
import type { JobFile } from '../documents/job-file.ts';
import { isRecord } from '../json-record.ts';

/** Whether two entries of a list are the same one: by their permanent key, where they have one. */
function isSameEntry(one: unknown, other: unknown): boolean {
  return isRecord(one) && isRecord(other) && one.key === other.key;
}

function takeList(into: unknown[], from: readonly unknown[]): void {
  from.forEach((value, k) => {
    const present = into[k];
    if (isSameEntry(present, value)) takeValues(present as Record<string, unknown>, value as Record<string, unknown>);
    else if (!isEqual(present, value)) into[k] = value;
  });
  if (into.length > from.length) into.length = from.length;
}

function takeValues(into: Record<string, unknown>, from: Readonly<Record<string, unknown>>): void {
  for (const key of Object.keys(into)) if (!Object.hasOwn(from, key)) delete into[key];
  for (const [key, value] of Object.entries(from)) {
    const present = into[key];
    if (Array.isArray(present) && Array.isArray(value)) takeList(present, value);
    else if (isRecord(present) && isRecord(value)) takeValues(present, value);
    else if (!Object.is(present, value)) into[key] = value;
  }
}

function isEqual(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (Array.isArray(one) && Array.isArray(other))
    return one.length === other.length && one.every((value, k) => isEqual(value, other[k]));
  if (!isRecord(one) || !isRecord(other)) return false;
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length && keys.every((key) => isEqual(one[key], other[key]));
}

/** Brings a job to another state of it: an earlier one, or one that was read from files. Only what differs is touched, so that the edit is small. */
export function takeState(draft: Draft<JobFile>, state: JobFile): void {
  takeValues(draft as unknown as Record<string, unknown>, { ...state });
}
