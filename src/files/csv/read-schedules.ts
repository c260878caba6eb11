import { defaultRules } from '../../job/default-rules.ts';
import { panel as panelSchema } from '../../job/documents/panel.ts';
import type { Fault } from '../../job/fault.ts';
import { isRecord } from '../../job/json-record.ts';
import { findNearestWord } from '../../job/nearest-word.ts';
import { readJobDocument } from '../../job/read-job-document.ts';
import type { FileTexts, JobReading } from '../job-reading.ts';
import { addPlate, type InsertRow } from './assemble-connection.ts';
import {
  catalogueSchedule,
  connectionSchedule,
  insertSchedule,
  loadSchedule,
  panelSchedule,
  type Schedule,
} from './columns.ts';
import { type Draft, fillRecord } from './records.ts';
import { emptyRest, REST_FILE, type Rest, readRest } from './rest.ts';
import { Sources } from './sources.ts';
import { type Row, readTable, type Table, tableFault } from './table.ts';

/** What is put together while schedules are read. */
interface Assembly {
  readonly rest: Rest;
  readonly sources: Sources;
  readonly faults: Fault[];
  readonly assumptions: Set<string>;
}

/** A permanent key where the row brings none: made from the mark, so that reading twice gives the same job. */
function fillKey(draft: Draft, key: string, { assumptions }: Assembly): void {
  if (draft.key !== undefined) return;
  draft.key = key;
  assumptions.add(
    'permanent keys are made from marks where the schedules give none: a renamed item counts as a new one',
  );
}

/** Copies a value of job.json into a draft, remembering that it came from there. */
function copyFromRest(
  draft: Draft,
  key: string,
  value: unknown,
  at: readonly (string | number)[],
  from: readonly (string | number)[],
  sources: Sources,
): void {
  if (value === undefined) return;
  draft[key] = value;
  sources.add([...at, key], { file: REST_FILE, path: [...from, key] });
}

function assemblePanels(table: Table, assembly: Assembly): { panels: Draft[]; concretes: unknown[] } {
  const { rest, sources, faults } = assembly;
  const concretes: unknown[] = [...rest.concretes];
  if (table.rows.length === 0) {
    faults.push(
      tableFault(table.file, 2, null, '', 'at least one panel', 'there is no panel; expected at least one row'),
    );
    sources.silence(['job', 'panels']);
  }
  for (let i = 0; i < concretes.length; i++) {
    sources.add(['job', 'concretes', i], { file: REST_FILE, path: ['concretes', i] });
  }
  const made = new Set<string>();
  const panels = table.rows.map((row, i) => {
    const path = ['job', 'panels', i];
    const draft = fillRecord(panelSchedule, row, path, sources);
    fillKey(draft, `panel ${draft.mark}`, assembly);
    addOutline(draft, row, path, assembly);
    const strength = row.cells.get('strength_MPa');
    if ((strength === undefined) === (draft.concrete === undefined)) {
      const text =
        strength === undefined
          ? 'neither strength_MPa nor concrete is given'
          : 'both strength_MPa and concrete are given';
      if (!hasFault(table, row, 'strength_MPa'))
        faults.push(
          tableFault(
            table.file,
            row.number,
            'strength_MPa',
            String(strength ?? ''),
            'one of the two',
            `${text}; expected one of the two`,
          ),
        );
      sources.silence([...path, 'concrete']);
    } else if (typeof strength === 'number') {
      draft.concrete = `${strength} MPa`;
      if (!made.has(draft.concrete as string)) {
        // safe: set as a text just above
        made.add(draft.concrete as string); // safe: as above
        sources.add(['job', 'concretes', concretes.length], {
          file: table.file,
          row: row.number,
          column: 'strength_MPa',
        });
        concretes.push({ id: draft.concrete, strength28_MPa: strength });
      }
    }
    const more = typeof draft.mark === 'string' ? rest.panels[draft.mark] : undefined;
    for (const key of ['zones', 'edges', 'reinforcement'] as const) {
      copyFromRest(draft, key, more?.[key], path, ['panels', String(draft.mark)], sources);
    }
    return draft;
  });
  // Without any, each panel's own strength is already reported, or there is no panel.
  if (concretes.length === 0) sources.silence(['job', 'concretes']);
  return { panels, concretes };
}

function hasFault(table: Table, row: Row, column: string): boolean {
  return table.faults.some((fault) => fault.row === row.number && fault.column === column);
}

