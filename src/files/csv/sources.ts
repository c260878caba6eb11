import { type DocumentFault, type Fault, placeInFile, showValue } from '../../job/fault.ts';
import type { Column } from './columns.ts';
import { tableFault } from './table.ts';

type Path = readonly (string | number)[];

/** Where a value of the job file came from: a cell, a row, or a place in job.json. */
export type Source =
  | {
      readonly file: string;
      readonly row: number;
      readonly column: string | null;
      /** For a whole row: its columns, each filling a place in the entry. */
      readonly columns?: readonly Column[];
    }
  | { readonly file: string; readonly path: Path };

/** The column that fills a place of an entry, or something around it; null: none does. */
function findColumn(columns: readonly Column[], place: Path): string | null {
  const filling = columns.find(({ to }) => to !== undefined && place.length > 0 && isPrefix(to, place));
  return filling?.name ?? null;
}

function isPrefix(start: Path, whole: Path): boolean {
  return start.length <= whole.length && start.every((step, i) => step === whole[i]);
}

/** From which cell each value of an assembled job file came, so that a fault can be shown where the person typed it. */
export class Sources {
  private readonly known = new Map<string, Source>();

  private readonly silent = new Set<string>();

  add(path: Path, source: Source): void {
    this.known.set(JSON.stringify(path), source);
  }

  /** Says that faults at this place follow from another one, which is reported. */
  silence(path: Path): void {
    this.silent.add(JSON.stringify(path));
  }

  /** Whether a fault follows from another one, which is reported. */
  isSilent(fault: DocumentFault): boolean {
    return this.silent.has(JSON.stringify(fault.path));
  }

  /** Puts a fault where its value was typed: the nearest value around it that came from somewhere. */
  place(fault: DocumentFault): Fault {
    for (let length = fault.path.length; length > 0; length--) {
      const source = this.known.get(JSON.stringify(fault.path.slice(0, length)));
      if (source === undefined) continue;
      if (!('row' in source)) {
        return placeInFile(source.file, { ...fault, path: [...source.path, ...fault.path.slice(length)] });
      }
      const column = source.column ?? findColumn(source.columns ?? [], fault.path.slice(length));
      const isEmpty = column !== null && fault.value === showValue(undefined);
      const text = isEmpty ? `the cell is empty; expected ${fault.expected}` : fault.text;
      return tableFault(source.file, source.row, column, fault.value, fault.expected, text);
    }
    return placeInFile('schedules', fault);
  }
}
