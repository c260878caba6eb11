import { stringify } from 'csv-stringify/sync';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { frameOf, placeInPlate } from '../../job/face-frame.ts';
import { castInName } from '../../job/sift.ts';
import type { FileTexts } from '../job-reading.ts';
import { writeCell } from './cells.ts';
import {
  catalogueSchedule,
  connectionSchedule,
  insertSchedule,
  loadSchedule,
  panelSchedule,
  pieceColumns,
  pourColumns,
  pourSchedule,
  type Schedule,
} from './columns.ts';
import { writeRecord } from './records.ts';
import { REST_FILE, type Rest } from './rest.ts';

type Cells = Map<string, string>;

/** Cast-in items with their place in the schedule, by `castInName`. */
type CastInsByName = ReadonlyMap<string, { readonly castIn: CastIn; readonly place: number }>;

export function writeTable(schedule: Schedule, rows: readonly Cells[]): string {
  const columns = schedule.columns.map((column) => column.name);
  return stringify([columns, ...rows.map((cells) => columns.map((column) => cells.get(column) ?? ''))], {
    record_delimiter: 'windows',
  });
}

/** Cells of inserts.csv that make the hole of one insert in its connection's plate. */
function holeCells(hole: Fixture['holes'][number], own: { id: string; at: readonly [number, number] }): Cells {
  const cells: Cells = new Map([['hole_mm', String(hole.diameter_mm)]]);
  if (hole.id !== own.id) cells.set('hole', hole.id);
  if (hole.slot_mm !== 0) cells.set('slot_mm', String(hole.slot_mm));
  if (hole.slotAngle_deg !== 0) cells.set('slot_angle_deg', String(hole.slotAngle_deg));
  if (!hole.takesShear) cells.set('takes_shear', 'no');
  if (hole.at_mm[0] !== own.at[0] || hole.at_mm[1] !== own.at[1]) {
    cells.set('hole_x_mm', String(hole.at_mm[0]));
    cells.set('hole_y_mm', String(hole.at_mm[1]));
  }
  return cells;
}

/**
 * Whether the rows of inserts.csv can say which inserts and holes a connection has: inserts in the order of the schedule, and one
 * hole each in the same order.
 */
function canBeTyped(castIns: CastInsByName, connection: Connection): boolean {
  const places = connection.inserts.map(({ insert }) => castIns.get(castInName(connection.panel, insert))?.place ?? -1);
  if (places.some((place, i) => i > 0 && place < places[i - 1]!)) return false;
  if (connection.fixture === null)
    return connection.detail !== null || connection.inserts.every(({ hole }) => hole === null);
  const holes = connection.fixture.holes.map((hole) => hole.id);
  return holes.length === connection.inserts.length && connection.inserts.every(({ hole }, i) => hole === holes[i]);
}

/** The hole and plate cells of all inserts, by the insert's key. */
function insertCells(castIns: CastInsByName, connection: Connection, panel: Panel): Map<string, Cells> {
  const frame = frameOf(panel, connection);
  return new Map(
    connection.inserts.flatMap(({ insert, hole }) => {
      const castIn = castIns.get(castInName(panel.mark, insert))?.castIn;
      if (castIn === undefined) return [];
      const at = placeInPlate(
        frame,
        connection.origin_mm,
        connection.turn_deg,
        frame.toFace([castIn.x_mm, castIn.y_mm]),
      );
      const own = connection.fixture?.holes.find((candidate) => candidate.id === hole);
      const cells: Cells = own === undefined ? new Map() : holeCells(own, { id: castIn.id, at });
      if (own === undefined && hole !== null && hole !== castIn.id) cells.set('hole', hole);
      return [[castIn.key, cells.set('connection', connection.mark)] as const];
    }),
  );
}

function plateCells(fixture: Fixture): Cells {
  const cells: Cells = new Map([
    ['plate_outline_mm', writeCell('corners', fixture.outline_mm)],
    ['plate_thickness_mm', String(fixture.thickness_mm)],
  ]);
  if (fixture.yield_MPa !== null) cells.set('plate_yield_MPa', String(fixture.yield_MPa));
  if (fixture.attachment_mm !== null) cells.set('attachment_mm', writeCell('corners', fixture.attachment_mm));
  return cells;
}

function actionCells({ actions }: Connection): Cells {
  return actions.kind === 'required'
    ? new Map([
        ['required_N_kN', String(actions.N_kN)],
        ['required_V_kN', String(actions.V_kN)],
      ])
    : new Map();
}

