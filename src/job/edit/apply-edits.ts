import type { JobFile } from '../documents/job-file.ts';
import type { DocumentFault } from '../fault.ts';
import { isRecord } from '../json-record.ts';
import { readJobDocument } from '../read-job-document.ts';
import type { Edit } from './edit.ts';
import { applyEdit } from './edit-job.ts';
import { findLostStep } from './find-lost-step.ts';

/** The file after edits, or everything that is wrong with it. */
export type AppliedEdits =
  | { readonly ok: true; readonly file: JobFile }
  | { readonly ok: false; readonly faults: readonly DocumentFault[] };

type Path = readonly (string | number)[];

/** Where two documents first differ; null: nowhere. */
function findDifference(one: unknown, other: unknown, path: Path = []): Path | null {
  if (Object.is(one, other) || one === other) return null;
  if (Array.isArray(one) && Array.isArray(other)) {
    for (let index = 0; index < Math.max(one.length, other.length); index += 1) {
      const found = findDifference(one[index], other[index], [...path, index]);
      if (found !== null) return found;
    }
    return null;
  }
  if (!isRecord(one) || !isRecord(other)) return path;
  for (const key of new Set([...Object.keys(one), ...Object.keys(other)])) {
    const found = findDifference(one[key], other[key], [...path, key]);
    if (found !== null) return found;
  }
  return null;
}

/**
 * Makes edits of unknown origin on a sound file, one after the other, and reads the result as any job file is read. A file that only
 * becomes whole by filling in what was left out is refused: both ends would hold different files.
 */
export function applyEdits(file: JobFile, edits: readonly Edit[]): AppliedEdits {
  let next = file;
  for (const edit of edits) {
    for (const change of edit.changes) {
      const lost = findLostStep(next, change);
      if (lost !== null) return { ok: false, faults: [{ ...lost, text: `"${edit.label}": ${lost.text}` }] };
      next = applyEdit(next, { ...edit, changes: [change] });
    }
  }
  const read = readJobDocument(next);
  if (!read.ok) return read;
  const path = findDifference(next, read.file);
  if (path === null) return { ok: true, file: next };
  const expected = 'every value written out, as in a job that was opened';
  return {
    ok: false,
    faults: [{ path, value: 'nothing', expected, text: `a value is left out: expected ${expected}` }],
  };
}
