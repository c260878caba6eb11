import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BenchRow, LabelRow, PartRow } from '../../src/drawing/lists/part-rows.ts';
import {
  benchColumns,
  labelColumns,
  partColumns,
  writeBench,
  writeLabels,
  writeParts,
} from '../../src/files/csv/write-parts.ts';

const part: PartRow = {
  scope: 'job',
  pour: null,
  date: null,
  panel: null,
  castings: null,
  group: 'inserts',
  id: 'F16',
  name: 'Ferrule, M16 "long"',
  thread: 'M16',
  size_mm: 103.5,
  finish: 'zinc',
  count: 10,
  spares: 1,
  needed: 11,
  in_stock: 0,
  on_order: null,
  at_hand: null,
  short: null,
  to_order: 11,
  pack_size: 1,
  packs: 11,
  order_by: '2026-11-30',
};

const bench: BenchRow = {
  pour: 'T1',
  date: '2026-12-14',
  bed: 'Bed 1',
  group: 'inserts',
  id: 'F16',
  name: 'Ferrule',
  thread: 'M16',
  size_mm: 103,
  finish: 'zinc',
  count: 7,
  spares: 1,
  panels: 'P1: 3 each, no. 1, 2',
};

const { spares: _, panels: __, ...shared } = bench;
const label: LabelRow = { ...shared, panel: 'P1', serial: '2', revision: 'C', in_bag: 'yes' };

const read = (text: string): readonly Record<string, string>[] => parse(text, { columns: true });

describe('lists as CSV', () => {
  it('have a column for each thing, decimal points, and empty cells where there is nothing', () => {
    const [row] = read(writeParts([part]));
    expect(row).toEqual({
      ...Object.fromEntries(Object.entries(part).map(([key, value]) => [key, value === null ? '' : String(value)])),
    });
    expect(row!.size_mm).toBe('103.5');
    expect(row!.in_stock).toBe('0');
  });

  it.each([
    ['parts', writeParts([part]), Object.keys(part)],
    ['bench', writeBench([bench]), Object.keys(bench)],
    ['labels', writeLabels([label]), Object.keys(label)],
  ])('of %s hold all that a row has', (_name, text, keys) => {
    expect(Object.keys(read(text)[0]!).sort()).toEqual([...keys].sort());
  });

  it('have a heading where they have no row', () => {
    expect(writeBench([])).toBe(`${benchColumns.join(',')}\r\n`);
  });

  // OWASP, "CSV injection": a cell that begins with = + - @ is run as a formula by a spreadsheet.
  it.each(['=1+1', '+1', '-1', '@x'])('never begin a text with %j, which a spreadsheet would compute', (name) => {
    expect(read(writeParts([{ ...part, name }]))[0]!.name).toBe(`'${name}`);
  });

  it('give back any text that is no formula', () => {
    const plain = fc.string({ unit: 'binary' }).filter((text) => !/^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(text));
    fc.assert(
      fc.property(plain, (name) => {
        expect(read(writeParts([{ ...part, name }]))[0]!.name).toBe(name);
      }),
    );
  });
});

it.each([
  ['parts', partColumns],
  ['bench', benchColumns],
  ['labels', labelColumns],
])('the page on parts names the columns of %s, in their order', (list, columns) => {
  const page = readFileSync(join(import.meta.dirname, '..', '..', 'docs', 'parts.md'), 'utf8');
  const line = page.split('\n').find((one) => one.startsWith(`- \`${list}\`: `))!;
  expect([...line.slice(list.length + 5).matchAll(/`([^`]+)`/g)].map((match) => match[1])).toEqual([...columns]);
});