/** What the schedules cannot say, without empty parts. */
function writeRest(file: JobFile, untyped: ReadonlySet<Connection>): string {
  const { job, library } = file;
  const { items: _items, format: _format, version: _version, ...catalogue } = library.catalogue;
  const rest: Rest = {
    format: 'onepour-schedules',
    version: 1,
    project: job.project,
    ...(job.revision === null ? {} : { revision: job.revision }),
    concretes: [...job.concretes],
    library: {
      catalogue,
      details: library.details,
      holding: library.holding,
      rules: library.rules,
      yard: library.yard,
    },
    panels: Object.fromEntries(
      job.panels
        .filter((p) => p.zones.length + p.edges.length > 0 || p.reinforcement !== null)
        .map((p) => [p.mark, { zones: [...p.zones], edges: [...p.edges], reinforcement: p.reinforcement }]),
    ),
    types: Object.fromEntries(
      library.catalogue.items
        .filter((item) => item.tested.length + item.ratedLoads.length > 0)
        .map((item) => [item.id, { tested: [...item.tested], ratedLoads: [...item.ratedLoads] }]),
    ),
    connections: Object.fromEntries(
      job.connections
        .filter((c) => c.hangers.length + c.hairpins.length > 0 || untyped.has(c))
        .map((c) => [
          c.mark,
          {
            hangers: [...c.hangers],
            hairpins: [...c.hairpins],
            ...(untyped.has(c) ? { fixture: c.fixture, inserts: [...c.inserts] } : {}),
          },
        ]),
    ),
    pours: Object.fromEntries(
      job.pours.filter(({ remarks }) => remarks.length > 0).map(({ id, remarks }) => [id, { remarks: [...remarks] }]),
    ),
  };
  return `${JSON.stringify(rest, null, 2)}\n`;
}

/** A job as schedules and the job.json beside them; reading them gives the same job. */
export function writeSchedules(file: JobFile): FileTexts {
  const { job, library } = file;
  const castIns: CastInsByName = new Map(
    job.castIns.map((castIn, place) => [castInName(castIn.panel, castIn.id), { castIn, place }]),
  );
  const panels = new Map(job.panels.map((panel) => [panel.mark, panel]));
  const untyped = new Set(job.connections.filter((connection) => !canBeTyped(castIns, connection)));
  const holes = new Map<string, Cells>();
  for (const connection of job.connections) {
    const panel = panels.get(connection.panel);
    if (panel === undefined || untyped.has(connection)) continue;
    for (const [key, cells] of insertCells(castIns, connection, panel)) holes.set(key, cells);
  }
  const connectionRows = job.connections.map((connection) => {
    const plate = connection.fixture === null || untyped.has(connection) ? [] : plateCells(connection.fixture);
    return new Map([...writeRecord(connectionSchedule.columns, connection), ...plate, ...actionCells(connection)]);
  });
  const loadRows = job.connections.flatMap(({ mark, actions }) =>
    actions.kind !== 'loads'
      ? []
      : actions.combinations.map((load) => writeRecord(loadSchedule.columns, load).set('connection', mark)),
  );
  const pourRows = job.pours.flatMap((pour) =>
    pour.pieces.map((piece) => new Map([...writeRecord(pourColumns, pour), ...writeRecord(pieceColumns, piece)])),
  );
  return new Map([
    [
      panelSchedule.file,
      writeTable(
        panelSchedule,
        job.panels.map((p) => writeRecord(panelSchedule.columns, p)),
      ),
    ],
    [
      insertSchedule.file,
      writeTable(
        insertSchedule,
        job.castIns.map((c) => new Map([...writeRecord(insertSchedule.columns, c), ...(holes.get(c.key) ?? [])])),
      ),
    ],
    [connectionSchedule.file, writeTable(connectionSchedule, connectionRows)],
    [loadSchedule.file, writeTable(loadSchedule, loadRows)],
    [
      catalogueSchedule.file,
      writeTable(
        catalogueSchedule,
        library.catalogue.items.map((item) => writeRecord(catalogueSchedule.columns, item)),
      ),
    ],
    ...(pourRows.length === 0 ? [] : [[pourSchedule.file, writeTable(pourSchedule, pourRows)] as const]),
    [REST_FILE, writeRest(file, untyped)],
  ]);
}
