import type { Bounds } from '../../geometry/solid.ts';

/** Width of a cell [mm]: about the room of an insert with its cross bar. */
const CELL = 250;

/** The largest number of cells; a larger scene gets wider cells. */
const MOST_CELLS = 1_000_000;

/**
 * Boxes sorted into square cells of the face, for finding those that may be near something. Items are few and small, bars many and long:
 * so the items lie in the cells, and each bar walks through the cells that it passes.
 */
export interface ItemGrid {
  readonly minX: number;
  readonly minY: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** Where the entries of each cell begin; one more at the end. */
  readonly starts: Int32Array;
  /** Numbers of boxes, cell by cell. */
  readonly entries: Int32Array;
}

/**
 * @param boxes at least one
 * @param reach how far beyond its box something may lie to be near it [mm]
 */
export function makeItemGrid(boxes: readonly Bounds[], reach: number): ItemGrid {
  let [minX, minY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [maxX, maxY] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const box of boxes) {
    minX = Math.min(minX, box.minX - reach);
    minY = Math.min(minY, box.minY - reach);
    maxX = Math.max(maxX, box.maxX + reach);
    maxY = Math.max(maxY, box.maxY + reach);
  }
  const cell = Math.max(CELL, Math.sqrt(((maxX - minX) * (maxY - minY)) / MOST_CELLS));
  const columns = Math.floor((maxX - minX) / cell) + 1;
  const rows = Math.floor((maxY - minY) / cell) + 1;
  const empty = { minX, minY, cell, columns, rows };
  const counts = new Int32Array(columns * rows + 1);
  const visitAll = (visit: (cell: number, box: number) => void) =>
    boxes.forEach((box, i) => {
      const left = columnOf(empty, box.minX - reach);
      const right = columnOf(empty, box.maxX + reach);
      const bottom = rowOf(empty, box.minY - reach);
      const top = rowOf(empty, box.maxY + reach);
      for (let row = bottom; row <= top; row++)
        for (let column = left; column <= right; column++) visit(row * columns + column, i);
    });
  visitAll((at) => {
    counts[at + 1]! += 1;
  });
  for (let i = 0; i < columns * rows; i++) counts[i + 1]! += counts[i]!;
  const starts = counts.slice();
  const entries = new Int32Array(starts[columns * rows]!);
  visitAll((at, box) => {
    entries[counts[at]!] = box;
    counts[at]! += 1;
  });
  return { ...empty, starts, entries };
}

type Cells = Pick<ItemGrid, 'minX' | 'minY' | 'cell' | 'columns' | 'rows'>;

function columnOf({ minX, cell, columns }: Cells, x: number): number {
  return Math.min(columns - 1, Math.max(0, Math.floor((x - minX) / cell)));
}

function rowOf({ minY, cell, rows }: Cells, y: number): number {
  return Math.min(rows - 1, Math.max(0, Math.floor((y - minY) / cell)));
}

/** Visits the cells that a line passes, as numbers; cells may come that it only touches. */
export function walkLine(
  grid: ItemGrid,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  visit: (cell: number) => void,
): void {
  const { minX, minY, cell, columns, rows } = grid;
  const [leftX, leftY, rightX, rightY] = ax <= bx ? [ax, ay, bx, by] : [bx, by, ax, ay];
  if (rightX < minX || leftX > minX + columns * cell) return;
  if (Math.max(ay, by) < minY || Math.min(ay, by) > minY + rows * cell) return;
  const slope = rightX > leftX ? (rightY - leftY) / (rightX - leftX) : 0;
  const first = columnOf(grid, leftX);
  const last = columnOf(grid, rightX);
  for (let column = first; column <= last; column++) {
    // The piece of the line over this column; a line along y lies over one column whole.
    const from = column === first ? leftY : leftY + slope * (minX + column * cell - leftX);
    const to = column === last ? rightY : leftY + slope * (minX + (column + 1) * cell - leftX);
    if (Math.max(from, to) < minY || Math.min(from, to) > minY + rows * cell) continue;
    const top = rowOf(grid, Math.max(from, to));
    for (let row = rowOf(grid, Math.min(from, to)); row <= top; row++) visit(row * columns + column);
  }
}

/** Visits the cells that a box lies over. */
export function walkBox(grid: ItemGrid, { minX, minY, maxX, maxY }: Bounds, visit: (cell: number) => void): void {
  const { cell, columns, rows } = grid;
  if (maxX < grid.minX || maxY < grid.minY || minX > grid.minX + columns * cell || minY > grid.minY + rows * cell)
    return;
  const right = columnOf(grid, maxX);
  const top = rowOf(grid, maxY);
  for (let row = rowOf(grid, minY); row <= top; row++)
    for (let column = columnOf(grid, minX); column <= right; column++) visit(row * columns + column);
}
