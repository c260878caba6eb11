import type { Combination } from '../../../../job/documents/connection.ts';
import { readQuantity } from '../../../parts/units.ts';
import { LOAD_COLUMNS } from './load-columns.ts';

/** Rows of a spreadsheet as load combinations, or what is wrong with each row. */
export interface PastedLoads {
  readonly rows: readonly Combination[];
  readonly faults: readonly string[];
}

const isHead = (cells: readonly string[]) => cells.slice(1).every((cell) => cell !== '' && !/\d/.test(cell));

/** Reads rows as a spreadsheet copies them: name, N, Vx, Vy, Mx, My, T set apart by tabs, in the units of this person; a row of heads is passed over. */
export function readPastedLoads(text: string): PastedLoads {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const rows: Combination[] = [];
  const faults: string[] = [];
  for (const [k, line] of lines.entries()) {
    const [name = '', ...cells] = line.split('\t').map((cell) => cell.trim());
    if (k === 0 && cells.length > 0 && isHead([name, ...cells])) continue;
    const row = { name, N_kN: 0, Vx_kN: 0, Vy_kN: 0, Mx_kNm: 0, My_kNm: 0, T_kNm: 0, at_mm: [0, 0] as const };
    const own: string[] = [];
    if (name === '') own.push(`row ${k + 1}: no name in the first column`);
    if (cells.length > LOAD_COLUMNS.length)
      own.push(`row ${k + 1}: ${cells.length + 1} columns; expected at most ${LOAD_COLUMNS.length + 1}`);
    for (const [c, { key, head, quantity }] of LOAD_COLUMNS.entries()) {
      const cell = cells[c] ?? '';
      if (cell === '') continue;
      const read = readQuantity(quantity, cell);
      if (read.ok) row[key] = read.value;
      else own.push(`row ${k + 1}, ${head}: “${cell}” is no value here; expected ${read.expected}`);
    }
    if (own.length === 0) rows.push(row);
    faults.push(...own);
  }
  return { rows, faults };
}
