import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxAround, boxOfMarks, doBoxesOverlap, textCorners } from '../../src/drawing/boxes.ts';
import type { Mark, TextMark } from '../../src/drawing/drawing.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import { type Block, drawBlocks, flowBlocks } from '../../src/drawing/flow.ts';
import { type Cell, layTable, PENCIL_BOX, type TableColumn } from '../../src/drawing/table.ts';

const isText = (mark: Mark): mark is TextMark => mark.kind === 'text';
const block = (name: string, height: number, over: Partial<Block> = {}): Block => ({
  name,
  height,
  marks: [],
  ...over,
});
const names = (pages: ReturnType<typeof flowBlocks>) => pages.map((page) => page.map((placed) => placed.block.name));

describe('stacking blocks on pages', () => {
  it('keeps order, loses none, and goes over no page', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10),
            fc.boolean(),
          ),
          { maxLength: 30 },
        ),
        fc.integer({ min: 0, max: 200 }),
        (list, firstHeight) => {
          // Two that stay together are 80 mm at most, and a third never joins them.
          const blocks = list.map(([height, stays], k) =>
            block(String(k), height, { staysWithNext: stays && k % 2 === 0 }),
          );
          const pages = flowBlocks(blocks, 100, firstHeight);
          expect(names(pages).flat()).toEqual(blocks.map(({ name }) => name));
          for (const [k, page] of pages.entries()) {
            let top = 0;
            for (const placed of page) {
              expect(placed.top).toBeCloseTo(top, 9);
              top += placed.block.height;
            }
            expect(top).toBeLessThanOrEqual((k === 0 ? firstHeight : 100) + 1e-5);
            const last = page.at(-1);
            if (last !== undefined && k < pages.length - 1) expect(last.block.staysWithNext === true).toBe(false);
          }
        },
      ),
    );
  });

  it('repeats a head where its rows go on, and there only', () => {
    const head = block('head', 10, { staysWithNext: true });
    const rows = [1, 2, 3, 4].map((n) => block(`row ${n}`, 20, { head }));
    const pages = flowBlocks([block('title', 15), head, ...rows, block('end', 5)], 70);
    expect(names(pages)).toEqual([
      ['title', 'head', 'row 1', 'row 2'],
      ['head', 'row 3', 'row 4', 'end'],
    ]);
  });

  it('leaves a short first page empty rather than go over it', () => {
    expect(names(flowBlocks([block('high', 60), block('low', 10)], 100, 30))).toEqual([[], ['high', 'low']]);
  });

  it('says which block is higher than a page', () => {
    expect(() => flowBlocks([block('low', 10), block('the list of parts', 101)], 100)).toThrow(
      new DrawingError(
        'the list of parts is 101.0 mm high with what stays with it; a page has 100.0 mm; expected a larger sheet or less text',
      ),
    );
    const head = block('head', 30);
    expect(() => flowBlocks([block('low', 90), block('row', 80, { head })], 100)).toThrow('row is 110.0 mm high');
  });

  it('hangs the marks of each block from its top', () => {
    const [page] = flowBlocks(
      [
        block('a', 10),
        block('b', 5, { marks: [{ kind: 'line', layer: 'frame', from: [0, -5], to: [9, -5], pen: 'thin' }] }),
      ],
      100,
    );
    expect(drawBlocks(page!, [20, 280])).toMatchObject([{ from: [20, 265], to: [29, 265] }]);
  });
});

describe('tables', () => {
  const columns: readonly TableColumn[] = [
    { head: 'No.', width: 14, align: 'end' },
    { head: 'Part', width: 50 },
    { head: 'Measured by tape', width: 34, align: 'middle' },
  ];
  const cell: fc.Arbitrary<Cell> = fc.oneof(
    fc.constantFrom('', 'insert', 'Threaded insert M16 × 120, hot-dip galvanised', 'ÅÉgj '.repeat(9)),
    fc.constant<Cell>({ kind: 'text', text: 'long enough to be turned into several lines', weight: 'bold' }),
  );
  const rows = fc.array(
    fc.tuple(
      fc.constantFrom<Cell>('1', '1000'),
      cell,
      fc.constant<Cell>({ kind: 'box', width: 26, height: PENCIL_BOX }),
    ),
    { maxLength: 25 },
  );

  it('let no text touch another or leave its column, on any page', () => {
    fc.assert(
      fc.property(rows, (list) => {
        for (const page of flowBlocks(layTable('parts', columns, list), 120)) {
          const marks = drawBlocks(page, [10, 200]);
          const texts = marks.filter(isText).map((mark) => ({ mark, box: boxAround(textCorners(mark)) }));
          for (const [k, { mark, box }] of texts.entries()) {
            for (const other of texts.slice(k + 1)) expect(doBoxesOverlap(box, other.box)).toBe(false);
            const limits = [10, 24, 74, 108];
            const column = limits.findIndex((limit, i) => mark.at[0] >= limit && mark.at[0] <= limits[i + 1]!);
            expect(box.x).toBeGreaterThanOrEqual(limits[column]!);
            expect(box.x + box.width).toBeLessThanOrEqual(limits[column + 1]! + 1e-9);
          }
          for (const mark of marks)
            if (mark.kind === 'area')
              for (const { box } of texts) expect(doBoxesOverlap(box, boxAround(mark.rings[0]!))).toBe(false);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('keep every row within its height, with a line below it', () => {
    fc.assert(
      fc.property(rows, (list) => {
        for (const { height, marks } of layTable('parts', columns, list)) {
          const box = boxOfMarks(marks)!;
          expect(box.y).toBeCloseTo(-height, 9);
          expect(box.y + box.height).toBeLessThanOrEqual(0);
          expect(box.width).toBeLessThanOrEqual(98 + 1e-9);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('give a pencil box of 12 mm its whole size', () => {
    const [, row] = layTable('checks', [{ head: 'x', width: 20 }], [[{ kind: 'box', width: 14, height: PENCIL_BOX }]]);
    const box = row!.marks.flatMap((mark) => (mark.kind === 'area' ? [boxAround(mark.rings[0]!)] : []))[0]!;
    expect(box.width).toBeCloseTo(14, 9);
    expect(box.height).toBeCloseTo(12, 9);
    expect(row!.height).toBeCloseTo(12 + 2 * 1.4, 9);
  });

  it('stand in bold in the head, plain below, and where a cell says so', () => {
    const blocks = layTable(
      'parts',
      [{ head: 'Part', width: 40 }],
      [['plain'], [{ kind: 'text', text: 'strong', weight: 'bold' }]],
    );
    expect(blocks.map(({ marks }) => marks.filter(isText).map(({ text, weight }) => [text, weight]))).toEqual([
      [['Part', 'bold']],
      [['plain', 'plain']],
      [['strong', 'bold']],
    ]);
  });

  it('refuse a row with too few cells and a box wider than its column', () => {
    expect(() => layTable('parts', columns, [['1', 'insert']])).toThrow(
      'row 1 of the table of parts has 2 cells; expected 3',
    );
    expect(() => layTable('checks', [{ head: 'x', width: 14 }], [[{ kind: 'box', width: 12, height: 12 }]])).toThrow(
      DrawingError,
    );
  });
});