/** The outline from its corners, or a rectangle from length and height. */
function addOutline(draft: Draft, row: Row, path: readonly (string | number)[], { sources, faults }: Assembly): void {
  const length = row.cells.get('length_mm');
  const height = row.cells.get('height_mm');
  const isRectangle = length !== undefined || height !== undefined;
  if (draft.outline_mm !== undefined) {
    if (!isRectangle) return;
    const column = length === undefined ? 'height_mm' : 'length_mm';
    faults.push(
      tableFault(
        panelSchedule.file,
        row.number,
        column,
        String(length ?? height),
        'an outline, or length and height',
        'the panel has an outline as well; expected one of the two',
      ),
    );
  } else if (typeof length === 'number' && typeof height === 'number') {
    draft.outline_mm = [
      [0, 0],
      [length, 0],
      [length, height],
      [0, height],
    ];
    sources.add([...path, 'outline_mm'], { file: panelSchedule.file, row: row.number, column: 'length_mm' });
  } else if (isRectangle) {
    sources.add([...path, 'outline_mm'], {
      file: panelSchedule.file,
      row: row.number,
      column: length === undefined ? 'length_mm' : 'height_mm',
    });
  }
}

function assembleCastIns(table: Table, assembly: Assembly): Draft[] {
  return table.rows.map((row, i) => {
    const draft = fillRecord(insertSchedule, row, ['job', 'castIns', i], assembly.sources);
    fillKey(draft, `insert ${JSON.stringify([draft.panel, draft.id])}`, assembly);
    return draft;
  });
}

/** Rows of a schedule by the connection that they name; a name that no connection has is a fault. */
function groupByConnection(table: Table, marks: readonly string[], faults: Fault[]): Map<unknown, Row[]> {
  const groups = new Map<unknown, Row[]>();
  for (const row of table.rows) {
    const mark = row.cells.get('connection');
    if (mark === undefined) {
      if (table.file === loadSchedule.file)
        faults.push(
          tableFault(
            table.file,
            row.number,
            'connection',
            '',
            'a connection',
            'is missing; expected the mark of a connection',
          ),
        );
      continue;
    }
    if (!marks.includes(String(mark))) {
      const near = findNearestWord(String(mark), marks);
      const expected = near === null ? `a connection of ${connectionSchedule.file}` : near;
      faults.push(
        tableFault(
          table.file,
          row.number,
          'connection',
          String(mark),
          expected,
          `there is no connection ${mark} in ${connectionSchedule.file}${near === null ? '' : `; did you mean ${near}?`}`,
        ),
      );
    }
    groups.set(mark, [...(groups.get(mark) ?? []), row]);
  }
  return groups;
}

function addActions(
  draft: Draft,
  row: Row,
  loads: readonly Row[],
  path: readonly (string | number)[],
  { sources, faults }: Assembly,
): void {
  const at = [...path, 'actions'];
  const required = ['required_N_kN', 'required_V_kN'].filter((column) => row.cells.has(column));
  if (loads.length > 0 && required.length > 0) {
    const text = `loads are given in ${loadSchedule.file} as well; expected either loads or required resistances`;
    faults.push(
      tableFault(
        connectionSchedule.file,
        row.number,
        required[0]!,
        String(row.cells.get(required[0]!)),
        'an empty cell',
        text,
      ),
    );
  }
  if (loads.length > 0) {
    const combinations = loads.map((load, k) => fillRecord(loadSchedule, load, [...at, 'combinations', k], sources));
    draft.actions = { kind: 'loads', combinations };
  } else if (required.length > 0) {
    sources.add([...at, 'N_kN'], { file: connectionSchedule.file, row: row.number, column: 'required_N_kN' });
    sources.add([...at, 'V_kN'], { file: connectionSchedule.file, row: row.number, column: 'required_V_kN' });
    draft.actions = {
      kind: 'required',
      N_kN: row.cells.get('required_N_kN') ?? 0,
      V_kN: row.cells.get('required_V_kN') ?? 0,
    };
  } else {
    draft.actions = { kind: 'none' };
  }
}

