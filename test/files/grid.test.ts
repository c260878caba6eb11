import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typeCell } from '../../src/files/csv/grid.ts';
import { readGrid, writeGrid } from '../../src/files/csv/grid-text.ts';

const cell = fc
  .string({ unit: fc.constantFrom('a', '1', '"', ';', ',', '.', ' b', '\n'), maxLength: 6 })
  .map((text) => text.trim());

describe('a schedule as a grid of cells', () => {
  it('tells what stands between columns, and the decimal mark', () => {
    expect(readGrid('mark;x_mm\nP1;1,5\n')).toEqual({
      separator: ';',
      decimalMark: ',',
      rows: [
        ['mark', 'x_mm'],
        ['P1', '1,5'],
      ],
    });
    expect(readGrid('mark,x_mm\nP1,12\n')?.decimalMark).toBeNull();
    expect(readGrid('mark\tx_mm\nP1\t1.5\n')?.separator).toBe('\t');
  });

  it('is null where a quotation mark is never closed, or it is no text', () => {
    expect(readGrid('mark,x_mm\n"P1,12\n')).toBeNull();
    expect(readGrid('PK\0\0')).toBeNull();
  });

  it('keeps every cell through writing and reading', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(';', ',', '\t'),
        fc
          .integer({ min: 2, max: 4 })
          .chain((width) =>
            fc
              .array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 5 })
              .map((rows) => [Array.from({ length: width }, (_, k) => `h${k}`), ...rows]),
          ),
        (separator, rows) => {
          expect(readGrid(writeGrid({ separator, decimalMark: null, rows }))?.rows).toEqual(rows);
        },
      ),
    );
  });

  it('fills a short row up when a cell is typed, and drops empty cells beyond the heading', () => {
    const grid = readGrid('a,b,c\n1\n1,2,3,4\n')!;
    expect(typeCell(grid, 1, 1, '9').rows[1]).toEqual(['1', '9', '']);
    expect(typeCell(grid, 2, 3, '').rows[2]).toEqual(['1', '2', '3']);
    expect(typeCell(grid, 2, 0, '7').rows[2]).toEqual(['7', '2', '3', '4']);
  });
});
