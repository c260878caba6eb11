import type * as z from 'zod';
import { type DocumentFault, showValue } from './fault.ts';
import { findNearestWord } from './nearest-word.ts';

type Path = readonly (string | number)[];

/** Units of the keys that people write, for "expected a number in mm". */
const units: readonly (readonly [ending: string, words: string])[] = [
  ['_mm2', 'mm²'],
  ['_mm', 'mm'],
  ['_MPa', 'MPa'],
  ['_kNm', 'kNm'],
  ['_kN', 'kN'],
  ['_Nm', 'Nm'],
  ['_deg', 'degrees'],
  ['_um', 'µm'],
  ['_days', 'days'],
  ['_percent', '%'],
];

function nameUnit(path: Path): string {
  const key = [...path].reverse().find((step) => typeof step === 'string') ?? '';
  const unit = units.find(([ending]) => String(key).endsWith(ending));
  return unit === undefined ? '' : ` in ${unit[1]}`;
}

/** What stands in a document at a path; undefined where there is nothing. */
export function lookUp(document: unknown, path: Path): unknown {
  return path.reduce<unknown>((value, step) => {
    if (typeof value !== 'object' || value === null) return undefined;
    return Object.hasOwn(value, step) ? (value as Record<string | number, unknown>)[step] : undefined; // safe: own key of an object
  }, document);
}

const typeWords: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list of two numbers [x, y]',
  object: 'an object { … }',
};

function expectType(issue: z.core.$ZodIssueInvalidType, path: Path): string {
  const words = typeWords[issue.expected] ?? issue.expected;
  return issue.expected === 'number' || issue.expected === 'int' ? `${words}${nameUnit(path)}` : words;
}

function expectLimit(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig, path: Path): string {
  const isSmall = issue.code === 'too_small';
  const limit = isSmall ? issue.minimum : issue.maximum;
  if (issue.origin === 'array' || issue.origin === 'tuple')
    return `a list of at ${isSmall ? 'least' : 'most'} ${limit}`;
  if (issue.origin === 'string') return isSmall ? 'a text that is not empty' : `a text of at most ${limit} signs`;
  const side = isSmall ? (issue.inclusive ? 'at least' : 'greater than') : issue.inclusive ? 'at most' : 'less than';
  return `a number ${side} ${limit}${nameUnit(path)}`;
}

function expectFrom(issue: z.core.$ZodIssue, path: Path): string {
  switch (issue.code) {
    case 'invalid_type':
      return expectType(issue, path);
    case 'too_small':
    case 'too_big':
      return expectLimit(issue, path);
    case 'invalid_value':
      return issue.values.length === 1
        ? showValue(issue.values[0])
        : `one of ${issue.values.map((v) => showValue(v)).join(', ')}`;
    case 'invalid_format':
      if (issue.format === 'date') return 'a day of the calendar as YYYY-MM-DD';
      return 'a text without line breaks that does not start with = + - @ or a space and does not end with a space';
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? `one of ${issue.options.map((v) => showValue(v)).join(', ')}`
        : 'one of the shapes described';
    default:
      return issue.message;
  }
}

/** The path of an issue in words and numbers (no document of ours has a symbol as a key). */
function plainPath(path: readonly PropertyKey[]): Path {
  return path.map((step) => (typeof step === 'number' ? step : String(step)));
}

function suggestKey(unknownKey: string, known: readonly string[]): string {
  const near = findNearestWord(unknownKey, known);
  return near === null ? '' : `; did you mean ${near}?`;
}

/**
 * What a schema found, in plain words: one fault an issue, one for every unknown key.
 *
 * @param document what was read, to show the value that is wrong
 * @param knownKeys all keys that documents use, to suggest the one that was meant
 */
export function explainIssues(
  issues: readonly z.core.$ZodIssue[],
  document: unknown,
  knownKeys: readonly string[],
): DocumentFault[] {
  return issues.flatMap((issue): DocumentFault[] => {
    const path = plainPath(issue.path);
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((unknownKey) => ({
        path: [...path, unknownKey],
        value: showValue(lookUp(document, [...path, unknownKey])),
        expected: 'no such key',
        text: `the key ${unknownKey} is not known here${suggestKey(unknownKey, knownKeys)}`,
      }));
    }
    const found = lookUp(document, path);
    const expected = expectFrom(issue, path);
    const isMissing = found === undefined;
    return [
      {
        path,
        value: showValue(found),
        expected,
        text: isMissing
          ? `is missing; expected ${expected}`
          : `${showValue(found)} is not allowed; expected ${expected}`,
      },
    ];
  });
}