function assembleConnections(
  tables: Tables,
  panels: readonly Draft[],
  castIns: readonly Draft[],
  assembly: Assembly,
): Draft[] {
  const { rest, sources, faults } = assembly;
  const marks = tables.connections.rows.flatMap((row) =>
    row.cells.has('connection') ? [String(row.cells.get('connection'))] : [],
  );
  const insertRows = groupByConnection(tables.inserts, marks, faults);
  const loadRows = groupByConnection(tables.loads, marks, faults);
  const readyPanels = new Map(
    panels.flatMap((draft) => {
      const read = panelSchema.safeParse(draft);
      return read.success ? [[read.data.mark, read.data] as const] : [];
    }),
  );
  return tables.connections.rows.map((row, i) => {
    const path = ['job', 'connections', i];
    const draft = fillRecord(connectionSchedule, row, path, sources);
    fillKey(draft, `connection ${draft.mark}`, assembly);
    const inserts = (insertRows.get(draft.mark) ?? []).map((insertRow): InsertRow => {
      const castIn = castIns[tables.inserts.rows.indexOf(insertRow)];
      return { row: insertRow, id: castIn?.id, x: castIn?.x_mm, y: castIn?.y_mm };
    });
    const files = { connections: connectionSchedule.file, inserts: insertSchedule.file };
    faults.push(...addPlate(draft, files, row, inserts, path, readyPanels.get(String(draft.panel)), sources));
    addActions(draft, row, loadRows.get(draft.mark) ?? [], path, assembly);
    const more = typeof draft.mark === 'string' ? rest.connections[draft.mark] : undefined;
    for (const key of ['hangers', 'hairpins', 'fixture', 'inserts'] as const) {
      copyFromRest(draft, key, more?.[key], path, ['connections', String(draft.mark)], sources);
    }
    return draft;
  });
}

/** A bar, a cross hole and the like that a row leaves wholly empty is none. */
const groupsOrNone = ['crossHole', 'qualification', 'splitting', 'crossBar', 'price'] as const;

function assembleItems(table: Table, { rest, sources, faults }: Assembly): Draft[] {
  return table.rows.map((row, i) => {
    const path = ['library', 'catalogue', 'items', i];
    const draft = fillRecord(catalogueSchedule, row, path, sources);
    for (const key of groupsOrNone) draft[key] ??= null;
    const foot = isRecord(draft.foot) ? draft.foot : {};
    const hasDiameter = foot.diameter_mm !== undefined;
    if (hasDiameter === (foot.area_mm2 !== undefined)) {
      const text = `${hasDiameter ? 'both foot_diameter_mm and foot_area_mm2 are' : 'neither foot_diameter_mm nor foot_area_mm2 is'} given; expected one of the two`;
      if (!hasFault(table, row, 'foot_diameter_mm') && !hasFault(table, row, 'foot_area_mm2')) {
        faults.push(
          tableFault(
            table.file,
            row.number,
            'foot_diameter_mm',
            String(foot.diameter_mm ?? ''),
            'one of the two',
            text,
          ),
        );
      }
      for (const key of ['kind', 'diameter_mm', 'area_mm2']) sources.silence([...path, 'foot', key]);
    }
    draft.foot = { ...foot, kind: hasDiameter ? 'diameter' : 'area' };
    const more = typeof draft.id === 'string' ? rest.types[draft.id] : undefined;
    for (const key of ['tested', 'ratedLoads'] as const)
      copyFromRest(draft, key, more?.[key], path, ['types', String(draft.id)], sources);
    return draft;
  });
}

const emptyDetails = {
  format: 'onepour-details',
  version: 1,
  id: 'no-details',
  edition: '1',
  name: 'No standard details',
  details: [],
};
const emptyHolding = {
  format: 'onepour-holding-parts',
  version: 1,
  id: 'no-holding-parts',
  edition: '1',
  name: 'No holding parts',
  parts: [],
};
const catalogueHead = { id: 'catalogue.csv', edition: 'as typed', name: 'Inserts typed in catalogue.csv' };

function pinOf(document: unknown): unknown {
  return isRecord(document) ? { id: document.id, edition: document.edition } : undefined;
}

function assembleLibrary(items: readonly Draft[], { rest, sources, assumptions }: Assembly): Draft {
  const { library } = rest;
  for (const name of ['details', 'holding', 'rules'] as const) {
    if (library[name] !== undefined) sources.add(['library', name], { file: REST_FILE, path: ['library', name] });
  }
  if (library.rules === undefined) {
    const { partialFactors, defaults } = defaultRules;
    assumptions.add(
      `no rules given: ${defaultRules.name}, γ_c ${partialFactors.concrete}, ${defaults.cracked ? 'cracked' : 'uncracked'} concrete, bolts of class ${defaults.boltClass}`,
    );
  }
  return {
    catalogue: { format: 'onepour-catalogue', version: 1, ...(library.catalogue ?? catalogueHead), items },
    details: library.details ?? emptyDetails,
    holding: library.holding ?? emptyHolding,
    rules: library.rules ?? defaultRules,
  };
}

