import type { Mark, Weight } from './drawing.ts';
import { DrawingError } from './drawing-error.ts';
import type { Block } from './flow.ts';
import { drawBox, drawLine, drawTextLines } from './marks.ts';
import { CAP_HEIGHT, LINE_STEP, wrapText } from './text-size.ts';

/** A column of a table; width in mm. */
export interface TableColumn {
  readonly head: string;
  readonly width: number;
  readonly align?: 'start' | 'middle' | 'end';
}

/**
 * What stands in a cell: text (turned into lines where it is too long), or an empty box to write into with a pencil, `width` × `height` mm.
 */
export type Cell =
  | string
  | { readonly kind: 'text'; readonly text: string; readonly weight: Weight }
  | {
      readonly kind: 'box';
      readonly width: number;
      readonly height: number;
      /** Drawn with a thick line: it must be filled in. */
      readonly isWanted?: boolean;
    };

/** Least side of a box that is written into with a pencil and a glove [mm]. */
export const PENCIL_BOX = 12;

export interface TableStyle {
  /** Font size of cells and heads [mm]. */
  readonly size: number;
  /** Room beside the text of a cell [mm]. */
  readonly padding: number;
  /** Least height of a row [mm]. */
  readonly leastHeight: number;
}

export const TABLE_STYLE: TableStyle = { size: 2.9, padding: 1.4, leastHeight: 6 };

/** Cells laid into a row that is as high as its highest. */
function layRow(
  columns: readonly TableColumn[],
  cells: readonly Cell[],
  style: TableStyle,
  isHead: boolean,
): { readonly height: number; readonly marks: readonly Mark[] } {
  const laid = cells.map((cell, k) => layCell(cell, columns[k]!, style, isHead));
  const height = Math.max(style.leastHeight, ...laid.map((cell) => cell.height + 2 * style.padding));
  let x = 0;
  const marks: Mark[] = [];
  for (const [k, cell] of laid.entries()) {
    marks.push(...cell.draw(x, height));
    x += columns[k]!.width;
  }
  const line = drawLine('frame', [0, -height], [x, -height], isHead ? 'medium' : 'hair');
  return { height, marks: [...marks, line] };
}

interface LaidCell {
  readonly height: number;
  /** Marks of the cell in a row of a height, whose column begins at x. */
  readonly draw: (x: number, rowHeight: number) => readonly Mark[];
}

function layCell(cell: Cell, column: TableColumn, style: TableStyle, isHead: boolean): LaidCell {
  const room = column.width - 2 * style.padding;
  const align = column.align ?? 'start';
  if (typeof cell === 'object' && cell.kind === 'box') {
    if (cell.width > room)
      throw new DrawingError(
        `a box of ${cell.width} mm does not fit in the column "${column.head}" of ${column.width} mm; expected at most ${room} mm`,
      );
    return {
      height: cell.height,
      draw: (x, rowHeight) => [
        drawBox(
          'frame',
          [x + style.padding, -(rowHeight + cell.height) / 2],
          cell.width,
          cell.height,
          cell.isWanted === true ? 'thick' : 'thin',
        ),
      ],
    };
  }
  const text = typeof cell === 'string' ? cell : cell.text;
  const weight: Weight = typeof cell === 'string' ? (isHead ? 'bold' : 'plain') : cell.weight;
  const lines = wrapText(text, style.size, weight, room);
  const height = ((lines.length - 1) * LINE_STEP + CAP_HEIGHT) * style.size;
  return {
    height,
    draw: (x, rowHeight) => {
      const place = { start: x + style.padding, middle: x + column.width / 2, end: x + column.width - style.padding };
      const top = -(rowHeight - height) / 2;
      return drawTextLines([place[align], top], lines, style.size, { weight, align, baseline: 'top' });
    },
  };
}

/**
 * A table as blocks, one a row; its head stands above the first row and again at the top of every page it goes on to (`flow.ts`).
 * Throws DrawingError when a row has not as many cells as there are columns, or a box is too wide.
 *
 * @param name what the table lists, for messages
 */
export function layTable(
  name: string,
  columns: readonly TableColumn[],
  rows: readonly (readonly Cell[])[],
  style: TableStyle = TABLE_STYLE,
): readonly Block[] {
  const head: Block = {
    name: `the head of the table of ${name}`,
    ...layRow(
      columns,
      columns.map((column) => column.head),
      style,
      true,
    ),
    staysWithNext: true,
  };
  const blocks = rows.map((cells, k): Block => {
    if (cells.length !== columns.length)
      throw new DrawingError(
        `row ${k + 1} of the table of ${name} has ${cells.length} cells; expected ${columns.length}`,
      );
    return { name: `row ${k + 1} of the table of ${name}`, ...layRow(columns, cells, style, false), head };
  });
  return [head, ...blocks];
}
