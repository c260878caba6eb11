import { type DocumentFault, type Fault, placeInFile } from '../../job/fault.ts';
import { tableFault } from './table.ts';

type Path = readonly (string | number)[];

/** Where a value of the job file came from: a cell, a row, or a place in job.json. */
export type Source =
  | { readonly file: string; readonly row: number; readonly column: string | null }
  | { readonly file: string; readonly path: Path };

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

  /** Puts a fault where its value was typed: the nearest value around it that came from somewhere. Null: silenced. */
  place(fault: DocumentFault): Fault | null {
    if (this.silent.has(JSON.stringify(fault.path))) return null;
    for (let length = fault.path.length; length > 0; length--) {
      const source = this.known.get(JSON.stringify(fault.path.slice(0, length)));
      if (source === undefined) continue;
      if (!('row' in source)) {
        return placeInFile(source.file, { ...fault, path: [...source.path, ...fault.path.slice(length)] });
      }
      return tableFault(source.file, source.row, source.column, fault.value, fault.expected, fault.text);
    }
    return placeInFile('schedules', fault);
  }
}
