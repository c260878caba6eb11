import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { orderSchedule, readOrders, readStock, stockSchedule } from '../../src/files/csv/read-stock.ts';

const messagesOf = (reading: ReturnType<typeof readStock> | ReturnType<typeof readOrders>) =>
  reading.ok ? [] : reading.faults.map(({ message }) => message);

describe('stock.csv', () => {
  it('is read row by row; empty counts are none', () => {
    const text = 'id,in_stock,on_order,arrives\nF16,40,,\nF16,,100,2026-12-01\n"bolt M16 x 35 8.8 zinc",7,3,\n';
    expect(readStock('stock.csv', text)).toEqual({
      ok: true,
      rows: [
        { id: 'F16', inStock: 40, onOrder: 0, arrives: null },
        { id: 'F16', inStock: 0, onOrder: 100, arrives: '2026-12-01' },
        { id: 'bolt M16 x 35 8.8 zinc', inStock: 7, onOrder: 3, arrives: null },
      ],
    });
  });

  // RFC 4180 with what spreadsheets make of it: byte order mark, semicolons, line endings of either kind, columns left out.
  it('is read as spreadsheets write it', () => {
    expect(readStock('stock.csv', '\uFEFFid;in_stock\r\nF16;40\r\n\r\nNAIL;0\r\n')).toEqual({
      ok: true,
      rows: [
        { id: 'F16', inStock: 40, onOrder: 0, arrives: null },
        { id: 'NAIL', inStock: 0, onOrder: 0, arrives: null },
      ],
    });
  });

  it('may list nothing', () => {
    expect(readStock('stock.csv', 'id,in_stock\n')).toEqual({ ok: true, rows: [] });
  });

  it.each([
    [
      'a share of a piece',
      'F16,2.5,,',
      'stock.csv row 2, column in_stock: 2.5 is no count; expected a whole number, 0 or more',
    ],
    [
      'less than none',
      'F16,-3,,',
      'stock.csv row 2, column in_stock: -3 is no count; expected a whole number, 0 or more',
    ],
    ['a word for a count', 'F16,some,,', 'stock.csv row 2, column in_stock: "some" is not a number; expected a number'],
    [
      'a count with its unit',
      'F16,40 pcs,,',
      'stock.csv row 2, column in_stock: "40 pcs" is not a number alone; the unit stands in the heading, so write 40; expected a number',
    ],
    [
      'an id in another encoding',
      'F\uFFFD16,5,,',
      'stock.csv row 2, column id: "F\uFFFD16" holds a sign that cannot be read; save the file as CSV in UTF-8; expected a text',
    ],
    ['no id', ',5,,', 'stock.csv row 2, column id: the cell is empty; expected the id of a part'],
    [
      'no count at all',
      'F16,,,',
      'stock.csv row 2, column in_stock: neither in_stock nor on_order is filled in; expected one of them',
    ],
    [
      'a day that is none',
      'F16,,5,2026-02-30',
      'stock.csv row 2, column arrives: "2026-02-30" is not a day; expected a day of the calendar as YYYY-MM-DD, such as 2031-05-30',
    ],
    [
      'a day in another order',
      'F16,,5,01.12.2026',
      'stock.csv row 2, column arrives: "01.12.2026" is not a day; expected a day of the calendar as YYYY-MM-DD, such as 2031-05-30',
    ],
    [
      'a day for nothing',
      'F16,5,,2026-12-01',
      'stock.csv row 2, column arrives: a day of arrival, but nothing is on order; expected a count in on_order',
    ],
    [
      'a cell too many',
      'F16,5,,,7',
      'stock.csv row 2: 5 cells, but the heading has 4; expected one for each heading (a cell with , in it, a decimal comma too, stands in quotation marks)',
    ],
  ])('with %s is refused in one line', (_, row, message) => {
    expect(messagesOf(readStock('stock.csv', `id,in_stock,on_order,arrives\n${row}\n`))).toEqual([message]);
  });

  it('with a heading that is not known is refused with the one that was meant, and no row is read', () => {
    expect(messagesOf(readStock('shelf.csv', 'id,instock\nF16,oops\n'))).toEqual([
      'shelf.csv row 1, column instock: the heading instock is not known; did you mean in_stock?',
    ]);
  });

  it('is refused with all that is wrong in it, in the order of its rows', () => {
    const text = 'id,in_stock,on_order,arrives\nF16,x,,\n,1,,\nNAIL,1.5,,\n';
    expect(messagesOf(readStock('stock.csv', text)).map((line) => line.slice(0, 15))).toEqual([
      'stock.csv row 2',
      'stock.csv row 3',
      'stock.csv row 4',
    ]);
  });

  it.each([
    ['', /^stock\.csv: the file is empty; expected a heading with at least id$/],
    ['P\0K', /not text in UTF-8/],
  ])('of %j is refused as a whole', (text, message) => {
    expect(messagesOf(readStock('stock.csv', text))).toEqual([expect.stringMatching(message)]);
  });
});

describe('orders.csv', () => {
  it('is read row by row; nothing delivered may be left empty', () => {
    expect(readOrders('orders.csv', 'id,ordered,delivered\nF16,120,40\nF16,20,\n')).toEqual({
      ok: true,
      rows: [
        { id: 'F16', ordered: 120, delivered: 40 },
        { id: 'F16', ordered: 20, delivered: 0 },
      ],
    });
  });

  it.each([
    ['F16,', 'orders.csv row 2, column ordered: the cell is empty; expected a whole number, 0 or more'],
    [
      'F16,1x',
      'orders.csv row 2, column ordered: "1x" is not a number alone; the unit stands in the heading, so write 1; expected a number',
    ],
    ['F16,0.5', 'orders.csv row 2, column ordered: 0.5 is no count; expected a whole number, 0 or more'],
  ])('with %j is refused in one line', (row, message) => {
    expect(messagesOf(readOrders('orders.csv', `id,ordered\n${row}\n`))).toEqual([message]);
  });

  it('without the column of what was ordered is refused', () => {
    expect(messagesOf(readOrders('orders.csv', 'id\nF16\n'))).toEqual([
      'orders.csv row 1, column ordered: the column ordered is missing; expected a number in every row',
    ]);
  });
});

it.each([stockSchedule, orderSchedule])(
  'the page on parts names the columns of $file, no others',
  ({ file, columns }) => {
    const page = readFileSync(join(import.meta.dirname, '..', '..', 'docs', 'parts.md'), 'utf8');
    const section = page.split(`### ${file}\n`)[1]!.split(/\n#+ /)[0]!;
    const named = section
      .split('\n')
      .filter((line) => line.startsWith('| `'))
      .flatMap((line) => [...line.split('|')[1]!.matchAll(/`([^`]+)`/g)].map((match) => match[1]!));
    expect(named.sort()).toEqual(columns.map(({ name }) => name).sort());
  },
);
