/** A schedule as a person sees it in a spreadsheet: every row with its cells as texts, row 1 the heading. */
export interface Grid {
  readonly separator: string;
  /** The mark that its numbers show; null: all are whole. */
  readonly decimalMark: '.' | ',' | null;
  readonly rows: readonly (readonly string[])[];
}

/**
 * One cell typed anew. A row that is too short is filled up to the heading's cells; empty cells beyond the heading go.
 * @param row from 0, the heading's row 0
 */
export function typeCell(grid: Grid, row: number, column: number, text: string): Grid {
  const width = grid.rows[0]?.length ?? 0;
  const rows = grid.rows.map((cells, k) => {
    if (k !== row) return cells;
    const length = Math.max(cells.length, column + 1, width);
    const typed = Array.from({ length }, (_, i) => (i === column ? text : (cells[i] ?? '')));
    while (typed.length > width && typed.at(-1) === '') typed.pop();
    return typed;
  });
  return { ...grid, rows };
}
