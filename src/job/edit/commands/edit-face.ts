import type { Point } from '../../../engine/geometry/point.ts';
import { findWidestHole } from '../../../engine/hardware/clearance-holes.ts';
import { findThread, type ThreadName } from '../../../engine/hardware/threads.ts';
import { placeOfHole } from '../../details/hole-place.ts';
import { type CastIn, castIn as castInSchema } from '../../documents/cast-in.ts';
import { type Connection, connection as connectionSchema } from '../../documents/connection.ts';
import type { Fixture } from '../../documents/fixture.ts';
import type { JobFile } from '../../documents/job-file.ts';
import type { Panel } from '../../documents/panel.ts';
import type { Recipe } from '../edit-job.ts';
import { nextNumber } from '../plate/change-connection.ts';
import { nextName } from './edit-panels.ts';

/** Rows and columns of holes in a plate, equally spaced about its middle. Lengths mm. */
export interface HolePattern {
  readonly rows: number;
  readonly columns: number;
  readonly columnSpacing: number;
  readonly rowSpacing: number;
  /** From the outermost holes to the plate's sides. */
  readonly margin: number;
  readonly thickness: number;
}

/** A rectangular plate with a pattern of holes, as wide as inserts may share a shear over. */
export function makePatternPlate(pattern: HolePattern, thread: ThreadName): Fixture {
  const { rows, columns, columnSpacing, rowSpacing, margin, thickness } = pattern;
  const [halfX, halfY] = [((columns - 1) * columnSpacing) / 2, ((rows - 1) * rowSpacing) / 2];
  const [x, y] = [halfX + margin, halfY + margin];
  const holes = Array.from({ length: rows * columns }, (_, k) => ({
    id: String(k + 1),
    // From the left, the top row first, as one reads.
    at_mm: [(k % columns) * columnSpacing - halfX, halfY - Math.floor(k / columns) * rowSpacing] as const,
    diameter_mm: findWidestHole(findThread(thread)),
    slot_mm: 0,
    slotAngle_deg: 0,
    takesShear: true,
  }));
  return {
    outline_mm: [
      [-x, -y],
      [x, -y],
      [x, y],
      [-x, y],
    ],
    thickness_mm: thickness,
    yield_MPa: null,
    holes,
    attachment_mm: null,
  };
}

/** Where something new goes, as the documents give places of that face. */
export interface NewPlace {
  readonly face: CastIn['face'];
  readonly edge: number | null;
  readonly at: Point;
}

/** A connection that is placed: with a plate of its own, by a standard detail, or a single insert without a plate. */
export interface NewConnection extends NewPlace {
  readonly item: string;
  readonly plate:
    | { readonly kind: 'own'; readonly fixture: Fixture }
    | { readonly kind: 'detail'; readonly id: string }
    | { readonly kind: 'none' };
}

/** The next free mark of a connection: one more than the last of the job. */
export function nextConnectionMark({ job }: JobFile): string {
  const taken = new Set(job.connections.map(({ mark }) => mark));
  // Those of partners end in a word of their own, which is not counted on from.
  const last = job.connections
    .map(({ mark }) => mark)
    .filter((mark) => /^\D*\d+$/.test(mark))
    .at(-1);
  return nextName(last ?? 'C00', taken);
}

function makeInsert(panel: string, id: string, key: string, item: string, place: NewPlace): CastIn {
  const [x_mm, y_mm] = place.at;
  return castInSchema.parse({ key, id, panel, role: 'fixing', item, face: place.face, edge: place.edge, x_mm, y_mm });
}

/**
 * Places a connection with its inserts; no action is given yet, so its strength is not checked until one is.
 * @param mark that is free
 * @param makeKey gives a new permanent key at each call
 */
