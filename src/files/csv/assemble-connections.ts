import { unknownName } from '../../job/check/fault-at.ts';
import { type Panel, panel as panelSchema } from '../../job/documents/panel.ts';
import type { Fault } from '../../job/fault.ts';
import { addPlate, type InsertRow } from './assemble-plate.ts';
import { type Assembly, copyFromRest, fillKey, type Tables } from './assembly.ts';
import { connectionSchedule, insertSchedule, loadSchedule } from './columns.ts';
import { type Draft, fillRecord } from './records.ts';
import { type Row, type Table, tableFault } from './table.ts';

/** A cell with a name that nothing has. */
function unknownCell(
  file: string,
  row: Row,
  column: string,
  kind: string,
  known: ReadonlySet<string>,
  where: string,
): Fault {
  const value = String(row.cells.get(column));
  const { expected, text } = unknownName([], kind, value, known, where);
  return tableFault(file, row.number, column, value, expected, text);
}

/** Rows of a schedule by the connection that they name; a name that no connection has is a fault. */
function groupByConnection(table: Table, marks: readonly string[], faults: Fault[]): Map<unknown, Row[]> {
  const groups = new Map<unknown, Row[]>();
  const known = new Set(marks);
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
            'the cell is empty; expected the mark of a connection',
          ),
        );
      continue;
    }
    if (!known.has(String(mark)))
      faults.push(unknownCell(table.file, row, 'connection', 'connection', known, ` in ${connectionSchedule.file}`));
    const group = groups.get(mark);
    if (group === undefined) groups.set(mark, [row]);
    else group.push(row);
  }
  return groups;
}

function addActions(
  draft: Draft,
  row: Row,
  loads: readonly Row[],
  path: readonly (string | number)[],
  { sources, faults, assumptions }: Assembly,
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
    if (required.length === 1) {
      const [given, other] = required[0] === 'required_N_kN' ? ['tension', 'shear'] : ['shear', 'tension'];
      assumptions.add(`connection ${draft.mark}: only a ${given} is required of each insert; no ${other} is checked`);
    }
    draft.actions = {
      kind: 'required',
      N_kN: row.cells.get('required_N_kN') ?? 0,
      V_kN: row.cells.get('required_V_kN') ?? 0,
    };
  } else {
    draft.actions = { kind: 'none' };
  }
}

/** What a connection refers to and has not: told here, since the places of its holes cannot be told without. */
function checkBase(
  draft: Draft,
  row: Row,
  panels: ReadonlyMap<string, Panel>,
  marks: ReadonlySet<string>,
): { readonly key: 'panel' | 'edge'; readonly fault: Fault } | null {
  const { file } = connectionSchedule;
  if (typeof draft.panel === 'string' && !marks.has(draft.panel))
    return { key: 'panel', fault: unknownCell(file, row, 'panel', 'panel', marks, '') };
  const panel = panels.get(String(draft.panel));
  if (panel === undefined || draft.face !== 'edge' || row.wrong.has('edge')) return null;
  if (typeof draft.edge === 'number' && panel.outline_mm[draft.edge] !== undefined) return null;
  const last = panel.outline_mm.length - 1;
  const text = `a connection on an edge needs the number of the edge, 0 to ${last}`;
  return { key: 'edge', fault: tableFault(file, row.number, 'edge', String(draft.edge ?? ''), `0 to ${last}`, text) };
}

/** Rows with a name of their own: of two with one name, which is a fault by itself, the first. */
function findFirst(rows: readonly Row[], ...columns: readonly string[]): ReadonlySet<Row> {
  const first = new Map<string, Row>();
  for (const row of rows) {
    const name = JSON.stringify(columns.map((column) => row.cells.get(column)));
    if (!first.has(name)) first.set(name, row);
  }
  return new Set(first.values());
}

/** Connections from connections.csv, the rows of their inserts and loads, and job.json. */
export function assembleConnections(
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
  const readyPanels = new Map<string, Panel>();
  for (const draft of panels) {
    const read = panelSchema.safeParse(draft);
    if (read.success && !readyPanels.has(read.data.mark)) readyPanels.set(read.data.mark, read.data);
  }
  const panelMarks = new Set(panels.flatMap(({ mark }) => (typeof mark === 'string' ? [mark] : [])));
  const firstInserts = findFirst(tables.inserts.rows, 'panel', 'insert');
  const firstConnections = findFirst(tables.connections.rows, 'connection');
  const placeOfRow = new Map(tables.inserts.rows.map((row, i) => [row, i]));
  return tables.connections.rows.map((row, i) => {
    const path = ['job', 'connections', i];
    const draft = fillRecord(connectionSchedule, row, path, sources);
    fillKey(draft, `connection ${draft.mark}`, assembly);
    const isFirst = firstConnections.has(row);
    if (!isFirst && draft.mark !== undefined) faults.push(reportDouble(row, String(draft.mark)));
    const ownRows = isFirst ? (insertRows.get(draft.mark) ?? []).filter((own) => firstInserts.has(own)) : [];
    const inserts = ownRows.map((insertRow): InsertRow => {
      const castIn = castIns[placeOfRow.get(insertRow) ?? -1];
      return { row: insertRow, id: castIn?.id, x: castIn?.x_mm, y: castIn?.y_mm };
    });
    const files = { connections: connectionSchedule.file, inserts: insertSchedule.file };
    faults.push(...addPlate(draft, files, row, inserts, path, readyPanels.get(String(draft.panel)), sources));
    const wrongBase = checkBase(draft, row, readyPanels, panelMarks);
    if (wrongBase !== null) {
      faults.push(wrongBase.fault);
      sources.silence([...path, wrongBase.key]);
    }
    addActions(draft, row, isFirst ? (loadRows.get(draft.mark) ?? []) : [], path, assembly);
    const more = typeof draft.mark === 'string' ? rest.connections[draft.mark] : undefined;
    for (const key of ['hangers', 'hairpins', 'fixture', 'inserts'] as const) {
      copyFromRest(draft, key, more?.[key], path, ['connections', String(draft.mark)], sources);
    }
    if (inserts.length === 0 && more?.inserts === undefined) {
      sources.silence([...path, 'inserts']);
      sources.silence([...path, 'fixture', 'holes']);
      if (isFirst && draft.mark !== undefined && insertRows.get(draft.mark) === undefined)
        faults.push(reportNoInsert(row, String(draft.mark)));
    }
    return draft;
  });
}

function reportDouble(row: Row, mark: string): Fault {
  const text = `connection ${mark} is used more than once; each needs its own`;
  return tableFault(connectionSchedule.file, row.number, 'connection', mark, 'a name used once', text);
}

function reportNoInsert(row: Row, mark: string): Fault {
  const text = `no insert names connection ${mark}; expected ${mark} in the column connection of at least one row of ${insertSchedule.file}`;
  return tableFault(connectionSchedule.file, row.number, 'connection', mark, 'at least one insert', text);
}
