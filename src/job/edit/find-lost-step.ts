import type { DocumentFault } from '../fault.ts';
import { showPath, showValue } from '../fault.ts';
import { isRecord } from '../json-record.ts';
import type { Patch } from './edit.ts';

/** What a step may do at the end of its path, as a fault names it; null: it may. */
function findFaultAtEnd(holder: unknown, key: string | number, { op }: Patch): string | null {
  if (Array.isArray(holder)) {
    const places = op === 'add' ? holder.length + 1 : holder.length;
    return typeof key === 'number' && key < places ? null : `a place in a list of ${holder.length}`;
  }
  if (!isRecord(holder)) return 'a list or a group of values above it';
  if (typeof key !== 'string' || key === '__proto__') return 'the name of a value';
  return op === 'add' || Object.hasOwn(holder, key) ? null : 'a value that is there';
}

/**
 * Whether a step of a change leads anywhere in a document: each key and place on the way must be there, and at the end what is
 * removed or replaced. Null: it does.
 */
export function findLostStep(document: unknown, patch: Patch): DocumentFault | null {
  const { op, path } = patch;
  const lost = (length: number, expected: string): DocumentFault => ({
    path: path.slice(0, length),
    value: showValue(patch.value),
    expected,
    text: `the change at ${showPath(path) || 'the whole file'} leads nowhere: expected ${expected}`,
  });
  const last = path.at(-1);
  if (last === undefined) return op === 'replace' ? null : lost(0, 'a file that is replaced as a whole');
  let holder = document;
  for (const [index, key] of path.slice(0, -1).entries()) {
    const isThere = Array.isArray(holder) ? typeof key === 'number' : isRecord(holder) && typeof key === 'string';
    if (!isThere || !Object.hasOwn(holder as object, key)) return lost(index + 1, 'a value that is there');
    holder = (holder as Record<string | number, unknown>)[key];
  }
  const expected = findFaultAtEnd(holder, last, patch);
  return expected === null ? null : lost(path.length, expected);
}