export function addConnection(panel: Panel, mark: string, what: NewConnection, makeKey: () => string): Recipe {
  return ({ job, library }) => {
    const { face, edge, at, item, plate } = what;
    const fixture =
      plate.kind === 'own'
        ? plate.fixture
        : plate.kind === 'detail'
          ? (library.details.details.find(({ id }) => id === plate.id)?.fixture ?? null)
          : null;
    const bare: Connection = connectionSchema.parse({
      key: makeKey(),
      mark,
      panel: panel.mark,
      face,
      edge,
      origin_mm: at,
      detail: plate.kind === 'detail' ? plate.id : null,
      fixture: plate.kind === 'own' ? plate.fixture : null,
      inserts: [{ insert: '1', hole: null }],
      actions: { kind: 'none' },
    });
    const taken = job.castIns.filter((one) => one.panel === panel.mark).map(({ id }) => id);
    const holes = fixture === null ? [null] : fixture.holes;
    const inserts = holes.map((hole) => {
      const id = nextNumber(taken);
      taken.push(id);
      const place = { face, edge, at: hole === null ? at : placeOfHole(panel, bare, [hole.at_mm[0], hole.at_mm[1]]) };
      job.castIns.push(makeInsert(panel.mark, id, makeKey(), item, place));
      return { insert: id, hole: hole?.id ?? null };
    });
    job.connections.push(structuredClone({ ...bare, inserts }) as (typeof job.connections)[number]);
  };
}

/** Puts a single insert into a panel, of no connection yet. */
export function addInsert(panel: string, item: string, place: NewPlace, key: string): Recipe {
  return ({ job }) => {
    const id = nextNumber(job.castIns.filter((one) => one.panel === panel).map((one) => one.id));
    job.castIns.push(makeInsert(panel, id, key, item, place));
  };
}

/**
 * Takes cast-in items out of a panel, with their holes where the plate is the connection's own; a connection that is left without an insert goes too.
 */
export function removeCastIns(panel: string, ids: ReadonlySet<string>): Recipe {
  return ({ job }) => {
    job.castIns = job.castIns.filter((one) => one.panel !== panel || !ids.has(one.id));
    for (const connection of job.connections) {
      if (connection.panel !== panel || !connection.inserts.some(({ insert }) => ids.has(insert))) continue;
      const gone = new Set(connection.inserts.flatMap(({ insert, hole }) => (ids.has(insert) ? [hole] : [])));
      connection.inserts = connection.inserts.filter(({ insert }) => !ids.has(insert));
      if (connection.fixture !== null)
        connection.fixture.holes = connection.fixture.holes.filter(({ id }) => !gone.has(id));
    }
    job.connections = job.connections.filter(({ inserts }) => inserts.length > 0);
  };
}

/** Changes some cast-in items of a panel, each alike. */
export function changeCastIns(
  panel: string,
  ids: ReadonlySet<string>,
  change: (castIn: { -readonly [K in keyof CastIn]: CastIn[K] }) => void,
): Recipe {
  return ({ job }) => {
    for (const castIn of job.castIns) if (castIn.panel === panel && ids.has(castIn.id)) change(castIn);
  };
}

/** Changes what a panel itself says: outline, openings, edges, bars. */
export function changePanel(mark: string, change: (panel: { -readonly [K in keyof Panel]: Panel[K] }) => void): Recipe {
  return ({ job }) => {
    const found = job.panels.find((panel) => panel.mark === mark);
    if (found === undefined) return;
    // The document's types are read-only; a draft of them is not, and is written to by whole values only.
    change(found as { -readonly [K in keyof Panel]: Panel[K] });
  };
}

/** Puts a connection, or items of none, onto the other large face; inserts stand where the holes of the plate then are. */
export function turnToFace(
  panel: Panel,
  ids: ReadonlySet<string>,
  mark: string | null,
  face: 'outside' | 'inside',
): Recipe {
  return ({ job, library }) => {
    const connection = job.connections.find((one) => one.mark === mark && one.panel === panel.mark);
    if (connection !== undefined) Object.assign(connection, { face, edge: null });
    const detail = library.details.details.find(({ id }) => id === connection?.detail);
    const holes = connection?.fixture?.holes ?? detail?.fixture.holes ?? [];
    for (const castIn of job.castIns) {
      if (castIn.panel !== panel.mark || !ids.has(castIn.id)) continue;
      Object.assign(castIn, { face, edge: null });
      const name = connection?.inserts.find(({ insert }) => insert === castIn.id)?.hole;
      const hole = holes.find(({ id }) => id === name);
      if (connection === undefined || hole === undefined) continue;
      const [x, y] = placeOfHole(panel, connection, [hole.at_mm[0], hole.at_mm[1]]);
      Object.assign(castIn, { x_mm: x, y_mm: y });
    }
  };
}
