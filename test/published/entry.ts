// The published values as they lie in data/: each entry names its source, its inputs and what is printed.

import * as z from 'zod';
import anchorage from './data/anchorage.json' with { type: 'json' };
import hardware from './data/hardware.json' with { type: 'json' };

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

const publishedEntry = z.object({
  id: z.string(),
  mode: z.string(),
  title: z.string(),
  source: z.object({
    author: z.string(),
    title: z.string(),
    year: z.union([z.number(), z.string(), z.null()]),
    example: z.string().optional(),
    page: z.union([z.number(), z.string()]).optional(),
    url: z.string().optional(),
  }),
  standard: z.string(),
  published: z.array(publishedValue),
  /** How sure it is that these numbers are what the source prints. */
  confidence: z.string(),
  from_memory: z.boolean(),
});

export type PublishedValue = z.infer<typeof publishedValue>;
export type PublishedEntry = z.infer<typeof publishedEntry>;

/** The file on hardware prints its values as nested tables, with one unit and one rounding for all. */
const hardwareEntry = z.object({
  id: z.string(),
  topic: z.string(),
  title: z.string(),
  source: z.object({
    author: z.string(),
    title: z.string(),
    year: z.number().nullable(),
    locator: z.string(),
    url: z.string().optional(),
  }),
  published: z.record(z.string(), z.unknown()),
  units: z.string(),
  rounding: z.string(),
  from_memory: z.boolean(),
  status: z.string(),
});

/** Every entry on anchorage, then every entry on hardware, in the order of the files. */
export const ENTRIES: readonly PublishedEntry[] = [
  ...z.array(publishedEntry).parse(anchorage),
  ...z.array(hardwareEntry).parse(hardware).map(readHardware),
];

/** Names of values are the path through the table: "d2 M16". */
function readHardware(entry: z.infer<typeof hardwareEntry>): PublishedEntry {
  const { id, topic, title, source, published, units, rounding, status } = entry;
  const value = { unit: units, kind: 'final', rounding } as const;
  return {
    id,
    mode: topic,
    title,
    source: { ...source, example: source.locator },
    standard: topic,
    published: flatten(published).map(([name, number]) => ({ name, value: number, ...value })),
    confidence: status,
    from_memory: entry.from_memory,
  };
}

/** The numbers of a nested table, with their paths; texts are left out. */
function flatten(table: unknown, path: readonly string[] = []): readonly (readonly [name: string, value: number])[] {
  if (typeof table === 'number') return [[path.join(' '), table]];
  if (typeof table !== 'object' || table === null) return [];
  return Object.entries(table).flatMap(([key, inner]) => flatten(inner, [...path, key]));
}

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
