import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { DocumentFault, Fault } from '../../job/fault.ts';
import { readJobDocument } from '../../job/read-job-document.ts';
import { assembleItems } from './assemble-library.ts';
import { catalogueSchedule } from './columns.ts';
import { placeFaults } from './read-schedules.ts';
import { writeRecord } from './records.ts';
import { emptyRest } from './rest.ts';
import { Sources } from './sources.ts';
import { readTable } from './table.ts';
import { writeTable } from './write-schedules.ts';

/** Inserts read for a catalogue; or everything that is wrong, and none. */
export type CatalogueReading =
  | {
      readonly ok: true;
      readonly items: readonly CatalogueItem[];
      /** Names of those whose tests and rated loads, which the schedule cannot say, are kept from the catalogue as it is. */
      readonly kept: readonly string[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Faults of the inserts themselves where there are any: what else the job then has against them follows from those. */
function chooseTold(faults: readonly DocumentFault[]): readonly DocumentFault[] {
  const ofItems = faults.filter(({ path: [first, second] }) => first === 'library' && second === 'catalogue');
  return ofItems.length > 0 ? ofItems : faults;
}

/**
 * Reads catalogue.csv into the catalogue of a job. What the schedule cannot say (tests, rated loads) stays with the inserts of the same name.
 * Every fault at once, those too that the job would have by it, such as a panel whose insert is gone.
 *
 * @param how `add`: inserts of a known name are replaced, the others stay; `replace`: the schedule is the whole catalogue
 */
export function readCatalogue(content: string, file: JobFile, how: 'add' | 'replace'): CatalogueReading {
  const table = readTable(catalogueSchedule, content);
  // Without its columns every row would look wrong.
  if (table.faults.some(({ row }) => row === undefined || row === 1)) return { ok: false, faults: table.faults };
  const own = file.library.catalogue.items;
  const more = own.filter(({ tested, ratedLoads }) => tested.length + ratedLoads.length > 0);
  const types = Object.fromEntries(
    more.map(({ id, tested, ratedLoads }) => [id, { tested: [...tested], ratedLoads: [...ratedLoads] }]),
  );
  const sources = new Sources();
  const faults: Fault[] = [...table.faults];
  const rows = assembleItems(table, { rest: { ...emptyRest, types }, sources, faults, assumptions: new Set() });
  const names = new Set(rows.map(({ id }) => id));
  const items = how === 'replace' ? rows : [...rows, ...own.filter(({ id }) => !names.has(id))];
  const read = readJobDocument({
    ...file,
    library: { ...file.library, catalogue: { ...file.library.catalogue, items } },
  });
  if (!read.ok) faults.push(...placeFaults(chooseTold(read.faults), sources, faults));
  if (faults.length > 0 || !read.ok)
    return { ok: false, faults: [...faults].sort((a, b) => (a.row ?? 0) - (b.row ?? 0)) };
  return {
    ok: true,
    items: read.file.library.catalogue.items.slice(0, rows.length),
    kept: more.flatMap(({ id }) => (names.has(id) ? [id] : [])),
  };
}

/** Inserts as catalogue.csv; tests and rated loads are not in it. */
export function writeCatalogue(items: readonly CatalogueItem[]): string {
  return writeTable(
    catalogueSchedule,
    items.map((item) => writeRecord(catalogueSchedule.columns, item)),
  );
}
