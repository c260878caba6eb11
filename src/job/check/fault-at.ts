import { type DocumentFault, showValue } from '../fault.ts';
import { findNearestWord } from '../nearest-word.ts';
import type { Path } from '../sift.ts';

/** A fault of meaning: the value, what was expected, and the sentence (without the place). */
export function faultAt(path: Path, found: unknown, expected: string, text: string): DocumentFault {
  return { path, value: showValue(found), expected, text };
}

/** A name that nothing has, with the nearest one that exists. `where`: words that follow the name. */
export function unknownName(
  path: Path,
  kind: string,
  name: string,
  known: Iterable<string>,
  where = '',
): DocumentFault {
  const names = [...known];
  const near = findNearestWord(name, names);
  const listed = names.length > 8 ? `${names.slice(0, 8).join(', ')}, …` : names.join(', ');
  const expected = names.length === 0 ? `a ${kind}, but there are none` : `one of ${listed}`;
  const hint = near === null ? `expected ${expected}` : `did you mean ${near}?`;
  return faultAt(path, name, expected, `there is no ${kind} ${name}${where}; ${hint}`);
}
