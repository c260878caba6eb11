// The published values as they lie in data/: each entry names its source, its inputs and what is printed.

import * as z from 'zod';
import anchorage from './data/anchorage.json' with { type: 'json' };

const publishedValue = z.strictObject({
  name: z.string(),
  value: z.number(),
  unit: z.string(),
  kind: z.enum(['intermediate', 'final']),
  /** How the source rounds; `toleranceOf` reads it. */
  rounding: z.string(),
  /** Why more than half a unit of the last printed digit may be allowed; absent: nothing more may. */
  reason: z.string().optional(),
});

const publishedEntry = z.strictObject({
  id: z.string(),
  mode: z.string(),
  title: z.string(),
  source: z.strictObject({
    author: z.string(),
    title: z.string(),
    year: z.union([z.number(), z.string(), z.null()]),
    example: z.string().optional(),
    page: z.union([z.number(), z.string()]).optional(),
    url: z.string().optional(),
  }),
  standard: z.string(),
  inputs: z.record(z.string(), z.unknown()),
  input_units: z.string(),
  published: z.array(publishedValue),
  /** How sure it is that these numbers are what the source prints. */
  confidence: z.string(),
  from_memory: z.boolean(),
  notes: z.unknown().optional(),
});

export type PublishedValue = z.infer<typeof publishedValue>;
export type PublishedEntry = z.infer<typeof publishedEntry>;

/** Every entry on anchorage, in the order of the file. */
export const ENTRIES: readonly PublishedEntry[] = z.array(publishedEntry).parse(anchorage);

/** @throws Error when no entry has that id. */
export function findEntry(id: string): PublishedEntry {
  const entry = ENTRIES.find((one) => one.id === id);
  if (entry === undefined) throw new Error(`test/published/data holds no entry "${id}"`);
  return entry;
}

/** @throws Error when the entry prints no value of that name. */
export function findValue(entry: PublishedEntry, name: string): PublishedValue {
  const value = entry.published.find((one) => one.name === name);
  if (value === undefined) throw new Error(`entry "${entry.id}" prints no value "${name}"`);
  return value;
}

/** Author, title, year, example, page and address of an entry's source in one line. */
export function nameSource({ source }: PublishedEntry): string {
  const page = source.page === undefined ? null : `p. ${source.page}`;
  const parts = [source.author, source.title, source.year, source.example, page, source.url];
  return parts.filter((part) => part !== null && part !== undefined && part !== '').join('; ');
}
