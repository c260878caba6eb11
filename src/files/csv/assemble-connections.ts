import { panel as panelSchema } from '../../job/documents/panel.ts';
import type { Fault } from '../../job/fault.ts';
import { findNearestWord } from '../../job/nearest-word.ts';
import { addPlate, type InsertRow } from './assemble-plate.ts';
import { type Assembly, copyFromRest, fillKey, type Tables } from './assembly.ts';
import { connectionSchedule, insertSchedule, loadSchedule } from './columns.ts';
import { type Draft, fillRecord } from './records.ts';
import { type Row, type Table, tableFault } from './table.ts';

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
            'is missing; expected the mark of a connection',
          ),
        );
      continue;
    }
    if (!known.has(String(mark))) {
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
  const readyPanels = new Map(
    panels.flatMap((draft) => {
      const read = panelSchema.safeParse(draft);
      return read.success ? [[read.data.mark, read.data] as const] : [];
    }),
  );
  const placeOfRow = new Map(tables.inserts.rows.map((row, i) => [row, i]));
  return tables.connections.rows.map((row, i) => {
    const path = ['job', 'connections', i];
    const draft = fillRecord(connectionSchedule, row, path, sources);
    fillKey(draft, `connection ${draft.mark}`, assembly);
    const inserts = (insertRows.get(draft.mark) ?? []).map((insertRow): InsertRow => {
      const castIn = castIns[placeOfRow.get(insertRow) ?? -1];
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
