import type { JobFile } from '../job/documents/job-file.ts';
import { type DocumentFault, placeInFile } from '../job/fault.ts';
import { readJobDocument } from '../job/read-job-document.ts';
import type { JobReading } from './job-reading.ts';

/** Line and column of a place in a text, as an editor counts them. */
function showPlace(content: string, position: number): string {
  const before = content.slice(0, position).split('\n');
  return `line ${before.length}, column ${before[before.length - 1]!.length + 1}`;
}

/** The values of a JSON text, or where it stops being one. */
export function parseJson(content: string): { readonly value: unknown } | { readonly fault: DocumentFault } {
  const text = content.replace(/^\uFEFF/, '');
  try {
    const value: unknown = JSON.parse(text);
    return { value };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    const position = /position (\d+)/.exec(why)?.[1];
    const place = position === undefined ? '' : ` at ${showPlace(text, Number(position))}`;
    return { fault: { path: [], value: '', expected: 'JSON', text: `this is not JSON${place}: ${why}` } };
  }
}

/** Reads one job file, of this or an earlier version. */
export function readJobJson(name: string, content: string): JobReading {
  const parsed = parseJson(content);
  if ('fault' in parsed) return { ok: false, faults: [placeInFile(name, parsed.fault)] };
  const read = readJobDocument(parsed.value);
  if (!read.ok) return { ok: false, faults: read.faults.map((fault) => placeInFile(name, fault)) };
  return {
    ok: true,
    file: read.file,
    assumptions: read.changes.map((change) => `brought up from an earlier version: ${change}`),
  };
}

/** A job file as text: two spaces a level, a line feed at the end. */
export function writeJobJson(file: JobFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}
