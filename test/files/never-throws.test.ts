import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobReading } from '../../src/files/job-reading.ts';
import { readJob } from '../../src/files/read-job.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { resolveConnection } from '../../src/job/resolve/resolve-connection.ts';
import { sampleConnection, sampleJob, samplePanel } from '../job/sample-job.ts';
import { tries } from '../long.ts';
import { sampleSchedules } from './schedules.ts';

/** Odd values to put anywhere. */
const odd = fc.constantFrom<unknown>(
  null,
  true,
  '',
  'P1',
  'edge',
  'C1',
  -1,
  0,
  1e308,
  3.5,
  4,
  [],
  {},
  [[0, 0]],
  [
    [0, 0],
    [1, 0],
    [0, 1],
  ],
  [null],
  { kind: 'loads' },
);

/** All places in a JSON value. */
function placesOf(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [
    path,
    ...Object.entries(value).flatMap(([key, inner]) =>
      placesOf(inner, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

/** A copy with one place changed, or taken out where `put` is undefined. */
function change(value: unknown, path: readonly (string | number)[], put: unknown): unknown {
  const [first, ...rest] = path;
  if (first === undefined) return put;
  const copy: unknown = Array.isArray(value) ? [...value] : { ...(value as object) }; // safe: the path goes through it
  const record = copy as Record<string | number, unknown>; // safe: a list or an object, made just above
  if (rest.length === 0 && put === undefined) delete record[first];
  else record[first] = change(record[first], rest, put);
  return copy;
}

/** Every fault is a full sentence, and a job that is read can be resolved. */
function expectSound(reading: JobReading): void {
  if (!reading.ok) {
    expect(reading.faults.length).toBeGreaterThan(0);
    for (const fault of reading.faults) expect(fault.message.length).toBeGreaterThan(10);
    return;
  }
  const index = indexJob(reading.file);
  for (const connection of reading.file.job.connections)
    expect(resolveConnection(index, connection).mark).toBe(connection.mark);
}

describe('reading never breaks down', () => {
  const document = sampleJob({
    panels: [
      samplePanel({
        openings_mm: [
          [
            [2000, 1000],
            [2500, 1000],
            [2500, 1500],
          ],
        ],
        zones: [
          {
            name: 'z',
            outline_mm: [
              [0, 2000],
              [500, 2000],
              [500, 3000],
            ],
            layers: [{ kind: 'structural', thickness_mm: 150 }],
          },
        ],
        edges: [{ edge: 1, batter_deg: 2 }],
      }),
    ],
    connections: [sampleConnection({ edge: null, detail: null })],
  });
  const places = placesOf(document);

  it('on a job file with odd values or keys left out', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...places), fc.option(odd, { nil: undefined })), {
          minLength: 1,
          maxLength: 3,
        }),
        (changes) => {
          const changed = changes.reduce<unknown>((value, [path, put]) => {
            const exists = path.reduce<unknown>(
              (v, step) =>
                typeof v === 'object' && v !== null ? (v as Record<string | number, unknown>)[step] : undefined,
              value,
            ); // safe: an object
            return exists === undefined ? value : change(value, path, put);
          }, document);
          if (changed === undefined) return;
          expectSound(readJob(new Map([['job.json', JSON.stringify(changed)]])));
        },
      ),
      { numRuns: tries(1500, 500) },
    );
  });
  it('on schedules with signs changed or lines left out', () => {
    const names = Object.keys(sampleSchedules);
    const edit = fc.tuple(
      fc.constantFrom(...names),
      fc.nat(600),
      fc.constantFrom('', ',', ';', '"', '\n', '-', 'x', '9', '.', '\t', '|', ' ', '\uFEFF', '\u0000'),
      fc.nat(12),
    );
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
        const files = new Map(Object.entries(sampleSchedules));
        for (const [name, at, put, length] of edits) {
          const content = files.get(name)!;
          const place = at % content.length;
          files.set(name, content.slice(0, place) + put + content.slice(place + length));
        }
        expectSound(readJob(files));
      }),
      { numRuns: tries(1500, 500) },
    );
  });
});
