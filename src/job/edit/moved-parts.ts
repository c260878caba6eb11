import type { Draft } from 'immer';
import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { JobFile } from '../documents/job-file.ts';
import type { Panel } from '../documents/panel.ts';
import { frameOf, placeInPlate } from '../face-frame.ts';
import type { Recipe } from './edit-job.ts';

/** What a move changes, as it will be: cast-in items, and the connection where its plate or a hole of it moves too. */
export interface MovedParts {
  readonly castIns: readonly CastIn[];
  readonly connection: Connection | null;
}

/** Places are kept to a millionth of a mm: what was added up in floating point comes back as it was typed. */
const tidy = (value: number) => Math.round(value * 1e6) / 1e6 + 0;

const shift = (castIn: CastIn, [dx, dy]: Point): CastIn => ({
  ...castIn,
  x_mm: tidy(castIn.x_mm + dx),
  y_mm: tidy(castIn.y_mm + dy),
});

/**
 * A connection with its plate and inserts, or inserts without one, moved as a whole.
 * @param by along the coordinates that the documents give places of this face in [mm]
 */
export function moveWhole(castIns: readonly CastIn[], connection: Connection | null, by: Point): MovedParts {
  return {
    castIns: castIns.map((castIn) => shift(castIn, by)),
    connection:
      connection === null
        ? null
        : {
            ...connection,
            origin_mm: [tidy(connection.origin_mm[0] + by[0]), tidy(connection.origin_mm[1] + by[1])],
          },
  };
}

/**
 * One insert moved; the hole that it stands in goes with it where the plate is the connection's own. A standard detail keeps its holes.
 * @param connection that the insert belongs to; null: none
 * @param by as for `moveWhole`
 */
export function moveInsert(panel: Panel, castIn: CastIn, connection: Connection | null, by: Point): MovedParts {
  const moved = shift(castIn, by);
  const hole = connection?.inserts.find(({ insert }) => insert === castIn.id)?.hole ?? null;
  if (connection === null || connection.fixture === null || hole === null)
    return { castIns: [moved], connection: null };
  const frame = frameOf(panel, connection);
  const inPlate = ({ x_mm, y_mm }: CastIn) =>
    placeInPlate(frame, connection.origin_mm, connection.turn_deg, frame.toFace([x_mm, y_mm]));
  const [fromX, fromY] = inPlate(castIn);
  const [toX, toY] = inPlate(moved);
  const holes = connection.fixture.holes.map((one) =>
    one.id === hole
      ? { ...one, at_mm: [tidy(one.at_mm[0] + toX - fromX), tidy(one.at_mm[1] + toY - fromY)] as const }
      : one,
  );
  return { castIns: [moved], connection: { ...connection, fixture: { ...connection.fixture, holes } } };
}

/** Puts them into a job, each where the one with its permanent key is. */
export function putMoved({ castIns, connection }: MovedParts): Recipe {
  return ({ job }) => {
    for (const { key, x_mm, y_mm } of castIns) {
      const found = job.castIns.find((one) => one.key === key);
      if (found !== undefined) Object.assign(found, { x_mm, y_mm });
    }
    const found = connection === null ? undefined : job.connections.find(({ key }) => key === connection.key);
    if (connection === null || found === undefined) return;
    found.origin_mm = [...connection.origin_mm];
    moveHoles(found, connection);
  };
}

/** Only what moved is written, so that the edit says no more than was done. */
function moveHoles(found: Draft<JobFile['job']['connections'][number]>, { fixture }: Connection): void {
  for (const hole of fixture?.holes ?? []) {
    const own = found.fixture?.holes.find(({ id }) => id === hole.id);
    if (own !== undefined && (own.at_mm[0] !== hole.at_mm[0] || own.at_mm[1] !== hole.at_mm[1]))
      own.at_mm = [...hole.at_mm];
  }
}
