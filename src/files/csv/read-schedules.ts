import { JOB_FILE_VERSION } from '../../job/documents/job-file-version.ts';
import type { DocumentFault, Fault } from '../../job/fault.ts';
import { findNearestWord } from '../../job/nearest-word.ts';
import { readJobDocument } from '../../job/read-job-document.ts';
import type { FileTexts, JobReading } from '../job-reading.ts';
import { assembleConnections } from './assemble-connections.ts';
import { assembleItems, assembleLibrary, pinOf } from './assemble-library.ts';
import { assembleCastIns, assemblePanels } from './assemble-panels.ts';
import { assemblePours } from './assemble-pours.ts';
import type { Assembly, Tables } from './assembly.ts';
import {
  catalogueSchedule,
  connectionSchedule,
  insertSchedule,
  loadSchedule,
  panelSchedule,
  pourSchedule,
  type Schedule,
  schedules,
} from './columns.ts';
import { emptyRest, REST_FILE, type Rest, readRest } from './rest.ts';
import { Sources } from './sources.ts';
import { readTable, type Table } from './table.ts';

/** Marks in job.json that no schedule has. */
function checkRestNames(
  rest: Rest,
  lists: Readonly<Record<'panels' | 'types' | 'connections' | 'pours', readonly unknown[]>>,
): Fault[] {
  return (['panels', 'types', 'connections', 'pours'] as const).flatMap((kind) =>
    Object.keys(rest[kind]).flatMap((name): Fault[] => {
      if (lists[kind].includes(name)) return [];
      const near = findNearestWord(name, lists[kind].map(String));
      const text = `${name} is in no schedule${near === null ? '' : `; did you mean ${near}?`}`;
      const path = `${kind}.${name}`;
      return [
        {
          file: REST_FILE,
          path,
          value: name,
          expected: near ?? 'a name of the schedules',
          message: `${REST_FILE}, ${path}: ${text}`,
        },
      ];
    }),
  );
}

function openTable(schedule: Schedule, files: FileTexts, isNeeded: boolean): Table {
  const content = files.get(schedule.file);
  if (content !== undefined) return readTable(schedule, content);
  const message = `${schedule.file}: the file is missing; expected it beside the other schedules, saved as CSV`;
  const faults = isNeeded ? [{ file: schedule.file, path: '', value: '', expected: 'a file', message }] : [];
  return { file: schedule.file, rows: [], columns: new Set(), faults };
}

/** Faults of meaning, where they were typed, without those that only repeat a cell that is already reported. */
export function placeFaults(found: readonly DocumentFault[], sources: Sources, reported: readonly Fault[]): Fault[] {
  const known = new Set(reported.map((fault) => JSON.stringify([fault.file, fault.row, fault.column])));
  return found
    .filter((fault) => !sources.isSilent(fault))
    .map((fault) => sources.place(fault))
    .filter(({ file, row, column }) => column === undefined || !known.has(JSON.stringify([file, row, column])));
}

/** Each fault once: two places of the job file may come from one cell. */
function dropRepeated(faults: readonly Fault[]): Fault[] {
  return [...new Map(faults.map((fault) => [fault.message, fault])).values()];
}

/** Files beside the schedules that are none: a name that is nearly a missing schedule's is a fault, others are named. */
function checkOtherFiles(files: FileTexts): { readonly faults: Fault[]; readonly assumptions: string[] } {
  const known = [...schedules.map(({ file }) => file), REST_FILE];
  const missing = known.filter((name) => !files.has(name));
  const faults: Fault[] = [];
  const assumptions: string[] = [];
  for (const name of files.keys()) {
    if (known.includes(name)) continue;
    const near = findNearestWord(name, missing);
    if (near === null) assumptions.push(`${name} is no schedule: not read`);
    else {
      const message = `${name}: no schedule has this name; did you mean ${near}?`;
      faults.push({ file: name, path: '', value: name, expected: near, message });
    }
  }
  return { faults, assumptions };
}

/** Faults in the order in which a person meets them: file by file, row by row. */
function sortFaults(faults: readonly Fault[]): Fault[] {
  const order = schedules.map(({ file }) => file);
  const rank = (fault: Fault) => (order.includes(fault.file) ? order.indexOf(fault.file) : order.length);
  return [...faults].sort((a, b) => rank(a) - rank(b) || (a.row ?? 0) - (b.row ?? 0));
}

/**
 * Reads a job from schedules: panels.csv, inserts.csv, connections.csv and catalogue.csv, loads.csv if there are loads, pours.csv if pours are
 * planned, and job.json for what schedules cannot say. All faults at once; with any fault there is no job.
 */
export function readSchedules(files: FileTexts): JobReading {
  const tables: Tables = {
    panels: openTable(panelSchedule, files, true),
    inserts: openTable(insertSchedule, files, true),
    connections: openTable(connectionSchedule, files, true),
    loads: openTable(loadSchedule, files, false),
    catalogue: openTable(catalogueSchedule, files, true),
    pours: openTable(pourSchedule, files, false),
  };
  const rest = readRest(files.get(REST_FILE));
  const others = checkOtherFiles(files);
  const typed = [...Object.values(tables).flatMap((table: Table) => table.faults), ...rest.faults, ...others.faults];
  // Without its columns or rows a schedule would make every reference to it look wrong.
  const isBroken =
    rest.faults.length > 0 ||
    typed.some((fault) => fault.row === undefined || fault.row === 1 || fault.column === undefined);
  if (isBroken) return { ok: false, faults: sortFaults(typed), isCutShort: true };

  const assembly: Assembly = {
    rest: rest.rest,
    sources: new Sources(),
    faults: [...typed],
    assumptions: new Set(others.assumptions),
  };
  if (assembly.rest === emptyRest)
    assembly.assumptions.add(`no ${REST_FILE}: no standard details, zones or reinforcement are known`);
  const { panels, concretes } = assemblePanels(tables.panels, assembly);
  const castIns = assembleCastIns(tables.inserts, assembly);
  const connections = assembleConnections(tables, panels, castIns, assembly);
  const pours = assemblePours(tables.pours, assembly);
  const items = assembleItems(tables.catalogue, assembly);
  const library = assembleLibrary(items, assembly);
  const names = {
    panels: panels.map((p) => p.mark),
    types: items.map((t) => t.id),
    connections: connections.map((c) => c.mark),
    pours: pours.map((p) => p.id),
  };
  assembly.faults.push(...checkRestNames(assembly.rest, names));
  for (const name of ['project', 'revision']) assembly.sources.add(['job', name], { file: REST_FILE, path: [name] });
  const document = {
    format: 'onepour-job',
    version: JOB_FILE_VERSION,
    job: {
      project: assembly.rest.project ?? { name: 'Job from schedules' },
      pins: {
        catalogue: pinOf(library.catalogue),
        details: pinOf(library.details),
        holding: pinOf(library.holding),
        rules: pinOf(library.rules),
        yard: pinOf(library.yard),
      },
      concretes,
      panels,
      castIns,
      connections,
      revision: assembly.rest.revision ?? null,
      pours,
    },
    library,
  };
  const read = readJobDocument(document);
  const found = read.ok ? [] : read.faults;
  const faults = [...assembly.faults, ...placeFaults(found, assembly.sources, assembly.faults)];
  // Never refused without a line: should all be taken for consequences of others, they are shown as they are.
  const told = faults.length > 0 ? faults : found.map((fault) => assembly.sources.place(fault));
  if (told.length > 0 || !read.ok) return { ok: false, faults: sortFaults(dropRepeated(told)) };
  return { ok: true, file: read.file, assumptions: [...assembly.assumptions] };
}
