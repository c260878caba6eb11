import type { SetOutItem } from '../../../../assess/set-out/set-out.ts';
import type { PiecePlan } from '../../../../assess/yard/piece-plan.ts';
import type { SheetPart } from './sheet-draft.ts';

/** What is written in a box: a length in mm, or yes and no. */
export type CellKind = 'length' | 'sight';

/** One box of the paper, and where it stands in the grid that is typed in. */
export interface SheetCell {
  readonly name: string;
  readonly kind: CellKind;
  /** Read aloud: `insert 7, x`. */
  readonly says: string;
}

/** A row of the paper. */
export interface SheetRow {
  readonly part: SheetPart | 'form';
  /** Null: of the form itself. */
  readonly item: SetOutItem | null;
  readonly cells: readonly SheetCell[];
}

const PLACED = [
  ['x', 'length'],
  ['y', 'length'],
  ['level', 'length'],
  ['type', 'sight'],
  ['face', 'sight'],
  ['firm', 'sight'],
] as const;

const SCREEDED = [
  ['level ok', 'sight'],
  ['plumb', 'sight'],
  ['cap', 'sight'],
] as const;

/** Columns of a part as the paper has them. */
export function columnsOf(part: SheetPart): readonly string[] {
  return (part === 'screed' ? SCREEDED : PLACED).map(([column]) => column);
}

export function cellName(part: SheetPart, key: string, column: string): string {
  return `${part} ${key} ${column}`;
}

export const formCellName = (what: string): string => `form ${what}`;

function rowOf(part: SheetPart, item: SetOutItem): SheetRow {
  const columns: readonly (readonly [string, CellKind])[] = part === 'screed' ? SCREEDED : PLACED;
  return {
    part,
    item,
    cells: columns.map(([column, kind]) => ({
      name: cellName(part, item.castIn.key, column),
      kind,
      says: `insert ${item.number}, ${column}`,
    })),
  };
}

/**
 * The boxes of a piece's paper sheet, in its own order: the form first, row by row of the three parts after it.
 * @param measures lengths of the form check, in the order of the sheet
 */
export function listRows(
  { setOut, afterScreed }: Pick<PiecePlan, 'setOut' | 'afterScreed'>,
  measures: readonly string[],
): readonly SheetRow[] {
  const stage = (wanted: 1 | 2) =>
    setOut.items.filter((item) => item.stage === wanted).map((item) => rowOf(`stage ${wanted}`, item));
  return [
    ...measures.map(
      (what): SheetRow => ({
        part: 'form',
        item: null,
        cells: [{ name: formCellName(what), kind: 'length', says: `form, ${what}` }],
      }),
    ),
    ...stage(1),
    ...stage(2),
    ...afterScreed.map((item) => rowOf('screed', item)),
  ];
}

/** A way to go from one box to another. */
export type Step = 'next' | 'before' | 'up' | 'down';

/** The box that a key leads to; null: there is none that way. Up and down keep to the column as far as the row goes. */
export function stepFrom(rows: readonly SheetRow[], name: string, step: Step): string | null {
  const row = rows.findIndex(({ cells }) => cells.some((cell) => cell.name === name));
  if (row === -1) return null;
  const column = rows[row]!.cells.findIndex((cell) => cell.name === name);
  const at = (r: number, c: number) => rows[r]?.cells[Math.min(c, (rows[r]?.cells.length ?? 1) - 1)]?.name ?? null;
  switch (step) {
    case 'next':
      return column + 1 < rows[row]!.cells.length ? at(row, column + 1) : at(row + 1, 0);
    case 'before':
      return column > 0 ? at(row, column - 1) : at(row - 1, Number.POSITIVE_INFINITY);
    case 'up':
      return at(row - 1, column);
    case 'down':
      return at(row + 1, column);
  }
}

/** Whether a text may stand in a box for a length while it is typed: digits, a sign before them, one point. */
export function isLengthText(text: string): boolean {
  return /^-?\d{0,6}(\.\d?)?$/.test(text);
}

/** What a key answers in a box of yes or no; null: nothing. `all`: yes to the whole row. */
export function readSightKey(key: string): 'y' | 'n' | 'all' | null {
  const small = key.toLowerCase();
  if (small === 'y' || small === 'n') return small;
  return small === 'a' ? 'all' : null;
}