/** Marks in job.json that no schedule has. */
function checkRestNames(
  rest: Rest,
  lists: Readonly<Record<'panels' | 'types' | 'connections', readonly unknown[]>>,
): Fault[] {
  return (['panels', 'types', 'connections'] as const).flatMap((kind) =>
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

interface Tables {
  readonly panels: Table;
  readonly inserts: Table;
  readonly connections: Table;
  readonly loads: Table;
  readonly catalogue: Table;
}

function openTable(schedule: Schedule, files: FileTexts, isNeeded: boolean): Table {
  const content = files.get(schedule.file);
  if (content !== undefined) return readTable(schedule, content);
  const message = `${schedule.file}: the file is missing; expected it beside the other schedules`;
  const faults = isNeeded ? [{ file: schedule.file, path: '', value: '', expected: 'a file', message }] : [];
  return { file: schedule.file, rows: [], columns: new Set(), faults };
}

/** Faults of meaning, where they were typed, without those that only repeat a cell that is already reported. */
function placeFaults(found: Parameters<Sources['place']>[0][], sources: Sources, reported: readonly Fault[]): Fault[] {
  const known = new Set(reported.map((fault) => JSON.stringify([fault.file, fault.row, fault.column])));
  return found.flatMap((fault) => {
    const placed = sources.place(fault);
    return placed === null ||
      (placed.column !== undefined && known.has(JSON.stringify([placed.file, placed.row, placed.column])))
      ? []
      : [placed];
  });
}

/** Faults in the order in which a person meets them: file by file, row by row. */
function sortFaults(faults: readonly Fault[]): Fault[] {
  const order = [
    panelSchedule.file,
    insertSchedule.file,
    connectionSchedule.file,
    loadSchedule.file,
    catalogueSchedule.file,
  ];
  const rank = (fault: Fault) => (order.includes(fault.file) ? order.indexOf(fault.file) : order.length);
  return [...faults].sort((a, b) => rank(a) - rank(b) || (a.row ?? 0) - (b.row ?? 0));
}

/**
 * Reads a job from schedules: panels.csv, inserts.csv, connections.csv and catalogue.csv, loads.csv if there are loads, and job.json for
 * what schedules cannot say. All faults at once; with any fault there is no job.
 */
export function readSchedules(files: FileTexts): JobReading {
  const tables: Tables = {
    panels: openTable(panelSchedule, files, true),
    inserts: openTable(insertSchedule, files, true),
    connections: openTable(connectionSchedule, files, true),
    loads: openTable(loadSchedule, files, false),
    catalogue: openTable(catalogueSchedule, files, true),
  };
  const rest = readRest(files.get(REST_FILE));
  const typed = [...Object.values(tables).flatMap((table: Table) => table.faults), ...rest.faults];
  // Without its columns or rows a schedule would make every reference to it look wrong.
  const isBroken =
    rest.faults.length > 0 ||
    typed.some((fault) => fault.row === undefined || fault.row === 1 || fault.column === undefined);
  if (isBroken) return { ok: false, faults: sortFaults(typed) };

  const assembly: Assembly = { rest: rest.rest, sources: new Sources(), faults: [...typed], assumptions: new Set() };
  if (assembly.rest === emptyRest)
    assembly.assumptions.add(`no ${REST_FILE}: no standard details, zones or reinforcement are known`);
  const { panels, concretes } = assemblePanels(tables.panels, assembly);
  const castIns = assembleCastIns(tables.inserts, assembly);
  const connections = assembleConnections(tables, panels, castIns, assembly);
  const items = assembleItems(tables.catalogue, assembly);
  const library = assembleLibrary(items, assembly);
  const names = {
    panels: panels.map((p) => p.mark),
    types: items.map((t) => t.id),
    connections: connections.map((c) => c.mark),
  };
  assembly.faults.push(...checkRestNames(assembly.rest, names));
  assembly.sources.add(['job', 'project'], { file: REST_FILE, path: ['project'] });
  const document = {
    format: 'onepour-job',
    version: 1,
    job: {
      project: assembly.rest.project ?? { name: 'Job from schedules' },
      pins: {
        catalogue: pinOf(library.catalogue),
        details: pinOf(library.details),
        holding: pinOf(library.holding),
        rules: pinOf(library.rules),
      },
      concretes,
      panels,
      castIns,
      connections,
    },
    library,
  };
  const read = readJobDocument(document);
  const faults = [
    ...assembly.faults,
    ...(read.ok ? [] : placeFaults([...read.faults], assembly.sources, assembly.faults)),
  ];
  if (faults.length > 0 || !read.ok) return { ok: false, faults: sortFaults(faults) };
  return { ok: true, file: read.file, assumptions: [...assembly.assumptions] };
}
