import { expect, it } from 'vitest';
import { readCatalogue, writeCatalogue } from '../../src/files/csv/read-catalogue.ts';
import { demo } from '../job/edit/demo.ts';

const own = demo.library.catalogue.items;
const whole = writeCatalogue(own);
const lines = whole.trim().split('\r\n');
const columns = lines[0]!.split(',');

/** The row of a type with other cells; what stands in quotation marks becomes x. */
function rowOf(type: string, cells: Readonly<Record<string, string>>): string {
  const row = lines
    .find((line) => line.startsWith(`${type},`))!
    .replace(/"[^"]*"/g, 'x')
    .split(',');
  for (const [name, cell] of Object.entries(cells)) row[columns.indexOf(name)] = cell;
  return row.join(',');
}

const fileOf = (...rows: readonly string[]) => [lines[0], ...rows].join('\r\n');

it('reads back what it writes, tests and rated loads included, which the file cannot say', () => {
  const read = readCatalogue(whole, demo, 'replace');
  expect(read).toMatchObject({ ok: true });
  expect(read.ok && read.items).toEqual(own);
  const more = own.filter(({ tested, ratedLoads }) => tested.length + ratedLoads.length > 0).map(({ id }) => id);
  expect(more.length).toBeGreaterThan(0);
  expect(read.ok && read.kept).toEqual(more);
});

it('takes some rows beside the inserts that stay', () => {
  const read = readCatalogue(fileOf(rowOf('F12-70', { type: 'F12-90', length_mm: '90' })), demo, 'add');
  expect(read.ok && read.items.map(({ id, length_mm }) => [id, length_mm])).toEqual([['F12-90', 90]]);
});

it('tells every fault with its row and column, of shape and of meaning', () => {
  const read = readCatalogue(
    fileOf(
      rowOf('F12-70', { type: 'F12-71', length_mm: 'long', finish: 'gold' }),
      rowOf('F12-70', { embedment_mm: '300' }),
    ),
    demo,
    'add',
  );
  expect(read.ok ? [] : read.faults.map(({ row, column }) => [row, column])).toEqual([
    [2, 'length_mm'],
    [2, 'finish'],
    [3, 'embedment_mm'],
  ]);
});

it('refuses a whole catalogue that lacks an insert which the job uses', () => {
  const read = readCatalogue(fileOf(rowOf('F12-70', {})), demo, 'replace');
  expect(read.ok).toBe(false);
  expect(!read.ok && read.faults.some(({ message }) => message.includes('F16-103'))).toBe(true);
});

it('refuses a file without its columns at once', () => {
  const read = readCatalogue('type,name\r\nF1,One', demo, 'add');
  expect(!read.ok && read.faults.every(({ row }) => row === 1)).toBe(true);
});
