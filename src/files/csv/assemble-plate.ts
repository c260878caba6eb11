import type { Panel } from '../../job/documents/panel.ts';
import { frameOf, placeInPlate } from '../../job/face-frame.ts';
import type { Fault } from '../../job/fault.ts';
import type { Draft } from './records.ts';
import type { Sources } from './sources.ts';
import { type Row, tableFault } from './table.ts';

type Path = readonly (string | number)[];

/** A row of inserts.csv that names a connection. */
export interface InsertRow {
  readonly row: Row;
  readonly id: unknown;
  readonly x: unknown;
  readonly y: unknown;
}

const plateColumns = [
  'plate_width_mm',
  'plate_height_mm',
  'plate_outline_mm',
  'plate_thickness_mm',
  'plate_yield_MPa',
  'attachment_mm',
];
const holeColumns = ['hole_mm', 'slot_mm', 'slot_angle_deg', 'takes_shear', 'hole_x_mm', 'hole_y_mm'];

/** Whether a row of connections.csv describes a plate of its own. */
function hasPlate(row: Row): boolean {
  return plateColumns.some((column) => row.cells.has(column));
}

function plateOutline(row: Row, file: string, faults: Fault[]): unknown {
  const outline = row.cells.get('plate_outline_mm');
  const width = row.cells.get('plate_width_mm');
  const height = row.cells.get('plate_height_mm');
  if (outline !== undefined) {
    if (width === undefined && height === undefined) return outline;
    const column = width === undefined ? 'plate_height_mm' : 'plate_width_mm';
    faults.push(
      tableFault(
        file,
        row.number,
        column,
        String(width ?? height),
        'an outline, or width and height',
        'the plate has an outline as well; expected one of the two',
      ),
    );
    return outline;
  }
  if (typeof width !== 'number' || typeof height !== 'number') {
    if (['plate_outline_mm', 'plate_width_mm', 'plate_height_mm'].some((name) => row.wrong.has(name))) return undefined;
    const column = typeof width === 'number' ? 'plate_height_mm' : 'plate_width_mm';
    faults.push(
      tableFault(
        file,
        row.number,
        column,
        '',
        'width and height, or an outline',
        'the size of the plate is not given; expected plate_width_mm and plate_height_mm, or plate_outline_mm',
      ),
    );
    return undefined;
  }
  const x = width / 2;
  const y = height / 2;
  return [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ];
}

/** Where an insert lies in the axes of the plate; null where panel or place is not right yet (and is reported as such). */
function placeOf(insert: InsertRow, connection: Draft, panel: Panel | undefined): readonly [number, number] | null {
  const { x, y } = insert;
  const { origin_mm: origin, turn_deg: turn, face, edge } = connection;
  if (panel === undefined || typeof x !== 'number' || typeof y !== 'number' || typeof turn !== 'number') return null;
  if (!Array.isArray(origin) || typeof origin[0] !== 'number' || typeof origin[1] !== 'number') return null;
  if (face !== 'outside' && face !== 'inside' && face !== 'edge') return null;
  if (face === 'edge' && (typeof edge !== 'number' || panel.outline_mm[edge] === undefined)) return null;
  const frame = frameOf(panel, { face, edge: typeof edge === 'number' ? edge : null });
  return placeInPlate(frame, [origin[0], origin[1]], turn, frame.toFace([x, y]));
}

function holeOf(
  insert: InsertRow,
  file: string,
  path: Path,
  connection: Draft,
  panel: Panel | undefined,
  sources: Sources,
): Draft {
  const { cells, number } = insert.row;
  const source = (column: string) => ({ file, row: number, column });
  sources.add(path, { file, row: number, column: null });
  sources.add([...path, 'id'], source('hole'));
  sources.add([...path, 'diameter_mm'], source('hole_mm'));
  sources.add([...path, 'slot_mm'], source('slot_mm'));
  const hole: Draft = {
    id: cells.get('hole') ?? insert.id,
    slot_mm: cells.get('slot_mm') ?? 0,
    slotAngle_deg: cells.get('slot_angle_deg') ?? 0,
    takesShear: cells.get('takes_shear') ?? true,
  };
  if (cells.has('hole_mm')) hole.diameter_mm = cells.get('hole_mm');
  const typed = cells.has('hole_x_mm') || cells.has('hole_y_mm');
  sources.add([...path, 'at_mm'], source(typed ? 'hole_x_mm' : 'x_mm'));
  const place = typed ? [cells.get('hole_x_mm'), cells.get('hole_y_mm')] : placeOf(insert, connection, panel);
  if (place === null) sources.silence([...path, 'at_mm']);
  else hole.at_mm = place;
  return hole;
}

/**
 * Adds plate, holes and inserts to a connection, from its own row and from the rows of its inserts. A hole lies where its insert is
 * unless the row says another place.
 */
export function addPlate(
  connection: Draft,
  files: { readonly connections: string; readonly inserts: string },
  row: Row,
  inserts: readonly InsertRow[],
  path: Path,
  panel: Panel | undefined,
  sources: Sources,
): Fault[] {
  const faults: Fault[] = [];
  const isPlate = hasPlate(row);
  connection.inserts = inserts.map((insert, i) => {
    const { cells, number } = insert.row;
    const at = [...path, 'inserts', i];
    sources.add(at, { file: files.inserts, row: number, column: 'connection' });
    sources.add([...at, 'insert'], { file: files.inserts, row: number, column: 'connection' });
    sources.add([...at, 'hole'], { file: files.inserts, row: number, column: cells.has('hole') ? 'hole' : 'hole_mm' });
    const named = isPlate || connection.detail !== null ? (cells.get('hole') ?? insert.id) : null;
    if (!isPlate) {
      for (const column of holeColumns.filter((name) => cells.has(name))) {
        const text =
          connection.detail === null
            ? 'a hole, but the connection has no plate'
            : 'a hole of its own, but the holes come from the standard detail';
        faults.push(
          tableFault(
            files.inserts,
            number,
            column,
            String(cells.get(column)),
            'an empty cell',
            `${text}; expected an empty cell`,
          ),
        );
      }
    }
    return { insert: insert.id, hole: named };
  });
  if (!isPlate) return faults;
  const fixturePath = [...path, 'fixture'];
  const source = (column: string) => ({ file: files.connections, row: row.number, column });
  sources.add(
    [...fixturePath, 'outline_mm'],
    source(row.cells.has('plate_outline_mm') ? 'plate_outline_mm' : 'plate_width_mm'),
  );
  sources.add([...fixturePath, 'thickness_mm'], source('plate_thickness_mm'));
  sources.add([...fixturePath, 'yield_MPa'], source('plate_yield_MPa'));
  sources.add([...fixturePath, 'attachment_mm'], source('attachment_mm'));
  const fixture: Draft = {
    yield_MPa: row.cells.get('plate_yield_MPa') ?? null,
    holes: inserts.map((insert, i) =>
      holeOf(insert, files.inserts, [...fixturePath, 'holes', i], connection, panel, sources),
    ),
    attachment_mm: row.cells.get('attachment_mm') ?? null,
  };
  const outline = plateOutline(row, files.connections, faults);
  if (outline !== undefined) fixture.outline_mm = outline;
  else sources.silence([...fixturePath, 'outline_mm']);
  if (row.cells.has('plate_thickness_mm')) fixture.thickness_mm = row.cells.get('plate_thickness_mm');
  connection.fixture = fixture;
  return faults;
}
